#pragma once
/// \file
/// Which solids are plainly apart, so that the kernel need not be asked.

#include <array>
#include <optional>
#include <vector>

#include "bowfront/solid/solid.hpp"
#include "solid/slices.hpp"

namespace bowfront::solid {

/// A solid prepared for the question.
class Bystander {
  public:
    explicit Bystander(const Solid& solid);

    /// Whether the two are apart, or touch along one axis only and by no more than `depth` mm.
    /// `false` decides nothing: sections that come near each other are the kernel's to judge.
    [[nodiscard]] bool plainly_apart(Bystander& other, double depth);

  private:
    using Slices = std::optional<std::vector<Slice>>;
    [[nodiscard]] const Slices& across(Axis axis);

    Solid solid_;
    Box3 box_;
    std::array<std::optional<Slices>, 3> slices_;  ///< made when first asked for
};

}  // namespace bowfront::solid
