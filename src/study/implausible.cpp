#include <cmath>
#include <numbers>
#include <utility>

#include "as_made.hpp"
#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront::study {
namespace {

// How many times larger or smaller than drawn a thing can be made. A choice of this tool: far beyond
// any bungled cut, far under the 25.4 of inches written for millimetres.
constexpr double kMostTimes = 4;

// By what share sizes of one pane may contradict each other: several times what a tape is off, and
// what an extruded sheet grows across; far under a slip of a digit. A choice of this tool.
constexpr double kMostOff = 0.02;

std::string mm(double length) {
    return rounded_text(length, 2) + " mm";
}

// Holds what was measured of one side against what was drawn.
class SideJudge {
  public:
    SideJudge(const PaneSums<double>& drawn, std::string pointer, std::vector<Objection>& to)
        : drawn_(drawn), pointer_(std::move(pointer)), to_(to) {}

    void judge(const Groove& groove, const MeasuredSide& side) const {
        const MeasuredPane& pane = side.pane;
        one("blank's length", pane.blank_length, drawn_.blank_length);
        one("blank's width", pane.blank_width, drawn_.blank_width);
        one("pane's length", pane.length, drawn_.length);
        one("pane's height", pane.height, drawn_.height);
        each("pane's thickness", pane.thickness, drawn_.formed_thickness);
        one("opening's length", side.opening.length, drawn_.opening_length);
        one("opening's height", side.opening.height, drawn_.opening_height);
        each("base groove's depth", side.grooves.base, groove.base_depth.value);
        each("top groove's depth", side.grooves.top, groove.top_depth.value);
        each("post groove's depth", side.grooves.start, groove.post_depth.value);
        each("post groove's depth", side.grooves.end, groove.post_depth.value);
        each("groove's width", side.grooves.width, groove.width.value);
        curve(pane);
        if (drawn_.heated && to_.empty()) {  // each size by itself could be right
            shrunk("length", pane.blank_length, pane.length);
            shrunk("height", pane.blank_width, pane.height);
            if (pane.chord && pane.rise && pane.length) {
                arc(*pane.chord, *pane.rise, *pane.length);
            }
        }
    }

  private:
    void object(std::string_view what, const std::string& made, double drawn) const {
        to_.push_back({pointer_, "the " + std::string(side_text(drawn_.side)) + " " +
                                     std::string(what) + ", " + made + ", is nowhere near the " + mm(drawn) + " that was drawn",
                       "look at the number and its unit, or draw the case anew"});
    }
    void size(std::string_view what, double made, double drawn) const {
        if (made * kMostTimes < drawn || made > drawn * kMostTimes) {
            object(what, mm(made), drawn);
        }
    }
    void one(std::string_view what, const std::optional<double>& made, double drawn) const {
        if (made) {
            size(what, *made, drawn);
        }
    }
    void each(std::string_view what, const std::vector<double>& places, double drawn) const {
        for (const double place : places) {
            size(what, place, drawn);
        }
    }
    // A pane may come out as flat as it went in, but not bent many times as much.
    void curve(const MeasuredPane& pane) const {
        if (pane.chord && pane.rise) {
            const double radius = radius_of(*pane.chord, *pane.rise, 0).value;
            if (radius * kMostTimes < drawn_.inside_radius) {
                object("pane's inside radius", mm(radius) + " by chord and rise",
                       drawn_.inside_radius);
            }
        }
        if (pane.length && drawn_.curved &&
            *pane.length >= 2 * std::numbers::pi * drawn_.radius) {
            object("pane's length", mm(*pane.length) + " and over a full turn", drawn_.length);
        }
    }

    // Along the mid-surface by chord and rise of the inside face, against the length measured there.
    void arc(double chord, double rise, double length) const {
        const double radius = radius_of(chord, rise, 0).value;
        const double sweep = 4 * std::atan(2 * rise / chord);
        const double by_arc = (radius + drawn_.thickness / 2) * sweep;
        if (std::abs(by_arc - length) > kMostOff * length) {
            to_.push_back({pointer_, "the " + std::string(side_text(drawn_.side)) +
                                         " pane's chord and rise give an arc of " + mm(by_arc) +
                                         ", and its length was measured as " + mm(length),
                           "measure chord, rise and length once more"});
        }
    }
    void shrunk(std::string_view what, const std::optional<double>& blank,
                const std::optional<double>& formed) const {
        if (blank && formed && *formed > *blank * (1 + kMostOff)) {
            to_.push_back({pointer_, "the " + std::string(side_text(drawn_.side)) + " pane's " +
                                         std::string(what) + ", " + mm(*formed) +
                                         ", is more than its blank's, " + mm(*blank),
                           "measure both once more: no sheet grows so much in heat"});
        }
    }

    const PaneSums<double>& drawn_;
    std::string pointer_;  // of the pane in the case file
    std::vector<Objection>& to_;
};

}  // namespace

std::vector<Objection> implausible(const Case& c, const CaseSums<double>& sums,
                                   const Measured& measured) {
    std::vector<Objection> list;
    for (const MeasuredSide& side : measured.sides) {
        const PaneSums<double>* const drawn = sums.pane(side.side);
        BOWFRONT_EXPECTS(drawn != nullptr);
        SideJudge(*drawn, c.pane(side.side)->pointer, list).judge(c.frame.groove, side);
    }
    return list;
}

}  // namespace bowfront::study
