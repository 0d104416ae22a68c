#pragma once
/// \file
/// An assembly as the kernel's nested compounds, which its STEP writer turns into products.

#include <TopoDS_Compound.hxx>
#include <string>
#include <vector>

#include "bowfront/step/step.hpp"

namespace bowfront::step {

/// A compound or solid that becomes a product.
struct Product {
    std::string id;
    std::string name;
    TopoDS_Shape shape;          ///< without location; no other product shares it
    const Item* item = nullptr;  ///< of a part; none for root and groups
};

/// Products in order: the root, then its groups and parts as they first appear.
struct ProductTree {
    std::vector<Product> products;
    [[nodiscard]] const TopoDS_Shape& root() const { return products.front().shape; }
};

/// @throws ContractError where there is no item, a name or id is empty, an id stands twice, or an
///         item has no placement
[[nodiscard]] ProductTree product_tree(const Assembly& assembly);

}  // namespace bowfront::step
