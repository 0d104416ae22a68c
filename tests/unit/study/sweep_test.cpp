#include "bowfront/study/sweep.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "bowfront/base/error.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/model/values.hpp"
#include "bowfront/study/sweep_plot.hpp"
#include "support/sample_case.hpp"

namespace bowfront::study {
namespace {

using ::testing::EndsWith;
using ::testing::HasSubstr;
using ::testing::StartsWith;

Axis axis_of(const Case& c, const std::string& pointer, const Steps& steps) {
    Axis axis{pointer, steps, {}, [steps](std::size_t place) {
                  return AxisValue{steps.number(place), {}};
              }};
    std::size_t index = 0;
    visit_values(c, [&](double, const Origin& origin) {
        if (origin.pointer == pointer) {
            axis.places.push_back(index);
        }
        ++index;
    });
    EXPECT_FALSE(axis.places.empty()) << pointer;
    return axis;
}

// 15 by 21 variants: more than the parts that two threads hold at once.
Sweep grid() {
    Sweep sweep;
    sweep.base = sample::pilot_boat();
    sweep.axes = {axis_of(sweep.base, "/plan/front/radius", Steps("240", "520", "20")),
                  axis_of(sweep.base, "/fit/end_clearance", Steps("0", "10", "0.5"))};
    return sweep;
}

std::string table_of(const Sweep& sweep) {
    std::string table;
    run(sweep, [&](const TablePart& part) { table += part.text; });
    return table;
}

std::vector<std::vector<std::string>> rows_of(const std::string& table) {
    std::vector<std::vector<std::string>> rows(1, {std::string()});
    bool quoted = false;
    for (const char c : table) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            rows.back().emplace_back();
        } else if (c == '\n' && !quoted) {
            rows.push_back({std::string()});
        } else if (c != '\r') {
            rows.back().back() += c;
        }
    }
    rows.pop_back();
    return rows;
}

TEST(Sweep, table_does_not_depend_on_the_threads) {
    Sweep sweep = grid();
    const std::string alone = table_of(sweep);
    for (const std::size_t jobs : {2U, 4U, 64U}) {
        sweep.jobs = jobs;
        EXPECT_EQ(table_of(sweep), alone) << jobs;
    }
}

TEST(Sweep, shards_joined_are_the_table) {
    Sweep sweep = grid();
    const std::string whole = table_of(sweep);
    for (const std::size_t of : {2U, 7U, 400U}) {  // the last has empty ones
        std::string joined;
        for (std::size_t i = 1; i <= of; ++i) {
            sweep.shard = {i, of};
            joined += table_of(sweep);
        }
        EXPECT_EQ(joined, whole) << of;
    }
}

TEST(Sweep, last_axis_varies_fastest_and_every_line_has_every_field) {
    const auto rows = rows_of(table_of(grid()));
    ASSERT_EQ(rows.size(), 1U + 15 * 21);
    EXPECT_EQ(rows[1][0], "240");
    EXPECT_EQ(rows[1][1], "0");
    EXPECT_EQ(rows[2][0], "240");
    EXPECT_EQ(rows[2][1], "0.5");
    EXPECT_EQ(rows[22][0], "260");
    for (const auto& row : rows) {
        EXPECT_EQ(row.size(), rows[0].size());
    }
}

TEST(Sweep, figures_are_those_of_the_case_with_the_numbers_set) {
    const auto rows = rows_of(table_of(grid()));
    Case c = sample::pilot_boat();
    c.plan.front->value.value = 460;
    c.fit.end_clearance.value = 2.5;
    const auto sums = fit::solve(c);
    const auto& row = rows[1 + 11 * 21 + 5];
    ASSERT_EQ(row[0], "460");
    ASSERT_EQ(row[1], "2.5");
    const auto column = [&](const std::string& name) {
        const auto found = std::find(rows[0].begin(), rows[0].end(), name);
        EXPECT_NE(found, rows[0].end()) << name;
        return row[static_cast<std::size_t>(found - rows[0].begin())];
    };
    const auto& pane = *sums.pane(CaseSide::front);
    EXPECT_EQ(column("panes/front/blank/length"), number_text(pane.blank_length));
    EXPECT_EQ(column("panes/front/edges/start/engagement/least"),
              number_text(pane.edge(PaneEdge::start).engagement_least));
    EXPECT_EQ(pane.edge(PaneEdge::start).settled, pane.edge(PaneEdge::end).settled);
    EXPECT_EQ(pane.edge(PaneEdge::start).engagement_least,
              pane.edge(PaneEdge::end).engagement_least);
    EXPECT_EQ(column("panes/back/room/sideways/worst"),
              number_text(sums.pane(CaseSide::back)->room_sideways.worst));
}

// The frame is kept where no varied number can change it. A table of one line has nothing to keep, so
// each line of a sweep must be that of a sweep over its own two numbers alone.
TEST(Sweep, lines_are_those_of_sweeps_that_have_no_frame_to_keep) {
    const Case base = sample::pilot_boat();
    const auto steps_round = [](double value) {
        const auto text = [](double number) { return rounded_text(number, 6); };
        // An angle, a ratio, a length or a temperature: a little more, and more than that.
        const double step = value == 0 ? 0.01 : std::abs(value) / 50;
        return Steps(text(value), text(value + 2 * step), text(step));
    };
    std::vector<std::pair<std::string, double>> places;
    visit_values(base, [&](double value, const Origin& origin) {
        places.emplace_back(origin.pointer, value);
    });
    std::size_t varied = 0;
    std::size_t webs = 0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        // Every number of the case, with one of the frame varying slowly beside it: of post grooves
        // so deep that the web between them has the least margin, and stands in the table.
        const auto& [pointer, value] = places[i];
        if (pointer.empty() || pointer == "/frame/groove/depth/post") {
            continue;
        }
        Sweep sweep;
        sweep.base = base;
        sweep.axes = {axis_of(base, "/frame/groove/depth/post", Steps("16", "16.5", "0.5")),
                      axis_of(base, pointer, steps_round(value))};
        const auto rows = rows_of(table_of(sweep));
        ASSERT_EQ(rows.size(), 1 + sweep.count()) << pointer;
        webs += static_cast<std::size_t>(
            std::count_if(rows.begin(), rows.end(), [](const auto& row) { return row[4] == "web"; }));
        for (std::size_t line = 0; line < sweep.count(); ++line) {
            sweep.shard = {line + 1, sweep.count()};
            EXPECT_EQ(rows_of(table_of(sweep)).back(), rows[line + 1]) << pointer << ' ' << line;
        }
        ++varied;
    }
    EXPECT_GT(varied, 50U);
    EXPECT_GT(webs, varied);
}

