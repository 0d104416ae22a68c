#include <algorithm>
#include <cmath>
#include <limits>

#include "check_groups.hpp"
#include "room_to_edge.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

void check_posts_on(const Layout& layout, std::string_view plate_name, const PlateLayout& plate,
                    CheckList& list) {
    for (const PostLayout& post : layout.posts) {
        list.at_least({Code::frame_post_on_plate, "post-on-plate",
                       std::string(plate_name) + "/" + post.name,
                       "as drawn"},
                      room_to_edge(post.outline, *plate.outline, Side::outside), 0, [&](double missing) {
                          return "make the " + std::string(plate_name) + "'s margin larger by " +
                                 at_least_text(missing * std::sqrt(2.0));
                      });
    }
}

// Timber across a post's groove, from its cheek to the post's outside, measured at half depth and
// at the bottom: towards the mouth of a round or oblique face it always runs out.
double cheek(const PostLayout& post, const PostGroove& groove, double half_width, double side) {
    double least = std::numeric_limits<double>::infinity();
    for (const double share : {0.5, 1.0}) {
        const Point at = groove.mouth + groove.inward * (groove.depth * share) +
                         groove.interior * (side * half_width);
        if (where(post.outline, at) == Side::outside) {
            return 0;
        }
        const double far = post.outline.box().width() + post.outline.box().height();
        const Segment ray{at, at + groove.interior * (side * far), 0};
        for (const Segment& edge : post.outline.segments()) {
            for (const Point p : meetings(ray, edge)) {
                least = std::min(least, distance(at, p));
            }
        }
    }
    return least;
}

void check_post_grooves(const Case& c, const PostLayout& post, CheckList& list) {
    const std::string& corner = post.name;
    const double half = c.frame.groove.width.value / 2;
    const bool rabbet = c.frame.post.hold.value == Hold::rabbet;
    for (const PostGroove& groove : post.grooves) {
        double least = cheek(post, groove, half, -1);
        if (!rabbet) {  // the inner side of a rabbet is closed by a bead
            least = std::min(least, cheek(post, groove, half, 1));
        }
        list.at_least({Code::frame_cheek, "cheek",
                       "post-" + corner + "/" + std::string(side_text(groove.side)), "as drawn"},
                      least, c.webs.cheek.value, [](double missing) {
                          // A fitted post ends at the width of the one side and at the depth of
                          // the other: both have to give.
                          return "make the posts wider and deeper by " + at_least_text(2 * missing);
                      });
    }
    if (post.grooves.size() == 2 && !rabbet) {
        list.at_least({Code::frame_web, "web", "post-" + corner, "between the two grooves"},
                      gap(post.grooves[0].hold, post.grooves[1].hold), c.webs.web.value,
                      [](double missing) {
                          return "make the post grooves shallower by " + at_least_text(missing) +
                                 ", or the posts wider by twice that";
                      });
    }
}

void check_plate_grooves(const Case& c, std::string_view name, const GlazingLine& line,
                         const PlateLayout& plate, CheckList& list) {
    const std::string plate_name(name);
    std::vector<const PlateGroove*> by_place(line.size(), nullptr);
    for (const PlateGroove& groove : plate.grooves) {
        by_place[index(groove.side)] = &groove;
    }
    for (const PlateGroove& groove : plate.grooves) {
        list.at_least({Code::frame_cheek, "cheek",
                       plate_name + "/" + std::string(side_text(groove.side)),
                       "from the groove to the edge"},
                      room_to_edge(groove.band, *plate.outline, Side::outside), c.webs.cheek.value,
                      [&](double missing) {
                          return "make the " + plate_name + "'s margin larger by " +
                                 at_least_text(missing);
                      });
        const PlateGroove* const other = by_place[line.next(index(groove.side))];
        const bool told = line.size() == 2 && index(groove.side) == 1;  // the other way round
        if (other != nullptr && other->side != groove.side && !told) {
            // Named in the order of the case file's panes.
            const CaseSide& first = &groove < other ? groove.side : other->side;
            const CaseSide& second = &groove < other ? other->side : groove.side;
            list.at_least({Code::frame_web, "web",
                           plate_name + "/" + std::string(side_text(first)) + "-" +
                               std::string(side_text(second)),
                           "between the two grooves' ends"},
                          gap(groove.band, other->band), c.webs.web.value, [](double missing) {
                              return "make the post grooves shallower by " +
                                     at_least_text(missing) + ", or take a thinner cutter";
                          });
        }
    }
}

void check_floor(const Case& c, std::string_view name, const Plate& plate, double depth,
                 double tolerance, CheckList& list) {
    const double floor = plate.thickness.value - depth;
    list.enter({Code::frame_floor, "floor", std::string(name), "under the grooves"}, floor,
               floor - tolerance, c.webs.floor.value * plate.thickness.value, Bound::at_least,
               [&](double missing) {
                   return "make the " + std::string(name) + "'s grooves shallower by " +
                          at_least_text(missing) + ", or the " + std::string(name) + " thicker";
               });
}

double depth_tolerance(const Case& c, double depth) {
    const ToleranceSpec& spec = c.tolerance.groove_depth.value;
    return spec.by_class ? class_tolerance(*spec.by_class, depth)
                         : spec.value;
}

}  // namespace

void check_frame(const Case& c, const Layout& layout, CheckList& list) {
    check_posts_on(layout, "base", layout.base, list);
    check_posts_on(layout, "top", layout.top, list);
    const Groove& groove = c.frame.groove;
    list.at_least({Code::frame_cutter, "cutter", "groove", "as drawn"}, groove.width.value,
                  c.cutter.diameter.value, [&](double) {
                      return "take a cutter of " + mm(groove.width.value) + " or thinner";
                  });
    for (const PostLayout& post : layout.posts) {
        check_post_grooves(c, post, list);
    }
    check_plate_grooves(c, "base", layout.line, layout.base, list);
    check_plate_grooves(c, "top", layout.line, layout.top, list);
    check_floor(c, "base", c.frame.base, groove.base_depth.value,
                depth_tolerance(c, groove.base_depth.value), list);
    check_floor(c, "top", c.frame.top, groove.top_depth.value,
                depth_tolerance(c, groove.top_depth.value), list);
}

}  // namespace bowfront::fit
