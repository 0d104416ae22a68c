#pragma once
/// \file
/// A material value that says where it comes from.

#include <optional>
#include <string_view>
#include <utility>

#include "bowfront/base/origin.hpp"

namespace bowfront {

/// One value of a material, with its unit, its source and how sure it is.
///
/// All text lives as long as the program where the value comes from the library.
struct Property {
    double value = 0;
    std::string_view unit;    ///< `mm`, `kg/m3`, `MPa`, `1/K`, `ratio`, `degC`, `W/(m K)`, ...
    std::string_view source;  ///< the publication or rule, in words; never empty in the library
    Certainty certainty = Certainty::remembered;
    /// Smallest and largest of what was published, where sources or samples differ.
    std::optional<std::pair<double, double>> range{};
    std::string_view note{};  ///< what a user must know with it; may be empty
};

}  // namespace bowfront
