#include "step/product_tree.hpp"

#include <BRepBuilderAPI_Copy.hxx>
#include <BRep_Builder.hxx>
#include <TopTools_MapOfShape.hxx>
#include <algorithm>
#include <set>

#include "bowfront/base/contract.hpp"
#include "solid/placing.hpp"
#include "solid/shape_access.hpp"

namespace bowfront::step {
namespace {

void expect_sound(const Assembly& assembly) {
    BOWFRONT_EXPECTS(!assembly.items.empty() && !assembly.name.empty());
    std::set<std::string> ids;
    for (const Item& item : assembly.items) {
        BOWFRONT_EXPECTS(!item.id.empty() && ids.insert(item.id).second);
        BOWFRONT_EXPECTS(!item.name.empty() && !item.placements.empty());
    }
}

TopoDS_Compound compound() {
    TopoDS_Compound made;
    BRep_Builder().MakeCompound(made);
    return made;
}

class Planter {
  public:
    explicit Planter(const Assembly& assembly) : assembly_(assembly) {}

    ProductTree grow() {
        // A part's id has no slash in it, so these can't meet one.
        tree_.products.push_back(
            {"assembly/" + assembly_.name, assembly_.name, compound(), nullptr});
        for (const Item& item : assembly_.items) {
            add(item);
        }
        const TopoDS_Shape root = tree_.root();
        for (const Product& product : tree_.products) {
            if (product.item == nullptr && product.shape != root) {
                builder_.Add(tree_.products.front().shape, product.shape);
            }
        }
        return std::move(tree_);
    }

  private:
    void add(const Item& item) {
        const TopoDS_Shape placed = ShapeAccess::shape(item.solid);
        TopoDS_Shape own = placed.Located(TopLoc_Location());
        if (!seen_.Add(own)) {
            // One shape makes one product; a second part of the same shape needs its own.
            own = BRepBuilderAPI_Copy(own).Shape();
        }
        TopoDS_Shape parent = item.group.empty() ? tree_.root() : group(item.group);
        for (const Placement& placement : item.placements) {
            builder_.Add(parent, own.Located(solid::location(placement) * placed.Location()));
        }
        tree_.products.push_back({item.id, item.name, own, &item});
    }

    TopoDS_Shape group(const std::string& name) {
        const std::string id = "group/" + name;
        const auto known = std::find_if(tree_.products.begin(), tree_.products.end(),
                                        [&](const Product& product) { return product.id == id; });
        if (known != tree_.products.end()) {
            return known->shape;
        }
        tree_.products.push_back({id, name, compound(), nullptr});
        return tree_.products.back().shape;
    }

    const Assembly& assembly_;
    ProductTree tree_;
    BRep_Builder builder_;
    TopTools_MapOfShape seen_;
};

}  // namespace

ProductTree product_tree(const Assembly& assembly) {
    expect_sound(assembly);
    return Planter(assembly).grow();
}

}  // namespace bowfront::step