TEST(Sweep, variant_that_cannot_be_built_says_why_and_has_no_figures) {
    const auto rows = rows_of(table_of(grid()));
    const auto& row = rows[1];  // a radius of 240 over a width of 520
    EXPECT_EQ(row[2], "impossible");
    EXPECT_TRUE(std::all_of(row.begin() + 3, row.end() - 1,
                            [](const std::string& field) { return field.empty(); }));
    EXPECT_THAT(row.back(), HasSubstr("longer than the diameter"));
    EXPECT_NE(rows[1 + 21][2], "impossible");  // and the next radius can
}

TEST(Sweep, value_with_a_fault_leaves_the_other_variants_as_they_are) {
    Sweep sweep;
    sweep.base = sample::pilot_boat();
    sweep.axes = {axis_of(sweep.base, "/plan/width", Steps("500", "540", "20"))};
    const auto right = rows_of(table_of(sweep));
    sweep.axes[0].value = [](std::size_t place) {
        return place == 1 ? AxisValue{0, "not, \"ever\""}
                          : AxisValue{500 + 20 * static_cast<double>(place), {}};
    };
    const std::string table = table_of(sweep);
    EXPECT_THAT(table, HasSubstr(",\"/plan/width: not, \"\"ever\"\"\"\r\n"));
    const auto rows = rows_of(table);
    EXPECT_EQ(rows[1], right[1]);
    EXPECT_EQ(rows[2][1], "impossible");
    EXPECT_EQ(rows[3], right[3]);
}

TEST(Sweep, contradiction_of_the_file_makes_a_variant_impossible) {
    Sweep sweep;
    sweep.base = sample::pilot_boat();
    sweep.axes = {axis_of(sweep.base, "/plan/width", Steps("500", "540", "20"))};
    sweep.contradiction = [](const Case& c) {
        return c.plan.width.value == 520 ? std::string("no; yes") : std::string();
    };
    const auto rows = rows_of(table_of(sweep));
    EXPECT_EQ(rows[1][1], "warn");
    EXPECT_EQ(rows[2][1], "impossible");
    EXPECT_EQ(rows[2].back(), "no; yes");
}

TEST(Sweep, what_a_thread_or_the_taker_throws_ends_it) {
    Sweep sweep = grid();
    sweep.jobs = 3;
    int taken = 0;
    EXPECT_THROW(run(sweep,
                     [&](const TablePart&) {
                         if (++taken == 2) {
                             throw std::runtime_error("disk full");
                         }
                     }),
                 std::runtime_error);
    EXPECT_EQ(taken, 2);
    sweep.axes[0].value = [](std::size_t) -> AxisValue { throw std::logic_error("broken"); };
    EXPECT_THROW((void)table_of(sweep), std::logic_error);
}

TEST(Sweep, chance_is_a_column_where_it_is_asked_for) {
    Sweep sweep;
    sweep.base = sample::pilot_boat();
    sweep.axes = {axis_of(sweep.base, "/fit/end_clearance", Steps("3", "9", "6"))};
    sweep.chance = ChanceOptions{500, 1};
    const auto rows = rows_of(table_of(sweep));
    ASSERT_EQ(rows[0][5], "first_time_fit");
    const auto chance = first_time_fit(sweep.base, fit::solve(sweep.base), *sweep.chance);
    EXPECT_EQ(rows[1][5], number_text(chance.fit.value));
    EXPECT_EQ(rows[2][5], "0");
}

TEST(SweepPlot, draws_one_and_two_axes_and_marks_what_fails) {
    Sweep sweep = grid();
    SweepPlot field(sweep);
    run(sweep, [&](const TablePart& part) { field.add(part); });
    EXPECT_THAT(field.svg(), StartsWith("<svg "));
    EXPECT_THAT(field.svg(), EndsWith("</svg>\n"));
    EXPECT_THAT(field.svg(), HasSubstr("a check fails"));
    EXPECT_THAT(field.svg(), HasSubstr("can't be built"));
    sweep.axes.erase(sweep.axes.begin());
    SweepPlot curve(sweep);
    run(sweep, [&](const TablePart& part) { curve.add(part); });
    EXPECT_THAT(curve.svg(), HasSubstr("<polyline"));
    EXPECT_THAT(curve.svg(), HasSubstr(">/fit/end_clearance</text>"));
}

TEST(SweepPlot, refuses_what_it_cannot_draw) {
    Sweep sweep = grid();
    sweep.shard = {1, 2};
    EXPECT_THROW(SweepPlot{sweep}, InputError);
    sweep = grid();
    sweep.axes.push_back(axis_of(sweep.base, "/plan/width", Steps("500", "501", "1")));
    EXPECT_THROW(SweepPlot{sweep}, InputError);
}

}  // namespace
}  // namespace bowfront::study
