#include "support/sample_case.hpp"

#include <stdexcept>
#include <string>

namespace bowfront::sample {
namespace {

template <class T>
Sourced<T> assumed(T value, std::string pointer) {
    return {std::move(value), {Origin::Kind::assumed, std::move(pointer), 0, "a default"}};
}

Sourced<double> library(double value, std::string pointer, std::string_view source) {
    return {value, {Origin::Kind::library, std::move(pointer), 0, std::string(source)}};
}

SheetSpec sheet_spec(const std::string& name) {
    const Sheet* sheet = find_sheet(name);
    if (sheet == nullptr) {
        throw std::logic_error("no such sheet: " + name);
    }
    const auto value = [&](const Property& property, const char* key) {
        return library(property.value, "/sheets/" + name + "/" + key, property.source);
    };
    SheetSpec spec;
    spec.key = name;
    spec.like = sheet;
    spec.shrink_along = value(sheet->shrink_along, "shrink/along");
    spec.shrink_across = value(sheet->shrink_across, "shrink/across");
    spec.spread_along = value(sheet->shrink_spread_along, "shrink/spread/along");
    spec.spread_across = value(sheet->shrink_spread_across, "shrink/spread/across");
    spec.springback = value(sheet->springback, "springback/value");
    spec.springback_spread = value(sheet->springback_spread, "springback/spread");
    return spec;
}

PaneSpec pane(CaseSide side, const std::string& pointer) {
    PaneSpec spec;
    spec.side = side;
    spec.sheet = "cast-acrylic";
    spec.thickness = given(3.0, pointer + "/thickness");
    spec.along = assumed(Extrusion::length, pointer + "/along");
    spec.bend = assumed(Bend::heat, pointer + "/bend");
    spec.blank.method = assumed(BlankMethod::allow_shrink, pointer + "/blank");
    spec.blank.trim = assumed(10.0, pointer + "/blank/trim");
    spec.pointer = pointer;
    return spec;
}

Sourced<ToleranceSpec> medium(const std::string& key) {
    return assumed(ToleranceSpec{ToleranceClass::medium, 0}, "/tolerance/" + key);
}

Build plate_build(const std::string& pointer) {
    constexpr double kDegree = 0.017453292519943295;
    return {assumed(PlateBuild::plate, pointer + "/build"),
            assumed(24.0, pointer + "/inset"),
            assumed(150.0, pointer + "/board_width"),
            assumed(RailCorner::mitre, pointer + "/corner"),
            assumed(12 * kDegree, pointer + "/run_out"),
            {}};
}

Frame frame() {
    Frame frame;
    frame.timber = given(std::string("cherry"), "/frame/timber");
    frame.clear_height = given(380.0, "/frame/clear_height");
    frame.base = {given(20.0, "/frame/base/thickness"), given(24.0, "/frame/base/margin"),
                  assumed(Grain::width, "/frame/base/grain"),
                  assumed(Sawn::flat, "/frame/base/sawn"), plate_build("/frame/base")};
    frame.top = {given(24.0, "/frame/top/thickness"), given(24.0, "/frame/top/margin"),
                 assumed(Grain::width, "/frame/top/grain"),
                 assumed(Sawn::flat, "/frame/top/sawn"), plate_build("/frame/top")};
    frame.post = {given(42.0, "/frame/post/width"), given(42.0, "/frame/post/depth"),
                  given(PostSection::fitted, "/frame/post/section"),
                  given(Hold::groove, "/frame/post/hold"),
                  assumed(PostSawn::any, "/frame/post/sawn"),
                  assumed(PostJoint::butt, "/frame/post/joint"),
                  {}};
    frame.groove = {given(4.8, "/frame/groove/width"), given(6.0, "/frame/groove/depth/base"),
                    given(12.0, "/frame/groove/depth/top"),
                    given(15.0, "/frame/groove/depth/post")};
    frame.loading = given(Loading::slide_in, "/frame/loading");
    frame.bead_width = assumed(8.0, "/frame/bead/width");
    return frame;
}

FormSpec form() {
    FormSpec form;
    form.skin = given(3.0, "/form/skin/thickness");
    form.cover = given(0.6, "/form/cover/thickness");
    form.overrun = given(60.0, "/form/overrun");
    form.overhang = assumed(20.0, "/form/overhang");
    form.rib_thickness = given(18.0, "/form/ribs/thickness");
    form.rib_depth = given(70.0, "/form/ribs/depth");
    form.rib_spacing = given(180.0, "/form/ribs/max_spacing");
    form.foot = assumed(60.0, "/form/ribs/foot");
    form.joint_allowance = assumed(0.2, "/form/joint_allowance");
    form.fence_depth = assumed(25.0, "/form/fence/depth");
    form.fence_clearance = assumed(1.0, "/form/fence/clearance");
    return form;
}

}  // namespace

Case pilot_boat() {
    Case c;
    c.name = "pilot-boat model case";
    c.plan.shape = PlanShape::bow_front;
    c.plan.width = given(520.0, "/plan/width");
    c.plan.depth = given(240.0, "/plan/depth");
    c.plan.front = FrontArc{ArcMeasure::radius, given(420.0, "/plan/front/radius")};
    c.frame = frame();
    c.panes = {pane(CaseSide::front, "/panes/0"), pane(CaseSide::left, "/panes/1"),
               pane(CaseSide::right, "/panes/2"), pane(CaseSide::back, "/panes/3")};
    c.sheets.emplace("cast-acrylic", sheet_spec("cast-acrylic"));
    c.fit.end_clearance = given(3.0, "/fit/end_clearance");
    c.fit.top_clearance = given(4.5, "/fit/top_clearance");
    c.fit.loading_clearance = assumed(1.0, "/fit/loading_clearance");
    c.fit.least_engagement = given(3.0, "/fit/least_engagement");
    c.tolerance.cut = medium("cut");
    c.tolerance.groove_depth = medium("groove_depth");
    c.tolerance.groove_width = assumed(ToleranceSpec{{}, 0.1}, "/tolerance/groove_width");
    c.tolerance.opening = medium("opening");
    c.webs = {assumed(4.0, "/webs/web"), assumed(6.0, "/webs/cheek"),
              assumed(1.0 / 3, "/webs/floor")};
    c.form = form();
    c.oven = Oven{{given(900.0, "/oven/inside/0"), given(600.0, "/oven/inside/1"),
                   given(400.0, "/oven/inside/2")},
                  given(5.0, "/oven/accuracy"),
                  {}};
    c.service = {given(20.0, "/service/built_at/temperature"),
                 given(0.45, "/service/built_at/humidity"),
                 {given(15.0, "/service/temperature/0"), given(28.0, "/service/temperature/1")},
                 {given(0.35, "/service/humidity/0"), given(0.6, "/service/humidity/1")},
                 assumed(100.0, "/service/push")};
    c.stock = {{"plywood", 18, {1220, 2440}, 2, "/stock/0"},
               {"cast-acrylic", 3, {1000, 1500}, {}, "/stock/1"}};
    c.cutter = {given(3.175, "/cutter/diameter"), given(8.0, "/cutter/spacing")};
    c.shop = {assumed(0.5, "/shop/step"),
              {assumed(25.0, "/shop/allowance/length"), assumed(6.0, "/shop/allowance/width"),
               assumed(3.0, "/shop/allowance/thickness")}};
    c.stand.fixed = assumed(Fixing::none, "/stand/fixed");
    return c;
}

Case straight_front() {
    Case c = pilot_boat();
    c.plan.shape = PlanShape::rectangle;
    c.plan.front.reset();
    return c;
}

Case on_rails() {
    Case c = pilot_boat();
    for (Plate* const plate : {&c.frame.base, &c.frame.top}) {
        plate->build.kind.value = PlateBuild::rails;
    }
    return c;
}

Case lift_and_drop() {
    Case c = pilot_boat();
    c.frame.loading = given(Loading::lift_and_drop, "/frame/loading");
    c.frame.post.hold = given(Hold::rabbet, "/frame/post/hold");
    c.frame.top.thickness = given(40.0, "/frame/top/thickness");
    c.frame.groove.top_depth = given(24.0, "/frame/groove/depth/top");
    c.frame.groove.width = given(8.0, "/frame/groove/width");
    c.fit.loading_clearance = given(6.0, "/fit/loading_clearance");
    return c;
}

Case beaded() {
    Case c = pilot_boat();
    c.frame.loading = given(Loading::beaded, "/frame/loading");
    c.frame.post.hold = given(Hold::rabbet, "/frame/post/hold");
    return c;
}

void glaze_all_sides(Case& c) {
    const PaneSpec pattern = c.panes.front();
    c.panes.clear();
    for (const CaseSide& side : sides_of(c.plan)) {
        c.panes.push_back(pattern);
        c.panes.back().side = side;
        c.panes.back().pointer = "/panes/" + std::to_string(index(side));
    }
}

void scale(Plan& plan, double factor) {
    const auto measure = [&](FrontArc& arc) {
        arc.value.value *= arc.measure == ArcMeasure::sweep ? 1 : factor;
    };
    for (Sourced<double>* size : {&plan.width, &plan.depth, &plan.side}) {
        size->value *= factor;
    }
    if (plan.front) {
        measure(*plan.front);
    }
    for (auto& corner : plan.corners) {
        corner[0].value *= factor;
        corner[1].value *= factor;
    }
    for (SideSpec& side : plan.chain) {
        for (PieceSpec& piece : side.pieces) {
            if (piece.straight) {
                piece.straight->value *= factor;
            }
            for (FrontArc& arc : piece.arc) {
                measure(arc);
            }
            if (piece.ellipse) {
                piece.ellipse->semi_axes[0].value *= factor;
                piece.ellipse->semi_axes[1].value *= factor;
            }
            if (piece.curve) {
                for (auto& point : piece.curve->through) {
                    point[0].value *= factor;
                    point[1].value *= factor;
                }
            }
        }
    }
}

}  // namespace bowfront::sample
