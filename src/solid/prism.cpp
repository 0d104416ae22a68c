#include "solid/prism.hpp"

#include <algorithm>

#include "bowfront/base/error.hpp"
#include "solid/shell_builder.hpp"

namespace bowfront::solid {
namespace {

/// Sorts rings into faces: each counter-clockwise ring is a face of its own, each clockwise one a
/// hole in the least face around it (a recess may leave an island with a hole of its own).
std::vector<std::vector<const Ring*>> faces_of(const std::vector<Ring>& rings,
                                               const std::string& part) {
    std::vector<std::vector<const Ring*>> faces;
    for (const Ring& ring : rings) {
        if (ring.outline.area() > 0) {
            faces.push_back({&ring});
        }
    }
    std::stable_sort(faces.begin(), faces.end(), [](const auto& a, const auto& b) {
        return a.front()->outline.area() < b.front()->outline.area();
    });
    for (const Ring& ring : rings) {
        if (ring.outline.area() > 0) {
            continue;
        }
        const Point at = ring.outline.vertices().front().at;
        const auto around = std::find_if(faces.begin(), faces.end(), [&](const auto& face) {
            return where(face.front()->outline, at) == Side::inside;
        });
        if (around == faces.end()) {
            throw KernelError("make", part, "a hole, recess or bore lies outside the section");
        }
        around->push_back(&ring);
    }
    return faces;
}

/// All outlines of a region, with the inside on the left.
std::vector<Contour> outlines(const Region& region) {
    std::vector<Contour> all{region.outer.counter_clockwise()};
    for (const Contour& hole : region.holes) {
        all.push_back(hole.counter_clockwise().reversed());
    }
    return all;
}

/// Builds a body with its recesses opening at its high face, or at its low face.
class BodyBuilder {
  public:
    BodyBuilder(const Body& body, const std::string& part) : body_(body), part_(part) {}

    TopoDS_Solid build() {
        for (const Contour& outline : outlines(body_.section)) {
            Rings rings = builder_.wall(outline, 0, body_.height);
            low_.push_back(std::move(rings.low));
            high_.push_back(std::move(rings.high));
        }
        for (const Recess& recess : body_.recesses) {
            sink(outlines(recess.area), recess.depth, body_.face);
        }
        for (const Bore& bore : body_.bores) {
            bore.depth == body_.height ? pierce(outline(bore))
                                       : sink({outline(bore)}, bore.depth, body_.face);
        }
        for (const Bore& bore : body_.back_bores) {
            sink({outline(bore)}, bore.depth, body_.face == Face::high ? Face::low : Face::high);
        }
        cap(0, Facing::down, low_);
        cap(body_.height, Facing::up, high_);
        return builder_.solid();
    }

  private:
    void sink(const std::vector<Contour>& area, double depth, Face face) {
        const bool from_high = face == Face::high;
        const double low = from_high ? body_.height - depth : 0;
        const double high = from_high ? body_.height : depth;
        std::vector<Ring> floor;
        for (const Contour& inside_left : area) {
            Rings rings = builder_.wall(inside_left.reversed(), low, high);
            floor.push_back((from_high ? rings.low : rings.high).reversed());
            (from_high ? high_ : low_).push_back(std::move(from_high ? rings.high : rings.low));
        }
        cap(from_high ? low : high, from_high ? Facing::up : Facing::down, floor);
    }

    void pierce(const Contour& circle) {
        Rings rings = builder_.wall(circle.reversed(), 0, body_.height);
        low_.push_back(std::move(rings.low));
        high_.push_back(std::move(rings.high));
    }

    void cap(double z, Facing facing, const std::vector<Ring>& rings) {
        for (const auto& face : faces_of(rings, part_)) {
            builder_.cap(z, facing, face);
        }
    }

    const Body& body_;
    const std::string& part_;
    ShellBuilder builder_;
    std::vector<Ring> low_;
    std::vector<Ring> high_;
};

}  // namespace

Contour outline(const Bore& bore) {
    return Contour::circle(bore.centre, bore.diameter / 2);
}

TopoDS_Solid prism(const Body& body, const std::string& part) {
    return BodyBuilder(body, part).build();
}

}  // namespace bowfront::solid
