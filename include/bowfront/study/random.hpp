#pragma once
/// \file
/// Random numbers that are the same on every machine.

#include <cstdint>

namespace bowfront::study {

/// A stream of random numbers; a seed fixes it for ever.
/// Source: the generator xoshiro256++ of Blackman and Vigna, seeded by splitmix64 (public domain
/// algorithms; constants from memory, the sequence is held by a test)
class Random {
  public:
    explicit Random(std::uint64_t seed) noexcept;
    /// 64 random bits.
    [[nodiscard]] std::uint64_t bits() noexcept;
    /// Uniform in [0, 1).
    [[nodiscard]] double uniform() noexcept {
        return static_cast<double>(bits() >> 11) * 0x1.0p-53;
    }

  private:
    std::uint64_t state_[4];
};

/// A share of a limit, −1 to 1: normal with σ half the limit, cut at the limit.
///
/// @param share  uniform in [0, 1); the same share gives the same value
/// Source:  inverse of the normal distribution cut at ±2σ, from a table of 4096 steps with cubic
///          interpolation; error under 1e-9 of the limit
[[nodiscard]] double cut_normal(double share) noexcept;

/// The standard deviation of `cut_normal`, as a share of the limit: what is left of σ = 1/2 once the
/// tails are cut. Source: variance of the normal distribution cut at ±a: 1 − 2a·φ(a)/(2Φ(a) − 1)
[[nodiscard]] double cut_normal_deviation() noexcept;

}  // namespace bowfront::study
