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

std::vector<Objection> objections(const Case& c, const CaseSums<double>& sums,
                                  const Measured& measured) {
    return fit::objections(as_made(c, sums, measured).frame);
}

Inspection inspect(const Case& c, const CaseSums<double>& sums, const Measured& measured) {
    const CaseAsMade made = as_made(c, sums, measured);
    Assessment whole = assess(made);
    Inspection inspection;
    inspection.panes = std::move(whole.panes);
    inspection.findings = std::move(whole.findings);
    for (const AirState state : kAirStates) {
        inspection.states.push_back({state, assess(in_state(made, state)).findings});
    }
    find_rescues(c, made, inspection);
    return inspection;
}

}  // namespace bowfront::study
