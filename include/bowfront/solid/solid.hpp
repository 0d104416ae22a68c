#pragma once
/// \file
/// Solids, as immutable values. Sizes come from the model; solids are made from the same outlines
/// as the patterns, and measured to contradict them.

#include <memory>
#include <string>
#include <vector>

#include "bowfront/pattern/part.hpp"

namespace bowfront {

/// A box in space with sides along the axes, mm.
struct Box3 {
    Point3 low;
    Point3 high;
};

/// What the kernel measures of a solid.
struct Measures {
    double volume = 0;  ///< mm³
    double area = 0;    ///< mm², all faces
    Point3 centroid;    ///< mm
    Box3 box;           ///< mm, exact for planes, cylinders and their edges to 1e-6
    int faces = 0;
};

/// A valid solid in its place. There is no empty solid; copies share.
class Solid {
  public:
    [[nodiscard]] Solid placed(const Placement& placement) const;

    struct Impl;

  private:
    explicit Solid(std::shared_ptr<const Impl> impl) : impl_(std::move(impl)) {}
    std::shared_ptr<const Impl> impl_;
    friend struct ShapeAccess;
};

namespace solid {

/// The solid of a body, built face by face from its outlines.
/// It passes two proofs before it is handed out: the kernel's validity check, and its volume equal
/// to the closed form to 1e-9 relative; either alone misses wrong solids.
/// @param part  its name, for the error
/// @throws KernelError where a proof fails
[[nodiscard]] Solid make(const Body& body, const std::string& part);

[[nodiscard]] Measures measure(const Solid& solid);

/// Only the box of `Measures`; it costs a tenth.
[[nodiscard]] Box3 box(const Solid& solid);

/// Two solids that stand in one place.
struct Overlap {
    std::size_t first = 0;   ///< index
    std::size_t second = 0;  ///< index, > first
    double volume = 0;       ///< mm³, > 0
    double depth = 0;        ///< mm: how deep one lies in the other, an estimate (volume over the
                             ///< largest face of the shared piece)
};

/// All pairs that overlap deeper than `depth` mm (default of the design: 1e-4), by index.
[[nodiscard]] std::vector<Overlap> overlaps(const std::vector<Solid>& solids, double depth);

}  // namespace solid
}  // namespace bowfront
