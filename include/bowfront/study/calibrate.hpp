#pragma once
/// \file
/// What a sheet does when it is heated and bent, learnt from samples of it.

#include <cstddef>
#include <optional>
#include <vector>

#include "bowfront/model/coupon.hpp"

namespace bowfront::study {

/// Share of blanks that the spread is to hold; the rest lies outside it.
inline constexpr double kConfidence = 0.95;
/// Level of the test for outliers. Source: ISO 5725-2, 7.3.4: a straggler (clause from memory)
inline constexpr double kOutlierLevel = 0.05;
/// The fewest measurements that show how much samples differ. Source: common practice, no source
inline constexpr std::size_t kFewest = 3;
/// Standard deviations below this, as a ratio of length, are rounding: a millionth of a millimetre
/// on a metre, which no shop measures. Source: choice
inline constexpr double kRounding = 1e-9;

/// How much samples differ.
struct Scatter {
    double deviation = 0;       ///< standard deviation s, over n − 1
    double standard_error = 0;  ///< of the mean, s/√n
    double student = 0;         ///< t exceeded by 2.5 % to each side at n − 1 degrees of freedom
    double prediction = 0;      ///< ± about the mean that holds the next sample at kConfidence
};

/// Mean and scatter of some values.
struct Sample {
    std::size_t count = 0;
    double mean = 0;
    std::optional<Scatter> scatter;  ///< none below kFewest values
};

/// Mean and scatter; the order of the values has no say, not even in the last digit.
/// @param values  at least one, finite
/// @throws ContractError where there is none
/// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.2 (mean and its standard error);
///         prediction interval for one further value: t·s·√(1 + 1/n), from memory of G. J. Hahn,
///         W. Q. Meeker, Statistical Intervals, 4.7, and by the variance of a difference
[[nodiscard]] Sample describe(std::vector<double> values);

/// What is measured.
enum class Measure { shrink_along, shrink_across, springback };

/// One measurement.
struct Measured {
    double value = 0;      ///< shrink or springback, ratio
    std::size_t line = 0;  ///< of the file, from 1
};

/// A measurement that lies too far from the mean to be one of the rest. It still counts: only who
/// finds the cause may take it out.
struct Outlier {
    Measured measured;
    double distance = 0;  ///< from the mean, in standard deviations
    double limit = 0;     ///< of Grubbs' test at kOutlierLevel
};

/// Whether the scatter can stand as the spread in a case file.
enum class SpreadVerdict {
    measured,   ///< ± the prediction
    too_few,    ///< fewer than kFewest: unknown
    too_alike,  ///< no scatter at all: the measure is coarser than the sheet; unknown
    too_wide    ///< more than a case file takes: the mean is worth nothing either
};

/// All measurements of one thing.
struct Series {
    Measure measure = Measure::shrink_along;
    std::vector<Measured> measured;  ///< in the file's order
    Sample sample;
    SpreadVerdict spread = SpreadVerdict::too_few;
    std::vector<Outlier> outliers;  ///< in the file's order
};

/// The range of a measure in a case file.
[[nodiscard]] const SheetRange& range_of(Measure measure) noexcept;

/// One series for each thing that was measured, in the order of Measure.
/// @param measurements  at least one; each shrink and springback in its range
/// @throws ContractError outside these ranges
[[nodiscard]] std::vector<Series> calibrate(const Measurements& measurements);

}  // namespace bowfront::study
