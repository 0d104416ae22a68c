#include "bowfront/materials/tolerance_class.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

constexpr std::array kClasses{ToleranceClass::fine, ToleranceClass::medium, ToleranceClass::coarse,
                              ToleranceClass::very_coarse};

// The next number up: just past a range that includes its end.
double just_above(double size) {
    return std::nextafter(size, 2 * size);
}

// A row of a table: a range above `over` (included where it is the least size), up to `to`.
struct Row {
    double over, to;
    std::array<std::optional<double>, 4> tolerance;  // f, m, c, v
};

constexpr std::nullopt_t kNone = std::nullopt;

TEST(LinearTolerance, is_table_1_of_iso_2768_1) {
    // ISO 2768-1:1989, Table 1, +- mm for sizes in mm.
    const Row rows[] = {
        {0.5, 3, {0.05, 0.1, 0.2, kNone}},  {3, 6, {0.05, 0.1, 0.3, 0.5}},
        {6, 30, {0.1, 0.2, 0.5, 1.0}},      {30, 120, {0.15, 0.3, 0.8, 1.5}},
        {120, 400, {0.2, 0.5, 1.2, 2.5}},   {400, 1000, {0.3, 0.8, 2.0, 4.0}},
        {1000, 2000, {0.5, 1.2, 3.0, 6.0}}, {2000, 4000, {kNone, 2.0, 4.0, 8.0}},
    };
    for (const Row& row : rows) {
        for (std::size_t c = 0; c < kClasses.size(); ++c) {
            const double first = row.over == 0.5 ? row.over : just_above(row.over);
            for (const double size : {first, (row.over + row.to) / 2, row.to}) {
                EXPECT_EQ(linear_tolerance(kClasses[c], size), row.tolerance[c])
                    << class_letter(kClasses[c]) << ' ' << size;
            }
        }
    }
}

TEST(LinearTolerance, is_not_given_outside_the_table) {
    for (const ToleranceClass each : kClasses) {
        EXPECT_EQ(linear_tolerance(each, 0.49), std::nullopt);
        EXPECT_EQ(linear_tolerance(each, just_above(4000)), std::nullopt);
    }
}

TEST(RadiusTolerance, is_table_2_of_iso_2768_1) {
    // ISO 2768-1:1989, Table 2, external radii and chamfer heights, +- mm.
    const Row rows[] = {{0.5, 3, {0.2, 0.2, 0.4, 0.4}},
                        {3, 6, {0.5, 0.5, 1.0, 1.0}},
                        {6, 500, {1.0, 1.0, 2.0, 2.0}}};
    for (const Row& row : rows) {
        for (std::size_t c = 0; c < kClasses.size(); ++c) {
            EXPECT_EQ(radius_tolerance(kClasses[c], row.to), row.tolerance[c]) << row.to;
            EXPECT_EQ(radius_tolerance(kClasses[c], just_above(row.over)), row.tolerance[c])
                << row.over;
        }
    }
    EXPECT_EQ(radius_tolerance(ToleranceClass::fine, 0.5), 0.2);
    EXPECT_EQ(radius_tolerance(ToleranceClass::fine, 0.49), std::nullopt);
}

TEST(AngularTolerance, is_table_3_of_iso_2768_1) {
    // ISO 2768-1:1989, Table 3, +- minutes of arc for the shorter leg in mm.
    struct AngleRow {
        double over, to;
        std::array<double, 4> minutes;
    };
    constexpr AngleRow kRows[] = {{0, 10, {60, 60, 90, 180}},
                                  {10, 50, {30, 30, 60, 120}},
                                  {50, 120, {20, 20, 30, 60}},
                                  {120, 400, {10, 10, 20, 30}},
                                  {400, 5000, {5, 5, 10, 20}}};
    for (const AngleRow& row : kRows) {
        for (std::size_t c = 0; c < kClasses.size(); ++c) {
            const double radians = row.minutes[c] / 60 * std::numbers::pi / 180;
            EXPECT_DOUBLE_EQ(angular_tolerance(kClasses[c], row.to), radians) << row.to;
            EXPECT_DOUBLE_EQ(angular_tolerance(kClasses[c], row.over + 0.001), radians) << row.over;
        }
    }
}

TEST(ToleranceClasses, have_the_letters_of_the_standard) {
    constexpr std::string_view kLetters[] = {"f", "m", "c", "v"};
    for (std::size_t c = 0; c < kClasses.size(); ++c) {
        EXPECT_EQ(class_letter(kClasses[c]), kLetters[c]);
        EXPECT_EQ(find_tolerance_class(kLetters[c]), kClasses[c]);
    }
    for (const std::string_view unknown : {"", "F", "g", "fm", "medium"}) {
        EXPECT_EQ(find_tolerance_class(unknown), std::nullopt) << unknown;
    }
}

TEST(Tolerances, need_a_size) {
    for (const double size : {0.0, -1.0, std::nan("")}) {
        EXPECT_THROW((void)linear_tolerance(ToleranceClass::fine, size), ContractError);
        EXPECT_THROW((void)radius_tolerance(ToleranceClass::fine, size), ContractError);
        EXPECT_THROW((void)angular_tolerance(ToleranceClass::fine, size), ContractError);
    }
}

}  // namespace
}  // namespace bowfront
