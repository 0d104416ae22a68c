#include "bowfront/fit/plate_bending.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

struct Row {
    double ratio;
    double first;
    double second;
};

// Source: Roark's Formulas for Stress and Strain, 8th edition, table 11.4, case 1a, ν 0.3, as
// reproduced in public scripts: w = α·q·b⁴/(E·t³), σ = β·q·b²/t², b the short side.
constexpr Row kUniformAsPrinted[] = {
    {1.0, 0.0444, 0.2874}, {1.2, 0.0616, 0.3762}, {1.4, 0.0770, 0.4530}, {1.6, 0.0906, 0.5172},
    {1.8, 0.1017, 0.5688}, {2.0, 0.1110, 0.6102}, {3.0, 0.1335, 0.7134}, {4.0, 0.1400, 0.7410},
    {5.0, 0.1417, 0.7476}};
// The printed coefficients are up to 0.6 % off the exact series.
constexpr double kPrinting = 0.006;

TEST(PlateCoefficients, of_a_uniform_load_are_those_of_the_printed_table) {
    for (const Row& row : kUniformAsPrinted) {
        const double area = row.ratio;  // over b²: F = q·a·b
        const auto upright = plate_coefficients({300, 300 * row.ratio, 300, 300 * row.ratio, 0.3});
        EXPECT_NEAR(upright.deflection * area, row.first, kPrinting * row.first) << row.ratio;
        EXPECT_NEAR(upright.stress * area, row.second, kPrinting * row.second) << row.ratio;
        const auto lying = plate_coefficients({300 * row.ratio, 300, 300 * row.ratio, 300, 0.3});
        EXPECT_NEAR(lying.deflection, upright.deflection, 1e-12);
        EXPECT_NEAR(lying.stress, upright.stress, 1e-12);
    }
}

// The rows between, which the handbook leaves out: Lévy's single series with 200 terms, worked out
// separately to four decimals. Timoshenko's coefficients of the same plate are α = 10.92·αT (his
// table 8, square: 0.00406) and β = 6·βT (0.0479).
TEST(PlateCoefficients, of_a_uniform_load_are_those_of_the_exact_series) {
    constexpr Row kExact[] = {
        {1.0, 0.0444, 0.2873}, {1.1, 0.0532, 0.3329}, {1.2, 0.0617, 0.3761}, {1.3, 0.0698, 0.4163},
        {1.4, 0.0774, 0.4533}, {1.5, 0.0843, 0.4870}, {1.6, 0.0907, 0.5174}, {1.7, 0.0965, 0.5447},
        {1.8, 0.1017, 0.5691}, {1.9, 0.1064, 0.5908}, {2.0, 0.1106, 0.6101}, {3.0, 0.1336, 0.7132},
        {4.0, 0.1400, 0.7408}, {5.0, 0.1416, 0.7477}};
    // Half of the last printed digit, and 0.01 % of the series.
    constexpr double kPrinted = 0.5e-4;
    constexpr double kSeries = 1e-4;
    for (const Row& row : kExact) {
        const auto plate = plate_coefficients({300, 300 * row.ratio, 300, 300 * row.ratio, 0.3});
        EXPECT_NEAR(plate.deflection * row.ratio, row.first, kPrinted + kSeries * row.first)
            << row.ratio;
        EXPECT_NEAR(plate.stress * row.ratio, row.second, kPrinted + kSeries * row.second)
            << row.ratio;
    }
    constexpr double kTimoshenko = 0.5e-5;  // half of his last digit for α
    const auto square = plate_coefficients({300, 300, 300, 300, 0.3});
    EXPECT_NEAR(square.deflection / 10.92, 0.00406, kTimoshenko);
    EXPECT_NEAR(square.stress / 6, 0.0479, 10 * kTimoshenko);
}

// A plate ten times as long as wide bends as the strip across it. Source: beam theory, E/(1 − ν²)
// for a wide sheet, here ν 0: w = 5qL⁴/(32Et³), σ = 0.75qL²/t²; a line load in the middle
// FL³/(4Et³) and 1.5FL/t². Acrylic of 3200 MPa, 600 mm between supports, 6 mm thick, under 300 Pa:
// 8.79 mm and 2.25 MPa.
TEST(PlateCoefficients, of_a_long_plate_are_those_of_a_strip) {
    constexpr double kSpan = 600;
    constexpr double kLong = 10 * kSpan;
    // The ends' share at ten spans: e^(−5π)·(1 + 5π/2), under 2e-6, and the series' 0.1 %.
    constexpr double kFarEnds = 1e-3;
    const auto spread = plate_coefficients({kSpan, kLong, kSpan, kLong, 0});
    const double force = 300e-6 * kSpan * kLong;
    const double w = spread.deflection * force * kSpan * kSpan / (3200 * 216);
    const double stress = spread.stress * force / 36;
    EXPECT_NEAR(w, 8.79, 0.005 + kFarEnds * 8.79);
    EXPECT_NEAR(stress, 2.25, 0.005 + kFarEnds * 2.25);
    EXPECT_NEAR(spread.deflection * kLong / kSpan, 5.0 / 32, kFarEnds * 5 / 32);
    EXPECT_NEAR(spread.stress * kLong / kSpan, 0.75, kFarEnds * 0.75);
    // Over a hundredth of the span instead of a line: the moment under it is less by b/2L.
    constexpr double kLine = 0.01;
    const auto line = plate_coefficients({kSpan, kLong, kLine * kSpan, kLong, 0});
    EXPECT_NEAR(line.deflection * kLong / kSpan, 0.25, kFarEnds * 0.25);
    EXPECT_NEAR(line.stress * kLong / kSpan, 1.5 * (1 - kLine / 2), kFarEnds * 1.5);
}

