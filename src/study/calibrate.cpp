#include "bowfront/study/calibrate.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/study/student.hpp"

namespace bowfront::study {
namespace {

SpreadVerdict judge(const std::optional<Scatter>& scatter, double most_spread) {
    if (!scatter) {
        return SpreadVerdict::too_few;
    }
    if (scatter->deviation < kRounding) {
        return SpreadVerdict::too_alike;
    }
    return scatter->prediction > most_spread ? SpreadVerdict::too_wide : SpreadVerdict::measured;
}

std::vector<Outlier> find_outliers(const std::vector<Measured>& all, const Sample& sample) {
    std::vector<Outlier> found;
    if (!sample.scatter || sample.scatter->deviation < kRounding) {
        return found;
    }
    const double limit = grubbs_limit(static_cast<int>(all.size()), kOutlierLevel);
    for (const Measured& one : all) {
        const double distance = std::abs(one.value - sample.mean) / sample.scatter->deviation;
        if (distance > limit) {
            found.push_back({one, distance, limit});
        }
    }
    return found;
}

Series series_of(Measure measure, std::vector<Measured> measured) {
    const SheetRange& range = range_of(measure);
    std::vector<double> values;
    for (const Measured& one : measured) {
        BOWFRONT_EXPECTS(one.value >= range.low && one.value <= range.high);
        values.push_back(one.value);
    }
    Series series{measure, std::move(measured), describe(std::move(values)), {}, {}};
    series.spread = judge(series.sample.scatter, range.most_spread);
    series.outliers = find_outliers(series.measured, series.sample);
    return series;
}

std::vector<Series> series_of(const std::vector<Coupon>& coupons) {
    std::vector<Series> all;
    for (const auto& [direction, measure] :
         {std::pair{SheetDirection::along, Measure::shrink_along},
          std::pair{SheetDirection::across, Measure::shrink_across}}) {
        std::vector<Measured> measured;
        for (const Coupon& coupon : coupons) {
            if (coupon.direction == direction) {
                measured.push_back({coupon.shrink(), coupon.line});
            }
        }
        if (!measured.empty()) {
            all.push_back(series_of(measure, std::move(measured)));
        }
    }
    return all;
}

std::vector<Series> series_of(const std::vector<TestArc>& arcs) {
    std::vector<Measured> measured;
    for (const TestArc& arc : arcs) {
        measured.push_back({arc.springback(), arc.line});
    }
    return {series_of(Measure::springback, std::move(measured))};
}

}  // namespace

Sample describe(std::vector<double> values) {
    BOWFRONT_EXPECTS(!values.empty());
    std::sort(values.begin(), values.end());  // one order of adding up, whatever the file's
    const auto n = static_cast<double>(values.size());
    Sample sample{values.size(), std::accumulate(values.begin(), values.end(), 0.0) / n, {}};
    if (values.size() < kFewest) {
        return sample;
    }
    double squares = 0;
    for (const double value : values) {
        squares += (value - sample.mean) * (value - sample.mean);
    }
    Scatter scatter;
    scatter.deviation = std::sqrt(squares / (n - 1));
    scatter.standard_error = scatter.deviation / std::sqrt(n);
    scatter.student = student_t(1 - kConfidence, static_cast<int>(values.size()) - 1);
    scatter.prediction = scatter.student * scatter.deviation * std::sqrt(1 + 1 / n);
    sample.scatter = scatter;
    return sample;
}

const SheetRange& range_of(Measure measure) noexcept {
    return measure == Measure::springback ? kSpringbackRange : kShrinkRange;
}

std::vector<Series> calibrate(const Measurements& measurements) {
    std::vector<Series> all =
        std::visit([](const auto& samples) { return series_of(samples); }, measurements);
    BOWFRONT_EXPECTS(!all.empty());
    return all;
}

}  // namespace bowfront::study
