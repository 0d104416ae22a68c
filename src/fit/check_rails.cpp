#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/fit/rail_joint.hpp"
#include "check_groups.hpp"
#include "room_to_edge.hpp"

namespace bowfront::fit {
namespace {

constexpr double kDegree = std::numbers::pi / 180;

// One plate of rails.
struct RailPlate {
    const Case& c;
    std::string name;
    const Plate& plate;
    const PlateLayout& layout;
    double depth;  // of its grooves

    [[nodiscard]] std::string of(std::string_view part) const {
        return name + "/" + std::string(part);
    }
};

void check_boards(const RailPlate& rails, CheckList& list) {
    for (const RailPiece& piece : rails.layout.ring->pieces) {
        list.enter({Code::frame_rail_board, "rail-board", rails.of(piece.name),
                    "extent across its grain"},
                   piece.width, piece.width, rails.plate.build.board_width.value, Bound::at_most,
                   [&](double) {
                       return std::string("take boards of ") + at_least_text(piece.width) +
                              (piece.curved ? ", or more segments" : ", or a smaller inset");
                   });
    }
}

// The worst piece of each curved rail.
void check_run_out(const RailPlate& rails, CheckList& list) {
    const auto& pieces = rails.layout.ring->pieces;
    for (auto first = pieces.begin(); first != pieces.end();) {
        const auto end = std::find_if(first, pieces.end(), [&](const RailPiece& piece) {
            return piece.side != first->side;
        });
        if (first->curved) {
            const double most = std::max_element(first, end, [](const auto& a, const auto& b) {
                                    return a.run_out < b.run_out;
                                })->run_out / kDegree;
            list.enter({Code::frame_rail_run_out, "rail-run-out",
                        rails.of(side_text(first->side)), "grain along each piece's chord", "deg"},
                       most, most, rails.plate.build.run_out.value / kDegree, Bound::at_most,
                       [&](double) {
                           return "cut the rail into more than " +
                                  std::to_string(end - first) + " segments";
                       });
        }
        first = end;
    }
}

void check_inner_edge(const RailPlate& rails, const Layout& layout, CheckList& list) {
    const Contour& inner = rails.layout.ring->inner;
    const auto larger_inset = [&](double missing) {
        return "make the " + rails.name + "'s inset larger by " + at_least_text(missing);
    };
    for (const PlateGroove& groove : rails.layout.grooves) {
        double least = gap(groove.band, inner);
        if (groove.bead) {
            least = std::min(least, gap(*groove.bead, inner));
        }
        const bool runs_out = where(inner, groove.band.vertices().front().at) == Side::inside;
        list.at_least({Code::frame_cheek, "rail-cheek", rails.of(side_text(groove.side)),
                       "from the groove to the inner edge"},
                      runs_out ? -least : least, rails.c.webs.cheek.value, larger_inset);
    }
    for (const PostLayout& post : layout.posts) {
        list.at_least({Code::frame_post_on_plate, "post-on-rail",
                       rails.of(post.name), "over the inner edge"},
                      room_to_edge(post.outline, inner, Side::inside), 0, [&](double missing) {
                          return larger_inset(missing * std::numbers::sqrt2);
                      });
    }
}

void check_tongue(const RailPlate& rails, CheckList& list) {
    const double tongue = rail_tongue(rails.plate.thickness.value, rails.depth).thickness;
    list.at_least({Code::frame_rail_joint, "rail-tongue", rails.name,
                   "a third of the floor under the grooves", "mm",
                   "frame/" + rails.name + "/tongue/thickness"},
                  tongue, kLeastTongue, [&](double missing) {
                      return "make the " + rails.name + " thicker by " +
                             at_least_text(missing / kTongueShare) +
                             ", or its grooves shallower by as much";
                  });
}

void check_plate(const RailPlate& rails, const Layout& layout, CheckList& list) {
    if (!rails.layout.ring) {
        return;
    }
    check_boards(rails, list);
    check_run_out(rails, list);
    check_inner_edge(rails, layout, list);
    check_tongue(rails, list);
}

}  // namespace

void check_rails(const Case& c, const Layout& layout, CheckList& list) {
    const Groove& groove = c.frame.groove;
    check_plate({c, "base", c.frame.base, layout.base, groove.base_depth.value}, layout, list);
    check_plate({c, "top", c.frame.top, layout.top, groove.top_depth.value}, layout, list);
}

}  // namespace bowfront::fit