// Lévy's single series with 200 terms, as the fact sheet of the materials has it for other ν.
TEST(PlateCoefficients, of_a_uniform_load_follow_poisson_s_ratio) {
    struct Exact {
        double poisson;
        double square;
        double half_as_long_again;
        double twice_as_long;
    };
    // Four printed digits; the double series is cut after 120 terms each way.
    constexpr double kDigits = 2e-4;
    for (const Exact& row : {Exact{0.20, 0.2652, 0.4702, 0.5997}, Exact{0.35, 0.2984, 0.4954, 0.6153},
                             Exact{0.37, 0.3028, 0.4987, 0.6174},
                             Exact{0.38, 0.3050, 0.5004, 0.6185}}) {
        const auto stress = [&](double ratio) {
            return ratio * plate_coefficients({200 * ratio, 200, 200 * ratio, 200, row.poisson}).stress;
        };
        EXPECT_NEAR(stress(1), row.square, kDigits);
        EXPECT_NEAR(stress(1.5), row.half_as_long_again, kDigits);
        EXPECT_NEAR(stress(2), row.twice_as_long, kDigits);
    }
}

// Navier's double series, 400 odd terms each way: another way to the same coefficients.
PlateCoefficients navier(const LoadedPlate& plate) {
    constexpr int kLast = 800;
    double deflection = 0;
    double along = 0;
    double up = 0;
    for (int i = 1; i < kLast; i += 2) {
        for (int j = 1; j < kLast; j += 2) {
            const double m = i / plate.length;
            const double n = j / plate.height;
            const double term = 16 / std::pow(kPi, 6) *
                                std::sin(m * kPi * plate.patch_length / 2) / (i * plate.patch_length) *
                                std::sin(n * kPi * plate.patch_height / 2) / (j * plate.patch_height) /
                                ((m * m + n * n) * (m * m + n * n));
            deflection += term;
            along += kPi * kPi * m * m * term;
            up += kPi * kPi * n * n * term;
        }
    }
    const double shorter = std::min(plate.length, plate.height);
    return {12 * (1 - plate.poisson * plate.poisson) * deflection / (shorter * shorter),
            6 * std::max(along + plate.poisson * up, up + plate.poisson * along)};
}

TEST(PlateCoefficients, of_a_patch_agree_with_the_double_series) {
    constexpr double kPromised = 1e-3;  // of either, as the header says
    for (const LoadedPlate& plate :
         {LoadedPlate{518, 380, 80, 80, 0.37}, LoadedPlate{198, 380, 80, 80, 0.37},
          LoadedPlate{198, 380, 198, 380, 0.37}, LoadedPlate{500, 100, 30, 60, 0.2},
          LoadedPlate{100, 500, 60, 30, 0.2}, LoadedPlate{300, 300, 10, 200, 0.3},
          LoadedPlate{300, 300, 3, 3, 0.3}, LoadedPlate{3000, 100, 3000, 1, 0.3}}) {
        const PlateCoefficients found = plate_coefficients(plate);
        const PlateCoefficients other = navier(plate);
        EXPECT_NEAR(found.deflection, other.deflection, kPromised * other.deflection);
        EXPECT_NEAR(found.stress, other.stress, kPromised * other.stress);
    }
}

// A load in one point: w = (F·a²/(2π³·D))·Σ (tanh α − α/cosh² α)/m³, α = mπb/(2a), over odd m:
// Lévy's single series, another way to the same deflection.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (form from memory).
double levy_point(double ratio, double poisson) {
    double sum = 0;
    for (int m = 1; m < 400; m += 2) {
        const double alpha = m * kPi * ratio / 2;
        const double rest = alpha > 300 ? 0 : alpha / (std::cosh(alpha) * std::cosh(alpha));
        sum += (std::tanh(alpha) - rest) / (static_cast<double>(m) * m * m);
    }
    return 12 * (1 - poisson * poisson) * sum / (2 * kPi * kPi * kPi);
}

