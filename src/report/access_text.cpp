#include <numbers>

#include "access_report.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront::report {
namespace {

std::string shown(double value) { return fixed_text(value, 2); }

std::string both(const NominalAndWorst<double>& value) {
    return shown(value.nominal) + " mm (at worst " + shown(value.worst) + ")";
}

std::string line(std::string_view name, const std::string& value) {
    std::string text = "  " + std::string(name);
    text.resize(16, ' ');
    return text + value + "\n";
}

std::string size_text(double length, double height, double thickness) {
    return shown(length) + " x " + shown(height) + " x " + shown(thickness) + " mm";
}

std::string weight_text(const whole::AccessWeight& weight) {
    if (!weight.mass) {
        return "not known";
    }
    const std::string people = !weight.people       ? "by lifting gear"
                               : *weight.people > 1 ? "by " + std::to_string(*weight.people) + " people"
                                                    : "by 1 person";
    return shown(*weight.mass) + " kg, lifted " + people;
}

std::string top_text(const TopOffSums<double>& sums, const whole::AccessWeight& weight) {
    return line("top", weight_text(weight)) +
           line("panes", "drawn up by " + shown(sums.travel) + " mm") +
           line("headroom", shown(sums.headroom) + " mm above the closed case");
}

std::string grooved_text(const GroovedSums<double>& sums) {
    return line("engagement", "bottom " + both(sums.bottom) + ", top " + both(sums.top)) +
           line("lifted", "clears the base by " + both(sums.lift)) +
           line("tilted", "takes " + both(sums.tilt) + " of the top's groove") +
           line("pushed", "by " + rounded_text(sums.push, 1) + " N bows " + both(sums.bow) +
                              ", the top still holds " + both(sums.held));
}

std::string sliding_text(const SlidingSums<double>& sums) {
    return line("shut", "panes overlap by " + both(sums.overlap)) +
           line("open", shown(sums.open) + " mm, " + rounded_text(sums.share * 100, 1) +
                            " % of the opening") +
           line("faces", both(sums.faces) + " apart when one is slid");
}

std::string door_text(const DoorSums<double>& sums, const whole::AccessWeight& weight) {
    std::string text =
        line("gaps", "latch " + both(sums.latch) + ", hinge " + both(sums.heel) + ", top " +
                         both(sums.above)) +
        line("passage", shown(sums.passage) + " mm of the opening, open by 90 deg");
    if (weight.mass) {
        text += line("pivots", "the lower bears " + shown(*weight.mass) + " kg, each is pulled by " +
                                   rounded_text(weight.pull, 1) + " N");
    }
    for (const auto& [name, standing] :
         {std::pair{"empty", weight.open ? weight.open->empty : std::nullopt},
          std::pair{"loaded", weight.open ? weight.open->loaded : std::nullopt}}) {
        if (standing) {
            text += line("open, " + std::string(name),
                         "tips on a slope of " +
                             fixed_text(standing->tipping.angle * 180 / std::numbers::pi, 1) +
                             " deg, to the " +
                             whole::direction_text(standing->tipping.direction));
        }
    }
    return text;
}

}  // namespace

std::string access_text(const Content& content) {
    const AccessSums<double>& sums = content.opened->sums;
    const whole::AccessWeight& weight = content.opened->weight;
    std::string text = "\nOpening, " + std::string(bowfront::access_text(*content.c.access));
    if (sums.top) {
        return text + "\n" + top_text(*sums.top, weight);
    }
    const double thickness = sums.pane->thickness;
    text += ", " + std::string(side_text(sums.side)) + "\n";
    if (sums.grooved) {
        text += line(sums.sliding ? "two panes of" : "pane",
                     size_text(sums.grooved->length, sums.grooved->height, thickness) + ", " +
                         weight_text(weight)) +
                grooved_text(*sums.grooved);
    }
    if (sums.sliding) {
        text += sliding_text(*sums.sliding);
    }
    if (sums.door) {
        text += line("door", size_text(sums.door->length, sums.door->height, thickness)) +
                door_text(*sums.door, weight);
    }
    return text;
}

std::vector<std::string> access_steps(const Case& c) {
    if (!c.access) {
        return {};
    }
    const std::string side(side_text(c.access->side));
    if (const auto* const top = c.access->as<LiftOffTop>()) {
        if (*top->held != TopHeld::pegs) {
            return {};
        }
        return {"Bore posts and top for the pegs in one setting, and glue the pegs into the posts "
                "only: the top is never glued."};
    }
    if (c.access->as<LiftOutPane>() != nullptr) {
        return {"Cut the " + side + "'s own grooves in base and top before the frame is glued, and "
                "try the " + side + " pane: lift it into the top, swing its foot in, let it down."};
    }
    if (c.access->as<SlidingPair>() != nullptr) {
        return {"Cut the " + side + "'s twin grooves in base and top before the frame is glued. Put "
                "the inner pane in first, then the outer one, each in the middle of the opening; "
                "slide both to their posts."};
    }
    return {"Bore base and top for the " + side + " door's pivots before the frame is glued, plumb "
            "over each other. Set the door on its lower pivot before the top goes on, unless the "
            "upper one is sprung; even the gaps with washers, and fix the stop against the shut "
            "door."};
}

std::vector<std::string> access_cautions(const Content& content) {
    const Case& c = content.c;
    if (!c.access) {
        return {};
    }
    std::vector<std::string> list;
    if (c.access->as<LiftOffTop>() != nullptr) {
        list.push_back("Opening: lift the top straight up and off before a pane is drawn, and lay "
                       "it down away from the case. Mind fingers between top and posts when it goes "
                       "back.");
        return list;
    }
    if (c.access->as<PivotDoor>() != nullptr) {
        list.push_back("Opening: nobody leans on the open door, which moves the case's weight to its "
                       "side and can tip it. Mind fingers at both edges: the pivot edge turns "
                       "inwards and shears.");
    } else {
        list.push_back("Opening: a lifted pane hangs in its top groove by a few millimetres. Hold it "
                       "with both hands, and mind fingers between pane and base when it drops.");
    }
    if (c.sheets.at(c.access_pane->sheet).like->kind == SheetKind::float_glass) {
        list.push_back("A pane of glass that is moved by hand is toughened or laminated, its edges "
                       "ground; bores and edges are made before it is toughened.");
    }
    return list;
}

}  // namespace bowfront::report
