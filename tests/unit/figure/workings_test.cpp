#include "bowfront/figure/workings.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

using testing::ElementsAre;

class WorkingsTest : public testing::Test {
  protected:
    Traced length(const std::string& path, std::string_view symbol, double value) {
        return workings.input(path, symbol, Kind::length, value,
                              {Origin::Kind::given, "/" + path, 3, {}});
    }
    const Figure& named(Traced value, Kind kind = Kind::length) {
        const std::string path = "result/" + std::to_string(++count_);
        workings.figure(path, "y", kind, value, "geometry");
        return *workings.find(path);
    }
    std::string formula(Traced value) { return named(value).formula; }
    std::string numbers(Traced value) { return named(value).numbers; }

    Workings workings;

  private:
    int count_ = 0;
};

TEST_F(WorkingsTest, print_the_formula_that_was_computed) {
    const Traced a = length("a", "a", 8);
    const Traced b = length("b", "b", 2);
    const Figure& figure = named(a / (1 - b) + 2 * a);
    EXPECT_EQ(figure.value, 8 / (1 - 2.0) + 2 * 8.0);
    EXPECT_EQ(figure.formula, "a/(1 − b) + 2·a");
    EXPECT_EQ(figure.numbers, "8/(1 − 2) + 2·8");
    EXPECT_THAT(figure.inputs, ElementsAre("a", "b"));
    EXPECT_EQ(figure.origin.kind, Origin::Kind::computed);
    EXPECT_EQ(figure.origin.source, "geometry");
}

TEST_F(WorkingsTest, bracket_only_what_needs_it) {
    const Traced a = length("a", "a", 8);
    const Traced b = length("b", "b", 2);
    const Traced c = length("c", "c", 5);
    EXPECT_EQ(formula(a - (b + c)), "a − (b + c)");
    EXPECT_EQ(formula(a - b + c), "a − b + c");
    EXPECT_EQ(formula(a - (b - c)), "a − (b − c)");
    EXPECT_EQ(formula((a + b) * c), "(a + b)·c");
    EXPECT_EQ(formula(a / (b * c)), "a/(b·c)");
    EXPECT_EQ(formula(a / b * c), "a/b·c");
    EXPECT_EQ(formula(a / (b / c)), "a/(b/c)");
    EXPECT_EQ(formula(-(a + b)), "−(a + b)");
    EXPECT_EQ(formula(a * -b), "a·(−b)");
}

TEST_F(WorkingsTest, bracket_negative_numbers_inside_a_formula) {
    const Traced a = length("a", "a", 8);
    const Traced low = length("low", "d", -2.5);
    EXPECT_EQ(numbers(a - low), "8 − (-2.5)");
    EXPECT_EQ(numbers(a * low), "8·(-2.5)");
}

TEST_F(WorkingsTest, name_functions) {
    const Traced a = length("a", "a", 0.5);
    const Traced b = length("b", "b", 0.25);
    EXPECT_EQ(formula(sin(a) + cos(b)), "sin(a) + cos(b)");
    EXPECT_EQ(formula(2 * asin(a / (2 * b))), "2·asin(a/(2·b))");
    EXPECT_EQ(formula(acos(sqrt(abs(a)))), "acos(sqrt(abs(a)))");
    EXPECT_EQ(formula(smaller(a, larger(b, 1)) + ceil(a)), "min(a, max(b, 1)) + ceil(a)");
}

TEST_F(WorkingsTest, stop_at_figures_that_have_a_name) {
    const Traced a = length("a", "a", 8);
    const Traced b = workings.figure("sum", "s", Kind::length, a + 1, "geometry");
    const Figure& figure = named(b * b);
    EXPECT_EQ(figure.formula, "s·s");
    EXPECT_EQ(figure.numbers, "9·9");
    EXPECT_THAT(figure.inputs, ElementsAre("sum"));
}

