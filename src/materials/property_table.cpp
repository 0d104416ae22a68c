#include "materials/property_table.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "bowfront/base/number_text.hpp"

namespace bowfront {
namespace {

constexpr std::size_t kTextWidth = 100;
constexpr std::string_view kGap = "  ";

std::string shown_value(double value, Shown shown) {
    return rounded_text(shown.as_percent ? 100 * value : value, shown.decimals);
}

std::string padded_left(std::string_view text, std::size_t width) {
    return std::string(width - text.size(), ' ').append(text);
}

std::string padded_right(std::string_view text, std::size_t width) {
    std::string padded(text);
    padded.resize(width, ' ');
    return padded;
}

// Text broken between words, every line indented, the first one less so.
std::string wrapped(std::string_view text) {
    const std::string first = "  ";
    const std::string later = "      ";
    std::string out = first;
    std::size_t column = first.size();
    while (!text.empty()) {
        const std::size_t space = text.find(' ');
        const std::string_view word = text.substr(0, space);
        text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
        const bool at_start = out.empty() || out.back() == ' ';
        if (!at_start && column + 1 + word.size() > kTextWidth) {
            out.append("\n").append(later);
            column = later.size();
        } else if (!at_start) {
            out.append(" ");
            ++column;
        }
        out.append(word);
        column += word.size();
    }
    return out.append("\n");
}

}  // namespace

void PropertyTable::add(std::string label, const std::optional<Property>& property, Shown shown) {
    if (!property) {
        return;
    }
    auto source = std::find(sources_.begin(), sources_.end(), property->source);
    if (source == sources_.end()) {
        source = sources_.insert(sources_.end(), property->source);
    }
    const auto number = static_cast<double>(source - sources_.begin() + 1);
    Row row{label,
            shown_value(property->value, shown),
            std::string(shown.as_percent ? "%" : property->unit),
            "",
            "[" + number_text(number) + "]",
            certainty_text(property->certainty)};
    if (property->range) {
        row.range = shown_value(property->range->first, shown) + " to " +
                    shown_value(property->range->second, shown);
    }
    rows_.push_back(std::move(row));
    if (property->note.empty()) {
        return;
    }
    const auto same = std::find_if(notes_.begin(), notes_.end(),
                                   [&](const auto& note) { return note.second == property->note; });
    if (same == notes_.end()) {
        notes_.emplace_back(std::move(label), property->note);
    } else {
        same->first.append(", ").append(label);
    }
}

std::string PropertyTable::rows_text() const {
    constexpr std::array kColumns{&Row::label, &Row::value, &Row::unit, &Row::range, &Row::source};
    std::array<std::size_t, kColumns.size()> widths{};
    for (std::size_t c = 0; c < kColumns.size(); ++c) {
        for (const Row& row : rows_) {
            widths[c] = std::max(widths[c], (row.*kColumns[c]).size());
        }
    }
    std::string out;
    for (const Row& row : rows_) {
        out += kGap;
        for (std::size_t c = 0; c < kColumns.size(); ++c) {
            const std::string& cell = row.*kColumns[c];
            out += kColumns[c] == &Row::value ? padded_left(cell, widths[c])
                                              : padded_right(cell, widths[c]);
            out += kGap;
        }
        out.append(row.status).append("\n");
    }
    return out;
}

std::string PropertyTable::text() const {
    std::string out = title_ + "\n\n" + rows_text() + "\nSources\n";
    for (std::size_t i = 0; i < sources_.size(); ++i) {
        std::string line = "[" + number_text(static_cast<double>(i + 1)) + "] ";
        out += wrapped(line.append(sources_[i]));
    }
    if (!notes_.empty()) {
        out += "\nNotes\n";
    }
    for (const auto& [labels, note] : notes_) {
        std::string line = labels + ": ";
        out += wrapped(line.append(note));
    }
    return out;
}

}  // namespace bowfront
