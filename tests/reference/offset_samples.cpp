/// \file
/// Writes random areas and the same ones set off, both flattened, for an outside judge.
/// usage: offset_samples FILE

#include <cmath>
#include <fstream>
#include <numbers>

#include "bowfront/base/number_text.hpp"
#include "bowfront/geom/offset.hpp"
#include "unit/geom/random_areas.hpp"

namespace {

using namespace bowfront;

/// Chords lie no further off their arcs, mm.
constexpr double kFlattening = 1e-3;

std::string ring(const Contour& outline) {
    std::string text;
    for (const Segment& s : outline.segments()) {
        int pieces = 1;
        if (!s.straight()) {
            const double most = 2 * std::acos(1 - kFlattening / std::max(s.radius(), kFlattening));
            pieces = static_cast<int>(std::ceil(std::abs(s.sweep()) / most));
        }
        for (int i = 0; i < pieces; ++i) {
            const Point p = s.at(static_cast<double>(i) / pieces);
            text += (text.empty() ? "[" : ", [") + number_text(p.x) + ", " + number_text(p.y) + "]";
        }
    }
    return "[" + text + "]";
}

std::string json(const std::vector<Region>& areas) {
    std::string text;
    for (const Region& area : areas) {
        std::string holes;
        for (const Contour& hole : area.holes) {
            holes += (holes.empty() ? "" : ", ") + ring(hole);
        }
        text += (text.empty() ? "" : ", ") + ("[" + ring(area.outer) + ", [" + holes + "]]");
    }
    return "[" + text + "]";
}

}  // namespace

int main(int count, char** arguments) {
    if (count != 2) {
        return 2;
    }
    std::ofstream file(arguments[1]);
    file << "[\n";
    constexpr unsigned kSamples = 60;
    for (unsigned seed = 0; seed < kSamples; ++seed) {
        Shapes shapes(seed, seed % 2 == 0 ? 5 : 0);
        const auto areas = unite(shapes.some(4));
        const double by = shapes.anywhere(-12, 20);
        file << (seed == 0 ? "" : ",\n") << "{\"seed\": " << seed << ", \"by\": " << number_text(by)
             << ",\n \"areas\": " << json(areas) << ",\n \"result\": " << json(offset(areas, by))
             << "}";
    }
    file << "\n]\n";
    return file.good() ? 0 : 1;
}
