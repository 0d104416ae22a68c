#pragma once
/// \file
/// What all parts of the reader of one file share.

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "bowfront/io/case_keys.hpp"
#include "bowfront/model/case.hpp"
#include "faults.hpp"
#include "json_node.hpp"

namespace bowfront::io {

/// A value of the file, or of the table of defaults, with the pointer that it has or would have.
struct Value {
    const JsonNode* node = nullptr;
    std::string pointer;
};

class Reading;

/// How a number is read that stands at some place.
using NumberIn = std::function<std::optional<double>(Reading&, const Value&)>;

/// Faults and assumptions of one file, and the unit of its bare lengths.
class Reading {
  public:
    /// @param keys  of every object of the file
    explicit Reading(Faults& faults, std::span<const ObjectKeys> keys = case_keys()) noexcept
        : faults_(faults), keys_(keys) {}

    /// The keys that an object of the file may have, by its pointer with `*`.
    [[nodiscard]] std::span<const ObjectKeys> keys() const noexcept { return keys_; }

    /// Of bare lengths; millimetres until it is set.
    [[nodiscard]] LengthUnit unit() const noexcept { return unit_; }
    void set_unit(LengthUnit unit) noexcept { unit_ = unit; }
    /// A length in the file's unit, for messages.
    [[nodiscard]] std::string length_text(double millimetres) const;

    /// A fault of a value.
    void refuse(const Value& value, Code code, std::string found, std::string wanted);
    /// A value of the wrong type.
    void refuse_type(const Value& value, std::string_view wanted);
    [[nodiscard]] Faults& faults() noexcept { return faults_; }

    void assume(std::string pointer, std::string value, std::string why);
    /// Lists a value that the file does not give, once; does nothing for a given one.
    void list_used(const Origin& origin, std::string value);
    [[nodiscard]] std::vector<Assumption> take_assumed() noexcept { return std::move(assumed_); }

    /// Whether the file may have an entry for a sheet of the library under its own name: only
    /// where a number of it is varied.
    enum class SheetKeys { own, of_library_too };
    [[nodiscard]] SheetKeys sheet_keys() const noexcept { return sheet_keys_; }
    void set_sheet_keys(SheetKeys keys) noexcept { sheet_keys_ = keys; }

    /// Keeps how the number at a pointer is read, once it is met.
    void watch(std::string pointer) { watched_pointer_ = std::move(pointer); }
    /// Empty where no number was read there.
    [[nodiscard]] const NumberIn& watched() const noexcept { return watched_; }
    /// Tells how the number at a pointer is read.
    template <class In>
    void note(std::string_view pointer, const In& in) {
        if (pointer == watched_pointer_) {
            watched_ = in;
        }
    }

  private:
    Faults& faults_;
    std::span<const ObjectKeys> keys_;
    LengthUnit unit_ = LengthUnit::millimetre;
    std::vector<Assumption> assumed_;
    SheetKeys sheet_keys_ = SheetKeys::own;
    std::string watched_pointer_ = "(none)";  // no JSON pointer
    NumberIn watched_;
};

/// Where a given value stands.
[[nodiscard]] Origin given_at(const Value& value);

}  // namespace bowfront::io
