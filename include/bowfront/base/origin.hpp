#pragma once
/// \file
/// Where a value comes from, and how sure it is.

#include <cstddef>
#include <string>
#include <string_view>

namespace bowfront {

/// How sure a published value is.
enum class Certainty {
    seen,             ///< read in the named source
    reproduced,       ///< read in a reproduction of the named source
    remembered,       ///< from memory, not verified
    computed,         ///< follows from a formula and other values
    common_practice,  ///< a rule of the trade: common practice, no source
    choice,           ///< a choice of this tool within published ranges
};

/// In words, as printed with a value.
[[nodiscard]] std::string_view certainty_text(Certainty certainty) noexcept;

/// Where a value in a case comes from.
struct Origin {
    enum class Kind {
        given,    ///< stands in the case file, at `pointer` and `line`
        assumed,  ///< left out of the case file; `source` says why this value
        library,  ///< from the library of materials; `source` names the publication
        computed  ///< follows from other values
    } kind = Kind::assumed;
    std::string pointer;   ///< JSON pointer of the value, or of the place where it would stand
    std::size_t line = 0;  ///< given: line of the case file, from 1
    std::string source;
};

/// A value with its origin.
template <class T>
struct Sourced {
    T value{};
    Origin origin;
    [[nodiscard]] const T& operator*() const noexcept { return value; }
    [[nodiscard]] const T* operator->() const noexcept { return &value; }
    [[nodiscard]] bool given() const noexcept { return origin.kind == Origin::Kind::given; }
};

}  // namespace bowfront
