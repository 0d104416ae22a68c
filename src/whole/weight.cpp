#include "bowfront/whole/weight.hpp"

#include <numbers>
#include <string>

#include "bowfront/base/contract.hpp"

namespace bowfront::whole {
namespace {

constexpr std::string_view kOutline = "area of the outline: shoelace formula and circular segments";
constexpr std::string_view kCentre =
    "geometry: the body's section, recesses and bores, where it stands in the case";
constexpr double kCubicMetre = 1e9;  // mm³

// Figures of one part, with the part's id in their symbols.
template <class N>
class PartFigures {
  public:
    PartFigures(const Part& part, Book<N>& book)
        : part_(part), of_("[" + part.id + "]"), book_(book) {}

    N volume() {
        N total = figure("section_area", "A", Kind::plain, N(part_.body.section.area()), kOutline) *
                  figure("height", "h", Kind::length, N(part_.body.height),
                         "extent square to the section");
        std::size_t count = 0;
        for (const Recess& recess : part_.body.recesses) {
            const std::string of = "_" + std::to_string(++count);
            total = total - figure("recess_area" + of, "A" + of, Kind::plain, N(recess.area.area()),
                                   kOutline) *
                                figure("recess_depth" + of, "d" + of, Kind::length, N(recess.depth),
                                       "depth of the groove");
        }
        count = 0;
        for (const Bore& bore : part_.body.bores) {
            const std::string of = "_" + std::to_string(++count);
            total =
                total - figure("bore_volume" + of, "B" + of, Kind::plain,
                               N(std::numbers::pi / 4 * bore.diameter * bore.diameter * bore.depth),
                               "a cylinder, mm³");
        }
        return figure("volume", "V", Kind::plain, total,
                      "geometry: a prism less its recesses and bores, mm³");
    }

    Weight<N> weight() {
        BOWFRONT_EXPECTS(part_.density > 0);
        const std::string source = "library of materials, " + part_.material + ", kg/m³";
        const N density = book_.reference({"parts", part_.id, "density"}, "ρ" + of_, Kind::plain,
                                          part_.density, {source});
        const N one = figure("mass", "m", Kind::mass, volume() * density / N(kCubicMetre),
                             "mass = volume times density, kg");
        const Point3 centre = mean_centre();
        return {part_.count() == 1 ? one : one * N(part_.count()),
                figure("centre/x", "x", Kind::length, N(centre.x), kCentre),
                figure("centre/y", "y", Kind::length, N(centre.y), kCentre),
                figure("centre/z", "z", Kind::length, N(centre.z), kCentre)};
    }

  private:
    N figure(std::string_view key, std::string_view symbol, Kind kind, N value,
             std::string_view source) {
        return book_.figure({"parts", part_.id, key}, std::string(symbol) + of_, kind, value,
                            source);
    }

    [[nodiscard]] Point3 mean_centre() const {
        const Point3 local = centroid(part_.body);
        Point3 sum;
        for (const Placement& placement : part_.placements) {
            const Point3 there = placed(placement, local);
            sum = {sum.x + there.x, sum.y + there.y, sum.z + there.z};
        }
        const double count = part_.count();
        return {sum.x / count, sum.y / count, sum.z / count};
    }

    const Part& part_;
    std::string of_;
    Book<N>& book_;
};

}  // namespace

double part_volume(const Part& part, Book<double>& book) {
    return PartFigures<double>(part, book).volume();
}

Traced part_volume(const Part& part, Book<Traced>& book) {
    return PartFigures<Traced>(part, book).volume();
}

Weight<double> part_weight(const Part& part, Book<double>& book) {
    return PartFigures<double>(part, book).weight();
}

Weight<Traced> part_weight(const Part& part, Book<Traced>& book) {
    return PartFigures<Traced>(part, book).weight();
}

}  // namespace bowfront::whole
