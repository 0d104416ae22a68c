#include "bowfront/fit/shelf.hpp"

#include <algorithm>
#include <cmath>

#include "bowfront/base/number_text.hpp"
#include "bowfront/geom/offset.hpp"
#include "check_list.hpp"
#include "shelf_parts.hpp"
#include "solve_shelf.hpp"

namespace bowfront::fit {
namespace {

Contour glazing_outline(const GlazingLine& line) {
    std::vector<Segment> round;
    for (const auto& side : line.sides) {
        round.insert(round.end(), side.begin(), side.end());
    }
    return Contour::from_segments(round);
}

double thickest_pane(const CaseSums<double>& sums) {
    double thickest = 0;
    for (const auto& pane : sums.panes) {
        thickest = std::max(thickest, pane.thickest);
    }
    return thickest;
}

// Lays out one shelf, or says why it can't be.
class ShelfLayout {
  public:
    ShelfLayout(const Case& c, const CaseSums<double>& sums, const Layout& layout,
                const ShelfSpec& spec, std::vector<Objection>& objections)
        : c_(c),
          layout_(layout),
          spec_(spec),
          objections_(objections),
          inset_(thickest_pane(sums) / 2 + spec.clearance.value) {}

    // Empty after an objection.
    std::optional<ShelfPlan> plan(std::size_t number) {
        ShelfPlan plan;
        plan.id = "shelf-" + std::to_string(number);
        const Contour line = glazing_outline(layout_.line);
        if (!stands_high_enough() || !set_outline(line, plan) || !set_supports(plan)) {
            return std::nullopt;
        }
        plan.rests = shelf_rests(plan, layout_);
        if (!stands(plan)) {
            object("/support", "its " + supports() + " don't hold the shelf: it tips",
                   "the other support, or posts on more corners");
            return std::nullopt;
        }
        set_span(layout_, spec_.timber == nullptr, plan);
        if (spec_.timber != nullptr && plan.model != ShelfModel::rails) {
            object(
                "/support",
                "a shelf of timber bears along its grain only, and needs rails on two sides that "
                "face each other",
                "rails on such sides, or plywood");
            return std::nullopt;
        }
        plan.line_gap = gap(plan.outline, line);
        plan.post_gap = HUGE_VAL;
        for (const PostLayout& post : layout_.posts) {
            plan.post_gap = std::min(plan.post_gap, gap(plan.outline, post.outline));
        }
        return plan;
    }

  private:
    void object(const std::string& key, std::string found, std::string wanted) {
        objections_.push_back({spec_.pointer + key, std::move(found), std::move(wanted)});
    }

    [[nodiscard]] bool on_rails() const { return *spec_.support == ShelfSupport::rails; }
    [[nodiscard]] std::string supports() const { return std::string(support_text(*spec_.support)); }

    bool stands_high_enough() {
        const double below = spec_.thickness.value + (on_rails() ? kRailHeight : kPinDiameter);
        if (spec_.height.value < below) {
            object("/height", "the shelf and its " + supports() + " would stand in the base",
                   "at least " + mm(below));
            return false;
        }
        if (spec_.height.value > c_.frame.clear_height.value) {
            object("/height", "the shelf would stand in the top",
                   "at most the clear height of " + mm(c_.frame.clear_height.value));
            return false;
        }
        return true;
    }

    bool set_outline(const Contour& line, ShelfPlan& plan) {
        double keep = std::max(spec_.clearance.value, c_.cutter.diameter.value / 2);
        if (spec_.sheet != nullptr && spec_.sheet->kind == SheetKind::float_glass) {
            keep = std::max(keep, spec_.thickness.value);
        }
        std::vector<Region> posts;
        for (const PostLayout& post : layout_.posts) {
            posts.push_back({post.outline, {}});
        }
        const auto left = subtract(offset(line, -inset_), offset(posts, keep));
        if (left.empty()) {
            object("/clearance", "panes and posts leave no room for the shelf",
                   "a smaller clearance, smaller posts or a larger plan");
        } else if (left.size() > 1 || !left.front().holes.empty()) {
            object("", "the posts cut the shelf apart", "smaller posts, or a larger plan");
        } else {
            plan.outline = left.front().outer;
            return true;
        }
        return false;
    }

    bool set_supports(ShelfPlan& plan) {
        if (on_rails()) {
            plan.rails = shelf_rails(layout_, inset_);
            return true;
        }
        for (const PostLayout& post : layout_.posts) {
            const auto pin =
                shelf_pin(post, layout_.line.directions[index(post.corner)], plan.outline);
            if (!pin) {
                object("/support",
                       "no pin reaches under the shelf from the " +
                           post.name + " post",
                       "rails");
                return false;
            }
            plan.pins.push_back(*pin);
        }
        return true;
    }

