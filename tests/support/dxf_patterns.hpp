#pragma once
/// \file
/// Patterns to write and read back: parts of a case for ship models, and random ones by seed.

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "bowfront/pattern/part.hpp"

namespace bowfront::test {

inline constexpr double kPi = std::numbers::pi;

/// A rectangle with rounded corners.
inline Contour rounded_plate(Point low, Point high, double radius) {
    const double quarter = std::tan(kPi / 8);
    return Contour({{{low.x + radius, low.y}, 0},
                    {{high.x - radius, low.y}, quarter},
                    {{high.x, low.y + radius}, 0},
                    {{high.x, high.y - radius}, quarter},
                    {{high.x - radius, high.y}, 0},
                    {{low.x + radius, high.y}, quarter},
                    {{low.x, high.y - radius}, 0},
                    {{low.x, low.y + radius}, quarter}});
}

/// A slot with round ends along X. @param length  over all
inline Contour slot(Point centre, double length, double width) {
    const Point reach{(length - width) / 2, 0};
    const Point half{0, width / 2};
    return Contour({{centre - reach - half, 0},
                    {centre + reach - half, 1},
                    {centre + reach + half, 0},
                    {centre - reach + half, 1}});
}

/// A sector of a ring, its middle upwards: a rib of a bending form. @param sweep  rad, under π
inline Contour ring_sector(double inner, double outer, double sweep) {
    const double start = kPi / 2 - sweep / 2;
    const double end = kPi / 2 + sweep / 2;
    const double bulge = std::tan(sweep / 4);
    return Contour({{direction(start) * inner, 0},
                    {direction(start) * outer, bulge},
                    {direction(end) * outer, 0},
                    {direction(end) * inner, -bulge}});
}

/// A board with one of everything: small enough to read its file through.
inline Pattern name_board() {
    Pattern board;
    board.thickness = 12;
    board.outline.outer = rounded_plate({100, 50}, {220, 90}, 5);
    board.outline.holes = {slot({160, 80}, 40, 6)};
    board.recesses = {{{Contour::rectangle({110, 56}, {210, 64}), {}}, 2.5}};
    board.bores = {{{106, 84}, 3.5, 12}};
    board.scribes = {Path{{{{130, 70}, {190, 70}, 0}}}};
    board.labels = {{"BOARD 1", {130, 66.5}, 2}};
    return board;
}

/// A rib with two feet's slots and bores.
inline Pattern form_rib() {
    Pattern rib;
    rib.thickness = 18;
    rib.outline.outer = ring_sector(276, 316, 100 * kPi / 180);
    rib.outline.holes = {slot({0, 296}, 60, 12), Contour::circle({90, 280}, 6)};
    rib.bores = {{{-90, 280}, 8, 18}, {{-120, 270}, 5, 6}};
    const Segment middle = arc_segment({0, 0}, 290, kPi / 2 - 0.3, -0.4);
    rib.scribes = {Path{{middle}}, Path{{{{0, 300}, {0, 312}, 0}}}};
    return rib;
}

/// A base with a groove all round whose island stays, and two depths of recess.
inline Pattern case_base() {
    Pattern base;
    base.thickness = 20;
    base.outline.outer = rounded_plate({-284, -140}, {284, 140}, 30);
    base.recesses = {{{rounded_plate({-260, -120}, {260, 120}, 20),
                       {rounded_plate({-255.2, -115.2}, {255.2, 115.2}, 15.2).reversed()}},
                      6},
                     {{Contour::rectangle({-50, -60}, {50, -40}), {}}, 2},
                     {{slot({0, 40}, 80, 10), {}}, 2}};
    base.bores = {{{0, 0}, 12.7, 9.525}, {{-270, -126}, 4, 20}, {{270, -126}, 4, 20}};
    return base;
}

/// A flat blank for a pane: a plain rectangle, its size nothing that a decimal fraction holds.
inline Pattern pane_blank() {
    Pattern blank;
    blank.thickness = 3;
    blank.outline.outer = Contour::rectangle({0, 0}, {474.3805 / 0.985, 401.5 / 0.985});
    return blank;
}

/// Numbers from a seed, the same on every machine.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : engine_(seed) {}
    double between(double low, double high) {
        constexpr double kUnit = 1.0 / (1ULL << 53U);
        return low + (high - low) * static_cast<double>(engine_() >> 11U) * kUnit;
    }
    int below(int count) { return static_cast<int>(between(0, count)); }

  private:
    std::mt19937_64 engine_;
};

/// A star of straights and arcs round a point. Its corners lie within a tenth of the radius and
/// its arcs turn through less than 35°, so that no side reaches into its neighbour's wedge.
inline Contour random_star(Dice& dice, Point centre, double radius) {
    const int corners = 5 + dice.below(8);
    std::vector<Vertex> vertices;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * kPi * (i + dice.between(-0.1, 0.1)) / corners;
        const double reach = radius * dice.between(0.9, 1);
        const double bulge = dice.below(2) == 0 ? 0 : dice.between(-0.15, 0.15);
        vertices.push_back({centre + direction(angle) * reach, bulge});
    }
    return Contour(std::move(vertices));
}

inline void add_random_cell(Pattern& pattern, Dice& dice, Point centre) {
    constexpr double kReach = 17;
    const double size = dice.between(2, kReach);
    const double depth = 1 + dice.below(3) * 1.25;
    switch (dice.below(6)) {
        case 0:
            pattern.outline.holes.push_back(random_star(dice, centre, size).reversed());
            break;
        case 1:
            pattern.recesses.push_back({{random_star(dice, centre, size), {}}, depth});
            break;
        case 2:
            pattern.bores.push_back({centre, size, depth});
            break;
        case 3: {
            const Segment arc = arc_segment(centre, size, dice.between(0, 6), dice.between(-3, -1));
            pattern.scribes.push_back(Path{{arc, {arc.to, centre, 0}}});
            break;
        }
        case 4:
            pattern.labels.push_back({"mark " + std::to_string(dice.below(100)), centre, 3});
            break;
        default:
            break;
    }
}

/// A part of random outline, in any place, with random things in the cells of a grid on it.
inline Pattern random_pattern(std::uint64_t seed) {
    Dice dice(seed);
    const Point centre{dice.between(-1000, 1000), dice.between(-1000, 1000)};
    Pattern pattern;
    pattern.thickness = dice.between(3, 30);
    pattern.outline.outer = random_star(dice, centre, dice.between(200, 300));
    for (int row = -2; row <= 2; ++row) {
        for (int column = -2; column <= 2; ++column) {
            constexpr double kCell = 40;
            add_random_cell(pattern, dice, centre + Point{kCell * column, kCell * row});
        }
    }
    return pattern;
}

}  // namespace bowfront::test
