#pragma once
/// \file
/// Solids with names and colours to and from STEP (ISO 10303-21, AP214), in millimetres.

#include <string>
#include <vector>

#include "bowfront/base/stamp.hpp"
#include "bowfront/solid/solid.hpp"

namespace bowfront::step {

/// One part to write: its solid in local coordinates and every place it stands in.
struct Item {
    std::string id;     ///< product id, unique in the file
    std::string name;   ///< product name, UTF-8
    std::string group;  ///< the sub-assembly it hangs under; empty for the root
    Finish finish = Finish::timber;
    Solid solid;
    double volume = 0;  ///< closed form, mm³; written as a validation property
    std::vector<Placement> placements;
};

/// An assembly tree: root, one level of groups, parts.
struct Assembly {
    std::string name;
    std::vector<Item> items;
};

/// The file as text. The same assembly and stamp give the same bytes, in any process.
/// @throws KernelError
/// @throws ContractError where there is no item, a name or id is empty, an id stands twice, or an
///         item has no placement
[[nodiscard]] std::string write(const Assembly& assembly, const Stamp& stamp);

/// An instance read back.
struct ReadInstance {
    std::string name;   ///< of the product
    std::string group;  ///< of its parent, empty under the root
    Measures measures;  ///< in its place
};

/// Reads a file's text by the kernel's reader: every solid instance, in file order.
/// @throws KernelError where the text is not a STEP file that the kernel can read
[[nodiscard]] std::vector<ReadInstance> read(const std::string& text);

}  // namespace bowfront::step
