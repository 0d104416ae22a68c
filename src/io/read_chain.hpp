#pragma once
/// \file
/// The sides of the general chain, and what other shapes of a plan are read alike.

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

#include "bowfront/model/plan.hpp"
#include "object_reader.hpp"

namespace bowfront::io {

// Far more sides than a maker glazes; `check` takes a fraction of a second for so many.
inline constexpr std::size_t kMostSides = 400;
inline constexpr int kMostPanesOfSide = 60;

/// The measures of an arc that its object holds, and how many keys there were, right or wrong.
struct GivenMeasures {
    std::vector<FrontArc> arcs;
    std::size_t keys = 0;
};

/// @param known  4, or 5 where the chord may be given
[[nodiscard]] GivenMeasures read_measures(ObjectReader& arc, std::size_t known);

/// Refuses a list of more than so many.
/// @param whole, what  for the message: `the plan` has 500 `sides`
[[nodiscard]] bool too_many(Reading& reading, const Value& list, std::size_t count,
                            std::size_t most, std::string_view whole, std::string_view what);

/// The points of a list that has to be there.
/// @param point  for the message: `a corner` as [x, y]
[[nodiscard]] std::vector<std::array<Sourced<double>, 2>> read_points(ObjectReader& of,
                                                                      std::string_view key,
                                                                      std::string_view point,
                                                                      std::string_view whole,
                                                                      std::string_view what);

/// The sides of a plan that is a chain.
void read_chain(ObjectReader& plan, Plan& out);

}  // namespace bowfront::io
