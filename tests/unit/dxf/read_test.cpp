#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/error.hpp"
#include "bowfront/dxf/dxf.hpp"
#include "support/dxf_patterns.hpp"

namespace bowfront::dxf {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

/// A file of one section of entities, its tags split by commas for reading's sake.
std::string file_of(const std::string& entities) {
    std::string text = "0,SECTION,2,ENTITIES," + entities + ",0,ENDSEC,0,EOF,";
    std::replace(text.begin(), text.end(), ',', '\n');
    return text;
}

Entity only(const std::string& entities) {
    const Drawing drawing = read(file_of(entities), "one.dxf");
    EXPECT_THAT(drawing.entities, SizeIs(1));
    return drawing.entities.at(0);
}

/// The first fault of a text, or one without code's text where there is none.
Diagnostic fault_of(const std::string& text) {
    try {
        static_cast<void>(read(text, "bad.dxf"));
    } catch (const InputError& error) {
        EXPECT_THAT(error.diagnostics(), SizeIs(1));
        return error.diagnostics().at(0);
    }
    ADD_FAILURE() << "read without a fault:\n" << text;
    return {};
}

TEST(DxfReader, reads_each_kind_of_entity) {
    const Entity line = only("0,LINE,8,a,10,1.5,20,2,11,3,21,2");
    EXPECT_EQ(line.layer, "a");
    EXPECT_EQ(line.kind, Entity::Kind::open);
    EXPECT_DOUBLE_EQ(line.path.length(), 1.5);

    const Entity circle = only("0,CIRCLE,8,a,10,4,20,5,40,2");
    EXPECT_EQ(circle.kind, Entity::Kind::circle);
    EXPECT_DOUBLE_EQ(circle.contour.area(), 4 * std::numbers::pi);
    EXPECT_DOUBLE_EQ(circle.contour.box().low.x, 2);

    const Entity text = only("0,TEXT,8,label,10,1,20,2,40,5,1, two words ");
    EXPECT_EQ(text.kind, Entity::Kind::text);
    EXPECT_EQ(text.text, " two words ");
    EXPECT_EQ(text.at, (Point{1, 2}));

    const Entity closed = only("0,LWPOLYLINE,8,a,90,2,70,1,10,0,20,0,42,1,10,2,20,0,42,1");
    EXPECT_EQ(closed.kind, Entity::Kind::closed);
    EXPECT_DOUBLE_EQ(closed.contour.area(), std::numbers::pi);

    const Entity open = only("0,LWPOLYLINE,8,a,90,2,70,0,10,0,20,0,42,1,10,2,20,0");
    EXPECT_EQ(open.kind, Entity::Kind::open);
    EXPECT_DOUBLE_EQ(open.path.length(), std::numbers::pi);

    const Entity old = only(
        "0,POLYLINE,8,a,66,1,70,1,0,VERTEX,8,a,10,0,20,0,42,1,0,VERTEX,8,a,10,2,20,0,42,1,"
        "0,SEQEND,8,a");
    EXPECT_EQ(old.kind, Entity::Kind::closed);
    EXPECT_DOUBLE_EQ(old.contour.area(), std::numbers::pi);
}

TEST(DxfReader, runs_arcs_counter_clockwise_from_start_to_end) {
    const Entity quarter = only("0,ARC,8,a,10,0,20,0,40,2,50,350,51,80");
    EXPECT_NEAR(quarter.path.length(), std::numbers::pi, 1e-14);  // 4 ulp of a length of π
    EXPECT_NEAR(quarter.path.box().high.x, 2, 1e-15);             // 2 ulp
    const Entity most = only("0,ARC,8,a,10,0,20,0,40,2,50,80,51,350");
    EXPECT_NEAR(most.path.length(), 3 * std::numbers::pi, 1e-14);
    EXPECT_THAT(most.path.segments, SizeIs(2));
    const Entity whole = only("0,ARC,8,a,10,0,20,0,40,2,50,30,51,30");
    EXPECT_NEAR(whole.path.length(), 4 * std::numbers::pi, 1e-14);
}

TEST(DxfReader, splits_arcs_over_half_a_turn) {
    const Entity lobe = only("0,LWPOLYLINE,8,a,90,2,70,1,10,0,20,0,42,2,10,2,20,0");
    EXPECT_THAT(lobe.contour.vertices(), SizeIs(3));
    // c = 2 and bulge 2: radius c(1 + 4)/8, sweep 4·atan 2; the area less the triangle outside.
    const double radius = 1.25;
    const double sweep = 4 * std::atan(2.0);
    const double area = radius * radius / 2 * (sweep - std::sin(sweep));
    EXPECT_NEAR(lobe.contour.area(), area, 1e-14);  // 4 ulp of 4
}

TEST(DxfReader, reads_what_other_programs_write_differently) {
    const std::string text =
        "\xEF\xBB\xBF"
        "999\r\nmade elsewhere\r\n  0\r\nSECTION\r\n  2\r\nHEADER\r\n  9\r\n$ACADVER\r\n"
        "  1\r\nAC1032\r\n  9\r\n$INSUNITS\r\n 70\r\n     1\r\n  0\r\nENDSEC\r\n  0\r\nSECTION\r\n"
        "  2\r\nTHUMBNAILIMAGE\r\n310\r\nFFFF\r\n  0\r\nENDSEC\r\n  0\r\nSECTION\r\n  "
        "2\r\nTABLES\r\n"
        "  0\r\nTABLE\r\n  2\r\nLAYER\r\n 70\r\n 1\r\n  0\r\nLAYER\r\n  2\r\ncut\r\n 62\r\n 1\r\n"
        "  0\r\nENDTAB\r\n  0\r\nENDSEC\r\n  0\r\nSECTION\r\n  2\r\nENTITIES\r\n  0\r\nLINE\r\n"
        "  8\r\ncut\r\n 62\r\n 5\r\n1001\r\nAPP\r\n1070\r\n 3\r\n 10\r\n+1.0E+01\r\n 20\r\n -.5 "
        "\r\n"
        " 11\r\n 20.\r\n 21\r\n0\r\n  0\r\nENDSEC\r\n  0\r\nEOF";
    const Drawing drawing = read(text, "other.dxf");
    EXPECT_EQ(drawing.version, "AC1032");
    EXPECT_EQ(drawing.units, 1);
    EXPECT_THAT(drawing.layers, ElementsAre("cut"));
    ASSERT_THAT(drawing.entities, SizeIs(1));
    EXPECT_EQ(drawing.entities[0].path.segments[0].from, (Point{10, -0.5}));
}

TEST(DxfReader, names_file_line_and_fault) {
    const Diagnostic fault = fault_of(file_of("0,LINE,8,a,10,1,20,2,11,nothing,21,4"));
    EXPECT_EQ(fault.file, "bad.dxf");
    EXPECT_EQ(fault.line, 14U);
    EXPECT_EQ(fault.code, Code::input_syntax);
    EXPECT_THAT(fault.text(), HasSubstr("bad.dxf:14:1: BF-IN-002: 'nothing' is no number"));
}

TEST(DxfReader, refuses_entities_that_it_does_not_know_by_name) {
    const Diagnostic fault = fault_of(file_of("0,LINE,8,a,10,1,20,2,11,3,21,4,0,SPLINE,8,a"));
    EXPECT_EQ(fault.code, Code::input_value);
    EXPECT_EQ(fault.line, 18U);
    EXPECT_THAT(fault.found, HasSubstr("'SPLINE'"));
}

struct BadEntity {
    std::string entity;
    Code code;
    std::string found;
};

TEST(DxfReader, refuses_entities_that_cannot_be_cut) {
    const std::vector<BadEntity> cases = {
        {"0,LINE,10,1,20,2,11,3,21,4", Code::input_missing_key, "no layer"},
        {"0,LINE,8,,10,1,20,2,11,3,21,4", Code::input_missing_key, "no layer"},
        {"0,LINE,8,a,10,1,20,2,11,3", Code::input_missing_key, "no group 21"},
        {"0,LINE,8,a,10,1,20,2,11,1,21,2", Code::input_value, "without length"},
        {"0,LINE,8,a,10,1,20,2,30,5,11,1,21,2,31,5", Code::input_value, "plane"},
        {"0,CIRCLE,8,a,10,1,20,2,40,0", Code::input_value, "not positive"},
        {"0,CIRCLE,8,a,10,1,20,2,40,-3", Code::input_value, "not positive"},
        {"0,CIRCLE,8,a,10,1,20,2,40,3,210,0,220,0,230,-1", Code::input_value, "plane"},
        {"0,ARC,8,a,10,1,20,2,40,3,50,0", Code::input_missing_key, "no group 51"},
        {"0,ARC,8,a,10,1,20,2,40,1e-9,50,0,51,1e-9", Code::input_value, "without length"},
        {"0,TEXT,8,a,10,1,20,2,40,3", Code::input_missing_key, "no group 1"},
        {"0,LWPOLYLINE,8,a,90,0,70,1", Code::input_value, "fewer than two"},
        {"0,LWPOLYLINE,8,a,90,1,70,1,10,0,20,0", Code::input_value, "fewer than two"},
        {"0,LWPOLYLINE,8,a,90,3,70,1,10,0,20,0,10,5,20,0", Code::input_contradiction, "2 vertices"},
        {"0,LWPOLYLINE,8,a,90,-1,70,1,10,0,20,0,10,5,20,0", Code::input_contradiction, "2 vert"},
        {"0,LWPOLYLINE,8,a,70,1,10,0,20,0,10,5,20,0", Code::input_contradiction, "2 vertices"},
        {"0,LWPOLYLINE,8,a,90,2,70,1,10,0,10,5,20,0", Code::input_missing_key, "no y"},
        {"0,LWPOLYLINE,8,a,90,2,70,1,10,0,20,0,10,5", Code::input_missing_key, "no y"},
        {"0,LWPOLYLINE,8,a,90,3,70,1,10,0,20,0,10,5,20,0,10,5,20,0", Code::input_value,
         "one place"},
        {"0,LWPOLYLINE,8,a,90,2,70,1,10,0,20,0,42,1e8,10,5,20,0", Code::input_limit, "bulge"},
        {"0,LWPOLYLINE,8,a,90,2,38,4,70,1,10,0,20,0,10,5,20,0", Code::input_value, "plane"},
        {"0,POLYLINE,8,a,66,1,70,8,0,VERTEX,8,a,10,0,20,0,0,SEQEND", Code::input_value, "mesh"},
        {"0,POLYLINE,8,a,66,1,70,1,0,VERTEX,8,a,10,0,20,0", Code::input_syntax, "not ended"},
        {"0,POLYLINE,8,a,66,1,70,1,0,SEQEND", Code::input_value, "fewer than two"},
        {"0,VERTEX,8,a,10,0,20,0", Code::input_value, "'VERTEX'"},
    };
    for (const BadEntity& bad : cases) {
        const Diagnostic fault = fault_of(file_of(bad.entity));
        EXPECT_EQ(fault.code, bad.code) << bad.entity;
        EXPECT_THAT(fault.found, HasSubstr(bad.found)) << bad.entity;
        EXPECT_GE(fault.line, 6U) << bad.entity;
    }
}

TEST(DxfReader, refuses_numbers_that_are_none) {
    for (const std::string number :
         {"nan", "inf", "-inf", "1e999", "-1e999", "1e-999", "1;5", "0x10", "", "--1", "+-1", "1 2",
          "1.2.3", "\xEF\xBC\x91", "1e", "12mm"}) {
        const Diagnostic fault = fault_of(file_of("0,CIRCLE,8,a,10," + number + ",20,2,40,3"));
        EXPECT_EQ(fault.code, Code::input_syntax) << number;
        EXPECT_EQ(fault.line, 10U) << number;
    }
    EXPECT_EQ(fault_of(file_of("0,CIRCLE,8,a,10,1.1e9,20,2,40,3")).code, Code::input_limit);
    std::string comma = file_of("0,CIRCLE,8,a,10,1;5,20,2,40,3");
    comma.replace(comma.find(';'), 1, ",");
    EXPECT_EQ(fault_of(comma).code, Code::input_syntax);
}

TEST(DxfReader, refuses_what_is_no_drawing) {
    const std::vector<std::string> texts = {
        "",
        "\n",
        "0",
        "0\n",
        "0\nEOF",  // draws nothing
        "hello\nworld\n",
        "0\nSECTION\n0\nEOF\n",
        "0\nSECTION\n2\nENTITIES\n0\nEOF\n",
        "0\nSECTION\n2\nENTITIES\n0\nENDSEC\n",
        "0\nSECTION\n2\nBLOCKS\n0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n",
        "0\nSECTION\n2\nBLOCKS\n0\nEOF\n0\nENDSEC\n"
        "0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n",
        "0\nLINE\n8\na\n0\nEOF\n",
        "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4.0\n0\nENDSEC\n0\nEOF\n",
        "{\"bowfront\": 1}",
        std::string("0\0SECTION\n", 10),
        "AutoCAD Binary DXF\r\n\x1a",
        std::string(1000, '\n'),
        std::string(1000, '\0'),
    };
    for (const std::string& text : texts) {
        const Diagnostic fault = fault_of(text);
        EXPECT_TRUE(fault.code == Code::input_syntax || fault.code == Code::input_missing_key)
            << text;
        EXPECT_GE(fault.line, 1U) << text;
    }
}

TEST(DxfReader, keeps_hostile_bytes_out_of_its_messages) {
    const Diagnostic fault = fault_of(file_of("0,\x1b[2J" + std::string(500, 'X') + ",8,a"));
    EXPECT_LT(fault.found.size(), 100U);
    EXPECT_EQ(fault.found.find('\x1b'), std::string::npos);
}

TEST(DxfReader, refuses_files_past_its_bounds) {
    std::string large((std::size_t{64} << 20U) + 1, ' ');
    EXPECT_EQ(fault_of(large).code, Code::input_limit);

    constexpr std::size_t kMost = 1'000'000;
    const std::string circle = "0\nCIRCLE\n8\na\n10\n1\n20\n1\n40\n1\n";
    std::string many = "0\nSECTION\n2\nENTITIES\n";
    many.reserve(many.size() + (kMost + 1) * circle.size());
    for (std::size_t i = 0; i <= kMost; ++i) {
        many += circle;
    }
    const Diagnostic fault = fault_of(many);
    EXPECT_EQ(fault.code, Code::input_limit);
    EXPECT_THAT(fault.wanted, HasSubstr("million"));
}

// Every prefix of a file is refused but those that only lack the last line's end.
TEST(DxfReader, refuses_a_file_that_is_cut_off_anywhere) {
    for (const Version version : {Version::ac1015, Version::r12}) {
        const std::string text = write(test::name_board(), "Name board", {}, {version});
        const std::size_t whole = text.rfind("EOF") + 3;
        for (std::size_t length = 0; length < whole; ++length) {
            try {
                static_cast<void>(read(std::string_view(text).substr(0, length), "cut.dxf"));
                ADD_FAILURE() << "read though cut off after " << length << " bytes";
            } catch (const InputError&) {
            }
        }
        EXPECT_EQ(difference(read(std::string_view(text).substr(0, whole), "cut.dxf"),
                             test::name_board()),
                  "");
    }
}

// Any byte may be wrong: the reader refuses, or reads a drawing that can be compared.
TEST(DxfReader, stands_any_byte_changed) {
    const Pattern board = test::name_board();
    const std::string text = write(board, "Name board", {}, {Version::r12});
    test::Dice dice(11);
    int refused = 0;
    int told_apart = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        std::string changed = text;
        changed[at] = static_cast<char>(dice.below(256));
        try {
            told_apart += difference(read(changed, "changed.dxf"), board).empty() ? 0 : 1;
        } catch (const InputError&) {
            ++refused;
        }
    }
    EXPECT_GT(refused, 0);
    EXPECT_GT(told_apart, 0);
}

}  // namespace
}  // namespace bowfront::dxf
