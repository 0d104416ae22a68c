#include "finding_text.hpp"

#include "bowfront/base/number_text.hpp"

namespace bowfront::report {
namespace {

constexpr int kDecimals = 2;

std::string shown(double value) {
    return fixed_text(value, kDecimals);
}

}  // namespace

std::string finding_text(const Finding& finding) {
    const bool fails = finding.status == Status::fail;
    const double told = fails ? finding.value : finding.worst;
    return std::string(fails ? "  FAIL " : "  warn ") + std::string(code_text(finding.code)) + " " +
           finding.id + " " + finding.about + " (" + finding.state +
           (told != finding.value ? ", worst case" : "") + "): " + shown(told) +
           (finding.bound == Bound::at_least ? ", wanted at least " : ", at most ") +
           shown(finding.limit) + (finding.unit.empty() ? "" : " " + finding.unit) + "\n       " +
           finding.advice + "\n";
}

}  // namespace bowfront::report
