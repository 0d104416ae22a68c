#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/access.hpp"
#include "objection_list.hpp"

namespace bowfront::fit {
namespace {

// Off the glazing line; positive to the inside of the case.
constexpr double kStopSection = 10;  // mm, square: a strip that is nailed on. Common practice.
constexpr double kPegGrid = 2;       // mm, of the places that are tried for a peg

// Coordinates of a flat side: along its glazing line from the start, and to the inside.
class SideFrame {
  public:
    SideFrame(const GlazingLine& line, std::size_t place)
        : origin_(line.corners[place]),
          along_(line.sides[place].front().tangent(0)),
          inward_(left_of(along_)) {}

    [[nodiscard]] Point at(double along, double inward) const {
        return origin_ + along_ * along + inward_ * inward;
    }
    // Counter-clockwise.
    [[nodiscard]] Contour rectangle(double from, double to, double low, double high) const {
        const std::array corners{at(from, low), at(to, low), at(to, high), at(from, high)};
        return Contour::polygon(corners);
    }
    [[nodiscard]] Contour groove(double from, double to, double off, double width) const {
        return band({{at(from, off), at(to, off), 0}}, width, BandEnd::round, BandEnd::round);
    }

  private:
    Point origin_;
    Point along_;
    Point inward_;
};

class AccessPlan {
  public:
    AccessPlan(const Case& c, const AccessSums<double>& sums, const Layout& layout)
        : c_(c), sums_(sums), side_(layout.line, index(sums.side)) {}

    AccessLayout plan() {
        start_ = sums_.pane->start_in_post;
        end_ = start_ + sums_.pane->opening_length;
        if (const auto* const pane = c_.access->as<LiftOutPane>()) {
            add_groove(0, *pane->groove.width);
            add_pane("", start_ + *pane->clearance, end_ - *pane->clearance, 0);
            widen(*pane->groove.width / 2);
        } else if (const auto* const pair = c_.access->as<SlidingPair>()) {
            sliding(*pair);
        } else {
            door(*c_.access->as<PivotDoor>());
        }
        return std::move(out_);
    }

  private:
    // Its round ends lie under the posts, so that square corners of a pane find its full width.
    void add_groove(double off, double width) {
        out_.grooves.push_back(side_.groove(start_ - width / 2, end_ + width / 2, off, width));
    }
    void add_pane(const std::string& which, double from, double to, double off) {
        const double half = sums_.pane->thickness / 2;
        out_.panes.push_back({"pane-" + std::string(side_text(sums_.side)) + which,
                              side_.rectangle(from, to, off - half, off + half)});
    }
    void widen(double half) { out_.clear = side_.rectangle(start_, end_, -half, half); }

    // The pane at the start stands in the outer groove.
    void sliding(const SlidingPair& pair) {
        const double width = *pair.groove.width;
        const double off = (width + *pair.web) / 2;
        const double length = sums_.grooved->length;
        add_groove(-off, width);
        add_groove(off, width);
        add_pane("-start", start_, start_ + length, -off);
        add_pane("-end", end_ - length, end_, off);
        widen(off + width / 2);
    }

    void door(const PivotDoor& door) {
        const double gap = *door.clearance;
        const bool at_start = *door.hinge == HingeEnd::start;
        const double half = sums_.pane->thickness / 2;
        add_pane("", start_ + gap, end_ - gap, 0);
        out_.pin = side_.at(at_start ? start_ + *door.pivot : end_ - *door.pivot, 0);
        out_.turn = at_start ? -*door.angle : *door.angle;
        // Behind the pane on the post that it shuts against.
        const double inner = half + 1;  // a felt's thickness between them
        out_.stop = at_start ? side_.rectangle(end_ - kStopSection, end_, inner,
                                               inner + kStopSection)
                             : side_.rectangle(start_, start_ + kStopSection, inner,
                                               inner + kStopSection);
        widen(half);
    }

