#include "bowfront/fit/states.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/materials/timber.hpp"

namespace bowfront {

std::string_view state_text(AirState state) noexcept {
    switch (state) {
        case AirState::built: return "built";
        case AirState::cold_dry: return "cold-dry";
        case AirState::cold_damp: return "cold-damp";
        case AirState::warm_dry: return "warm-dry";
        case AirState::warm_damp: break;
    }
    return "warm-damp";
}

namespace fit {
namespace {

constexpr std::string_view kHandbook =
    "Wood Handbook FPL-GTR-190, chapter 13: C·(M_F − M_I) from 6 to 14 %, else the general form";

// One half of the nodes of Gauss's rule of twelve on -1 to 1; the other half mirrors it.
// Source: zeros and weights of the Legendre polynomial of degree 12, computed
struct Node {
    double at;
    double weight;
};
constexpr std::array kGaussNodes = {
    Node{0.1252334085114689, 0.2491470458134027},
    Node{0.3678314989981802, 0.23349253653835464},
    Node{0.5873179542866175, 0.20316742672306565},
    Node{0.7699026741943047, 0.1600783285433461},
    Node{0.9041172563704748, 0.10693932599531888},
    Node{0.9815606342467192, 0.04717533638651202}};

template <class N>
struct Moisture {
    N as_built;
    N now;
};

template <class N>
N moisture_content(const Case& c, AirState state, Book<N>& book) {
    const Air air = air_of(c.service, state);
    const N temperature = book.input("T", Kind::temperature, air.temperature);
    const N humidity = book.input("RH", Kind::ratio, air.humidity);
    return book.solved({"states", state_text(state), "moisture_content"}, "M", Kind::plain,
                       equilibrium_moisture(value_of(temperature), value_of(humidity)),
                       "equilibrium moisture content in per cent at T and RH",
                       {temperature, humidity}, "Wood Handbook FPL-GTR-282, equation 4-5");
}

// Where a movement's coefficient and its factor in one state are entered.
struct MovementPaths {
    FigurePath coefficient;
    FigurePath factor;
};

template <class N>
N factor(const MovementPaths& paths, const Property& coefficient, const Moisture<N>& m,
         Book<N>& book) {
    const N c = book.reference(paths.coefficient, "C", Kind::plain, coefficient.value,
                               {coefficient.source});
    return book.solved(paths.factor, "k", Kind::plain,
                       movement(value_of(c), value_of(m.as_built), value_of(m.now)),
                       "1 + C·(M − M_built), general form outside 6 to 14 %",
                       {c, m.as_built, m.now}, kHandbook);
}

template <class N>
PlateFactors<N> plate_factors(const Plate& plate, std::string_view name, AirState state,
                              const Timber& timber, const Moisture<N>& m, Book<N>& book) {
    PlateFactors<N> factors{N(1), N(1), N(1)};
    if (state == AirState::built || plate.sawn.value == Sawn::plywood) {
        return factors;
    }
    // A flat-sawn board's face moves as the tangential direction does, its thickness as the radial.
    const bool flat = plate.sawn.value == Sawn::flat;
    const Property& face = flat ? *timber.tangential_coefficient : *timber.radial_coefficient;
    const Property& edge = flat ? *timber.radial_coefficient : *timber.tangential_coefficient;
    const std::string_view in_state = state_text(state);
    // Rails lie along the glazing line, and along the grain timber stands still.
    if (!plate.build.rails()) {
        const N across = factor({{"states", name, "across_coefficient"},
                                 {"states", in_state, name, "across"}}, face, m, book);
        (plate.grain.value == Grain::width ? factors.depth : factors.width) = across;
    }
    factors.thickness = factor({{"states", name, "thickness_coefficient"},
                                {"states", in_state, name, "thickness"}}, edge, m, book);
    return factors;
}

// Either way across a post. With the rings at 45° both ways move alike, by the mean of the two
// principal movements: swelling across the rings and along them shears nothing in those directions.
Property post_coefficient(const Post& post, const Timber& timber) {
    Property coefficient = *timber.tangential_coefficient;
    if (post.sawn.value == PostSawn::rift) {
        coefficient.value = (coefficient.value + timber.radial_coefficient->value) / 2;
    }
    return coefficient;
}

}  // namespace

Air air_of(const Service& service, AirState state) noexcept {
    switch (state) {
        case AirState::built: return {service.built_temperature, service.built_humidity};
        case AirState::cold_dry: return {service.temperature[0], service.humidity[0]};
        case AirState::cold_damp: return {service.temperature[0], service.humidity[1]};
        case AirState::warm_dry: return {service.temperature[1], service.humidity[0]};
        case AirState::warm_damp: break;
    }
    return {service.temperature[1], service.humidity[1]};
}

double movement(double coefficient, double from, double to) {
    BOWFRONT_EXPECTS(coefficient > 0);
    constexpr double kLeast = 6;
    constexpr double kMost = 14;
    const bool linear = std::min(from, to) >= kLeast && std::max(from, to) <= kMost;
    return 1 + (linear ? coefficient * (to - from) : (to - from) / (1 / coefficient - 10 + from));
}

template <class N>
TimberStates<N> timber_states(const Case& c, Book<N>& book) {
    const Timber& timber = *find_timber(c.frame.timber.value);
    const Property post = post_coefficient(c.frame.post, timber);
    TimberStates<N> states;
    N built{};
    for (const AirState state : kAirStates) {
        TimberFactors<N>& factors = states[static_cast<std::size_t>(state)];
        const N now = moisture_content(c, state, book);
        if (state == AirState::built) {
            built = now;
        }
        const Moisture<N> m{built, now};
        factors.moisture = now;
        factors.base = plate_factors(c.frame.base, "base", state, timber, m, book);
        factors.top = plate_factors(c.frame.top, "top", state, timber, m, book);
        factors.post = state == AirState::built
                           ? N(1)
                           : factor({{"states", "post_coefficient"},
                                     {"states", state_text(state), "post"}},
                                    post, m, book);
        factors.post_least = factors.post_most = factors.post;
        if (state != AirState::built && c.frame.post.sawn.value == PostSawn::any) {
            // Rings may lie so that a post moves least just where that is worse.
            const N other = factor({{"states", "post_radial_coefficient"},
                                    {"states", state_text(state), "post_radial"}},
                                   *timber.radial_coefficient, m, book);
            factors.post_least = smaller(factors.post, other);
            factors.post_most = larger(factors.post, other);
        }
    }
    return states;
}

template <class N>
std::array<N, kAirStates.size()> sheet_factors(const Case& c, const SheetSpec& sheet,
                                               Book<N>& book) {
    const Property& expansion = sheet.like->expansion;
    const N alpha = book.reference({"sheets", sheet.key, "expansion"}, "α", Kind::plain,
                                   expansion.value, {expansion.source});
    const auto growth = [&](AirState state, const N& humidity) {
        return book.solved({"sheets", sheet.key, state_text(state), "moisture_growth"}, "ε",
                           Kind::plain, moisture_growth(*sheet.like, value_of(humidity)),
                           "growth at RH by the sheet library's curve", {humidity},
                           sheet.like->moisture ? sheet.like->moisture->source
                                                : "no growth with moisture is known");
    };
    std::array<N, kAirStates.size()> factors;
    N first_temperature{};
    N first_growth{};
    for (const AirState state : kAirStates) {
        const Air air = air_of(c.service, state);
        const N temperature = book.input("T", Kind::temperature, air.temperature);
        const N now = growth(state, book.input("RH", Kind::ratio, air.humidity));
        if (state == AirState::built) {
            first_temperature = temperature;
            first_growth = now;
        }
        factors[static_cast<std::size_t>(state)] = book.figure(
            {"sheets", sheet.key, state_text(state), "factor"}, "k_s", Kind::plain,
            (1 + alpha * (temperature - first_temperature)) * (1 + now) / (1 + first_growth),
            "linear expansion and growth with moisture");
    }
    return factors;
}

double stretched_arc(double radius, double sweep, double along_chord, double along_rise) {
    BOWFRONT_EXPECTS(radius > 0 && sweep > 0 && along_chord > 0 && along_rise > 0);
    if (along_chord == along_rise) {
        return radius * sweep * along_chord;
    }
    // The integrand is even, smooth and nearly constant. Over half the sweep, at most half a turn,
    // twelve nodes leave less than 1e-14 of it for factors within a tenth of each other.
    const double mean = (along_chord * along_chord + along_rise * along_rise) / 2;
    const double swing = (along_chord * along_chord - along_rise * along_rise) / 2;
    const auto stretch = [&](double angle) { return std::sqrt(mean + swing * std::cos(2 * angle)); };
    const double middle = sweep / 4;
    double sum = 0;
    for (const Node& node : kGaussNodes) {
        sum += node.weight * (stretch(middle * (1 - node.at)) + stretch(middle * (1 + node.at)));
    }
    return radius * 2 * middle * sum;
}

double stretched_arc(double radius, double sweep, double along_x, double along_y,
                     double chord_heading) {
    BOWFRONT_EXPECTS(radius > 0 && sweep > 0 && along_x > 0 && along_y > 0);
    const double mean = (along_x * along_x + along_y * along_y) / 2;
    const double swing = (along_x * along_x - along_y * along_y) / 2;
    const auto stretch = [&](double heading) {
        return std::sqrt(mean + swing * std::cos(2 * heading));
    };
    // Half of the sweep at a time, as above.
    const double quarter = sweep / 4;
    double sum = 0;
    for (const double middle : {chord_heading - quarter, chord_heading + quarter}) {
        for (const Node& node : kGaussNodes) {
            sum += node.weight *
                   (stretch(middle - quarter * node.at) + stretch(middle + quarter * node.at));
        }
    }
    return radius * quarter * sum;
}

template TimberStates<double> timber_states(const Case&, Book<double>&);
template TimberStates<Traced> timber_states(const Case&, Book<Traced>&);
template std::array<double, kAirStates.size()> sheet_factors(const Case&, const SheetSpec&,
                                                             Book<double>&);
template std::array<Traced, kAirStates.size()> sheet_factors(const Case&, const SheetSpec&,
                                                             Book<Traced>&);

}  // namespace fit
}  // namespace bowfront
