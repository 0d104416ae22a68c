#include "module/read_back.hpp"

#include <algorithm>
#include <cmath>

#include "bowfront/base/number_text.hpp"

namespace bowfront::module {
namespace {

// A coordinate of up to 10 m is written with 13 digits, so it is off by up to 5e-10 mm; of a sheet
// that is 1 mm thick that is half a billionth of its volume.
constexpr double kVolumeDigits = 1e-9;  // relative
// The same coordinates, and the tolerance to which boxes of cylinders are found.
constexpr double kBoxDigits = 1e-6;  // mm

struct Expected {
    std::string name;
    std::string group;
    double volume = 0;
    Box3 box;
    bool met = false;
};

std::vector<Expected> expected(const step::Assembly& assembly) {
    std::vector<Expected> all;
    for (const step::Item& item : assembly.items) {
        for (const Placement& placement : item.placements) {
            all.push_back(
                {item.name, item.group, item.volume, solid::box(item.solid.placed(placement))});
        }
    }
    return all;
}

bool same(const Point3& a, const Point3& b) {
    return std::abs(a.x - b.x) <= kBoxDigits && std::abs(a.y - b.y) <= kBoxDigits &&
           std::abs(a.z - b.z) <= kBoxDigits;
}

bool agrees(const Expected& wanted, const step::ReadInstance& read) {
    return wanted.name == read.name && wanted.group == read.group &&
           std::abs(wanted.volume - read.measures.volume) <= kVolumeDigits * wanted.volume &&
           same(wanted.box.low, read.measures.box.low) &&
           same(wanted.box.high, read.measures.box.high);
}

}  // namespace

std::string difference(const step::Assembly& written, const std::vector<step::ReadInstance>& read) {
    std::vector<Expected> wanted = expected(written);
    if (wanted.size() != read.size()) {
        return std::to_string(wanted.size()) + " instances were written, " +
               std::to_string(read.size()) + " read";
    }
    for (const step::ReadInstance& instance : read) {
        const auto match = std::find_if(wanted.begin(), wanted.end(), [&](const Expected& other) {
            return !other.met && agrees(other, instance);
        });
        if (match == wanted.end()) {
            return "an instance of '" + instance.name + "' was read that was not written so: " +
                   rounded_text(instance.measures.volume, 6) + " mm3 in '" + instance.group + "'";
        }
        match->met = true;
    }
    return {};
}

}  // namespace bowfront::module
