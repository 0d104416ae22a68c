#pragma once
/// \file
/// What is lifted to open a case, and how the case stands with its door open.

#include <optional>
#include <vector>

#include "bowfront/fit/access.hpp"
#include "bowfront/whole/whole_sums.hpp"

namespace bowfront::whole {

/// The weights of an opening.
struct AccessWeight {
    std::optional<double> mass;    ///< kg, of the top, or of one pane that opens; nothing where the
                                   ///< density is not known
    std::optional<int> people;     ///< that it takes to lift it; nothing where four are not enough
    double pull = 0;               ///< N, level, at each pivot of an open or shut door
    std::optional<WholeSums<double>> open;  ///< the whole case with its door open
};

/// @param parts  of the case, with those of its opening
[[nodiscard]] AccessWeight access_weight(const Case& c, const AccessSums<double>& sums,
                                         const fit::AccessLayout& access,
                                         const fit::Layout& layout,
                                         const std::vector<Part>& parts);

/// Whether two people can lift what is lifted, and whether the open door tips the case.
[[nodiscard]] std::vector<Finding> access_weight_checks(const Case& c, const AccessWeight& weight);

}  // namespace bowfront::whole
