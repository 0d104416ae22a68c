#pragma once
/// \file
/// Shelves for the sample cases.

#include <stdexcept>
#include <string>

#include "bowfront/model/case.hpp"
#include "support/sample_case.hpp"

namespace bowfront::sample {

/// A shelf of 12 mm on pins for 2 kg, 3 mm clear of panes and posts.
inline ShelfSpec shelf(const std::string& material, double height) {
    const std::string pointer = "/shelves/0";
    ShelfSpec spec;
    spec.pointer = pointer;
    spec.height = given(height, pointer + "/height");
    spec.material = given(material, pointer + "/material");
    spec.sheet = find_sheet(material);
    spec.board = find_board(material);
    spec.timber = find_timber(material);
    if (spec.sheet == nullptr && spec.board == nullptr && spec.timber == nullptr) {
        throw std::logic_error("no such material: " + material);
    }
    spec.thickness = given(12.0, pointer + "/thickness");
    spec.clearance = given(3.0, pointer + "/clearance");
    spec.load = given(2.0, pointer + "/load");
    spec.support = given(ShelfSupport::pins, pointer + "/support");
    return spec;
}

/// The pilot boat with one such shelf 120 mm over the base.
inline Case with_shelf(const std::string& material, ShelfSupport support = ShelfSupport::pins) {
    Case c = pilot_boat();
    c.shelves.push_back(shelf(material, 120));
    c.shelves.back().support.value = support;
    return c;
}

/// The same in a rectangle.
inline Case rectangle_with_shelf(const std::string& material,
                                 ShelfSupport support = ShelfSupport::pins) {
    Case c = with_shelf(material, support);
    c.plan.shape = PlanShape::rectangle;
    c.plan.front.reset();
    return c;
}

}  // namespace bowfront::sample
