#include "support/random_cases.hpp"

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

Case RandomCases::drawn() {
    static constexpr PostSection kSections[] = {PostSection::fitted, PostSection::square,
                                                PostSection::round};
    static constexpr Loading kLoadings[] = {Loading::slide_in, Loading::lift_and_drop,
                                            Loading::beaded};
    static constexpr BlankMethod kMethods[] = {BlankMethod::allow_shrink,
                                               BlankMethod::trim_after};
    Case c = pilot_boat();
    c.plan.width.value = draw(200, 2000);
    c.plan.depth.value = draw(120, 800);
    c.plan.front = FrontArc{ArcMeasure::sweep, given(draw(0.1, 3.0), "/plan/front/sweep")};
    if (draw(0, 1) < 0.2) {
        c.plan.shape = PlanShape::rectangle;
        c.plan.front.reset();
    }
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
