/// \file
/// Writes sample patterns in both releases, and what outside judges should measure in them.
/// usage: dxf_samples FOLDER (made where it is missing)

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <numbers>

#include "bowfront/base/number_text.hpp"
#include "bowfront/dxf/dxf.hpp"
#include "support/dxf_patterns.hpp"

namespace {

using namespace bowfront;

using Sums = std::map<std::string, std::vector<double>>;

struct Expectation {
    Sums areas;
    Sums lengths;
};

void add_region(Expectation& expected, const std::string& layer, const std::string& hole_layer,
                const Region& region) {
    const auto add = [&expected](const std::string& name, const Contour& contour) {
        expected.areas[name].push_back(std::abs(contour.area()));
        expected.lengths[name].push_back(contour.perimeter());
    };
    add(layer, region.outer);
    for (const Contour& hole : region.holes) {
        add(hole_layer, hole);
    }
}

Expectation expectation(const Pattern& pattern) {
    Expectation expected;
    add_region(expected, "profile-outer", "profile-inner", pattern.outline);
    for (const Recess& recess : pattern.recesses) {
        const std::string layer = dxf::recess_layer(recess.depth);
        add_region(expected, layer, layer, recess.area);
    }
    for (const Bore& bore : pattern.bores) {
        const std::string layer = dxf::bore_layer(bore.depth);
        expected.areas[layer].push_back(std::numbers::pi / 4 * bore.diameter * bore.diameter);
        expected.lengths[layer].push_back(std::numbers::pi * bore.diameter);
    }
    for (const Path& scribe : pattern.scribes) {
        expected.lengths["scribe"].push_back(scribe.length());
    }
    return expected;
}

std::string json(const Sums& sums) {
    std::string text;
    for (const auto& [layer, values] : sums) {
        text += (text.empty() ? "{\"" : ", \"") + layer + "\": [";
        for (std::size_t i = 0; i < values.size(); ++i) {
            text += (i == 0 ? "" : ", ") + number_text(values[i]);
        }
        text += ']';
    }
    return text.empty() ? "{}" : text + '}';
}

std::string json(const Pattern& pattern) {
    const Expectation expected = expectation(pattern);
    return "{\"net_area\": " + number_text(pattern.outline.area()) +
           ", \"areas\": " + json(expected.areas) + ", \"lengths\": " + json(expected.lengths) +
           '}';
}

std::map<std::string, Pattern> samples() {
    std::map<std::string, Pattern> all = {{"name-board", test::name_board()},
                                          {"form-rib", test::form_rib()},
                                          {"case-base", test::case_base()},
                                          {"pane-blank", test::pane_blank()}};
    constexpr std::uint64_t kRandom = 40;
    for (std::uint64_t seed = 1; seed <= kRandom; ++seed) {
        all["random-" + std::to_string(seed)] = test::random_pattern(seed);
    }
    return all;
}

}  // namespace

int main(int count, char** arguments) {
    if (count != 2) {
        std::cerr << "usage: dxf_samples FOLDER\n";
        return 2;
    }
    const std::filesystem::path folder = arguments[1];
    std::filesystem::create_directories(folder);
    std::string expected;
    for (const auto& [name, pattern] : samples()) {
        for (const bool old : {false, true}) {
            const std::string file = name + (old ? "-r12.dxf" : ".dxf");
            const dxf::Options options{old ? dxf::Version::r12 : dxf::Version::ac1015};
            std::ofstream(folder / file, std::ios::binary)
                << dxf::write(pattern, name, Stamp{}, options);
            expected += (expected.empty() ? "{\n\"" : ",\n\"") + file + "\": " + json(pattern);
        }
    }
    std::ofstream areas(folder / "areas.json");
    areas << expected << "\n}\n";
    return areas.flush() ? 0 : 1;
}
