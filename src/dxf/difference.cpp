/// Works the expectation out from the pattern itself and not from the layout that the writer made
/// of it, so that a fault there shows.

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "bowfront/base/number_text.hpp"
#include "bowfront/dxf/dxf.hpp"
#include "dxf/layer.hpp"
#include "dxf/transliterate.hpp"

namespace bowfront::dxf {
namespace {

// As the header says: far under anything that can be cut, far over the rounding of the sums.
constexpr double kSameShare = 1e-9;
constexpr double kSamePlace = 1e-9;  // mm
constexpr int kMillimetres = 4;

// A mirrored line has its area, length and box still, and its centre of gravity elsewhere. That
// centre is known less well than a vertex, and a fault moves it by more.
constexpr double kSameCentre = 1e-6;  // mm

/// What is compared of a line.
struct Trace {
    Entity::Kind kind = Entity::Kind::closed;
    std::string layer;
    Box box;
    double area = 0;  ///< positive when counter-clockwise; 0 for an open path
    double length = 0;
    Point first_mark;   ///< start of a path, centre of gravity of an outline
    Point second_mark;  ///< end of a path, as before for an outline
};

Trace trace(Entity::Kind kind, std::string layer, const Contour& contour) {
    const double area = contour.area();
    const Point centre = area == 0 ? Point{} : contour.centroid();
    return {kind, std::move(layer), contour.box(), area, contour.perimeter(), centre, centre};
}

Trace trace(std::string layer, const Path& path) {
    return {Entity::Kind::open,         std::move(layer),       path.box(), 0, path.length(),
            path.segments.front().from, path.segments.back().to};
}

bool near(double a, double b) {
    return std::abs(a - b) <= kSameShare * std::abs(b);
}

bool near(Point a, Point b, double reach = kSamePlace) {
    return std::abs(a.x - b.x) <= reach && std::abs(a.y - b.y) <= reach;
}

bool agree(const Trace& found, const Trace& wanted) {
    return found.kind == wanted.kind && found.layer == wanted.layer &&
           near(found.area, wanted.area) && near(found.length, wanted.length) &&
           near(found.box.low, wanted.box.low) && near(found.box.high, wanted.box.high) &&
           near(found.first_mark, wanted.first_mark, kSameCentre) &&
           near(found.second_mark, wanted.second_mark, kSameCentre);
}

void add_region(std::vector<Trace>& traces, std::string_view layer, std::string_view hole_layer,
                const Region& region, const Motion& shift) {
    for (const Contour& hole : region.holes) {
        const Contour clockwise = hole.counter_clockwise().reversed().moved(shift);
        traces.push_back(trace(Entity::Kind::closed, std::string(hole_layer), clockwise));
    }
    const Contour outer = region.outer.counter_clockwise().moved(shift);
    traces.push_back(trace(Entity::Kind::closed, std::string(layer), outer));
}

std::vector<Trace> expected_traces(const Pattern& pattern, const Motion& shift) {
    std::vector<Trace> traces;
    add_region(traces, kOuterLayer, kInnerLayer, pattern.outline, shift);
    for (const Recess& recess : pattern.recesses) {
        const std::string layer = recess_layer(recess.depth);
        add_region(traces, layer, layer, recess.area, shift);
    }
    for (const Bore& bore : pattern.bores) {
        const double radius = bore.diameter / 2;
        const Point centre = shift(bore.centre);
        const Box box{centre - Point{radius, radius}, centre + Point{radius, radius}};
        traces.push_back({Entity::Kind::circle, bore_layer(bore.depth), box,
                          std::numbers::pi * radius * radius, 2 * std::numbers::pi * radius, centre,
                          centre});
    }
    for (const Path& scribe : pattern.scribes) {
        traces.push_back(trace(std::string(kScribeLayer), scribe.moved(shift)));
    }
    return traces;
}

/// What was found, by the left side of its box.
using Found = std::multimap<double, Trace>;

Found found_traces(const Drawing& drawing) {
    Found traces;
    for (const Entity& entity : drawing.entities) {
        if (entity.kind != Entity::Kind::text) {
            Trace one = entity.kind == Entity::Kind::open
                            ? trace(entity.layer, entity.path)
                            : trace(entity.kind, entity.layer, entity.contour);
            traces.emplace(one.box.low.x, std::move(one));
        }
    }
    return traces;
}

std::string described(const Trace& trace) {
    return "layer " + trace.layer + ", area " + number_text(trace.area) + ", length " +
           number_text(trace.length) + ", from " + number_text(trace.box.low.x) + ", " +
           number_text(trace.box.low.y) + " to " + number_text(trace.box.high.x) + ", " +
           number_text(trace.box.high.y);
}

std::string frame_difference(const Drawing& drawing) {
    if (drawing.units != kMillimetres) {
        return "the file's units are not millimetres";
    }
    for (const Entity& entity : drawing.entities) {
        if (std::find(drawing.layers.begin(), drawing.layers.end(), entity.layer) ==
            drawing.layers.end()) {
            return "layer " + entity.layer + " is not declared";
        }
    }
    return {};
}

// Takes each wanted line off the lines found; what is left over is a difference too.
std::string trace_difference(Found found, const std::vector<Trace>& wanted) {
    for (const Trace& one : wanted) {
        const auto end = found.upper_bound(one.box.low.x + kSamePlace);
        const auto twin =
            std::find_if(found.lower_bound(one.box.low.x - kSamePlace), end,
                         [&one](const auto& other) { return agree(other.second, one); });
        if (twin == end) {
            return "not in the file: " + described(one);
        }
        found.erase(twin);
    }
    return found.empty() ? "" : "not in the pattern: " + described(found.begin()->second);
}

// Texts that the pattern does not have are notes: they must stand clear of the part.
std::string text_difference(const Drawing& drawing, const Pattern& pattern, const Motion& shift) {
    std::vector<const Entity*> texts;
    for (const Entity& entity : drawing.entities) {
        if (entity.kind == Entity::Kind::text) {
            texts.push_back(&entity);
        }
    }
    for (const Label& label : pattern.labels) {
        const std::string wanted = transliterate(label.text);
        const auto twin = std::find_if(texts.begin(), texts.end(), [&](const Entity* text) {
            return text->text == wanted && near(text->at, shift(label.at));
        });
        if (twin == texts.end()) {
            return "not in the file: label " + wanted;
        }
        texts.erase(twin);
    }
    const double edge = pattern.outline.box().width();
    for (const Entity* text : texts) {
        if (text->layer != kLabelLayer || text->at.x <= edge) {
            return "not in the pattern: text " + text->text;
        }
    }
    return {};
}

}  // namespace

std::string difference(const Drawing& drawing, const Pattern& pattern) {
    const Motion shift{0, Point{} - pattern.outline.box().low};
    std::string fault = frame_difference(drawing);
    if (fault.empty()) {
        fault = trace_difference(found_traces(drawing), expected_traces(pattern, shift));
    }
    if (fault.empty()) {
        fault = text_difference(drawing, pattern, shift);
    }
    return fault;
}

}  // namespace bowfront::dxf
