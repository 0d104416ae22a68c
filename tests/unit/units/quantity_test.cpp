#include "bowfront/units/quantity.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "support/comma_locale.hpp"

namespace bowfront {
namespace {

using ::testing::HasSubstr;
using Kind = QuantityFault::Kind;

double length(std::string_view text) {
    const Quantity quantity = parse_length(text);
    EXPECT_TRUE(quantity) << text << ": " << quantity.fault().found;
    return quantity ? quantity.value() : std::nan("");
}

TEST(LengthText, is_read_in_every_unit) {
    EXPECT_EQ(length("18 mm"), 18);
    EXPECT_EQ(length("18mm"), 18);
    EXPECT_EQ(length("4.5 cm"), 45);
    EXPECT_EQ(length("1.2 m"), 1200);
    EXPECT_EQ(length("1 in"), 25.4);
    EXPECT_EQ(length("1 inch"), 25.4);
    EXPECT_EQ(length("2 inches"), 50.8);
    EXPECT_EQ(length("2 ft"), 609.6);
    EXPECT_EQ(length("1 foot"), 304.8);
    EXPECT_EQ(length("3 feet"), 914.4);
    EXPECT_EQ(length("  18 mm  "), 18);
    EXPECT_EQ(length(".5 mm"), 0.5);
    EXPECT_EQ(length("1e3 mm"), 1000);
    EXPECT_EQ(length("12e-1 mm"), 1.2);
    EXPECT_EQ(length("+3 mm"), 3);
    EXPECT_EQ(length("-3 mm"), -3);
    EXPECT_FALSE(std::signbit(length("-0 mm")));
}

TEST(LengthText, is_read_as_a_maker_writes_it) {
    // 17 5/16 in = 277/16 in = 277 · 25.4 / 16 mm
    EXPECT_EQ(length("17 5/16 in"), 439.7375);
    EXPECT_EQ(length("17-5/16 in"), 439.7375);
    EXPECT_EQ(length("17 5 / 16 in"), 439.7375);
    EXPECT_EQ(length("3/4\""), 19.05);
    EXPECT_EQ(length("17 5/16\""), 439.7375);
    EXPECT_EQ(length("5/4 in"), 31.75);
    // 27.5 in
    EXPECT_EQ(length("2 ft 3 1/2 in"), 698.5);
    EXPECT_EQ(length("2' 3 1/2\""), 698.5);
    EXPECT_EQ(length("2'3-1/2\""), 698.5);
    EXPECT_EQ(length("2ft3.5in"), 698.5);
    EXPECT_EQ(length("2 feet 3 inches"), 685.8);
    EXPECT_EQ(length("-2 ft 3 in"), -685.8);
    EXPECT_EQ(length("1/2 mm"), 0.5);
}

TEST(LengthText, is_read_with_the_signs_of_a_word_processor) {
    EXPECT_EQ(length("2\u2032 3 1/2\u2033"), 698.5);
    EXPECT_EQ(length("3\u20444\u201D"), 19.05);
    EXPECT_EQ(length("18\u00A0mm"), 18);
    EXPECT_EQ(length("\u22123 mm"), -3);
}

// Every 64th up to 4 ft: one rounding of an exact fraction, so the long double quotient, good to 11
// more bits, rounds to the same double.
TEST(LengthText, gives_the_nearest_double_to_each_64th) {
    for (int parts = 1; parts < 48 * 64; ++parts) {
        const std::string text =
            std::to_string(parts / 64) + ' ' + std::to_string(parts % 64) + "/64 in";
        const auto expected = static_cast<double>(static_cast<long double>(parts) * 254 / 640);
        ASSERT_EQ(length(text), expected) << text;
    }
}

TEST(LengthText, gives_the_nearest_double_to_decimals_in_any_unit) {
    for (int thousandths = 1; thousandths < 5000; ++thousandths) {
        const std::string number = std::to_string(thousandths / 1000) + '.' +
                                   std::to_string(1000 + thousandths % 1000).substr(1);
        const auto exact = static_cast<long double>(thousandths);
        ASSERT_EQ(length(number + " in"), static_cast<double>(exact * 254 / 10000)) << number;
        ASSERT_EQ(length(number + " cm"), static_cast<double>(exact / 100)) << number;
        ASSERT_EQ(length(number + " ft"), static_cast<double>(exact * 3048 / 10000)) << number;
    }
}

TEST(LengthText, of_many_digits_is_still_read) {
    EXPECT_DOUBLE_EQ(length("3.14159265358979323846 in"), std::numbers::pi * 25.4);
    EXPECT_EQ(length("0000000000000000000000018 mm"), 18);
    EXPECT_EQ(length("0." + std::string(300, '0') + "1 mm"), 1e-301);
}

struct Refused {
    std::string_view text;
    Kind kind;
    std::string_view found;
};

class RefusedLength : public ::testing::TestWithParam<Refused> {};

TEST_P(RefusedLength, says_what_is_wrong) {
    const Quantity quantity = parse_length(GetParam().text);
    ASSERT_FALSE(quantity) << quantity.value();
    EXPECT_EQ(quantity.fault().kind, GetParam().kind);
    EXPECT_EQ(quantity.fault().found, GetParam().found);
    EXPECT_THAT(quantity.fault().wanted, HasSubstr("18 mm"));
}

INSTANTIATE_TEST_SUITE_P(
    Texts, RefusedLength,
    ::testing::Values(
        Refused{"", Kind::form, "the text is empty"},
        Refused{"  ", Kind::form, "\"  \" has no number"},
        Refused{"mm", Kind::form, "\"mm\" has no number where one is wanted"},
        Refused{"nan mm", Kind::form, "\"nan mm\" has no number where one is wanted"},
        Refused{"inf in", Kind::form, "\"inf in\" has no number where one is wanted"},
        Refused{"--3 mm", Kind::form, "\"--3 mm\" has no number where one is wanted"},
        Refused{"1//2 in", Kind::form, "\"1//2 in\" has a fraction with nothing to divide by"},
        Refused{"1/ in", Kind::form, "\"1/ in\" has a fraction with nothing to divide by"},
        Refused{"1/0 in", Kind::form, "\"1/0 in\" divides by zero"},
        Refused{"3 1/0 in", Kind::form, "\"3 1/0 in\" divides by zero"},
        Refused{"1 5/4 in", Kind::form,
                "\"1 5/4 in\" has a fraction that is not under 1 after its whole number"},
        Refused{"1234567/8 in", Kind::form,
                "\"1234567/8 in\" has a fraction of more than 6 digits"},
        Refused{"1234567 1/8 in", Kind::form,
                "\"1234567 1/8 in\" has a fraction after a number of more than 6 digits"},
        Refused{"18", Kind::unit, "\"18\" has no unit"},
        Refused{"2 ft 3", Kind::unit, "\"2 ft 3\" has no unit"},
        Refused{"12 parsecs", Kind::unit, "\"12 parsecs\" has \"parsecs\" for a unit"},
        Refused{"18 mm wide", Kind::unit, "\"18 mm wide\" has \"mm wide\" for a unit"},
        Refused{"1 2 mm", Kind::unit, "\"1 2 mm\" has \"2 mm\" for a unit"},
        Refused{"1,5 mm", Kind::unit, "\"1,5 mm\" has \",5 mm\" for a unit"},
        Refused{"2 ft 18 mm", Kind::unit, "\"2 ft 18 mm\" has \"mm\" for a unit"},
        Refused{"3 in 2 ft", Kind::unit, "\"3 in 2 ft\" has \"in 2 ft\" for a unit"},
        Refused{"0x10 mm", Kind::unit, "\"0x10 mm\" has \"x10 mm\" for a unit"},
        Refused{"1e999 mm", Kind::size,
                "\"1e999 mm\" is too large or too small a number to be held"},
        Refused{"1e308 m", Kind::size, "\"1e308 m\" is too large to be held"},
        Refused{"1\n mm", Kind::unit, "\"1\\n mm\" has \"\\n mm\" for a unit"}));

TEST(AngleText, is_read_in_degrees_and_radians) {
    EXPECT_EQ(parse_angle("90 deg").value(), std::numbers::pi / 2);
    EXPECT_EQ(parse_angle("90°").value(), std::numbers::pi / 2);
    EXPECT_EQ(parse_angle("180 degrees").value(), std::numbers::pi);
    EXPECT_EQ(parse_angle("-45 deg").value(), -std::numbers::pi / 4);
    EXPECT_EQ(parse_angle("1.2 rad").value(), 1.2);
    EXPECT_EQ(parse_angle("90").fault().kind, Kind::unit);
    EXPECT_EQ(parse_angle("90 mm").fault().found, "\"90 mm\" has \"mm\" for a unit");
}

TEST(TemperatureText, is_read_in_three_scales) {
    EXPECT_EQ(parse_temperature("177 C").value(), 177);
    EXPECT_EQ(parse_temperature("20 °C").value(), 20);
    EXPECT_EQ(parse_temperature("20°C").value(), 20);
    EXPECT_EQ(parse_temperature("-5 C").value(), -5);
    EXPECT_EQ(parse_temperature("32 F").value(), 0);
    EXPECT_EQ(parse_temperature("350 F").value(), 318.0 * 5 / 9);
    EXPECT_EQ(parse_temperature("350 °F").value(), 318.0 * 5 / 9);
    EXPECT_EQ(parse_temperature("-40 F").value(), -40);
    EXPECT_EQ(parse_temperature("450 K").value(), 176.85);
    EXPECT_EQ(parse_temperature("273.15 K").value(), 0);
    EXPECT_EQ(parse_temperature("20").fault().kind, Kind::unit);
}

TEST(TemperatureDifferenceText, has_no_zero_point) {
    EXPECT_EQ(parse_temperature_difference("15 F").value(), 75.0 / 9);
    EXPECT_EQ(parse_temperature_difference("5 C").value(), 5);
    EXPECT_EQ(parse_temperature_difference("5 K").value(), 5);
    EXPECT_EQ(parse_temperature_difference("5 °C").value(), 5);
}

TEST(RatioText, wants_a_unit_or_a_fraction) {
    EXPECT_EQ(parse_ratio("1.5 %").value(), 0.015);
    EXPECT_EQ(parse_ratio("-0.4 %").value(), -0.004);
    EXPECT_EQ(parse_ratio("45%").value(), 0.45);
    EXPECT_EQ(parse_ratio("1/3").value(), 1.0 / 3);
    EXPECT_EQ(parse_ratio("0.015").fault().kind, Kind::unit);
    EXPECT_EQ(parse_ratio("0.015").fault().found, "\"0.015\" has no unit");
    EXPECT_THAT(parse_ratio("0.015").fault().wanted, HasSubstr("1.5 %"));
}

TEST(Mass, is_in_kilograms) {
    EXPECT_EQ(parse_mass("12 kg").value(), 12);
    EXPECT_EQ(parse_mass("850 g").value(), 0.85);
    // 1 lb = 0.45359237 kg by definition; an ounce is a sixteenth of it.
    EXPECT_EQ(parse_mass("1 lb").value(), 0.45359237);
    EXPECT_EQ(parse_mass("2 lbs").value(), 2 * 0.45359237);
    EXPECT_EQ(parse_mass("16 oz").value(), 0.45359237);
    EXPECT_DOUBLE_EQ(parse_mass("1/2 oz").value(), 0.45359237 / 32);
    EXPECT_EQ(parse_mass("12").fault().kind, Kind::unit);
    EXPECT_EQ(parse_mass("12 mm").fault().kind, Kind::unit);
    EXPECT_EQ(parse_mass("kg").fault().kind, Kind::form);
}

TEST(ForceText, is_read_in_newtons_and_pounds_force) {
    EXPECT_EQ(parse_force("100 N").value(), 100);
    EXPECT_EQ(parse_force("0.2 kN").value(), 200);
    // 0.45359237 kg of the 1959 agreement times the standard gravity of 9.80665 m/s².
    EXPECT_EQ(parse_force("1 lbf").value(), 4.4482216152605);
    EXPECT_DOUBLE_EQ(parse_force("25 lbf").value(), 25 * 0.45359237 * 9.80665);
    EXPECT_EQ(parse_force("100").fault().kind, Kind::unit);
    EXPECT_EQ(parse_force("100 lb").fault().kind, Kind::unit);
}

TEST(MassText, is_read_in_kilograms_grams_pounds_and_ounces) {
    EXPECT_EQ(parse_mass("12 kg").value(), 12);
    EXPECT_EQ(parse_mass("850 g").value(), 0.85);
    // By definition of 1959.
    EXPECT_EQ(parse_mass("1 lb").value(), 0.45359237);
    EXPECT_EQ(parse_mass("2 lbs").value(), 2 * 0.45359237);
    EXPECT_EQ(parse_mass("16 oz").value(), 0.45359237);
    EXPECT_EQ(parse_mass("12").fault().kind, Kind::unit);
    EXPECT_EQ(parse_mass("12 N").fault().kind, Kind::unit);
}

TEST(TimeText, is_read_in_seconds_minutes_and_hours) {
    EXPECT_EQ(parse_time("12 min").value(), 720);
    EXPECT_EQ(parse_time("30 s").value(), 30);
    EXPECT_EQ(parse_time("1 h").value(), 3600);
    EXPECT_EQ(parse_time("12").fault().kind, Kind::unit);
}

TEST(Quantity, reads_the_same_under_a_locale_with_a_decimal_comma) {
    const CommaLocale locale;
    if (!locale.found()) {
        GTEST_SKIP() << "no locale with a decimal comma can be had";
    }
    EXPECT_EQ(length("17.3125 in"), 439.7375);
    EXPECT_EQ(length("3.1415926535897932 mm"), std::numbers::pi);
}

}  // namespace
}  // namespace bowfront
