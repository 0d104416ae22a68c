#include "bowfront/pipeline/sweep_case.hpp"

#include <algorithm>
#include <array>
#include <memory>
#include <utility>

#include "bowfront/base/error.hpp"
#include "bowfront/base/quoted_text.hpp"
#include "bowfront/io/varied_case.hpp"

namespace bowfront {
namespace {

[[noreturn]] void refuse(std::string pointer, std::string found, std::string wanted) {
    throw InputError({{Code::input_value, {}, 0, 0, std::move(pointer),
                       "--vary: " + std::move(found), std::move(wanted)}});
}

// A bound as it is given, and the unit behind it.
struct Bound {
    std::string_view number;
    std::string_view unit;
};

Bound bound_of(std::string_view text) {
    const auto trimmed = [](std::string_view part) {
        const std::size_t first = part.find_first_not_of(' ');
        return first == std::string_view::npos
                   ? std::string_view()
                   : part.substr(first, part.find_last_not_of(' ') - first + 1);
    };
    const std::string_view whole = trimmed(text);
    const std::size_t last = whole.find_last_of("0123456789.");
    const std::size_t split = last == std::string_view::npos ? whole.size() : last + 1;
    return {trimmed(whole.substr(0, split)), trimmed(whole.substr(split))};
}

// One `--vary`, taken apart.
struct Variation {
    std::string pointer;
    std::string unit;
    study::Steps steps;
};

Variation variation_of(const std::string& text) {
    const std::size_t equals = text.rfind('=');
    constexpr std::string_view kWanted = "POINTER=FROM:TO:STEP, such as /plan/width=400:600:50";
    if (equals == std::string::npos || equals == 0 || text[0] != '/') {
        refuse({}, quoted_text(text) + " names no value", std::string(kWanted));
    }
    const std::string pointer = text.substr(0, equals);
    std::string_view rest = std::string_view(text).substr(equals + 1);
    if (std::count(rest.begin(), rest.end(), ':') != 2) {
        refuse(pointer, quoted_text(rest) + " is no FROM:TO:STEP", std::string(kWanted));
    }
    std::array<Bound, 3> bounds;
    std::string_view unit;
    for (Bound& bound : bounds) {
        bound = bound_of(rest.substr(0, rest.find(':')));
        rest.remove_prefix(std::min(rest.size(), rest.find(':') + 1));
        if (!bound.unit.empty() && !unit.empty() && bound.unit != unit) {
            refuse(pointer, quoted_text(unit) + " and " + quoted_text(bound.unit) + " are mixed",
                   "one unit for all three numbers");
        }
        unit = bound.unit.empty() ? unit : bound.unit;
    }
    return {pointer, std::string(unit),
            study::Steps(bounds[0].number, bounds[1].number, bounds[2].number)};
}

std::vector<Variation> variations_of(const std::vector<std::string>& vary) {
    std::vector<Variation> all;
    std::size_t count = 1;
    for (const std::string& text : vary) {
        Variation one = variation_of(text);
        for (const Variation& other : all) {
            if (other.pointer == one.pointer) {
                refuse(one.pointer, "the value is varied twice", "each value once");
            }
        }
        if (one.steps.count() > study::kMostVariants / count) {
            refuse(one.pointer,
                   "the grid has more than " + std::to_string(study::kMostVariants) + " variants",
                   "larger steps, or fewer varied values");
        }
        count *= one.steps.count();
        all.push_back(std::move(one));
    }
    return all;
}

}  // namespace

study::Sweep sweep_of(std::string_view text, const std::string& file_name,
                      const std::vector<std::string>& vary) {
    std::vector<Variation> variations = variations_of(vary);
    std::vector<io::Varied> varied;
    for (const Variation& one : variations) {
        varied.push_back({one.pointer, one.unit, one.steps.count(),
                          [steps = one.steps](std::size_t place) { return steps.text(place); }});
    }
    const auto file =
        std::make_shared<const io::VariedCase>(text, file_name, std::move(varied));
    study::Sweep sweep;
    sweep.base = file->base();
    sweep.contradiction = io::VariedCase::contradiction;
    for (std::size_t i = 0; i < variations.size(); ++i) {
        sweep.axes.push_back({std::move(variations[i].pointer), variations[i].steps,
                              file->places(i), [file, i](std::size_t place) {
                                  io::VariedValue taken = file->value(i, place);
                                  return study::AxisValue{taken.value, std::move(taken.fault)};
                              }});
    }
    return sweep;
}

}  // namespace bowfront
