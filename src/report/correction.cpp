#include "bowfront/report/correction.hpp"

#include <algorithm>

#include "finding_text.hpp"

namespace bowfront::report {
namespace {

std::string verdict_text(const std::vector<Finding>& findings) {
    const auto count = [&](Status status) {
        return std::to_string(std::count_if(findings.begin(), findings.end(), [&](const Finding& each) {
            return each.status == status;
        }));
    };
    return std::string(status_text(verdict(findings))) + " (" + count(Status::fail) + " fail, " +
           count(Status::warn) + " warn, " + count(Status::pass) + " pass)";
}

}  // namespace

std::string correction_text(const std::vector<Finding>& before, const std::vector<Finding>& after,
                            const std::vector<MadeChange>& made, const std::string& file) {
    std::string text = "Verdict before: " + verdict_text(before) + "\n";
    if (made.empty()) {
        text += verdict(before) == Status::pass
                    ? "All checks pass; nothing was written.\n"
                    : "Nothing could be changed without asking you; nothing was written.\n";
    } else {
        text += "Changes, the worst finding first; all sums were done again after each\n";
        for (const MadeChange& one : made) {
            text += "  " + one.change.pointer + ": " + one.change.from + " -> " + one.change.to +
                    "\n       for " + one.check + ", which " +
                    (one.change.before == Status::fail ? "failed" : "warned") + ": now " +
                    std::string(status_text(one.change.after)) + "\n";
        }
        text += "Verdict after: " + verdict_text(after) + "\n" + "Written to " + file + "\n";
    }
    const auto left = worst_first(after);
    if (!left.empty()) {
        text += "Left, the worst first\n";
        for (const Finding* const finding : left) {
            text += finding_text(*finding);
        }
    }
    return text;
}

}  // namespace bowfront::report
