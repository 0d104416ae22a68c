#include "bowfront/fit/section_clearance.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;
// Outlines that only touch share no more than this, mm².
constexpr double kTouching = 1e-6;

double length_of(const std::vector<Segment>& chain) {
    double length = 0;
    for (const Segment& s : chain) {
        length += s.length();
    }
    return length;
}

double area(const std::vector<Region>& regions) {
    double sum = 0;
    for (const Region& region : regions) {
        sum += region.area();
    }
    return sum;
}

bool apart(const Box& a, const Box& b) { return !within(a, b, 0); }

// One pane in one frame.
class Place {
  public:
    Place(const PaneSums<double>& pane, const PaneSection& section, const Layout& layout,
          const PaneState<double>& state)
        : pane_(pane),
          section_(section),
          layout_(layout),
          side_(layout.line.sides[index(pane.side)]),
          length_(length_of(side_)),
          groove_(*std::find_if(layout.base.grooves.begin(), layout.base.grooves.end(),
                                [&](const PlateGroove& each) { return each.side == pane.side; })),
          room_(groove_.bead ? unite({{*groove_.bead, {}}, {groove_.band, {}}}).front()
                             : Region{groove_.band, {}}),
          middle_((length_ + (pane.start_in_post - pane.end_in_post) * state.post) / 2),
          crown_(point_at(side_, middle_)),
          interior_(left_of(tangent_at(side_, middle_))),
          hollow_(pane.bow == Bow::out ? interior_ : interior_ * -1) {
        for (const PostLayout& post : layout.posts) {
            post_boxes_.push_back(post.outline.box());
        }
    }

    // Shifted towards the inside where it is curved.
    [[nodiscard]] SectionClearance shifted(double shift) const {
        const std::vector<Segment> line = mid_line(shift);
        return {post_clearance(line), base_clearance(line)};
    }

    // What a curved pane's faces leave at the cheeks of base and posts, where they come nearest to
    // them: at the crown, between it and the ends, at the mouths of the posts and at the ends.
    // Quickly told, to choose a shift by.
    [[nodiscard]] double at_cheeks(double shift) const {
        const std::vector<Segment> line = mid_line(shift);
        const Point centre = crown_ + hollow_ * section_.groove_radius;
        double least = HUGE_VAL;
        for (const double share : {0.25, 0.5, 0.75}) {
            const Point at = point_at(line, share * section_.length);
            least = std::min(least, at_base_cheeks(at, centre));
        }
        const double in_post = pane_.edge(PaneEdge::start).engagement;
        for (const PaneEdge end : {PaneEdge::start, PaneEdge::end}) {
            const double from = end == PaneEdge::start ? 0 : section_.length - in_post;
            for (const double along : {from, from + in_post}) {
                const Point at = point_at(line, along);
                const Point face = left_of(tangent_at(line, along)) * (section_.thickness / 2);
                least = std::min({least, at_base_cheeks(at, centre),
                                  at_post_cheeks(at + face, end), at_post_cheeks(at - face, end)});
            }
        }
        return least;
    }

  private:
    // The mid-line of a pane that nothing holds, laid in its groove so that crown and ends stand off
    // alike, on different sides; a curved one then shifted towards the inside.
    [[nodiscard]] std::vector<Segment> mid_line(double shift) const {
        // One of several pieces lies as its groove does, held there where it would not by itself:
        // how far it stands off is told by its radius error.
        if (!pane_.curved || pane_.is_run()) {
            return stretch(side_, middle_ - section_.length / 2, middle_ + section_.length / 2);
        }
        const double own = section_.own_radius;
        const double groove = section_.groove_radius;
        const double half = std::cos(section_.length / groove / 2);
        const double off = (own - groove) * (1 - half) / (1 + half);
        const double sweep = section_.length / own;
        const Point centre = crown_ + hollow_ * (off + own) + interior_ * shift;
        const double turned = pane_.bow == Bow::out ? sweep : -sweep;
        const double middle = std::atan2(-hollow_.y, -hollow_.x);
        std::vector<Segment> pieces;
        const int count = sweep > kPi ? 2 : 1;
        for (int i = 0; i < count; ++i) {
            pieces.push_back(arc_segment(centre, own, middle - turned / 2 + i * turned / count,
                                         turned / count));
        }
        return pieces;
    }

    [[nodiscard]] double at_base_cheeks(Point at, Point centre) const {
        return section_.play - std::abs(distance(at, centre) - section_.groove_radius);
    }
    // A rabbet has no inner cheek.
    [[nodiscard]] double at_post_cheeks(Point at, PaneEdge end) const {
        double least = HUGE_VAL;
        for (const PostGroove& groove : layout_.post(pane_.side, end).grooves) {
            if (groove.side == pane_.side) {
                const double half = section_.play + section_.thickness / 2;
                const double inwards = dot(at - groove.mouth, groove.interior);
                const bool rabbet = groove.slot.area() > groove.hold.area();
                least = rabbet ? half + inwards : half - std::abs(inwards);
            }
        }
        return least;
    }

    static Contour body(const std::vector<Segment>& line, double thickness) {
        return band(line, thickness, BandEnd::square, BandEnd::square);
    }

