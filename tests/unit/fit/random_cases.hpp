#pragma once
/// \file
/// Sound cases drawn at random, for laws that hold for all of them.

#include <gtest/gtest.h>

#include "bowfront/fit/checks.hpp"
#include "support/random_cases.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {

/// The seed is printed with every failure; cases that can't be built are drawn again.
inline constexpr unsigned kSeed = 20240611;
inline constexpr int kCases = 200;
/// Some dozens of operations on sizes under 3 m, mm.
inline constexpr double kRounding = 1e-9;

class RandomCases : public testing::Test, public sample::RandomCases {
  protected:
    RandomCases() : sample::RandomCases(kSeed) {}
};

}  // namespace bowfront::fit
