#include <cmath>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/report/calibration.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;
using study::Measure;
using study::Series;
using study::SpreadVerdict;

constexpr int kDecimals = 4;    // of a percentage: a micrometre on a metre
constexpr double kSteps = 1e6;  // of the last decimal in a ratio of 1

std::string percent(double ratio) {
    return rounded_text(ratio * 100, kDecimals) + " %";
}

// Rounded up, so that the limits in the case file are never narrower than what was found.
std::string spread_text(double ratio) {
    return percent(std::ceil(ratio * kSteps) / kSteps);
}

Json number(double value) {
    BOWFRONT_EXPECTS(std::isfinite(value));
    return value == 0 ? 0.0 : value;
}

// Where a measure stands in a sheet's entry.
struct Keys {
    std::string_view group;
    std::string_view mean;
};

Keys keys_of(Measure measure) noexcept {
    switch (measure) {
        case Measure::shrink_along: return {"shrink", "along"};
        case Measure::shrink_across: return {"shrink", "across"};
        case Measure::springback: break;
    }
    return {"springback", "radius"};
}

Json entry(const CalibrationContent& content) {
    Json sheet = {{"like", content.like.name}};
    for (const Series& series : content.series) {
        const Keys keys = keys_of(series.measure);
        if (series.spread != SpreadVerdict::too_wide) {
            sheet[std::string(keys.group)][std::string(keys.mean)] = percent(series.sample.mean);
        }
    }
    for (const Series& series : content.series) {
        if (series.spread != SpreadVerdict::measured) {
            continue;
        }
        const Keys keys = keys_of(series.measure);
        Json& spread = sheet[std::string(keys.group)]["spread"];
        (series.measure == Measure::springback ? spread : spread[std::string(keys.mean)]) =
            spread_text(series.sample.scatter->prediction);
    }
    return {{content.key, std::move(sheet)}};
}

std::string_view verdict_text(SpreadVerdict verdict) noexcept {
    switch (verdict) {
        case SpreadVerdict::measured: return "measured";
        case SpreadVerdict::too_few: return "too-few";
        case SpreadVerdict::too_alike: return "too-alike";
        case SpreadVerdict::too_wide: break;
    }
    return "too-wide";
}

Json series_json(const Series& series) {
    Json measured = Json::array();
    for (const study::Measured& one : series.measured) {
        measured.push_back({{"line", one.line}, {"value", number(one.value)}});
    }
    Json outliers = Json::array();
    for (const study::Outlier& outlier : series.outliers) {
        outliers.push_back({{"line", outlier.measured.line},
                            {"value", number(outlier.measured.value)},
                            {"deviations", number(outlier.distance)},
                            {"limit", number(outlier.limit)}});
    }
    Json json = {{"measure", measure_text(series.measure)},
                 {"count", series.sample.count},
                 {"mean", number(series.sample.mean)}};
    if (const auto& scatter = series.sample.scatter) {
        json["standard_deviation"] = number(scatter->deviation);
        json["standard_error"] = number(scatter->standard_error);
        json["student_t"] = number(scatter->student);
        json["prediction"] = number(scatter->prediction);
    }
    json["spread"] = verdict_text(series.spread);
    json["outliers"] = std::move(outliers);
    json["measured"] = std::move(measured);
    return json;
}

std::string dump(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace

std::string_view measure_text(study::Measure measure) noexcept {
    switch (measure) {
        case Measure::shrink_along: return "shrink along";
        case Measure::shrink_across: return "shrink across";
        case Measure::springback: break;
    }
    return "springback";
}

std::string sheets_entry(const CalibrationContent& content) {
    return dump({{"sheets", entry(content)}});
}

std::string calibration_json(const CalibrationContent& content) {
    Json json;
    json["bowfront_calibration"] = 1;
    json["confidence"] = study::kConfidence;
    json["outlier_level"] = study::kOutlierLevel;
    json["series"] = Json::array();
    for (const Series& series : content.series) {
        json["series"].push_back(series_json(series));
    }
    json["sheets"] = entry(content);
    return dump(json);
}

}  // namespace bowfront::report
