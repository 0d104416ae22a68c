#include "bowfront/io/defaults.hpp"

#include <algorithm>
#include <array>

#include "bowfront/base/contract.hpp"

namespace bowfront::io {
namespace {

constexpr std::string_view kPractice = "common practice, no source";
constexpr std::string_view kClassM = "ISO 2768-1, class m (medium)";
constexpr std::string_view kIndoors = "a heated room through the year; common practice, no source";

constexpr std::string_view kSlope =
    "a slope of the grain of about 1 in 5, which leaves 55 % of the bending strength: Wood Handbook "
    "FPL-GTR-190, table 5-12, from memory, not verified; the limit itself is common practice";

constexpr auto kRule = Default::Kind::rule;

constexpr std::array kTable = {
    Default{"/units", "mm", "bare lengths are millimetres unless the file says inches"},
    Default{"/plan/depth", "the plan's width", "a quarter-round is as deep as it is wide", kRule},
    Default{"/plan/arcs", "2", "the arcs of an S"},
    Default{"/plan/front/panes", "1", "one pane a side"},
    Default{"/plan/ends/panes", "1", "one pane a side"},
    Default{"/plan/sides/*/bow", "out", "most bows look outwards"},
    Default{"/plan/sides/*/chord_error", "0.01 mm",
            "under what any cutter holds; common practice, no source"},
    Default{"/plan/sides/*/run/*/chord_error", "0.01 mm",
            "under what any cutter holds; common practice, no source"},
    Default{"/plan/sides/*/run/*/bow", "out", "most bows look outwards"},
    Default{"/plan/sides/*/panes", "1", "one pane a side"},
    Default{"/frame/base/build", "plate", "one board"},
    Default{"/frame/base/grain", "width", "boards run along the longer way of most cases"},
    Default{"/frame/base/sawn", "flat", "the board that most timber yards sell, and that moves most"},
    Default{"/frame/base/inset", "the base's margin", "a rail lies to both sides of the glazing line alike",
            kRule},
    Default{"/frame/base/board_width", "150 mm", kPractice},
    Default{"/frame/base/corner", "mitre", "no end grain shows; common practice, no source"},
    Default{"/frame/base/run_out", "12 deg", kSlope},
    Default{"/frame/base/segments", "as many as boards and grain ask for",
            "fewest pieces that keep both limits", kRule},
    Default{"/frame/top/build", "plate", "one board"},
    Default{"/frame/top/grain", "width", "boards run along the longer way of most cases"},
    Default{"/frame/top/sawn", "flat", "the board that most timber yards sell, and that moves most"},
    Default{"/frame/top/inset", "the top's margin", "a rail lies to both sides of the glazing line alike",
            kRule},
    Default{"/frame/top/board_width", "150 mm", kPractice},
    Default{"/frame/top/corner", "mitre", "no end grain shows; common practice, no source"},
    Default{"/frame/top/run_out", "12 deg", kSlope},
    Default{"/frame/top/segments", "as many as boards and grain ask for",
            "fewest pieces that keep both limits", kRule},
    Default{"/frame/loading", "slide-in",
            "panes slide down the posts' grooves and the top goes on last"},
    Default{"/frame/post/section", "fitted", "it stands square to both sides at any corner"},
    Default{"/frame/post/hold", "groove", "the hold of panes that slide in"},
    Default{"/frame/post/sawn", "any",
            "how the rings lie is not known: the way that is worse for each limit counts"},
    Default{"/frame/post/joint", "butt", "posts end on the faces of base and top, screwed and glued"},
    Default{"/frame/post/joint_size",
            "a third of the post's width for a tenon, a stock dowel up to a quarter of it, or what "
            "the grooves leave room for",
            kPractice, kRule},
    Default{"/frame/post/depth", "the post's width", "a post is as deep as it is wide", kRule},
    Default{"/frame/bead/width", "8 mm", kPractice},
    Default{"/panes/*/bend", "heat", "a curved pane is formed hot unless it is said to be cold"},
    Default{"/panes/*/along", "length", "the extrusion's direction is not given"},
    Default{"/panes/*/blank", "allow-shrink", "cut once, larger by the shrink"},
    Default{"/panes/*/blank/trim", "10 mm", kPractice},
    Default{"/blank/trim", "10 mm", kPractice},
    Default{"/shelves/*/clearance", "3 mm", kPractice},
    Default{"/shelves/*/support", "pins", "a pin in each post is the least work"},
    Default{"/fit/end_clearance", "3 mm", kPractice},
    Default{"/fit/top_clearance", "4 mm", kPractice},
    Default{"/fit/loading_clearance", "1 mm", kPractice},
    Default{"/fit/least_engagement", "the larger of 3 mm and the pane's thickness", kPractice,
            kRule},
    Default{"/tolerance/cut", "m", kClassM},
    Default{"/tolerance/groove_depth", "m", kClassM},
    Default{"/tolerance/groove_width", "0.1 mm",
            "what a true cutter leaves; common practice, no source"},
    Default{"/tolerance/opening", "m", kClassM},
    Default{"/tolerance/sheet_thickness", "the tolerance of the sheet's own standard",
            "the sheet has not been measured", kRule},
    Default{"/webs/web", "4 mm", kPractice},
    Default{"/webs/cheek", "6 mm", kPractice},
    Default{"/webs/floor", "1/3", kPractice},
    Default{"/form/skin/thickness", "3 mm", kPractice},
    Default{"/form/cover/thickness", "0.6 mm", kPractice},
    Default{"/form/overrun", "60 mm", kPractice},
    Default{"/form/overhang", "20 mm", kPractice},
    Default{"/form/ribs/thickness", "18 mm", kPractice},
    Default{"/form/ribs/depth", "70 mm", kPractice},
    Default{"/form/ribs/max_spacing", "180 mm", kPractice},
    Default{"/form/ribs/foot", "60 mm", kPractice},
    Default{"/form/fence/depth", "25 mm", kPractice},
    Default{"/form/fence/clearance", "1 mm", kPractice},
    Default{"/form/joint_allowance", "0.2 mm", kPractice},
    Default{"/oven/accuracy", "5 C",
            "a forced-air oven holds about 5 C, by a sheet maker's forming guide"},
    Default{"/service/built_at/temperature", "20 C", kPractice},
    Default{"/service/built_at/humidity", "50 %", kPractice},
    Default{"/service/temperature/0", "15 C", kIndoors},
    Default{"/service/temperature/1", "28 C", kIndoors},
    Default{"/service/humidity/0", "35 %", kIndoors},
    Default{"/service/humidity/1", "60 %", kIndoors},
    Default{"/service/push", "100 N",
            "a hand in the middle of a pane; common practice, no source"},
    Default{"/stock/*/count", "as many as needed", "the stock is not counted", kRule},
    Default{"/cutter/diameter", "3.175 mm", "a cutter of 1/8 in; common practice, no source"},
    Default{"/cutter/spacing", "8 mm", kPractice},
    Default{"/shop/step", "0.5 mm, or 1/32 in where the file is in inches",
            "what a saw's fence is set to; common practice, no source", kRule},
    Default{"/contents/height", "half the clear height",
            "where the centre of gravity of what stands in the case is, is not given", kRule},
    Default{"/access/held", "pegs", "a top that nothing locates slides when it is leant on"},
    Default{"/access/peg/diameter", "6 mm", kPractice},
    Default{"/access/peg/length", "24 mm", kPractice},
    Default{"/access/groove/width", "the pane's thickness and 2 mm",
            "a groove 2 mm wider than what slides in it is seen in craft practice", kRule},
    Default{"/access/groove/depth/base", "5 mm", kPractice},
    Default{"/access/groove/depth/top", "15 mm", kPractice},
    Default{"/access/groove/web", "6 mm", "the least between two sliding grooves in craft practice"},
    Default{"/access/clearance", "2 mm", kPractice},
    Default{"/access/lift_clearance", "2.5 mm", kPractice},
    Default{"/access/overlap", "30 mm", kPractice},
    Default{"/access/pull", "25 mm", kPractice},
    Default{"/access/hinge", "start", "the left of who stands before that side"},
    Default{"/access/pivot", "20 mm", kPractice},
    Default{"/access/pin", "6 mm", kPractice},
    Default{"/access/angle", "90 deg", "far enough to reach in; common practice, no source"},
    Default{"/stand/fixed", "none", "the case stands free unless it is said to be fixed"},
    Default{"/prices/waste", "15 %",
            "offcuts and what is sawn away; common practice, no source"},
    Default{"/shop/allowance/length", "25 mm", kPractice},
    Default{"/shop/allowance/width", "6 mm", kPractice},
    Default{"/shop/allowance/thickness", "3 mm", kPractice},
};

}  // namespace

std::span<const Default> case_defaults() noexcept {
    return kTable;
}

const Default& default_of(std::string_view pointer) {
    const auto row = std::find_if(kTable.begin(), kTable.end(), [pointer](const Default& entry) {
        return entry.pointer == pointer;
    });
    BOWFRONT_EXPECTS(row != kTable.end());
    return *row;
}

}  // namespace bowfront::io