TEST(PlateCoefficients, of_a_load_in_one_point_agree_with_the_single_series) {
    constexpr double kSmall = 0.01;  // of the short side; a patch deflects less by its square
    constexpr double kPatch = 5e-4;
    for (const double ratio : {1.0, 1.1, 1.2, 1.4, 1.6, 1.8, 2.0, 3.0, 5.0}) {
        const double patch = 100 * kSmall;
        const auto found = plate_coefficients({100 * ratio, 100, patch, patch, 0.3}).deflection;
        const double point = levy_point(ratio, 0.3);
        EXPECT_NEAR(found, point, kPatch * point) << ratio;
    }
}

// w = αT·F·a²/D; α = 12·(1 − ν²)·αT.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table of a concentrated
// load on a simply supported plate (from memory; four digits).
TEST(PlateCoefficients, of_a_load_in_one_point_are_those_of_the_handbook) {
    constexpr Row kPoint[] = {{1.0, 0.01160, 0}, {1.2, 0.01353, 0}, {1.4, 0.01484, 0},
                              {1.6, 0.01570, 0}, {1.8, 0.01620, 0}, {2.0, 0.01651, 0},
                              {3.0, 0.01690, 0}};
    constexpr double kPrinted = 0.002;
    for (const Row& row : kPoint) {
        const double found = plate_coefficients({100 * row.ratio, 100, 1, 1, 0.3}).deflection;
        EXPECT_NEAR(found / (12 * 0.91), row.first, kPrinted * row.first) << row.ratio;
    }
}

// σ = 3F/(2π·t²)·((1 + ν)·ln(2b/(π·r)) + β), β 0.435 for a square and 1.0 for a long plate, load
// within a circle of radius r; of a square patch as large as it, within two per cent.
// Source: Roark's Formulas for Stress and Strain, table 11.4, case 1b (from memory).
TEST(PlateCoefficients, of_a_patch_stress_it_as_the_handbook_s_circle_does) {
    constexpr double kShape = 0.02;
    for (const Row& row : {Row{1, 0.435, 0}, Row{1.4, 0.789, 0}, Row{2, 0.958, 0}, Row{4, 1, 0}}) {
        const double side = 60;
        const double radius = side / std::sqrt(kPi);
        const double stress =
            3 / (2 * kPi) * (1.3 * std::log(2 * 400 / (kPi * radius)) + row.first);
        const auto found = plate_coefficients({400 * row.ratio, 400, side, side, 0.3}).stress;
        EXPECT_NEAR(found, stress, kShape * stress) << row.ratio;
    }
}

// The middle surface of a round plate, radius 1, thickness 1, E 1, anew: with slope s of the
// small deflection under a load in the middle, the radial force N = ψ/r follows from
// ((rψ)'/r)' = −s²/(2r), ψ(1) = 0, and takes part in the work by ∫N·s²·2πr dr.
double stretch_share() {
    constexpr int kSteps = 20000;
    constexpr double kPoisson = 0.3;
    const double stiffness = 1 / (12 * (1 - kPoisson * kPoisson));
    const double load = 16 * kPi * stiffness;
    const double edge = (3 + kPoisson) / (1 + kPoisson);
    const auto slope = [&](double r) {
        return (-2 * r * edge + 4 * r * std::log(r) + 2 * r) / load;
    };
    const double middle = edge / load;
    const double h = 1.0 / kSteps;
    std::vector<double> inner(kSteps);
    double integral = 0;
    double total = 0;
    for (int i = 0; i < kSteps; ++i) {
        const double r = (i + 0.5) * h;
        const double half = slope(r) * slope(r) / (2 * r) * h / 2;
        inner[static_cast<std::size_t>(i)] = integral + half;
        integral += 2 * half;
        total += r * inner[static_cast<std::size_t>(i)] * h;
    }
    double gathered = 0;
    double work = 0;
    for (int i = 0; i < kSteps; ++i) {
        const double r = (i + 0.5) * h;
        const double half = r * (2 * total - inner[static_cast<std::size_t>(i)]) * h / 2;
        const double force = (gathered + half) / (r * r);
        work += 2 * kPi * force * slope(r) * slope(r) * r * h;
        gathered += 2 * half;
    }
    return work / (middle * middle * middle);
}

TEST(StiffenedDeflection, solves_the_cubic_whose_share_the_middle_surface_gives) {
    constexpr double kPrinted = 0.0005;
    EXPECT_NEAR(stretch_share(), 0.272, kPrinted);
    for (const double small : {0.0, 0.1, 0.5, 1.0, 8.0, 35.0, 500.0}) {
        const double x = stiffened_deflection(small);
        EXPECT_NEAR(x + 0.272 * x * x * x, small, 1e-12 * (1 + small)) << small;
    }
    constexpr double kTwoDecimals = 0.005;
    EXPECT_NEAR(stiffened_deflection(8), 2.69, kTwoDecimals);
}

}  // namespace
}  // namespace bowfront::fit
