#include <algorithm>
#include <cstdio>
#include <vector>

#include "bowfront/base/error.hpp"
#include "bowfront/io/read_coupons.hpp"
#include "bowfront/io/sheet_key.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/pipeline/design.hpp"
#include "bowfront/report/calibration.hpp"
#include "bowfront/study/calibrate.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"
#include "unknown_name.hpp"

namespace bowfront::cli {
namespace {

// The sheet of the library that a formed one is like.
const Sheet& formed_sheet(const std::string& name) {
    const Sheet* const sheet = find_sheet(name);
    if (sheet == nullptr || !sheet->can_be_heated) {
        std::vector<std::string_view> names;
        for (const Sheet& one : sheets()) {
            if (one.can_be_heated) {
                names.push_back(one.name);
            }
        }
        refuse_unknown("sheet that can be heated and is called", name, names);
    }
    return *sheet;
}

void expect_own_key(const std::string& key) {
    if (const auto fault = io::sheet_key_fault(key)) {
        throw InputError({{Code::input_value, "--key", 0, 0, {}, fault->found, fault->wanted}});
    }
}

}  // namespace

int run(const CalibrateRequest& request) {
    const Sheet& like = formed_sheet(request.like);
    expect_own_key(request.key);
    const auto series = study::calibrate(io::read_coupons(
        read_text(request.coupons_file, io::kMostCouponBytes), request.coupons_file));
    const report::CalibrationContent content{series, like, request.key};
    print(request.json ? report::calibration_json(content) : report::sheets_entry(content));
    if (!request.json) {
        std::fputs(report::calibration_text(content).c_str(), stderr);
    }
    const bool all_told = std::all_of(series.begin(), series.end(), [](const auto& one) {
        return one.spread != study::SpreadVerdict::too_wide;
    });
    return all_told ? ExitCode::fine : ExitCode::check_fails;
}

}  // namespace bowfront::cli
