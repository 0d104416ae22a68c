#include "bowfront/study/inspect.hpp"

#include "as_made.hpp"
#include "bowfront/fit/checks.hpp"

namespace bowfront::study {
namespace {

// The same case, brought from where it was built to one state of the air and no other.
CaseAsMade in_state(CaseAsMade made, AirState state) {
    const fit::Air air = fit::air_of(made.c.service, state);
    const Sourced<double> temperature = air.temperature;
    const Sourced<double> humidity = air.humidity;
    for (Case* const each : {&made.c, &made.frame}) {
        each->service.temperature = {temperature, temperature};
        each->service.humidity = {humidity, humidity};
    }
    return made;
}

}  // namespace

std::string_view stage_text(PaneStage stage) noexcept {
    switch (stage) {
        case PaneStage::not_cut: return "not-cut";
        case PaneStage::blank_cut: return "blank-cut";
        case PaneStage::made: break;
    }
    return "made";
}

std::vector<Objection> objections(const Case& c, const CaseSums<double>& sums,
                                  const Measured& measured) {
    std::vector<Objection> list = implausible(c, sums, measured);
    if (list.empty()) {
        const CaseAsMade made = as_made(c, sums, measured);
        list = fit::objections(made.frame);
        if (list.empty()) {
            list = fit::objections(made.c);
        }
    }
    return list;
}

Inspection inspect(const Case& c, const CaseSums<double>& sums, const Measured& measured) {
    const CaseAsMade made = as_made(c, sums, measured);
    Assessment whole = assess(made);
    Inspection inspection;
    inspection.panes = std::move(whole.panes);
    inspection.findings = std::move(whole.findings);
    inspection.margins = margins(inspection.findings);
    for (InspectedPane& pane : inspection.panes) {
        const CaseSide side = pane.sums.side;
        if (pane.stage == PaneStage::not_cut && made.place_measured(side)) {
            pane.to_cut = new_pane(c, made, side).size;
        }
    }
    for (const AirState state : kAirStates) {
        inspection.states.push_back({state, assess(in_state(made, state)).findings});
    }
    find_rescues(c, made, inspection);
    return inspection;
}

}  // namespace bowfront::study
