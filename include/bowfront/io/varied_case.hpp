#pragma once
/// \file
/// One case file, read once, in which some numbers take other values in turn.

#include <cstddef>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/model/case.hpp"

namespace bowfront::io {

/// A number of the file and the values that it takes.
struct Varied {
    std::string pointer;  ///< JSON pointer; the file may leave the value out
    std::string unit;     ///< behind each number; empty: the one that the file's own value has
    std::size_t count = 1;  ///< how many values, ≥ 1
    std::function<std::string(std::size_t)> number;  ///< each as it would be written
};

/// A number as the case holds it, or why the file could not hold it.
struct VariedValue {
    double value = 0;   ///< in the units used inside
    std::string fault;  ///< empty where there is a value
};

/// What the file means with any of the values in place, without reading it again: values that
/// follow a varied one (a post's depth its width) follow it here.
class VariedCase {
  public:
    /// @param file_name  as the user named it, for messages
    /// @throws InputError with every fault of the file; where a pointer leads to no number of the
    ///         file, with the nearest one that it could be; where none of its values can stand there
    VariedCase(std::string_view text, const std::string& file_name, std::vector<Varied> varied);
    VariedCase(VariedCase&&) noexcept;
    VariedCase& operator=(VariedCase&&) noexcept;
    ~VariedCase();

    /// The file's case with one allowed value in each varied place. Values of several places may
    /// contradict each other.
    [[nodiscard]] const Case& base() const noexcept;
    /// Which values of the case are set, as counted by `visit_values`.
    [[nodiscard]] const std::vector<std::size_t>& places(std::size_t varied) const;
    /// One of the values. Safe to be called by several threads at once.
    [[nodiscard]] VariedValue value(std::size_t varied, std::size_t number) const;
    /// Why a file with these values would be refused: the first contradiction; empty where none.
    [[nodiscard]] static std::string contradiction(const Case& c);

  private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

}  // namespace bowfront::io
