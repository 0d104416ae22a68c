#pragma once
/// \file
/// Short ways to write the library's values, one per unit.

#include <string_view>

#include "bowfront/materials/property.hpp"
#include "materials/sources.hpp"

namespace bowfront {

/// Where a value comes from and how sure it is.
struct Sourcing {
    std::string_view source;
    Certainty certainty = Certainty::remembered;
};

namespace sourcing {

constexpr Sourcing seen(std::string_view source) {
    return {source, Certainty::seen};
}
constexpr Sourcing reproduced(std::string_view source) {
    return {source, Certainty::reproduced};
}
constexpr Sourcing computed(std::string_view source) {
    return {source, Certainty::computed};
}
constexpr Sourcing choice(std::string_view source) {
    return {source, Certainty::choice};
}
constexpr Sourcing remembered() {
    return {source::kNoDocument, Certainty::remembered};
}

}  // namespace sourcing

constexpr Property property(double value, std::string_view unit, Sourcing from) {
    return {.value = value, .unit = unit, .source = from.source, .certainty = from.certainty};
}

constexpr Property density(double value, Sourcing from) {
    return property(value, "kg/m3", from);
}
constexpr Property stress(double value, Sourcing from) {
    return property(value, "MPa", from);
}
constexpr Property ratio(double value, Sourcing from) {
    return property(value, "ratio", from);
}
constexpr Property expansion(double value, Sourcing from) {
    return property(value, "1/K", from);
}
constexpr Property celsius(double value, Sourcing from) {
    return property(value, "degC", from);
}
constexpr Property conductivity(double value, Sourcing from) {
    return property(value, "W/(m K)", from);
}
constexpr Property heat_capacity(double value, Sourcing from) {
    return property(value, "J/(kg K)", from);
}

/// The same value with the span of what was published.
constexpr Property between(Property plain, double least, double most) {
    plain.range = {least, most};
    return plain;
}

/// The same value with a note.
constexpr Property noted(Property plain, std::string_view note) {
    plain.note = note;
    return plain;
}

}  // namespace bowfront
