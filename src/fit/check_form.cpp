#include <numbers>

#include "bowfront/materials/board.hpp"
#include "check_groups.hpp"

namespace bowfront::fit {
namespace {

constexpr double kDegrees = 180 / std::numbers::pi;

void check_skin(const Case& c, const PaneForm<double>& form, CheckList& list) {
    const std::string about = "form-" + std::string(side_text(form.side));
    const std::string figure = "forms/" + std::string(side_text(form.side)) +
                               (form.sizes.pieces.empty() ? "/rib_radius" : "/skin/radius");
    const double radius = form.sizes.skin_radius;  // of the skin's hollow face
    const Board& plywood = *find_board("plywood");
    const auto dry = bend_radius(plywood, c.form.skin.value, BendState::dry);
    const auto soaked = bend_radius(plywood, c.form.skin.value, BendState::soaked);
    if (!dry) {
        list.at_least({Code::form_skin, "skin-bend", about,
                       "no table of plywood bends has this thickness"},
                      radius, radius + 1,
                      [](double) { return std::string("take a skin of 1 to 19 mm"); });
        return;
    }
    if (radius < dry->value && soaked && radius >= soaked->value) {
        list.at_least({Code::form_skin, "skin-bend", about, "bent dry", "mm", figure}, radius, radius,
                      dry->value, [](double) {
                          return std::string("soak the skin in hot water before bending it, or "
                                             "take a thinner one");
                      });
        list.last().status = Status::warn;  // it takes the radius, but not as it comes
        return;
    }
    list.at_least({Code::form_skin, "skin-bend", about, "bent dry", "mm", figure}, radius, dry->value,
                  [](double) { return std::string("take a thinner skin"); });
}

// Bends of several pieces turn through half a turn at most, but for what springback takes back.
void check_run_sweep(const PaneForm<double>& form, CheckList& list) {
    const FormSizes<double>& sizes = form.sizes;
    const double over = sizes.rib_sweep - std::numbers::pi;
    const bool half_turn = std::abs(over) <= forming::kHalfTurnRounding;
    const double sweep = half_turn ? 180 : sizes.rib_sweep * kDegrees;
    list.enter({Code::form_sweep, "form-sweep", "form-" + std::string(side_text(form.side)),
                "between the steepest directions of the ribs' edge", "deg",
                "forms/" + std::string(side_text(form.side)) + "/rib_sweep"},
               sweep, sweep, 180, Bound::at_most, [](double) {
                   return std::string(
                       "make sides of the run's pieces, with a post between them; hot sheet drapes "
                       "over half a turn at most, and until then no parts of this form are made");
               });
    if (list.last().status == Status::fail && forming::can_be_drawn_off(sizes)) {
        list.last().status = Status::warn;
        list.last().advice = "hold the hot sheet's ends in under the form until it has cooled; "
                             "released, it opens to " +
                             rounded_text(sizes.pane_sweep * kDegrees, 1) +
                             " degrees and comes off";
    }
}

}  // namespace

void check_form(const Case& c, const PaneForm<double>& form, CheckList& list) {
    check_skin(c, form, list);
    if (!form.sizes.pieces.empty()) {
        check_run_sweep(form, list);
        return;
    }
    // Past half a turn the hot sheet would have to be drawn in under the form.
    list.enter({Code::form_sweep, "form-sweep", "form-" + std::string(side_text(form.side)),
                "arc of the form with its overruns", "deg",
                "forms/" + std::string(side_text(form.side)) + "/rib_sweep"},
               form.sizes.rib_sweep * kDegrees, form.sizes.rib_sweep * kDegrees, 180,
               Bound::at_most, [&](double missing) {
                   const double shorter = missing / kDegrees * form.sizes.face_radius / 2;
                   return (shorter <= c.form.overrun.value
                               ? "make the overrun shorter by " + at_least_text(shorter)
                               : std::string("split the front into panes of smaller sweep")) +
                          "; hot sheet drapes over half a turn at most, and until then no parts of "
                          "this form are made";
               });
}

}  // namespace bowfront::fit
