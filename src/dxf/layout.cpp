#include "dxf/layout.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "bowfront/base/number_text.hpp"
#include "bowfront/dxf/dxf.hpp"
#include "dxf/layer.hpp"
#include "dxf/transliterate.hpp"

namespace bowfront::dxf {
namespace {

// Notes are large enough to read at the machine and stand clear of the part, mm.
constexpr double kNoteHeight = 5;
constexpr double kNoteGap = 10;
constexpr double kLineStep = 8;
// A letter of the usual stroke fonts is not wider than it is high.
constexpr double kLetterWidth = 1;

void add_split(std::vector<Vertex>& vertices, const Segment& segment) {
    if (std::abs(segment.bulge) <= 1) {
        vertices.push_back({segment.from, segment.bulge});
        return;
    }
    for (const Segment& half : {segment.part(0, 0.5), segment.part(0.5, 1)}) {
        vertices.push_back({half.from, half.bulge});
    }
}

// The cutter enters at the first vertex: best at the end of a long straight, away from arcs.
Contour started_on_longest_straight(const Contour& contour) {
    std::vector<Vertex> vertices;
    vertices.reserve(contour.size());
    double longest = 0;
    std::size_t start = 0;
    for (std::size_t i = 0; i < contour.size(); ++i) {
        const Segment segment = contour.segment(i);
        if (segment.straight() && segment.length() > longest) {
            longest = segment.length();
            start = vertices.size();
        }
        add_split(vertices, segment);
    }
    const auto first = vertices.begin() + static_cast<std::ptrdiff_t>(start);
    std::rotate(vertices.begin(), first, vertices.end());
    return Contour(std::move(vertices));
}

enum class Sense { counter_clockwise, clockwise };

class Arranger {
  public:
    explicit Arranger(Point low) : shift_{0, Point{} - low} {}

    Outline outline(std::string layer, const Contour& contour, Sense sense) const {
        Contour placed = contour.counter_clockwise().moved(shift_);
        if (sense == Sense::clockwise) {
            placed = placed.reversed();
        }
        return {std::move(layer), started_on_longest_straight(placed)};
    }

    // The holes of a recess are islands that stay: they turn as holes of the part do.
    void add_region(std::vector<Outline>& outlines, std::string_view layer,
                    std::string_view hole_layer, const Region& region) const {
        const std::size_t first = outlines.size();
        for (const Contour& hole : region.holes) {
            outlines.push_back(outline(std::string(hole_layer), hole, Sense::clockwise));
        }
        std::stable_sort(outlines.begin() + static_cast<std::ptrdiff_t>(first), outlines.end(),
                         [](const Outline& a, const Outline& b) {
                             return -a.contour.area() < -b.contour.area();
                         });
        outlines.push_back(outline(std::string(layer), region.outer, Sense::counter_clockwise));
    }

    Chain chain(const Path& path) const {
        Chain chain;
        for (const Segment& segment : path.moved(shift_).segments) {
            add_split(chain.vertices, segment);
        }
        chain.vertices.push_back({shift_(path.segments.back().to), 0});
        return chain;
    }

    Point point(Point p) const { return shift_(p); }

  private:
    Motion shift_;
};

std::vector<Recess> by_depth_and_size(std::vector<Recess> recesses) {
    std::stable_sort(recesses.begin(), recesses.end(), [](const Recess& a, const Recess& b) {
        return a.depth != b.depth ? a.depth < b.depth : a.area.area() < b.area.area();
    });
    return recesses;
}

std::string size_note(const Pattern& pattern) {
    const Box box = pattern.outline.box();
    return fixed_text(box.width(), 2) + " x " + fixed_text(box.height(), 2) + " x " +
           fixed_text(pattern.thickness, 2) + " mm, 1:1";
}

void add_notes(Layout& layout, std::string_view title, const Pattern& pattern, const Stamp& stamp) {
    std::vector<std::string> lines;
    if (!title.empty()) {
        lines.push_back(transliterate(title));
    }
    lines.push_back(size_note(pattern));
    lines.push_back(transliterate(stamp.tool + " " + stamp.version + ", " + stamp.time));
    Point at{layout.part.high.x + kNoteGap, kLineStep * static_cast<double>(lines.size() - 1)};
    for (std::string& line : lines) {
        layout.labels.push_back({std::move(line), at, kNoteHeight});
        at.y -= kLineStep;
    }
}

Box extent(const Layout& layout) {
    Box box = layout.part;
    for (const Outline& outline : layout.outlines) {
        box.add(outline.contour.box());
    }
    for (const Circle& bore : layout.bores) {
        box.add(bore.centre - Point{bore.radius, bore.radius});
        box.add(bore.centre + Point{bore.radius, bore.radius});
    }
    for (const Chain& chain : layout.scribes) {
        for (std::size_t i = 0; i + 1 < chain.vertices.size(); ++i) {
            const Vertex& vertex = chain.vertices[i];
            box.add(Segment{vertex.at, chain.vertices[i + 1].at, vertex.bulge}.box());
        }
    }
    for (const Label& label : layout.labels) {
        const auto letters = static_cast<double>(label.text.size());
        box.add(label.at);
        box.add(label.at + Point{kLetterWidth * letters, 1} * label.height);
    }
    return box;
}

std::vector<std::string> used_layers(const Layout& layout) {
    std::vector<std::string> layers;
    const auto add = [&layers](std::string_view name) {
        if (std::find(layers.begin(), layers.end(), name) == layers.end()) {
            layers.emplace_back(name);
        }
    };
    add(kLabelLayer);
    if (!layout.scribes.empty()) {
        add(kScribeLayer);
    }
    for (const Circle& bore : layout.bores) {
        add(bore.layer);
    }
    for (const Outline& outline : layout.outlines) {
        add(outline.layer);
    }
    return layers;
}

}  // namespace

Layout lay_out(const Pattern& pattern, std::string_view title, const Stamp& stamp) {
    const Box box = pattern.outline.box();
    const Arranger arrange(box.low);
    Layout layout;
    layout.part = {{0, 0}, box.high - box.low};
    for (const Label& label : pattern.labels) {
        layout.labels.push_back({transliterate(label.text), arrange.point(label.at), label.height});
    }
    add_notes(layout, title, pattern, stamp);
    for (const Path& scribe : pattern.scribes) {
        layout.scribes.push_back(arrange.chain(scribe));
    }
    for (const Bore& bore : pattern.bores) {
        layout.bores.push_back(
            {bore_layer(bore.depth), arrange.point(bore.centre), bore.diameter / 2});
    }
    std::stable_sort(layout.bores.begin(), layout.bores.end(),
                     [](const Circle& a, const Circle& b) { return a.radius < b.radius; });
    for (const Recess& recess : by_depth_and_size(pattern.recesses)) {
        const std::string layer = recess_layer(recess.depth);
        arrange.add_region(layout.outlines, layer, layer, recess.area);
    }
    arrange.add_region(layout.outlines, kOuterLayer, kInnerLayer, pattern.outline);
    layout.layers = used_layers(layout);
    layout.extent = extent(layout);
    return layout;
}

}  // namespace bowfront::dxf
