#include "whole_text.hpp"

#include <algorithm>
#include <numbers>

#include "bowfront/base/number_text.hpp"

namespace bowfront::report {
namespace {

constexpr double kDegrees = 180 / std::numbers::pi;

std::string shown(double value, int decimals = 1) {
    return fixed_text(value, decimals);
}

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words) {
        text += (text.empty() ? "" : ", ") + word;
    }
    return text;
}

std::string lifting_text(const std::optional<double>& people) {
    if (!people) {
        return "by lifting gear";
    }
    return *people > 1 ? "by " + rounded_text(*people, 0) + " people" : "by 1 person";
}

std::string standing_text(const std::string& name, const whole::Standing<double>& standing) {
    const auto& [weight, tipping, edges, people] = standing;
    return "  " + name + shown(weight.mass, 2) + " kg, centre of gravity at x " + shown(weight.x) +
           ", y " + shown(weight.y) + ", z " + shown(weight.z) + " mm\n" +
           "          tips on a slope of " + shown(tipping.angle * kDegrees) + " deg, to the " +
           whole::direction_text(tipping.direction) + ", or by " + shown(tipping.force) +
           " N at its upper edge\n" + "          lifted under the base " + lifting_text(people) +
           "; from its edges to the centre of gravity: left " + shown(edges.left, 0) + ", right " +
           shown(edges.right, 0) + ", front " + shown(edges.front, 0) + ", back " +
           shown(edges.back, 0) + " mm\n";
}

// Text to a width, counted in bytes: ids and prices are ASCII but for what the maker writes.
std::string to_width(std::string text, std::size_t width) {
    text.resize(std::max(width, text.size()), ' ');
    return text;
}

}  // namespace

std::string whole_text(const whole::WholeSums<double>& sums) {
    std::string text = "\nThe whole case, " + shown(sums.height) + " mm high\n  parts   ";
    for (const auto& [group, mass] : sums.groups) {
        text += (&group == &sums.groups.front().first ? "" : ", ") + group + " " + shown(mass, 2) +
                " kg";
    }
    text += "\n";
    if (!sums.unknown.empty()) {
        text += "  not counted, since their density is not known: " + joined(sums.unknown) + "\n";
    }
    if (sums.empty) {
        text += standing_text("empty   ", *sums.empty);
    }
    if (sums.loaded) {
        text += standing_text("loaded  ", *sums.loaded);
    }
    return text;
}

std::string cost_text(const whole::CostSums<double>& sums) {
    std::size_t widest = 0;
    for (const auto& row : sums.rows) {
        widest = std::max(widest, row.what.size());
    }
    std::string text = "\nMaterial, net sizes and " + rounded_text(sums.waste * 100, 2) +
                       " % waste, in " + sums.currency + "\n";
    for (const auto& row : sums.rows) {
        const std::string unit(price_unit_text(row.unit));
        text += "  " + to_width(row.what, widest) + "  " + shown(row.cost, 2) + "  (" +
                rounded_text(row.quantity, 4) + " " + unit + ", " + rounded_text(row.net, 4) +
                " net, at " + rounded_text(row.price, 4) + " /" + unit + ")\n";
    }
    text += "  " + to_width("total", widest) + "  " + shown(sums.total, 2) + "\n";
    if (!sums.not_priced.empty()) {
        text += "  not priced: " + joined(sums.not_priced) + "\n";
    }
    return text;
}

}  // namespace bowfront::report
