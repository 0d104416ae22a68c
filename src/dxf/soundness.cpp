#include "dxf/soundness.hpp"

#include <cmath>
#include <string>
#include <string_view>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/dxf/dxf.hpp"
#include "dxf/coincidence.hpp"
#include "dxf/layer.hpp"

namespace bowfront::dxf {
namespace {

// Carries the first fault out of the checks; it never leaves this file.
struct Unsound {
    std::string fault;
};

[[noreturn]] void refuse(std::string_view layer, std::string_view fault) {
    throw Unsound{std::string(layer) + ": " + std::string(fault)};
}

[[noreturn]] void refuse(std::string_view layer, std::string_view fault, Point place) {
    refuse(layer, std::string(fault) + " at " + number_text(place.x) + ", " + number_text(place.y));
}

bool finite(Point p) {
    return std::isfinite(p.x) && std::isfinite(p.y);
}

void expect_positive(std::string_view layer, std::string_view name, double value) {
    if (!std::isfinite(value) || value <= 0) {
        refuse(layer, std::string(name) + " is not a positive number");
    }
}

void expect_sound(std::string_view layer, const Segment& segment) {
    if (!finite(segment.from) || !finite(segment.to) || !std::isfinite(segment.bulge)) {
        refuse(layer, "a number is not finite");
    }
    if (!(segment.length() >= kShortest)) {
        refuse(layer, "a segment is shorter than 0.01 mm", segment.from);
    }
}

// Segments first: the sums over an outline mean nothing before its numbers are finite.
void expect_sound(std::string_view layer, const Contour& contour) {
    constexpr std::size_t kFewest = 2;  // two arcs
    if (contour.size() < kFewest) {
        refuse(layer, "an outline is not closed");
    }
    for (const Segment& segment : contour.segments()) {
        expect_sound(layer, segment);
    }
    const double area = std::abs(contour.area());
    if (!std::isfinite(area)) {
        refuse(layer, "a number is not finite");
    }
    if (area < kShortest * kShortest) {
        refuse(layer, "an outline has no area", contour.vertices().front().at);
    }
}

void expect_sound(std::string_view layer, std::string_view hole_layer, const Region& region) {
    expect_sound(layer, region.outer);
    for (const Contour& hole : region.holes) {
        expect_sound(hole_layer, hole);
    }
    if (const auto place = crossing(region)) {
        refuse(layer, "outlines cross or touch", *place);
    }
}

void expect_sound(const Path& path) {
    if (path.segments.empty()) {
        refuse(kScribeLayer, "a path is empty");
    }
    for (std::size_t i = 0; i < path.segments.size(); ++i) {
        expect_sound(kScribeLayer, path.segments[i]);
        if (i > 0 && distance(path.segments[i - 1].to, path.segments[i].from) > kJoint) {
            refuse(kScribeLayer, "a path has a gap", path.segments[i].from);
        }
    }
}

void expect_sound(const Bore& bore) {
    if (!finite(bore.centre) || !std::isfinite(bore.diameter)) {
        refuse("bore", "a number is not finite");
    }
    if (bore.diameter < kShortest) {
        refuse("bore", "a bore is smaller than 0.01 mm", bore.centre);
    }
}

void expect_sound(const Label& label) {
    if (!finite(label.at)) {
        refuse(kLabelLayer, "a number is not finite");
    }
    expect_positive(kLabelLayer, "height of a label", label.height);
    if (label.text.empty()) {
        refuse(kLabelLayer, "a label is empty", label.at);
    }
}

// Two outlines in one place on one layer are cut twice; on two layers they can be right, such as
// a recess over the whole of a part.
void expect_nothing_doubled(const Pattern& pattern) {
    Tracks tracks;
    const auto add_region = [&tracks](std::string_view layer, std::string_view hole_layer,
                                      const Region& region) {
        tracks.add(layer, region.outer.segments());
        for (const Contour& hole : region.holes) {
            tracks.add(hole_layer, hole.segments());
        }
    };
    add_region(kOuterLayer, kInnerLayer, pattern.outline);
    for (const Recess& recess : pattern.recesses) {
        const std::string layer = recess_layer(recess.depth);
        add_region(layer, layer, recess.area);
    }
    for (const Bore& bore : pattern.bores) {
        tracks.add(bore_layer(bore.depth),
                   Contour::circle(bore.centre, bore.diameter / 2).segments());
    }
    for (const Path& scribe : pattern.scribes) {
        tracks.add(kScribeLayer, scribe.segments);
    }
    if (const auto twin = tracks.doubled()) {
        refuse(twin->layer, "one line stands twice", twin->place);
    }
}

void check(const Pattern& pattern) {
    expect_positive(kOuterLayer, "thickness", pattern.thickness);
    expect_sound(kOuterLayer, kInnerLayer, pattern.outline);
    for (const Recess& recess : pattern.recesses) {
        const std::string layer = recess_layer(recess.depth);
        expect_sound(layer, layer, recess.area);
    }
    for (const Bore& bore : pattern.bores) {
        expect_sound(bore);
    }
    for (const Path& scribe : pattern.scribes) {
        expect_sound(scribe);
    }
    for (const Label& label : pattern.labels) {
        expect_sound(label);
    }
    expect_nothing_doubled(pattern);
}

}  // namespace

std::optional<std::string> fault_of(const Pattern& pattern) {
    try {
        check(pattern);
    } catch (const Unsound& unsound) {
        return unsound.fault;
    }
    return std::nullopt;
}

void expect_sound(const Pattern& pattern) {
    if (const auto fault = fault_of(pattern)) {
        throw ContractError("pattern not fit to cut: " + *fault);
    }
}

}  // namespace bowfront::dxf
