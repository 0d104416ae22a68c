#include "support/random_cases.hpp"

#include <string>

#include "bowfront/fit/checks.hpp"
#include "support/sample_case.hpp"

namespace bowfront::sample {

Case RandomCases::sound() {
    while (true) {
        Case c = drawn();
        if (fit::objections(c).empty()) {
            return c;
        }
    }
}

Case RandomCases::sound_with_four_sides() {
    while (true) {
        Case c = sound();
        if (c.plan.shape == PlanShape::rectangle || c.plan.shape == PlanShape::bow_front) {
            return c;
        }
    }
}

Plan RandomCases::drawn_plan() {
    static constexpr PlanShape kShapes[] = {
        PlanShape::rectangle, PlanShape::bow_front,  PlanShape::bow_front, PlanShape::quarter_round,
        PlanShape::half_round, PlanShape::bow_ends,  PlanShape::serpentine, PlanShape::polygon,
        PlanShape::sides};
    Plan plan;
    plan.shape = pick(kShapes);
    plan.width = given(draw(200, 2000), "/plan/width");
    plan.depth = given(draw(120, 800), "/plan/depth");
    const auto arc = [&](double low, double high, const char* pointer) {
        return FrontArc{ArcMeasure::sweep, given(draw(low, high), pointer)};
    };
    switch (plan.shape) {
        case PlanShape::rectangle: break;
        case PlanShape::bow_front: plan.front = arc(0.1, 3.0, "/plan/front/sweep"); break;
        case PlanShape::quarter_round: plan.front = arc(0.3, 2.0, "/plan/front/sweep"); break;
        case PlanShape::half_round:
            plan.front = arc(1.2, 3.1, "/plan/front/sweep");
            plan.arc_panes = 2;
            break;
        case PlanShape::bow_ends: plan.front = arc(0.1, 2.0, "/plan/ends/sweep"); break;
        case PlanShape::serpentine:
            plan.arcs = draw(0, 1) < 0.5 ? 2 : 3;
            plan.front = arc(0.2, 1.2, "/plan/front/sweep");
            break;
        case PlanShape::polygon:
            plan.count = static_cast<int>(draw(3, 12));
            plan.side = given(draw(120, 600), "/plan/side");
            break;
        case PlanShape::sides: plan.chain = drawn_chain(); break;
    }
    return plan;
}

// Sides that turn once round, more or less, each by a bow or at a corner, and one that closes them.
std::vector<SideSpec> RandomCases::drawn_chain() {
    const int count = static_cast<int>(draw(2, 6));
    std::vector<SideSpec> chain;
    for (int i = 0; i < count; ++i) {
        SideSpec side;
        side.name = "side-" + std::to_string(i + 1);
        side.pointer = side.pieces.front().pointer = "/plan/sides/" + std::to_string(i);
        side.pieces.front().bow.value = draw(0, 1) < 0.7 ? Bow::out : Bow::in;
        const double chord = draw(150, 900);
        double turned = 0;
        if (draw(0, 1) < 0.5) {
            side.pieces.front().straight = given(chord, side.pointer + "/straight");
        } else {
            const double sweep = draw(0.1, 1.6);
            turned = side.pieces.front().bow.value == Bow::out ? sweep : -sweep;
            side.pieces.front().arc = {
                FrontArc{ArcMeasure::sweep, given(sweep, side.pointer + "/arc/sweep")},
                FrontArc{ArcMeasure::chord, given(chord, side.pointer + "/arc/chord")}};
        }
        side.turn = given(6.283 / (count + 1) * draw(0.6, 1.2) - turned, side.pointer + "/turn");
        side.turn_follows = i + 1 == count;
        chain.push_back(std::move(side));
    }
    SideSpec closing;
    closing.name = "close";
    closing.pointer = closing.pieces.front().pointer = "/plan/sides/" + std::to_string(count);
    closing.closing = closing.turn_follows = true;
    chain.push_back(std::move(closing));
    return chain;
}

Case RandomCases::drawn() {
    static constexpr PostSection kSections[] = {PostSection::fitted, PostSection::square,
                                                PostSection::round};
    static constexpr Loading kLoadings[] = {Loading::slide_in, Loading::lift_and_drop,
                                            Loading::beaded};
    static constexpr BlankMethod kMethods[] = {BlankMethod::allow_shrink,
                                               BlankMethod::trim_after};
    Case c = pilot_boat();
    c.plan = drawn_plan();
    glaze_all_sides(c);
    c.frame.clear_height.value = draw(150, 1500);
    c.frame.post.section.value = pick(kSections);
    c.frame.post.width.value = draw(24, 70);
    c.frame.post.depth.value = c.frame.post.section.value == PostSection::round
                                   ? c.frame.post.width.value
                                   : c.frame.post.width.value * draw(1, 1.5);
    c.frame.loading.value = pick(kLoadings);
    c.frame.post.hold.value =
        c.frame.loading.value == Loading::slide_in ? Hold::groove : Hold::rabbet;
    const double thickness = draw(2, 8);
    c.frame.groove.width.value = thickness + draw(0.5, 3);
    c.frame.groove.base_depth.value = draw(3, 12);
    c.frame.groove.top_depth.value = draw(5, 16);
    c.frame.groove.post_depth.value = draw(4, c.frame.post.width.value / 2);
    c.cutter.diameter.value = draw(1, c.frame.groove.width.value);
    c.fit.end_clearance.value = draw(0, 4);
    c.fit.top_clearance.value = draw(0, 6);
    c.fit.loading_clearance.value = draw(0, 6);
    for (PaneSpec& pane : c.panes) {
        pane.thickness.value = thickness;
        pane.blank.method.value = pick(kMethods);
    }
    SheetSpec& sheet = c.sheets.at("cast-acrylic");
    sheet.shrink_along.value = draw(-0.01, 0.06);
    sheet.shrink_across.value = draw(-0.01, 0.06);
    return c;
}

}  // namespace bowfront::sample
