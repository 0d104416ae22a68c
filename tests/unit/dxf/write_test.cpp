#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <limits>
#include <sstream>

#include "bowfront/base/contract.hpp"
#include "bowfront/dxf/dxf.hpp"
#include "support/dxf_patterns.hpp"

namespace bowfront::dxf {
namespace {

using test::name_board;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

const Stamp kStamp{"2024-03-01T09:00:00", "bowfront", "0.1.0"};

std::string written(const Pattern& pattern, Version version = Version::ac1015) {
    return write(pattern, "Name board", kStamp, {version});
}

/// The file's tags as `code value`, one for each line.
std::vector<std::string> tags(const std::string& text) {
    std::vector<std::string> found;
    std::istringstream lines(text);
    std::string code;
    std::string value;
    while (std::getline(lines, code, '\n') && std::getline(lines, value, '\n')) {
        EXPECT_TRUE(code.ends_with('\r') && value.ends_with('\r')) << code << value;
        code.erase(0, code.find_first_not_of(' '));
        code.pop_back();
        value.pop_back();
        found.push_back(value.empty() ? code : code + ' ' + value);
    }
    return found;
}

/// The tags of each entity on a layer, joined by commas, without handles.
std::vector<std::string> entities(const std::string& text, const std::string& layer) {
    const std::vector<std::string> all = tags(text);
    std::vector<std::string> found;
    auto at = std::find(all.begin(), all.end(), "2 ENTITIES") + 1;
    while (*at != "0 ENDSEC") {
        std::string entity = *at++;
        bool wanted = false;
        for (; !at->starts_with("0 "); ++at) {
            wanted = wanted || *at == "8 " + layer;
            if (!at->starts_with("5 ") && !at->starts_with("330 ")) {
                entity += ", " + *at;
            }
        }
        if (wanted) {
            found.push_back(entity);
        }
    }
    return found;
}

/// The value of a header variable.
std::string variable(const std::string& text, const std::string& name) {
    const std::vector<std::string> all = tags(text);
    const auto at = std::find(all.begin(), all.end(), "9 " + name);
    return at == all.end() ? "" : *(at + 1);
}

Pattern plate(Contour outer) {
    Pattern pattern;
    pattern.outline.outer = std::move(outer);
    pattern.thickness = 10;
    return pattern;
}

TEST(DxfLayer, is_named_by_operation_and_depth_without_a_full_stop) {
    EXPECT_EQ(recess_layer(6), "recess-6_00");
    EXPECT_EQ(recess_layer(12.346), "recess-12_35");
    EXPECT_EQ(bore_layer(3.5), "bore-3_50");
}

TEST(DxfLayer, refuses_a_depth_that_its_name_would_call_nothing) {
    EXPECT_THROW(static_cast<void>(recess_layer(0)), ContractError);
    EXPECT_THROW(static_cast<void>(recess_layer(0.004)), ContractError);
    EXPECT_THROW(static_cast<void>(bore_layer(-3)), ContractError);
    EXPECT_THROW(static_cast<void>(bore_layer(std::nan(""))), ContractError);
    EXPECT_THROW(static_cast<void>(bore_layer(1e300)), ContractError);
}

TEST(DxfWriter, writes_a_bore_as_a_circle) {
    EXPECT_THAT(entities(written(name_board()), "bore-12_00"),
                ElementsAre("0 CIRCLE, 100 AcDbEntity, 8 bore-12_00, 100 AcDbCircle, 10 6.0, "
                            "20 34.0, 30 0.0, 40 1.75"));
}

TEST(DxfWriter, writes_a_straight_scribe_as_a_line) {
    EXPECT_THAT(entities(written(name_board()), "scribe"),
                ElementsAre("0 LINE, 100 AcDbEntity, 8 scribe, 100 AcDbLine, 10 30.0, 20 20.0, "
                            "30 0.0, 11 90.0, 21 20.0, 31 0.0"));
}

TEST(DxfWriter, writes_a_curved_scribe_as_an_open_polyline_with_its_exact_ends) {
    Pattern pattern = plate(Contour::rectangle({0, 0}, {50, 50}));
    pattern.scribes = {Path{{{{10, 10}, {30, 10}, 0.5}, {{30, 10}, {30, 20}, 0}}}};
    EXPECT_THAT(entities(written(pattern), "scribe"),
                ElementsAre("0 LWPOLYLINE, 100 AcDbEntity, 8 scribe, 100 AcDbPolyline, 90 3, 70 0, "
                            "10 10.0, 20 10.0, 42 0.5, 10 30.0, 20 10.0, 10 30.0, 20 20.0"));
}

TEST(DxfWriter, writes_a_recess_as_a_closed_polyline_without_its_first_vertex_again) {
    EXPECT_THAT(entities(written(name_board()), "recess-2_50"),
                ElementsAre("0 LWPOLYLINE, 100 AcDbEntity, 8 recess-2_50, 100 AcDbPolyline, 90 4, "
                            "70 1, 10 10.0, 20 6.0, 10 110.0, 20 6.0, 10 110.0, 20 14.0, 10 10.0, "
                            "20 14.0"));
}

TEST(DxfWriter, writes_holes_clockwise_with_bulges) {
    EXPECT_THAT(
        entities(written(name_board()), "profile-inner"),
        ElementsAre("0 LWPOLYLINE, 100 AcDbEntity, 8 profile-inner, 100 AcDbPolyline, 90 4, "
                    "70 1, 10 43.0, 20 33.0, 10 77.0, 20 33.0, 42 -1.0, 10 77.0, 20 27.0, "
                    "10 43.0, 20 27.0, 42 -1.0"));
}

TEST(DxfWriter, writes_polylines_of_vertices_for_the_oldest_readers) {
    EXPECT_THAT(entities(written(name_board(), Version::r12), "profile-inner"),
                ElementsAre("0 POLYLINE, 8 profile-inner, 66 1, 10 0.0, 20 0.0, 30 0.0, 70 1",
                            "0 VERTEX, 8 profile-inner, 10 43.0, 20 33.0, 30 0.0",
                            "0 VERTEX, 8 profile-inner, 10 77.0, 20 33.0, 30 0.0, 42 -1.0",
                            "0 VERTEX, 8 profile-inner, 10 77.0, 20 27.0, 30 0.0",
                            "0 VERTEX, 8 profile-inner, 10 43.0, 20 27.0, 30 0.0, 42 -1.0",
                            "0 SEQEND, 8 profile-inner"));
}

TEST(DxfWriter, puts_title_size_and_stamp_beside_the_part) {
    EXPECT_THAT(entities(written(name_board(), Version::r12), "label"),
                ElementsAre("0 TEXT, 8 label, 10 30.0, 20 16.5, 30 0.0, 40 2.0, 1 BOARD 1",
                            "0 TEXT, 8 label, 10 130.0, 20 16.0, 30 0.0, 40 5.0, 1 Name board",
                            "0 TEXT, 8 label, 10 130.0, 20 8.0, 30 0.0, 40 5.0, "
                            "1 120.00 x 40.00 x 12.00 mm, 1:1",
                            "0 TEXT, 8 label, 10 130.0, 20 0.0, 30 0.0, 40 5.0, "
                            "1 bowfront 0.1.0, 2024-03-01T09:00:00"));
}

TEST(DxfWriter, declares_release_units_and_a_handle_above_all_others) {
    const std::string text = written(name_board());
    EXPECT_EQ(variable(text, "$ACADVER"), "1 AC1015");
    EXPECT_EQ(variable(text, "$INSUNITS"), "70 4");
    EXPECT_EQ(variable(text, "$MEASUREMENT"), "70 1");
    EXPECT_EQ(variable(text, "$DWGCODEPAGE"), "3 ANSI_1252");
    EXPECT_EQ(variable(text, "$EXTMIN"), "10 0.0");
    unsigned long most = 0;
    for (const std::string& tag : tags(text)) {
        if ((tag.starts_with("5 ") && tag != variable(text, "$HANDSEED")) ||
            tag.starts_with("105 ")) {
            most = std::max(most, std::stoul(tag.substr(tag.find(' ')), nullptr, 16));
        }
    }
    EXPECT_GT(most, 0U);
    EXPECT_EQ(std::stoul(variable(text, "$HANDSEED").substr(2), nullptr, 16), most + 1);
    EXPECT_EQ(variable(written(name_board(), Version::r12), "$ACADVER"), "1 AC1009");
}

TEST(DxfWriter, cuts_free_last_and_small_before_large) {
    Pattern pattern = test::case_base();
    pattern.outline.holes = {Contour::circle({100, 0}, 20), Contour::circle({-100, 0}, 10)};
    pattern.scribes = {Path{{{{0, 60}, {50, 60}, 0}}}};
    const Drawing drawing = read(written(pattern), "base.dxf");
    std::vector<std::string> order;
    for (const Entity& entity : drawing.entities) {
        if (entity.kind != Entity::Kind::text) {
            const double area = std::abs(entity.contour.area());
            order.push_back(entity.layer + ' ' + std::to_string(std::lround(area)));
        }
    }
    EXPECT_THAT(order, ElementsAre("scribe 0", "bore-20_00 13", "bore-20_00 13", "bore-9_53 127",
                                   "recess-2_00 779", "recess-2_00 2000", "recess-6_00 117398",
                                   "recess-6_00 124457", "profile-inner 314", "profile-inner 1257",
                                   "profile-outer 158267"));
}

TEST(DxfWriter, turns_outer_outlines_left_and_inner_ones_right_however_they_come) {
    for (const bool turned : {false, true}) {
        Pattern pattern = test::case_base();
        pattern.outline.holes = {Contour::circle({100, 0}, 20)};
        if (turned) {
            pattern.outline.outer = pattern.outline.outer.reversed();
            pattern.outline.holes[0] = pattern.outline.holes[0].reversed();
        }
        for (const Entity& entity : read(written(pattern), "base.dxf").entities) {
            if (entity.layer == "profile-outer") {
                EXPECT_GT(entity.contour.area(), 0);
            } else if (entity.layer == "profile-inner") {
                EXPECT_LT(entity.contour.area(), 0);
            }
        }
    }
}

TEST(DxfWriter, starts_an_outline_on_its_longest_straight) {
    const Drawing drawing = read(written(test::form_rib()), "rib.dxf");
    const Contour& outer = drawing.entities.back().contour;
    EXPECT_TRUE(outer.segment(0).straight());
    const Drawing board = read(written(name_board()), "board.dxf");
    // 110 mm along the bottom and the top, 30 mm at the sides: the first of the longest.
    EXPECT_EQ(board.entities.back().contour.vertices().front().at, (Point{5, 0}));
}

TEST(DxfWriter, splits_an_arc_of_more_than_half_a_turn) {
    const double bulge = 2;
    const Pattern pattern = plate(Contour({{{0, 0}, bulge}, {{10, 0}, 0}}));
    const std::string text = written(pattern);
    // Half of the quarter angle: tan(atan(2)/2) = (sqrt(5) - 1)/2.
    EXPECT_THAT(entities(text, "profile-outer"),
                ElementsAre(AllOf(HasSubstr("90 3, "), HasSubstr("42 0.61803398874989"))));
    const Drawing drawing = read(text, "lobe.dxf");
    EXPECT_EQ(difference(drawing, pattern), "");
}

TEST(DxfWriter, writes_letters_that_every_reader_has) {
    Pattern pattern = plate(Contour::rectangle({0, 0}, {50, 50}));
    pattern.labels = {{"Caf\xC3\xA9 Stra\xC3\x9F"
                       "e \xC3\xB8\xC5\x82 2\xC2\xBD\" \xE2\x80\x93 \xE8\x88\xB9 \xFF\xC3",
                       {5, 5},
                       2},
                      {"two\nlines\ttab", {5, 25}, 2}};
    const std::string text = written(pattern, Version::r12);
    EXPECT_THAT(text, HasSubstr("\r\nCafe Strasse ol 2 1/2\" - ? ??\r\n"));
    EXPECT_THAT(text, HasSubstr("\r\ntwo lines tab\r\n"));
}

TEST(DxfWriter, gives_every_layer_a_colour_of_its_own) {
    Pattern pattern = plate(Contour::rectangle({0, 0}, {500, 50}));
    for (int i = 0; i < 20; ++i) {
        pattern.bores.push_back({{10 + 20.0 * i, 20}, 4, 1.0 + i});
    }
    std::vector<std::string> colours;
    for (const std::string& tag : tags(written(pattern, Version::r12))) {
        if (tag.starts_with("62 ")) {
            colours.push_back(tag);
        }
    }
    std::sort(colours.begin() + 1, colours.end());  // the first is that of layer 0, which is empty
    EXPECT_EQ(colours.size(), 23U);
    EXPECT_EQ(std::adjacent_find(colours.begin() + 1, colours.end()), colours.end());
}

TEST(DxfWriter, gives_the_same_bytes_again) {
    for (const Version version : {Version::ac1015, Version::r12}) {
        EXPECT_EQ(written(test::random_pattern(7), version),
                  written(test::random_pattern(7), version));
    }
}

// The files in tests/golden/dxf were read through by hand against the format's reference. A change
// of theirs is accepted by copying the file that the message names.
void expect_golden(const std::string& name, const std::string& text) {
    std::ifstream file(std::string(BOWFRONT_SOURCE_DIR) + "/tests/golden/dxf/" + name,
                       std::ios::binary);
    const std::string golden{std::istreambuf_iterator<char>(file), {}};
    if (golden != text) {
        const std::string path = testing::TempDir() + name;
        std::ofstream(path, std::ios::binary) << text;
        ADD_FAILURE() << name << " is not what is written now: " << path;
    }
}

TEST(DxfWriter, writes_the_board_as_it_was_reviewed) {
    expect_golden("name_board.dxf", written(name_board()));
    expect_golden("name_board_r12.dxf", written(name_board(), Version::r12));
}

struct Defect {
    std::string name;
    Pattern pattern;
    std::string message;
};

std::vector<Defect> outline_defects() {
    const double inf = std::numeric_limits<double>::infinity();
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const Contour square = Contour::rectangle({0, 0}, {50, 50});
    std::vector<Defect> defects;
    const auto outer = [&defects](std::string name, Contour contour, std::string message) {
        defects.push_back({std::move(name), plate(std::move(contour)), std::move(message)});
    };
    outer("none", Contour{}, "not closed");
    outer("one vertex", Contour({{{0, 0}, 0}}), "not closed");
    outer("not a number", Contour({{{0, 0}, 0}, {{nan, 0}, 0}, {{9, 9}, 0}}), "not finite");
    outer("infinite", Contour({{{0, 0}, 0}, {{50, inf}, 0}, {{9, 9}, 0}}), "not finite");
    outer("bulge not a number", Contour({{{0, 0}, nan}, {{50, 0}, 0}, {{9, 9}, 0}}), "not finite");
    outer("too large to measure", Contour::rectangle({0, 0}, {1e200, 1e200}), "not finite");
    outer("tiny segment", Contour({{{0, 0}, 0}, {{50, 0}, 0}, {{50, 0.009}, 0}, {{0, 50}, 0}}),
          "shorter");
    outer("vertex twice", Contour({{{0, 0}, 0}, {{50, 0}, 0}, {{50, 0}, 0}, {{0, 50}, 0}}),
          "shorter");
    outer("bow tie", Contour({{{0, 0}, 0}, {{50, 50}, 0}, {{50, 0}, 0}, {{0, 60}, 0}}), "cross");
    outer("arc through a side",
          Contour({{{0, 10}, 0},
                   {{50, 10}, 0},
                   {{50, 30}, -1},
                   {{0, 30}, 0},
                   {{0, 55}, 0},
                   {{-60, 55}, 0}}),
          "cross");
    outer(
        "spike",
        Contour(
            {{{0, 0}, 0}, {{50, 0}, 0}, {{50, 50}, 0}, {{50, 90}, 0}, {{50, 50}, 0}, {{0, 50}, 0}}),
        "cross");
    outer("neighbours that meet twice",
          Contour({{{0, 0}, 0}, {{50, 0}, 0.5}, {{20, -10}, 0}, {{0, -10}, 0}}), "cross");
    outer("corner on a side",
          Contour({{{0, 0}, 0}, {{50, 0}, 0}, {{50, 50}, 0}, {{25, 0}, 0}, {{0, 50}, 0}}), "cross");
    outer("there and back", Contour({{{0, 0}, 0}, {{50, 0}, 0}}), "no area");
    outer("an arc there and back", Contour({{{0, 0}, 0.5}, {{50, 0}, -0.5}}), "no area");
    const auto hole = [&](std::string name, std::vector<Contour> holes, std::string message) {
        Pattern pattern = plate(square);
        pattern.outline.holes = std::move(holes);
        defects.push_back({std::move(name), std::move(pattern), std::move(message)});
    };
    hole("hole through the edge", {Contour::circle({50, 25}, 5)}, "cross");
    hole("hole that touches the edge", {Contour::rectangle({40, 20}, {50, 30})}, "cross");
    hole("holes that cross", {Contour::circle({20, 20}, 5), Contour::circle({26, 20}, 5)}, "cross");
    hole("hole twice", {Contour::circle({20, 20}, 5), Contour::circle({20, 20}, 5).reversed()},
         "cross");
    return defects;
}

std::vector<Defect> inner_defects() {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const Contour area = Contour::rectangle({10, 10}, {20, 20});
    std::vector<Defect> defects;
    const auto add = [&defects](std::string name, std::string message, auto change) {
        Pattern pattern = plate(Contour::rectangle({0, 0}, {50, 50}));
        change(pattern);
        defects.push_back({std::move(name), std::move(pattern), std::move(message)});
    };
    add("recess twice", "twice", [&area](Pattern& pattern) {
        const Contour turned({{{20, 20}, 0}, {{20, 10}, 0}, {{10, 10}, 0}, {{10, 20}, 0}});
        pattern.recesses = {{{area, {}}, 5}, {{turned, {}}, 5.001}};
    });
    add("recess without depth", "depth", [&area](Pattern& pattern) {
        pattern.recesses = {{{area, {}}, 0}};
    });
    add("bore twice", "twice", [](Pattern& pattern) {
        pattern.bores = {{{9, 9}, 4, 6}, {{30, 9}, 4, 6}, {{9, 9}, 4, 6}};
    });
    add("bore without size", "smaller", [](Pattern& pattern) { pattern.bores = {{{9, 9}, 0, 6}}; });
    add("bore nowhere", "not finite", [nan](Pattern& pattern) {
        pattern.bores = {{{nan, 9}, 4, 6}};
    });
    add("scribe twice, once backwards", "twice", [](Pattern& pattern) {
        pattern.scribes = {Path{{{{5, 5}, {9, 5}, 0}}}, Path{{{{9, 5}, {5, 5}, 0}}}};
    });
    add("scribe with a gap", "gap", [](Pattern& pattern) {
        pattern.scribes = {Path{{{{5, 5}, {9, 5}, 0}, {{9.001, 5}, {9, 9}, 0}}}};
    });
    add("scribe of nothing", "empty", [](Pattern& pattern) { pattern.scribes = {Path{}}; });
    add("scribe of a point", "shorter", [](Pattern& pattern) {
        pattern.scribes = {Path{{{{5, 5}, {5, 5}, 0}}}};
    });
    add("label nowhere", "not finite", [nan](Pattern& pattern) {
        pattern.labels = {{"A", {nan, 0}, 5}};
    });
    add("label without height", "height", [](Pattern& pattern) {
        pattern.labels = {{"A", {5, 5}, 0}};
    });
    add("label without text", "empty", [](Pattern& pattern) {
        pattern.labels = {{"", {5, 5}, 5}};
    });
    add("no thickness", "thickness", [](Pattern& pattern) { pattern.thickness = 0; });
    return defects;
}

void expect_refused(const std::vector<Defect>& defects) {
    for (const Defect& defect : defects) {
        try {
            static_cast<void>(written(defect.pattern));
            ADD_FAILURE() << defect.name << " was written";
        } catch (const ContractError& error) {
            EXPECT_THAT(error.what(), HasSubstr(defect.message)) << defect.name;
        }
    }
}

TEST(DxfWriter, refuses_outlines_that_would_be_cut_wrong) {
    expect_refused(outline_defects());
}

TEST(DxfWriter, refuses_other_lines_that_would_be_cut_wrong) {
    expect_refused(inner_defects());
}

TEST(DxfWriter, lets_lines_of_two_operations_lie_on_each_other) {
    const Contour square = Contour::rectangle({0, 0}, {50, 50});
    Pattern pattern = plate(square);
    pattern.recesses = {{{square, {}}, 2}};            // the whole face
    pattern.bores = {{{9, 9}, 4, 6}, {{9, 9}, 4, 8}};  // in two steps
    pattern.recesses.push_back(
        {{Contour::rectangle({0, 10}, {5, 20}), {}}, 3});  // open at the edge
    EXPECT_EQ(difference(read(written(pattern), "steps.dxf"), pattern), "");
}

TEST(DxfWriter, tells_lines_of_one_box_and_length_apart) {
    Pattern pattern = plate(Contour::rectangle({0, 0}, {50, 50}));
    pattern.scribes = {Path{{{{10, 10}, {20, 20}, 0}}}, Path{{{{10, 20}, {20, 10}, 0}}}};
    EXPECT_EQ(difference(read(written(pattern), "cross.dxf"), pattern), "");
}

TEST(DxfWriter, takes_tangent_arcs_for_neighbours_and_not_for_a_crossing) {
    for (const double radius : {1.0, 100.0, 10000.0}) {
        const Pattern pattern =
            plate(test::rounded_plate({0, 0}, {3 * radius, 2.5 * radius}, radius));
        EXPECT_THAT(written(pattern), Not(testing::IsEmpty())) << radius;
    }
}

}  // namespace
}  // namespace bowfront::dxf
