#include "finding_text.hpp"

#include "bowfront/base/number_text.hpp"

namespace bowfront::report {
namespace {

constexpr int kDecimals = 2;

std::string shown(double value) {
    return fixed_text(value, kDecimals);
}

const std::string kIndent(7, ' ');

}  // namespace

std::string change_text(const Change& change) {
    std::string text = change.words;
    if (change.after != Status::pass) {
        text += "; a warning is left";
    }
    for (const std::string& brought : change.brings) {
        text += "; brings the warning " + brought;
    }
    return text;
}

std::string finding_text(const Finding& finding) {
    const bool fails = finding.status == Status::fail;
    const double told = fails ? finding.value : finding.worst;
    std::string text =
        std::string(fails ? "  FAIL " : "  warn ") + std::string(code_text(finding.code)) + " " +
        finding.id + " " + finding.about + " (" + finding.state +
        (told != finding.value ? ", worst case" : "") + "): " + shown(told) +
        (finding.bound == Bound::at_least ? ", wanted at least " : ", at most ") +
        shown(finding.limit) + (finding.unit.empty() ? "" : " " + finding.unit) + "\n";
    if (!finding.note.empty()) {
        text += kIndent + finding.note + "\n";
    }
    if (finding.changes.empty()) {
        return text + kIndent + finding.advice + "\n";
    }
    for (const Change& change : finding.changes) {
        text += kIndent + (&change == &finding.changes.front() ? "- " : "- or ") +
                change_text(change) + "\n";
    }
    if (!finding.hint.empty()) {
        text += kIndent + "a hint, not tried out: " + finding.hint + "\n";
    }
    return text;
}

}  // namespace bowfront::report
