#include "bowfront/study/random.hpp"

#include <array>
#include <bit>
#include <cmath>
#include <numbers>

namespace bowfront::study {
namespace {

constexpr double kCut = 2;  // the limit, in standard deviations
constexpr int kSteps = 4096;

double density(double z) {
    return std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
}

double cumulative(double z) { return std::erfc(-z / std::numbers::sqrt2) / 2; }

struct Node {
    double value = 0;  // share of the limit
    double slope = 0;  // per step
};

using Table = std::array<Node, kSteps + 1>;

Table make_table() {
    Table table;
    const double low = cumulative(-kCut);
    const double mass = 1 - 2 * low;
    double z = -kCut;
    for (int i = 0; i <= kSteps; ++i) {
        const double wanted = low + mass * i / kSteps;
        // Newton from the last node, a four-thousandth away: four steps reach the last digit.
        for (int step = 0; step < 4; ++step) {
            z -= (cumulative(z) - wanted) / density(z);
        }
        table[static_cast<std::size_t>(i)] = {z / kCut, mass / kSteps / density(z) / kCut};
    }
    table.front().value = -1;
    table.back().value = 1;
    return table;
}

const Table& table() {
    static const Table kTable = make_table();
    return kTable;
}

}  // namespace

Random::Random(std::uint64_t seed) noexcept {
    for (std::uint64_t& word : state_) {
        seed += 0x9e3779b97f4a7c15;
        std::uint64_t mixed = seed;
        mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111eb;
        word = mixed ^ (mixed >> 31);
    }
}

std::uint64_t Random::bits() noexcept {
    const std::uint64_t result = std::rotl(state_[0] + state_[3], 23) + state_[0];
    const std::uint64_t shifted = state_[1] << 17;
    state_[2] ^= state_[0];
    state_[3] ^= state_[1];
    state_[1] ^= state_[2];
    state_[0] ^= state_[3];
    state_[2] ^= shifted;
    state_[3] = std::rotl(state_[3], 45);
    return result;
}

double cut_normal(double share) noexcept {
    static const Table& nodes = table();
    const double place = share * kSteps;
    const int step = static_cast<int>(place);
    const double t = place - step;
    const Node& a = nodes[static_cast<std::size_t>(step)];
    const Node& b = nodes[static_cast<std::size_t>(step) + 1];
    // Cubic through both ends with their slopes (Hermite).
    const double s = 1 - t;
    return s * s * ((1 + 2 * t) * a.value + t * a.slope) +
           t * t * ((1 + 2 * s) * b.value - s * b.slope);
}

double cut_normal_deviation() noexcept {
    const double mass = 2 * cumulative(kCut) - 1;
    return std::sqrt(1 - 2 * kCut * density(kCut) / mass) / kCut;
}

}  // namespace bowfront::study
