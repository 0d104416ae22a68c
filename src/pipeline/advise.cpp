#include "bowfront/pipeline/advise.hpp"

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

#include "bowfront/io/edited_text.hpp"
#include "bowfront/io/varied_case.hpp"
#include "bowfront/study/advice.hpp"

namespace bowfront {
namespace {

// A value that is spread over lines, on one.
std::string on_one_line(const std::string& spelling) {
    std::string line;
    for (std::size_t at = 0; at < spelling.size();) {
        const std::size_t word = spelling.find_first_not_of(" \t\r\n", at);
        const std::string_view blank = std::string_view(spelling).substr(at, word - at);
        line += blank.find('\n') == std::string_view::npos ? blank : " ";
        const std::size_t end = std::min(spelling.find_first_of(" \t\r\n", word), spelling.size());
        line += spelling.substr(word, end - word);
        at = end;
    }
    return line;
}

study::CaseFile case_file(std::string_view text) {
    const auto file = std::make_shared<const io::EditedText>(std::string(text));
    return {[file](const std::string& pointer) { return on_one_line(file->spelling(pointer)); },
            io::VariedCase::contradiction};
}

// The worst finding that something can be done about, and what.
std::optional<Correction> next_correction(const Design& design, std::string_view text) {
    study::Adviser adviser(design.c(), design.findings, design.chance.options, case_file(text));
    for (const Finding* const finding : worst_first(design.findings)) {
        if (auto change = adviser.correction(*finding)) {
            return Correction{finding->id + " " + finding->about, std::move(*change)};
        }
    }
    return std::nullopt;
}

// Fails and warnings.
std::pair<std::size_t, std::size_t> counts(const std::vector<Finding>& findings) {
    std::pair<std::size_t, std::size_t> count;
    for (const Finding& finding : findings) {
        count.first += finding.status == Status::fail ? 1 : 0;
        count.second += finding.status == Status::warn ? 1 : 0;
    }
    return count;
}

}  // namespace

void advise(Design& design, std::string_view text) {
    study::advise(design.c(), design.findings, design.chance.options, case_file(text));
}

Corrected corrected(std::string_view text, const std::string& file_name,
                    const study::ChanceOptions& chance) {
    const Design first = design(text, file_name, chance);
    Corrected result{first, first, std::string(text), {}};
    // It ends: a change leaves fewer fails, or as many and fewer warnings.
    while (auto correction = next_correction(result.after, result.text)) {
        io::EditedText edited(result.text);
        edited.put(correction->change.pointer, correction->change.to);
        Design changed = design(edited.text(), file_name, chance);
        if (!(counts(changed.findings) < counts(result.after.findings))) {
            break;  // the case tips now, which the adviser does not ask
        }
        result.text = edited.text();
        result.after = std::move(changed);
        result.made.push_back(std::move(*correction));
    }
    advise(result.after, result.text);
    return result;
}

}  // namespace bowfront