TEST_F(WorkingsTest, enter_an_input_once) {
    const Traced first = length("case/width", "w", 520);
    const Traced again = length("case/width", "w", 520);
    EXPECT_THAT(named(first + again).inputs, ElementsAre("case/width"));
    EXPECT_EQ(workings.find("case/width")->origin.line, 3U);
}

TEST_F(WorkingsTest, refuse_a_figure_computed_twice_and_a_number_that_is_none) {
    const Traced a = length("a", "a", 0);
    workings.figure("sum", "s", Kind::length, a + 1, "geometry");
    EXPECT_THROW(workings.figure("sum", "s", Kind::length, a + 1, "geometry"), ContractError);
    EXPECT_THROW(workings.figure("no number", "x", Kind::length, 1 / a, "geometry"),
                 ContractError);
}

TEST_F(WorkingsTest, keep_to_their_own_numbers) {
    const Traced a = length("a", "a", 8);
    Workings others;
    const Traced b = others.input("b", "b", Kind::length, 2, {});
    EXPECT_THROW((void)(a + b), ContractError);
}

TEST_F(WorkingsTest, say_what_a_solved_figure_fulfils) {
    const Traced c = length("chord", "c", 520);
    const Traced s = length("length", "L", 560);
    workings.solved("sweep", "θ", Kind::angle, 1.25, "the angle with (θ/2)/sin(θ/2) = L/c", {s, c},
                    "geometry of the circle");
    const Figure& figure = *workings.find("sweep");
    EXPECT_EQ(figure.formula, "the angle with (θ/2)/sin(θ/2) = L/c");
    EXPECT_EQ(figure.numbers, "");
    EXPECT_THAT(figure.inputs, ElementsAre("length", "chord"));
}

TEST_F(WorkingsTest, find_nothing_under_an_unknown_path) {
    EXPECT_EQ(workings.find("nothing"), nullptr);
    EXPECT_THROW((void)explain(workings, "nothing"), ContractError);
}

// A traced number is the double of the same sums, bit for bit, whatever the operators.
TEST(Traced, carries_the_value_that_plain_numbers_give) {
    std::mt19937_64 random(20240501);
    std::uniform_real_distribution<double> draw(-3, 3);
    const auto sum = [](auto a, auto b) {
        using std::abs;
        using std::acos;
        using std::asin;
        using std::ceil;
        using std::cos;
        using std::sin;
        using std::sqrt;
        const auto unit = smaller(larger(a / 4, b / 4), decltype(a)(1));
        return sqrt(abs(a * b)) + asin(sin(a)) / (acos(cos(b)) + 1) - ceil(a - b) * unit - -a;
    };
    Workings workings;
    for (int i = 0; i < 1000; ++i) {
        const double a = draw(random);
        const double b = draw(random);
        const std::string at = std::to_string(i);
        const Traced traced = sum(workings.input("a" + at, "a", Kind::plain, a, {}),
                                  workings.input("b" + at, "b", Kind::plain, b, {}));
        ASSERT_EQ(traced.value(), sum(a, b)) << a << ' ' << b;
    }
}

TEST(FigureText, is_in_the_units_that_people_read) {
    EXPECT_EQ(figure_text(Kind::length, 550.97179063), "550.971791 mm");
    EXPECT_EQ(figure_text(Kind::angle, std::numbers::pi / 2), "90 deg");
    EXPECT_EQ(figure_text(Kind::ratio, 0.015), "1.5 %");
    EXPECT_EQ(figure_text(Kind::temperature, 165), "165 degC");
    EXPECT_EQ(figure_text(Kind::temperature_difference, 5), "5 K");
    EXPECT_EQ(figure_text(Kind::stress, 10.3), "10.3 MPa");
    EXPECT_EQ(figure_text(Kind::count, 4), "4");
    EXPECT_EQ(figure_text(Kind::plain, -0.0), "0");
    EXPECT_THROW((void)figure_text(Kind::length, std::nan("")), ContractError);
}

}  // namespace
}  // namespace bowfront
