#include "contradictions.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <string>
#include <string_view>

#include "bowfront/base/number_text.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

class Contradictions {
  public:
    Contradictions(const Case& whole, const Places& places, Reading& reading)
        : case_(whole), places_(places), reading_(reading) {}

    void find() {
        if (case_.plan.shape == PlanShape::bow_front && case_.plan.front &&
            sound({"/plan/width", "/plan/front"})) {
            front();
        }
        plate("base", case_.frame.base, case_.frame.groove.base_depth);
        plate("top", case_.frame.top, case_.frame.groove.top_depth);
        post_section();
        post_groove();
        if (sound({"/plan/shape"}) && (case_.plan.shape == PlanShape::rectangle ||
                                       case_.plan.shape == PlanShape::bow_front)) {
            post_on_side("/plan/width", case_.plan.width);
            post_on_side("/plan/depth", case_.plan.depth);
        }
        span("/service/temperature", case_.service.temperature);
        span("/service/humidity", case_.service.humidity);
        contents_height();
    }

  private:
    [[nodiscard]] bool sound(std::initializer_list<std::string_view> pointers) const {
        return std::none_of(pointers.begin(), pointers.end(), [this](std::string_view pointer) {
            return reading_.faults().touch(pointer);
        });
    }

    void add(const std::string& pointer, std::string found, std::string wanted) {
        reading_.faults().add(Code::input_contradiction, places_.of_value(pointer), pointer,
                              std::move(found), std::move(wanted));
    }

    [[nodiscard]] std::string length(double millimetres) const {
        return reading_.length_text(millimetres);
    }

    void front() {
        const FrontArc& front = *case_.plan.front;
        const double chord = *case_.plan.width;
        const double value = *front.value;
        const std::string over = " over a width (the front's chord) of " + length(chord);
        switch (front.measure) {
            case ArcMeasure::radius:
                if (value < chord / 2) {
                    add(front.value.origin.pointer,
                        "a front of radius " + length(value) + " can't reach" + over,
                        "a radius of at least half the width, " + length(chord / 2) +
                            ", or a width of at most " + length(2 * value));
                }
                return;
            case ArcMeasure::length:
                if (value <= chord) {
                    add(front.value.origin.pointer,
                        "a front " + length(value) + " long can't be curved" + over,
                        "a length of more than " + length(chord));
                } else if (value < 2 * kLongest * std::asin(chord / 2 / kLongest)) {
                    too_flat(front, over, length(2 * kLongest * std::asin(chord / 2 / kLongest)));
                }
                return;
            case ArcMeasure::rise:
                // f = R − √(R² − c²/4), written without the difference of two large numbers.
                if (const double least =
                        chord * chord / 4 /
                        (kLongest + std::sqrt(kLongest * kLongest - chord * chord / 4));
                    value < least) {
                    too_flat(front, over, length(least));
                }
                return;
            case ArcMeasure::sweep:
                sweep(front, chord, over);
                return;
            case ArcMeasure::chord: return;  // is no key of the front's
        }
    }

    // R = c / (2 sin(θ/2)) within the longest length that is read, at both ends of the range.
    void sweep(const FrontArc& front, double chord, const std::string& over) {
        const double least = 2 * std::asin(chord / 2 / kLongest);
        const double most = 2 * std::numbers::pi - least;
        if (*front.value < least) {
            too_flat(front, over, degrees(least));
        } else if (*front.value > most) {
            add(front.value.origin.pointer,
                "a front with a sweep of " + degrees(*front.value) + over +
                    " has a radius of more than " + length(kLongest),
                "a sweep of at most " + degrees(most));
        }
    }

    void too_flat(const FrontArc& front, const std::string& over, const std::string& least) {
        add(front.value.origin.pointer,
            "a front so flat" + over + " has a radius of more than " + length(kLongest),
            "at least " + least + ", or the shape \"rectangle\"");
    }

    static std::string degrees(double radians) {
        return rounded_text(radians / std::numbers::pi * 180, 3) + " deg";
    }

    void plate(const std::string& name, const Plate& board, const Sourced<double>& depth) {
        const std::string pointer = "/frame/groove/depth/" + name;
        if (sound({pointer, "/frame/" + name + "/thickness"}) && *depth >= *board.thickness) {
            add(pointer,
                "a groove " + length(*depth) + " deep goes through a " + name + " of " +
                    length(*board.thickness),
                "less than " + length(*board.thickness) + ", or a thicker " + name);
        }
    }

    void post_section() {
        const Post& post = case_.frame.post;
        if (!sound({"/frame/post"}) || !post.depth.given()) {
            return;
        }
        const std::string pointer = "/frame/post/depth";
        if (*post.section == PostSection::fitted && *post.depth < *post.width) {
            add(pointer,
                "a fitted post " + length(*post.depth) + " deep and " + length(*post.width) +
                    " wide",
                "a depth of at least " + length(*post.width));
        } else if (*post.section == PostSection::round && *post.depth != *post.width) {
            add(pointer,
                "a round post " + length(*post.depth) + " deep and " + length(*post.width) +
                    " wide",
                "a depth of " + length(*post.width) + ", or none");
        }
    }

    void post_groove() {
        const double half = *case_.frame.post.width / 2;
        const double depth = *case_.frame.groove.post_depth;
        if (sound({"/frame/post/width", "/frame/groove/depth/post"}) && depth >= half) {
            add("/frame/groove/depth/post",
                "a groove " + length(depth) +
                    " deep is deeper than half the post: the grooves would meet",
                "less than " + length(half) + ", or a post wider than " + length(2 * depth));
        }
    }

    // Half a post stands on each end of a side.
    void post_on_side(const std::string& pointer, const Sourced<double>& side) {
        const double width = *case_.frame.post.width;
        if (sound({pointer, "/frame/post/width"}) && *side <= width) {
            add(pointer,
                "a side of " + length(*side) + " is no longer than the posts take, " +
                    length(width),
                "more than " + length(width));
        }
    }

    void contents_height() {
        if (!case_.contents || !case_.contents->height ||
            !sound({"/contents/height", "/frame/clear_height"})) {
            return;
        }
        const double clear = *case_.frame.clear_height;
        const double height = **case_.contents->height;
        if (height > clear) {
            add("/contents/height",
                "contents whose centre of gravity lies " + length(height) +
                    " up stand out of a clear height of " + length(clear),
                "up to " + length(clear));
        }
    }

    // Low and high under one key.
    void span(const std::string& pointer, const std::array<Sourced<double>, 2>& ends) {
        if (sound({pointer}) && *ends[0] > *ends[1]) {
            add(pointer, "the first is higher than the second", "the lower of the two first");
        }
    }

    const Case& case_;
    const Places& places_;
    Reading& reading_;
};

}  // namespace

void find_contradictions(const Case& whole, const Places& places, Reading& reading) {
    Contradictions(whole, places, reading).find();
}

}  // namespace bowfront::io