    const Case& c_;
    const AccessSums<double>& sums_;
    SideFrame side_;
    double start_ = 0;
    double end_ = 0;
    AccessLayout out_;
};

// The place in a post with the most timber about a peg, in the post and between the top's grooves.
PegPlace peg_place(const PostLayout& post, const PlateLayout& top, double diameter) {
    const Region& section = post.section.front();
    const Box box = section.box();
    PegPlace best{post.at, 0};
    for (double x = box.low.x; x <= box.high.x; x += kPegGrid) {
        for (double y = box.low.y; y <= box.high.y; y += kPegGrid) {
            const Point at{x, y};
            double timber = distance_to_edge(section.outer, at) - diameter / 2;
            for (const PlateGroove& groove : top.grooves) {
                timber = std::min(timber, distance_to_edge(groove.band, at) - diameter / 2);
            }
            const auto in_groove = [&](const PlateGroove& groove) {
                return where(groove.band, at) != Side::outside;
            };
            if (timber > best.timber && where(section, at) == Side::inside &&
                std::none_of(top.grooves.begin(), top.grooves.end(), in_groove)) {
                best = {at, timber};
            }
        }
    }
    return best;
}

}  // namespace

AccessLayout access_layout(const Case& c, const AccessSums<double>& sums, const Layout& layout) {
    if (const auto* const top = c.access->as<LiftOffTop>()) {
        AccessLayout out;
        if (*top->held == TopHeld::pegs) {
            for (const PostLayout& post : layout.posts) {
                out.pegs.push_back(peg_place(post, layout.top, *top->peg_diameter));
            }
        }
        return out;
    }
    return AccessPlan(c, sums, layout).plan();
}

double swing_gap(const AccessLayout& access, const Layout& layout) {
    constexpr double kDegree = std::numbers::pi / 180;
    const Contour& door = access.panes.front().outline;
    std::vector<double> angles;
    for (double angle = 0; angle < std::abs(access.turn); angle += kDegree) {
        angles.push_back(angle);
    }
    angles.push_back(std::abs(access.turn));
    // A corner comes nearest to a post's face where its ray from the pin lies along the door's line
    // as it was shut.
    const Segment line = door.segment(0);
    for (const Vertex& corner : door.vertices()) {
        const Point ray = corner.at - *access.pin;
        const double along = std::abs(dot(ray, line.tangent(0)));
        const double across = std::abs(cross(line.tangent(0), ray));
        const double angle = std::atan2(across, along);
        if (angle < std::abs(access.turn)) {
            angles.push_back(angle);
        }
    }
    double least = HUGE_VAL;
    for (const double angle : angles) {
        const double turn = access.turn < 0 ? -angle : angle;
        const Point turned = Motion{turn, {}, false}(*access.pin);
        const Contour open = door.moved({turn, *access.pin - turned, false});
        for (const PostLayout& post : layout.posts) {
            least = std::min(least, gap(open, post.outline));
        }
    }
    return least;
}

std::vector<Objection> access_objections(const Case& c) {
    ObjectionList list;
    if (!c.access) {
        return list.take();
    }
    for (const auto& [name, plate] :
         {std::pair{"base", &c.frame.base}, std::pair{"top", &c.frame.top}}) {
        if (plate->build.rails()) {
            list.add("/frame/" + std::string(name) + "/build",
                     "what opens is cut into one board, and this one is a ring of rails",
                     "\"plate\", or no \"access\"");
        }
    }
    const auto* const top = c.access->as<LiftOffTop>();
    if (top != nullptr && *top->held == TopHeld::pegs && *c.frame.post.joint != PostJoint::butt) {
        list.add("/access/held",
                 "pegs stand in the posts' upper ends, and so do their " +
                     std::string(joint_text(*c.frame.post.joint)) + "s",
                 "\"panes\", or the posts' joint \"butt\"");
    }
    if (!list.empty() || !c.access_pane) {
        return list.take();
    }
    const AccessSums<double> sums = solve_access(c);
    const double opening = sums.pane->opening_length;
    const auto told = [&](double size) { return rounded_text(size, 2) + " mm"; };
    if (opening <= 0) {
        list.add("/frame/post/width", "the posts leave no opening on the side that opens",
                 "take thinner posts");
    } else if (sums.grooved) {
        const double length = sums.grooved->length;
        if (length <= *c.access_pane->thickness || length > opening) {
            list.add("/access", "panes of " + told(length) + " in an opening of " + told(opening),
                     "give smaller clearances, or less overlap than the opening");
        }
    } else if (sums.door->length <= 0 || sums.door->height <= 0 ||
               *c.access->as<PivotDoor>()->pivot >= opening / 2) {
        list.add("/access", "no door is left in an opening of " + told(opening),
                 "give smaller clearances, and a pivot nearer to its post");
    }
    return list.take();
}

}  // namespace bowfront::fit
