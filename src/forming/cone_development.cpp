#include "bowfront/forming/cone_development.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"
#include "bowfront/forming/pane.hpp"
#include "bowfront/geom/arc_fit.hpp"

namespace bowfront::forming {

namespace {

constexpr std::string_view kCone = "geometry of the circular cone";
constexpr double kWholeTurn = 2 * std::numbers::pi;
/// A whole turn that was worked out in degrees may pass 2π by its rounding.
constexpr double kTurnRounding = 1e-12;

template <class N>
void expect_cone(const ConicalPane<N>& pane) {
    const double base = value_of(pane.base_radius);
    const double top = value_of(pane.top_radius);
    BOWFRONT_EXPECTS(base > 0 && top > 0);
    BOWFRONT_EXPECTS(value_of(pane.height) > 0);
    BOWFRONT_EXPECTS(std::abs(base - top) >= kLeastTaper * value_of(pane.height));
    BOWFRONT_EXPECTS(value_of(pane.sweep) > 0);
    BOWFRONT_EXPECTS(value_of(pane.sweep) <= kWholeTurn + kTurnRounding);
}

/// The flat sector as it comes out of the oven, with its longer edge below.
struct Sector {
    double outer = 0;  ///< reach of the lower edge
    double inner = 0;
    double slant = 0;
    double half = 0;  ///< half its angle
};

/// An edge of the sector, round (0, `outer`) with `reach`, stretched and run as told.
std::vector<Segment> stretched_edge(const Sector& sector, double reach, Point stretch,
                                    double chord_error) {
    constexpr double kDown = -std::numbers::pi / 2;
    const SmoothCurve edge(EllipticArc{.centre = {0, sector.outer * stretch.y},
                                       .semi_x = reach * stretch.x,
                                       .semi_y = reach * stretch.y,
                                       .rotation = 0,
                                       .from = kDown - sector.half,
                                       .to = kDown + sector.half});
    return fit_arcs(edge, chord_error).chain;
}

/// The same for equal stretch. Not by way of the apex, which may lie far off: its digits would be
/// taken from the edge's.
std::vector<Segment> round_edge(double reach, double lowest, double half) {
    const double x = reach * std::sin(half);
    const double y = lowest + 2 * reach * std::sin(half / 2) * std::sin(half / 2);
    return {Segment{{-x, y}, {x, y}, std::tan(half / 2)}};
}

Contour outline_of(const std::vector<Segment>& outer, const std::vector<Segment>& inner) {
    std::vector<Segment> all = outer;
    all.push_back({outer.back().to, inner.back().to});
    for (auto segment = inner.rbegin(); segment != inner.rend(); ++segment) {
        all.push_back(segment->reversed());
    }
    all.push_back({inner.front().from, outer.front().from});
    return Contour::from_segments(all);
}

}  // namespace

template <class N>
ConeSizes<N> cone_sizes(const ConicalPane<N>& pane, std::string_view path, Book<N>& book) {
    using std::abs;
    using std::asin;
    using std::sin;
    using std::sqrt;
    expect_cone(pane);
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N number) {
        return book.figure({path, key}, symbol, kind, number, kCone);
    };
    const N taper = pane.base_radius - pane.top_radius;
    ConeSizes<N> cone;
    cone.pane = pane;
    cone.slant =
        figure("slant", "s", Kind::length, sqrt(taper * taper + pane.height * pane.height));
    cone.half_angle = figure("half_angle", "α", Kind::angle, asin(abs(taper) / cone.slant));
    cone.apex_height =
        figure("apex_height", "H_a", Kind::length, pane.height * pane.base_radius / taper);
    cone.base_reach =
        figure("base_reach", "ρ₁", Kind::length, pane.base_radius / sin(cone.half_angle));
    cone.top_reach =
        figure("top_reach", "ρ₂", Kind::length, pane.top_radius / sin(cone.half_angle));
    cone.sector_angle = figure("sector_angle", "φ", Kind::angle, pane.sweep * sin(cone.half_angle));
    cone.base_length = figure("base_length", "S₁", Kind::length, pane.base_radius * pane.sweep);
    cone.top_length = figure("top_length", "S₂", Kind::length, pane.top_radius * pane.sweep);
    cone.area = figure("area", "A/mm²", Kind::plain,
                       pane.sweep * (pane.base_radius + pane.top_radius) / 2 * cone.slant);
    return cone;
}

