#pragma once
/// \file
/// What one part weighs, and where its centre of gravity is.

#include "bowfront/figure/book.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront::whole {

/// A mass and its centre of gravity, in the case's frame of reference.
template <class N>
struct Weight {
    N mass{};  ///< kg
    N x{};     ///< mm
    N y{};     ///< mm
    N z{};     ///< mm
};

/// The volume of one instance, mm³: `parts/ID/volume`. Source: geometry, a prism less its recesses
/// and bores.
[[nodiscard]] double part_volume(const Part& part, Book<double>& book);
[[nodiscard]] Traced part_volume(const Part& part, Book<Traced>& book);

/// All instances of a part together, below `parts/ID`: the mass of one is `parts/ID/mass`. Source:
/// mass = volume times density; the library's density of timber is that at 12 % moisture content.
/// @param part  its density is known
/// @throws ContractError where the density is not known
[[nodiscard]] Weight<double> part_weight(const Part& part, Book<double>& book);
[[nodiscard]] Weight<Traced> part_weight(const Part& part, Book<Traced>& book);

}  // namespace bowfront::whole
