#pragma once
/// \file
/// Quantiles for small samples: Student's t, and the limit of Grubbs' test for outliers.

namespace bowfront::study {

/// The t that a variable of Student's distribution stays within, to both sides, but for a share.
///
/// @param outside  probability of lying outside ±t; > 0, < 1
/// @param freedom  degrees of freedom, 1 to 1 000 000
/// @returns  > 0; relative error under 1e-9 for `outside` of at least 1e-6
/// @throws   ContractError outside these ranges
/// Source:  M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (exact
///          finite sums for whole degrees of freedom), solved for t by halving the angle
/// Example: 5 % outside, 4 degrees of freedom -> 2.776445
[[nodiscard]] double student_t(double outside, int freedom);

/// How many standard deviations the farthest of `count` measurements may lie from their mean before
/// it counts as an outlier: Grubbs' test, one outlier to either side.
///
/// @param count  3 to 1 000 000
/// @param level  probability that sound measurements are suspected; > 0, < 1
/// @throws ContractError outside these ranges
/// Source:  NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1 (the two-sided test); the
///          same test stands in ISO 5725-2, 7.3.4, as a table (clause from memory):
///          (n − 1)/√n · √(t²/(n − 2 + t²)), t exceeded by level/2n at n − 2 degrees of freedom
/// Example: 8 measurements, 5 % -> 2.126
[[nodiscard]] double grubbs_limit(int count, double level);

}  // namespace bowfront::study
