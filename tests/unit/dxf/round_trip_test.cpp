#include <algorithm>
#include <cmath>

#include "bowfront/dxf/dxf.hpp"
#include "support/dxf_patterns.hpp"

namespace bowfront::dxf {
namespace {

using testing::HasSubstr;

Drawing round_trip(const Pattern& pattern, Version version = Version::ac1015) {
    return read(write(pattern, "Part", {}, {version}), "part.dxf");
}

TEST(DxfRoundTrip, brings_random_patterns_back) {
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        const Pattern pattern = test::random_pattern(seed);
        for (const Version version : {Version::ac1015, Version::r12}) {
            EXPECT_EQ(difference(round_trip(pattern, version), pattern), "") << "seed " << seed;
        }
    }
}

TEST(DxfRoundTrip, brings_the_parts_of_a_case_back) {
    for (const Pattern& pattern :
         {test::name_board(), test::form_rib(), test::case_base(), test::pane_blank()}) {
        const Drawing drawing = round_trip(pattern);
        EXPECT_EQ(difference(drawing, pattern), "");
        EXPECT_EQ(drawing.version, "AC1015");
        EXPECT_EQ(drawing.units, 4);
    }
}

TEST(DxfRoundTrip, keeps_every_digit) {
    Pattern pattern;
    pattern.thickness = 3;
    pattern.outline.outer = Contour({{{0, 0}, 0},
                                     {{100.0 / 3, 0}, 1.0 / 3},
                                     {{100.0 / 7, std::sqrt(2000.0)}, 1e-7},
                                     {{0, 10 + 1e-9}, 0}});
    const Drawing drawing = round_trip(pattern);
    EXPECT_EQ(drawing.entities.back().contour.vertices(), pattern.outline.outer.vertices());
}

TEST(DxfRoundTrip, puts_the_lower_left_corner_at_the_origin) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const Box box = round_trip(test::random_pattern(seed)).entities.back().contour.box();
        EXPECT_NEAR(box.low.x, 0, 1e-12);  // the rounding of coordinates of some metres
        EXPECT_NEAR(box.low.y, 0, 1e-12);
    }
}

/// What a fault in the file would do to the drawing.
struct Change {
    std::string name;
    void (*make)(Drawing&);
    std::string message;
};

Entity& on_layer(Drawing& drawing, const std::string& layer) {
    return *std::find_if(drawing.entities.begin(), drawing.entities.end(),
                         [&layer](const Entity& entity) { return entity.layer == layer; });
}

void nudge(Drawing& drawing, const std::string& layer, double by) {
    Contour& contour = on_layer(drawing, layer).contour;
    std::vector<Vertex> vertices = contour.vertices();
    vertices[0].at.x += by;
    contour = Contour(vertices);
}

TEST(DxfDifference, tells_what_is_not_as_in_the_pattern) {
    const std::vector<Change> changes = {
        {"inches", [](Drawing& d) { d.units = 1; }, "millimetres"},
        {"undeclared layer", [](Drawing& d) { d.layers.pop_back(); }, "not declared"},
        {"wrong layer", [](Drawing& d) { on_layer(d, "scribe").layer = "profile-inner"; },
         "not in the file: layer scribe"},
        {"moved vertex", [](Drawing& d) { nudge(d, "recess-2_50", -2e-9); },
         "not in the file: layer recess-2_50"},
        {"lost outline", [](Drawing& d) { d.entities.pop_back(); },
         "not in the file: layer profile-outer"},
        {"doubled outline", [](Drawing& d) { d.entities.push_back(d.entities.back()); },
         "not in the pattern: layer profile-outer"},
        {"turned outline",
         [](Drawing& d) { d.entities.back().contour = d.entities.back().contour.reversed(); },
         "not in the file: layer profile-outer"},
        {"mirrored recess",
         [](Drawing& d) {
             Contour& recess = on_layer(d, "recess-2_50").contour;
             recess = recess.moved({0, {120, 0}, true}).reversed();
         },
         "not in the file: layer recess-2_50"},
        {"turned scribe",
         [](Drawing& d) {
             Segment& scribe = on_layer(d, "scribe").path.segments[0];
             scribe = {{scribe.from.x, scribe.to.y}, {scribe.to.x, scribe.from.y}, 0};
         },
         "not in the file: layer scribe"},
        {"circle as outline",
         [](Drawing& d) { on_layer(d, "bore-12_00").kind = Entity::Kind::closed; },
         "not in the file: layer bore-12_00"},
        {"moved bore",
         [](Drawing& d) {
             Contour& bore = on_layer(d, "bore-12_00").contour;
             bore = bore.moved({0, {0, 1e-8}, false});
         },
         "not in the file: layer bore-12_00"},
        {"flattened arc",
         [](Drawing& d) {
             std::vector<Vertex> vertices = d.entities.back().contour.vertices();
             vertices[1].bulge = 0;
             d.entities.back().contour = Contour(vertices);
         },
         "not in the file: layer profile-outer"},
        {"flatter corners, all alike",
         [](Drawing& d) {
             std::vector<Vertex> vertices = d.entities.back().contour.vertices();
             for (Vertex& vertex : vertices) {
                 vertex.bulge *= 1 - 1e-5;
             }
             d.entities.back().contour = Contour(vertices);
         },
         "not in the file: layer profile-outer"},
        {"changed label", [](Drawing& d) { on_layer(d, "label").text = "BOARD 2"; },
         "not in the file: label BOARD 1"},
        {"text on the part",
         [](Drawing& d) {
             d.entities.push_back(on_layer(d, "label"));
             d.entities.back().text = "sold";
         },
         "not in the pattern: text sold"},
    };
    Pattern board = test::name_board();
    // No symmetry that would hide a mirrored line.
    board.recesses[0].area.outer = Contour({{{110, 56}, 0}, {{210, 56}, 0}, {{110, 64}, 0}});
    board.scribes[0].segments[0].to.y += 4;
    for (const Change& change : changes) {
        Drawing drawing = round_trip(board);
        ASSERT_EQ(difference(drawing, board), "");
        change.make(drawing);
        EXPECT_THAT(difference(drawing, board), HasSubstr(change.message)) << change.name;
    }
}

}  // namespace
}  // namespace bowfront::dxf