    const Case& c_;
    const Layout& layout_;
    const ShelfSpec& spec_;
    std::vector<Objection>& objections_;
    double inset_;  // of the shelf's edge from the glazing line
};

double underside(const ShelfSpec& shelf) {
    const bool rails = *shelf.support == ShelfSupport::rails;
    return shelf.height.value - shelf.thickness.value - (rails ? kRailHeight : kPinDiameter);
}

// Shelves go in one after the other, and what one lies on must stand clear of the next one.
void object_to_places(const Case& c, std::vector<Objection>& objections) {
    for (std::size_t i = 0; i < c.shelves.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const ShelfSpec& one = c.shelves[i];
            const ShelfSpec& other = c.shelves[j];
            const bool apart =
                underside(one) >= other.height.value || underside(other) >= one.height.value;
            if (!apart) {
                objections.push_back({one.pointer + "/height",
                                      "it stands in one place with " + other.pointer,
                                      "heights that leave room for both, with what they lie on"});
            }
        }
    }
}

// A shelf fits in from above only, and is closed in by the panes.
void object_to_loading(const Case& c, std::vector<Objection>& objections) {
    if (!c.shelves.empty() && c.frame.loading.value == Loading::lift_and_drop) {
        objections.push_back(
            {c.shelves.front().pointer,
             "a shelf goes in from above before the top goes on, and panes that are "
             "lifted and dropped need the top on first",
             "a loading of \"slide-in\" or \"beaded\", or no shelf"});
    }
}

// Enters where a shelf rests, and the bores of its pins.
void explain_supports(const ShelfSpec& spec, const ShelfPlan& plan, Workings& workings) {
    const auto enter = [&](const std::string& id, std::string_view key, std::string_view symbol,
                           Kind kind, double value, std::string_view source) {
        workings.figure("shelves/" + plan.id + "/supports/" + id + "/" + std::string(key), symbol,
                        kind, Traced(value), source);
    };
    constexpr std::string_view kPlace = "in plan, X to the right and Y to the back";
    constexpr std::string_view kPractice = "common practice, no source";
    const double under = spec.height.value - spec.thickness.value;
    for (std::size_t i = 0; i < plan.rests.size(); ++i) {
        const std::string& id = plan.rests[i].id;
        enter(id, "x", "x", Kind::length, plan.rests[i].at.x, kPlace);
        enter(id, "y", "y", Kind::length, plan.rests[i].at.y, kPlace);
        enter(id, "z", "z", Kind::length, under, "the shelf's lower face");
    }
    for (const ShelfPin& pin : plan.pins) {
        const std::string id = "pin-" + pin.name;
        enter(id, "bore/x", "x_b", Kind::length, pin.mouth.x, kPlace);
        enter(id, "bore/y", "y_b", Kind::length, pin.mouth.y, kPlace);
        enter(id, "bore/z", "z_b", Kind::length, under - kPinDiameter / 2,
              "the bore's middle, half a pin under the shelf");
        enter(id, "bore/direction", "β", Kind::angle, std::atan2(pin.inward.y, pin.inward.x),
              "into the post, from X");
        enter(id, "bore/diameter", "d", Kind::length, kPinDiameter, kPractice);
        enter(id, "bore/depth", "l", Kind::length, kPinDepth, kPractice);
        enter(id, "bore/wall", "x_w", Kind::length, pin.wall,
              "timber left between the bore and grooves or the post's other faces");
        enter(id, "pin/length", "l_p", Kind::length, distance(pin.mouth, pin.tip) + kPinDepth,
              "from the bore's bottom to its end under the shelf");
    }
}

}  // namespace

Shelves shelves(const Case& c, const CaseSums<double>& sums, const Layout& layout) {
    Shelves out;
    object_to_loading(c, out.objections);
    object_to_places(c, out.objections);
    for (std::size_t i = 0; i < c.shelves.size(); ++i) {
        ShelfLayout shelf(c, sums, layout, c.shelves[i], out.objections);
        if (auto plan = shelf.plan(i + 1)) {
            Book<double> book;
            const auto of = solve_shelf(ShelfTask<double>{c, c.shelves[i], *plan, book}, sums);
            out.list.push_back({std::move(*plan), of});
        }
    }
    return out;
}

void explain_shelves(const Case& c, const CaseSums<Traced>& sums, const Shelves& shelves,
                     Workings& workings) {
    Book<Traced> book(workings);
    for (std::size_t i = 0; i < shelves.list.size(); ++i) {
        const ShelfPlan& plan = shelves.list[i].plan;
        (void)solve_shelf(ShelfTask<Traced>{c, c.shelves[i], plan, book}, sums);
        explain_supports(c.shelves[i], plan, workings);
    }
}

}  // namespace bowfront::fit
