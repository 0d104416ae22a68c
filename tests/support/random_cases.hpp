#pragma once
/// \file
/// Random cases that can be built, the same ones for the same seed.

#include <random>
#include <vector>

#include "bowfront/model/case.hpp"

namespace bowfront::sample {

/// Draws cases; those that `fit::objections` has something against are drawn again.
class RandomCases {
  public:
    explicit RandomCases(unsigned seed) : random_(seed) {}

    /// Of any shape.
    [[nodiscard]] Case sound();
    /// A rectangle or a bow-front: with a front, right, back and left.
    [[nodiscard]] Case sound_with_four_sides();

    double draw(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }

    template <class T, std::size_t n>
    T pick(const T (&choices)[n]) {
        return choices[std::uniform_int_distribution<std::size_t>(0, n - 1)(random_)];
    }

  private:
    Case drawn();
    Plan drawn_plan();
    std::vector<SideSpec> drawn_chain();

    std::mt19937_64 random_;
};

}  // namespace bowfront::sample
