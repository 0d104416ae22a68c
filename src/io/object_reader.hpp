#pragma once
/// \file
/// Reads one object of a case file, key by key.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "bowfront/base/contract.hpp"
#include "bowfront/io/defaults.hpp"
#include "reading.hpp"

namespace bowfront::io {

/// Whether a case makes use of a value: an assumption that nothing uses is not listed.
enum class Use { used, unused };

/// A cursor on one object. It takes each key that the table of keys gives the object, by what the
/// key's value should be; `finish` then tells of every key that nobody knows.
///
/// Where the file leaves the object out, its keys have their defaults. After a fault that leaves
/// nothing to read, a cursor is silent: it gives empty values and adds no faults.
class ObjectReader {
  public:
    /// The whole file.
    ObjectReader(Reading& reading, const JsonNode& root);

    /// The object under a key; one that is left out has its defaults.
    [[nodiscard]] ObjectReader object(std::string_view key);
    /// The object under a key that has to be there.
    [[nodiscard]] ObjectReader needed_object(std::string_view key);
    /// A value as an object, which is the `step` of this object's table that a `*` stands for.
    [[nodiscard]] ObjectReader item(const Value& value, std::string_view list_key) const;
    /// The value of a key, already taken, as an object.
    [[nodiscard]] ObjectReader object_of(const Value& value, std::string_view key) const;

    /// An object under a key as if the file left it out: for its defaults.
    [[nodiscard]] ObjectReader left_out(std::string_view key) const;

    /// The value of a key, or nothing.
    [[nodiscard]] std::optional<Value> take(std::string_view key);
    /// The value of a key that has to be there; nothing after a fault.
    [[nodiscard]] std::optional<Value> take_needed(std::string_view key);

    /// What a key says, where it is there and right.
    template <class In>
    [[nodiscard]] std::optional<Sourced<typename In::Result>> given(std::string_view key,
                                                                    const In& in) {
        const auto value = take(key);
        return value ? read(*value, in) : std::nullopt;
    }

    /// What a key that has to be there says; an empty value after a fault.
    template <class In>
    [[nodiscard]] Sourced<typename In::Result> needed(std::string_view key, const In& in) {
        const auto value = take_needed(key);
        return value ? read(*value, in).value_or(Sourced<typename In::Result>{})
                     : Sourced<typename In::Result>{};
    }

    /// What a key says, or its default, which is listed as assumed where it is used.
    template <class In>
    [[nodiscard]] Sourced<typename In::Result> or_default(std::string_view key, const In& in,
                                                          Use use = Use::used) {
        if (const auto value = take(key)) {
            return read(*value, in).value_or(Sourced<typename In::Result>{});
        }
        return assumed(key, in, use);
    }

    /// The default of a key, whatever the file says.
    template <class In>
    [[nodiscard]] Sourced<typename In::Result> assumed(std::string_view key, const In& in,
                                                       Use use) {
        const Default& row = default_of(pointer_step(pattern_, key));
        BOWFRONT_EXPECTS(row.kind == Default::Kind::value);
        const bool count = std::is_same_v<typename In::Result, int>;  // has no unit
        const JsonNode node{count ? JsonNode::Kind::number : JsonNode::Kind::text, {},
                            std::string(row.value), {}, {}};
        const auto value = in(*reading_, {&node, pointer_of(key)});
        BOWFRONT_EXPECTS(value.has_value());
        return {*value, assume(key, row, use)};
    }

    /// Lists the default of a key that is a rule; the origin for a value that follows from it.
    Origin assume_rule(std::string_view key, Use use = Use::used);

    /// The items of the list under a key; none where it is left out or is no list.
    [[nodiscard]] std::vector<Value> items(std::string_view key);
    /// The items of a list that must have a number of them; none after a fault.
    [[nodiscard]] std::vector<Value> items_of(const Value& list, std::size_t count,
                                              std::string_view what);

    /// A given value with its place.
    template <class In>
    [[nodiscard]] std::optional<Sourced<typename In::Result>> read(const Value& value,
                                                                   const In& in) {
        if constexpr (std::is_same_v<typename In::Result, double>) {
            reading_->note(value.pointer, in);
        } else if constexpr (std::is_same_v<typename In::Result, ToleranceSpec>) {
            reading_->note(value.pointer, by_length(in));
        }
        auto meant = in(*reading_, value);
        if (!meant) {
            return std::nullopt;
        }
        return Sourced<typename In::Result>{std::move(*meant), given_at(value)};
    }

    /// Ends the reading: faults for keys that are not known.
    /// @throws ContractError where a key of the table was not asked for
    void finish();

    /// Whether the file holds this object.
    [[nodiscard]] bool present() const noexcept { return node_ != nullptr; }
    [[nodiscard]] const std::string& pointer() const noexcept { return pointer_; }
    [[nodiscard]] std::string pointer_of(std::string_view key) const {
        return pointer_step(pointer_, key);
    }
    [[nodiscard]] Reading& reading() const noexcept { return *reading_; }
    /// This object as a value; only where it is present.
    [[nodiscard]] Value value() const { return {node_, pointer_}; }

  private:
    // A tolerance as a number: its length.
    template <class In>
    static NumberIn by_length(const In& in) {
        return [in](Reading& reading, const Value& value) -> std::optional<double> {
            const auto spec = in(reading, value);
            return spec && !spec->by_class ? std::optional(spec->value) : std::nullopt;
        };
    }

    ObjectReader(Reading& reading, const JsonNode* node, std::string pointer, std::string pattern);

    [[nodiscard]] ObjectReader silent(std::string_view key) const;
    Origin assume(std::string_view key, const Default& row, Use use);
    void refuse_key(const JsonMember& member);

    Reading* reading_;
    const JsonNode* node_;  // null where the file leaves the object out
    std::string pointer_;
    std::string pattern_;  // the pointer with `*` for indices and the maker's own keys
    bool silent_ = false;
    std::vector<std::string_view> asked_;
};

}  // namespace bowfront::io