template <class N>
ConeBlank<N> cone_blank(const ConeSizes<N>& sizes, const BlankShrink<N>& shrink,
                        std::string_view path, Book<N>& book) {
    using std::cos;
    using std::sin;
    BOWFRONT_EXPECTS(value_of(shrink.length) < 1 && value_of(shrink.height) < 1);
    constexpr std::string_view kSector =
        "geometry of the annular sector, and shrink as loss over the size before heating";
    const N outer = larger(sizes.base_reach, sizes.top_reach);
    const N inner = smaller(sizes.base_reach, sizes.top_reach);
    const N half = sizes.sector_angle / 2;
    // Over half a turn the sector is widest on both sides of the apex, and its outer corners stand
    // highest.
    const bool over_half = value_of(sizes.sector_angle) > std::numbers::pi;
    const N length = over_half ? 2 * outer : 2 * outer * sin(half);
    const N height = outer - (over_half ? outer : inner) * cos(half);
    return {book.figure({path, "blank/length"}, "L₀", Kind::length,
                        blank_for(length, shrink.length), kSector),
            book.figure({path, "blank/height"}, "W₀", Kind::length,
                        blank_for(height, shrink.height), kSector)};
}

Contour cone_outline(const ConeSizes<double>& sizes, const BlankShrink<double>& shrink,
                     double chord_error) {
    BOWFRONT_EXPECTS(shrink.length < 1 && shrink.height < 1);
    const Sector sector{std::max(sizes.base_reach, sizes.top_reach),
                        std::min(sizes.base_reach, sizes.top_reach), sizes.slant,
                        sizes.sector_angle / 2};
    const Point stretch{blank_for(1.0, shrink.length), blank_for(1.0, shrink.height)};
    const Contour outline =
        shrink.length == shrink.height
            ? outline_of(
                  round_edge(sector.outer * stretch.x, 0, sector.half),
                  round_edge(sector.inner * stretch.x, sector.slant * stretch.x, sector.half))
            : outline_of(stretched_edge(sector, sector.outer, stretch, chord_error),
                         stretched_edge(sector, sector.inner, stretch, chord_error));
    if (sizes.base_reach > sizes.top_reach) {
        return outline;
    }
    return outline.moved(
        {.angle = std::numbers::pi, .shift = {0, outline.box().high.y}, .mirrored = false});
}

template <class N>
ConicalPane<N> cone_on_form(const ConeSizes<N>& sizes, N springback, std::string_view path,
                            Book<N>& book) {
    using std::abs;
    using std::asin;
    using std::cos;
    using std::sin;
    using std::sqrt;
    BOWFRONT_EXPECTS(value_of(springback) > -1);
    constexpr std::string_view kRelease =
        "geometry: the sector stays, and its radius of curvature, ρ·tan α, grows by the springback";
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N number) {
        return book.figure({path, "form", key}, symbol, kind, number, kRelease);
    };
    const ConicalPane<N>& pane = sizes.pane;
    const N slope =
        figure("slope", "tan α_f", Kind::plain,
               abs(pane.base_radius - pane.top_radius) / pane.height / (1 + springback));
    const N half_angle =
        figure("half_angle", "α_f", Kind::angle, asin(slope / sqrt(1 + slope * slope)));
    ConicalPane<N> form;
    form.base_radius =
        figure("base_radius", "R_f1", Kind::length, sizes.base_reach * sin(half_angle));
    form.top_radius = figure("top_radius", "R_f2", Kind::length, sizes.top_reach * sin(half_angle));
    form.height = figure("height", "H_f", Kind::length, sizes.slant * cos(half_angle));
    form.sweep = figure("sweep", "θ_f", Kind::angle, sizes.sector_angle / sin(half_angle));
    expect_cone(form);
    return form;
}

template ConeSizes<double> cone_sizes(const ConicalPane<double>&, std::string_view, Book<double>&);
template ConeSizes<Traced> cone_sizes(const ConicalPane<Traced>&, std::string_view, Book<Traced>&);
template ConeBlank<double> cone_blank(const ConeSizes<double>&, const BlankShrink<double>&,
                                      std::string_view, Book<double>&);
template ConeBlank<Traced> cone_blank(const ConeSizes<Traced>&, const BlankShrink<Traced>&,
                                      std::string_view, Book<Traced>&);
template ConicalPane<double> cone_on_form(const ConeSizes<double>&, double, std::string_view,
                                          Book<double>&);
template ConicalPane<Traced> cone_on_form(const ConeSizes<Traced>&, Traced, std::string_view,
                                          Book<Traced>&);

}  // namespace bowfront::forming