    // Half of what the section would have to be thinner to be clear; none where it is clear. Where
    // outlines part is found by their distance; that they did not merely touch there, and so where
    // they count as clear, by the area that they share, which takes many times as long.
    template <class Parted, class Clear>
    [[nodiscard]] std::optional<double> missing(Parted parted, Clear clear) const {
        const auto found = [&](const auto& holds) {
            double low = 0;
            double high = section_.thickness;
            constexpr int kHalvings = 14;
            for (int i = 0; i < kHalvings; ++i) {
                const double middle = (low + high) / 2;
                (holds(middle) ? low : high) = middle;
            }
            return std::pair(low, high);
        };
        if (parted(section_.thickness)) {
            return std::nullopt;
        }
        auto [low, high] = found(parted);
        // A corner that runs in by half of this shares far more than what counts as touching.
        constexpr double kSurely = 0.05;  // mm
        if (clear(std::min(section_.thickness, high + kSurely))) {
            if (clear(section_.thickness)) {
                return std::nullopt;
            }
            low = found(clear).first;
        }
        return (low - section_.thickness) / 2;
    }

    [[nodiscard]] double post_clearance(const std::vector<Segment>& line) const {
        // The posts' section that a pane of some thickness may meet.
        const auto each_near = [&](const Contour& outline, const auto& holds) {
            const Box box = outline.box();
            for (std::size_t post = 0; post < layout_.posts.size(); ++post) {
                const std::vector<Region>& section = layout_.posts[post].section;
                if (!apart(box, post_boxes_[post]) &&
                    !std::all_of(section.begin(), section.end(), [&](const Region& region) {
                        return holds(outline, region);
                    })) {
                    return false;
                }
            }
            return true;
        };
        const auto parted = [&](double thickness) {
            return each_near(body(line, thickness), [](const Contour& outline, const Region& post) {
                return !touch(outline, post.outer) &&
                       where(post.outer, outline.vertices().front().at) == Side::outside &&
                       where(outline, post.outer.vertices().front().at) == Side::outside;
            });
        };
        const auto clear = [&](double thickness) {
            return each_near(body(line, thickness), [](const Contour& outline, const Region& post) {
                return area(intersect({{outline, {}}}, {post})) < kTouching;
            });
        };
        if (const auto short_of = missing(parted, clear)) {
            return *short_of;
        }
        const Contour outline = body(line, section_.thickness);
        const Box box = outline.box();
        double least = HUGE_VAL;
        const auto look_at = [&](std::size_t post) {
            if (within(box, post_boxes_[post], least)) {
                for (const Region& region : layout_.posts[post].section) {
                    least = std::min(least, gap(outline, region.outer));
                }
            }
        };
        // Its own posts first: then few others are near enough to be looked at.
        look_at(index(pane_.side));
        look_at(layout_.line.next(index(pane_.side)));
        for (std::size_t post = 0; post < layout_.posts.size(); ++post) {
            look_at(post);
        }
        return least;
    }

    [[nodiscard]] double base_clearance(const std::vector<Segment>& line) const {
        const auto parted = [&](double thickness) {
            const Contour outline = body(line, thickness);
            return !touch(outline, room_.outer) &&
                   where(room_.outer, outline.vertices().front().at) == Side::inside;
        };
        const auto clear = [&](double thickness) {
            return area(subtract({{body(line, thickness), {}}}, {room_})) < kTouching;
        };
        if (const auto short_of = missing(parted, clear)) {
            return *short_of;
        }
        return gap(body(line, section_.thickness), groove_.band);
    }

    const PaneSums<double>& pane_;
    const PaneSection& section_;
    const Layout& layout_;
    const std::vector<Segment>& side_;
    double length_;
    const PlateGroove& groove_;
    Region room_;    // of the base's groove and of the recess for its bead, where there is one
    double middle_;  // of the opening, along the side
    Point crown_;    // the point there
    Point interior_;  // from it towards the inside of the case
    Point hollow_;    // from it towards the centre of a curved side
    std::vector<Box> post_boxes_;
};

double least(const SectionClearance& clearance) {
    return std::min(clearance.posts, clearance.base);
}

}  // namespace

SectionClearance section_clearance(const PaneSums<double>& pane, const PaneSection& section,
                                   const Layout& layout, const PaneState<double>& state) {
    const Place place(pane, section, layout, state);
    const SectionClearance middle = place.shifted(0);
    if (!pane.curved || pane.is_run() || least(middle) >= 0) {
        return middle;
    }
    // The post grooves are straight: what the pane's curve takes of them it takes from one cheek,
    // and a shift within the base's groove gives some of it back.
    // What it leaves at its cheeks rises and then falls with the shift.
    double low = -section.play;
    double high = section.play;
    constexpr int kThirds = 24;  // to 1/16000 of the play
    for (int i = 0; i < kThirds; ++i) {
        const double a = low + (high - low) / 3;
        const double b = high - (high - low) / 3;
        const bool rises = place.at_cheeks(a) < place.at_cheeks(b);
        (rises ? low : high) = rises ? a : b;
    }
    const SectionClearance shifted = place.shifted((low + high) / 2);
    return least(shifted) > least(middle) ? shifted : middle;
}

SectionClearance section_clearance(const PaneSums<double>& pane, const Layout& layout,
                                   double own_radius) {
    return section_clearance(
        pane,
        {pane.length, pane.formed_thickness, own_radius, pane.radius,
         std::max(0.0, pane.edge(PaneEdge::bottom).face_clearance) / 2},
        layout, pane.states[0]);
}

}  // namespace bowfront::fit
