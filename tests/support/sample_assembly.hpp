#pragma once
// An assembly with every kind of thing that a case has: groups and none, several instances, turned
// placements, all finishes, names outside ASCII.

#include "bowfront/step/step.hpp"
#include "support/sample_bodies.hpp"

namespace bowfront::sample {

inline step::Item item(const std::string& id, const std::string& name, const std::string& group,
                       Finish finish, const Body& body, std::vector<Placement> placements) {
    return {id, name, group, finish, solid::make(body, id), volume(body), std::move(placements)};
}

inline step::Assembly assembly() {
    const double half_turn = std::numbers::pi;
    return {"Pilot boat No. 7 'Möwe', case",
            {item("base", "Base", "frame", Finish::timber, plate(), {at(0, 0, -20)}),
             item("top", "Top", "frame", Finish::timber, plate(Face::low), {at(0, 0, 380)}),
             item("post", "Post", "frame", Finish::timber, notched_post(30, 4.8, 10, 380),
                  {at(30, 170, 0), turned(half_turn, {370, 170, 0})}),
             item("pane-front", "Pane, front", "glazing", Finish::clear_sheet,
                  bent_pane({200, 300}, 250, 3, 1.5 * half_turn - 0.58, 1.16, 388), {at(0, 0, -6)}),
             item("pane-back",
                  "Pane, back: a name so long that it is broken within, größer als "
                  "eine Zeile 玻璃 🚢",
                  "glazing", Finish::glass, block({42, 168.5}, {358, 171.5}, 388), {at(0, 0, -6)}),
             item("pad", "Pad", "", Finish::plywood, block({0, 0}, {20, 20}, 3),
                  {at(0, 0, -23), at(380, 0, -23), {{0, 200, -20}, {1, 0, 0}, {0, 0, -1}}})}};
}

}  // namespace bowfront::sample
