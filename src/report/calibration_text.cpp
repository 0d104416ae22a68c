#include <algorithm>
#include <cmath>
#include <string_view>

#include "bowfront/base/number_text.hpp"
#include "bowfront/base/quoted_text.hpp"
#include "bowfront/report/calibration.hpp"

namespace bowfront::report {
namespace {

using study::Measure;
using study::Scatter;
using study::Series;
using study::SpreadVerdict;

constexpr int kDecimals = 3;
constexpr std::size_t kNameWidth = 15;
constexpr std::size_t kColumnWidth = 11;
constexpr std::string_view kUnknown = "-";

std::string percent(double ratio) {
    return fixed_text(ratio * 100, kDecimals);
}

std::string column(std::string_view text) {
    return std::string(kColumnWidth - std::min(kColumnWidth, text.size()), ' ') + std::string(text);
}

std::string name_of(const Series& series) {
    std::string name(measure_text(series.measure));
    name.resize(std::max(kNameWidth, name.size()), ' ');
    return name;
}

std::string table(const std::vector<Series>& all) {
    std::string text = std::string(kNameWidth, ' ');
    for (const std::string_view title : {"samples", "mean", "std. dev.", "std. error", "next one"}) {
        text += column(title);
    }
    text += '\n';
    for (const Series& series : all) {
        text += name_of(series) + column(std::to_string(series.sample.count)) +
                column(percent(series.sample.mean) + " %");
        const auto& scatter = series.sample.scatter;
        for (double Scatter::*const figure :
             {&Scatter::deviation, &Scatter::standard_error, &Scatter::prediction}) {
            const bool prediction = figure == &Scatter::prediction;
            text += column(!scatter ? std::string(kUnknown)
                                    : (prediction ? "+-" : "") + percent(*scatter.*figure) + " %");
        }
        text += '\n';
    }
    return text;
}

double library_spread(const Sheet& sheet, Measure measure) noexcept {
    switch (measure) {
        case Measure::shrink_along: return sheet.shrink_spread_along.value;
        case Measure::shrink_across: return sheet.shrink_spread_across.value;
        case Measure::springback: break;
    }
    return sheet.springback_spread.value;
}

double library_mean(const Sheet& sheet, Measure measure) noexcept {
    switch (measure) {
        case Measure::shrink_along: return sheet.shrink_along.value;
        case Measure::shrink_across: return sheet.shrink_across.value;
        case Measure::springback: break;
    }
    return sheet.springback.value;
}

// What is measured counts, however far from the library; but slips look the same.
std::string distance_note(const Series& series, const Sheet& like) {
    constexpr double kFar = 3;  // of the library's spread; a choice of this tool
    const double mean = library_mean(like, series.measure);
    const double spread = library_spread(like, series.measure);
    if (std::abs(series.sample.mean - mean) <= kFar * spread) {
        return {};
    }
    return std::string(measure_text(series.measure)) + ": " + percent(series.sample.mean) +
           " % is far from what is known of " + std::string(like.name) + ", " +
           rounded_text(mean * 100, kDecimals) + " +- " + rounded_text(spread * 100, kDecimals) +
           " %. Look whether before and after, or along and across, changed places, and whether it "
           "is that sheet; then measure once more.\n";
}

std::string spread_note(const Series& series, const Sheet& like) {
    const std::string name(measure_text(series.measure));
    const std::string library = "; the spread of " + std::string(like.name) + " in the library, +-" +
                                rounded_text(library_spread(like, series.measure) * 100, kDecimals) +
                                " %, stays.\n";
    switch (series.spread) {
        case SpreadVerdict::too_few:
            return name + ": fewer than " + std::to_string(study::kFewest) +
                   " samples can't show how much they differ" + library;
        case SpreadVerdict::too_alike:
            return name + ": all samples are alike, so they were read too coarsely to show how much "
                   "they differ" + library;
        case SpreadVerdict::too_wide:
            return name + ": samples differ so much that a case file would not take their spread (at "
                   "most +-" + rounded_text(study::range_of(series.measure).most_spread * 100, 1) +
                   " %). It is left out of the entry: measure again.\n";
        case SpreadVerdict::measured: break;
    }
    return name + ": with 95 % confidence the next one lies within +-" +
           percent(series.sample.scatter->prediction) + " % of the mean (Student's t " +
           fixed_text(series.sample.scatter->student, kDecimals) +
           "); this is the spread in the entry.\n";
}

std::string outlier_note(const Series& series, const study::Outlier& outlier) {
    return "line " + std::to_string(outlier.measured.line) + ": " +
           std::string(measure_text(series.measure)) + ' ' + percent(outlier.measured.value) +
           " % lies " + fixed_text(outlier.distance, kDecimals) +
           " standard deviations from the mean, and Grubbs' test at 5 % allows " +
           fixed_text(outlier.limit, kDecimals) +
           ". It still counts: measure it again, and take it out only where you find the cause.\n";
}

// What the entry leaves to the library although its like was measured.
std::string missing_note(const std::vector<Series>& all) {
    const auto has = [&all](Measure measure) {
        return std::any_of(all.begin(), all.end(), [measure](const Series& series) {
            return series.measure == measure && series.spread != SpreadVerdict::too_wide;
        });
    };
    std::string text;
    for (const Measure measure : {Measure::shrink_along, Measure::shrink_across}) {
        const bool other = has(measure == Measure::shrink_along ? Measure::shrink_across
                                                                : Measure::shrink_along);
        if (!has(measure) && other) {
            text += std::string(measure_text(measure)) +
                    ": not measured; the library's holds, and checks go on warning of it.\n";
        }
    }
    return text;
}

}  // namespace

std::string calibration_text(const CalibrationContent& content) {
    std::string text = table(content.series) + '\n';
    for (const Series& series : content.series) {
        text += spread_note(series, content.like) + distance_note(series, content.like);
    }
    text += missing_note(content.series);
    for (const Series& series : content.series) {
        for (const study::Outlier& outlier : series.outliers) {
            text += outlier_note(series, outlier);
        }
    }
    const std::string key = quoted_text(content.key);
    return text + "Put the entry " + key + R"( under "sheets" in the case file, and "sheet": )" + key +
           " in each pane that is cut from this sheet.\n";
}

}  // namespace bowfront::report
