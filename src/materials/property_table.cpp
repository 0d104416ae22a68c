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
        const bool at_start = out.back() == ' ';
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

// `[1]` for the first source.
std::string source_mark(std::size_t place) {
    return "[" + number_text(static_cast<double>(place + 1)) + "]";
}

// `a` for the first note, after `z` comes `aa`.
std::string note_mark(std::size_t place) {
    constexpr std::size_t kLetters = 26;
    return std::string(place / kLetters + 1, static_cast<char>('a' + place % kLetters));
}

// Where a text stands in a list; it is added where it isn't there yet.
std::size_t place_of(std::string_view text, std::vector<std::string_view>& list) {
    const auto found = std::find(list.begin(), list.end(), text);
    const auto place = static_cast<std::size_t>(found - list.begin());
    if (found == list.end()) {
        list.push_back(text);
    }
    return place;
}

}  // namespace

void PropertyTable::add(std::string label, const std::optional<Property>& property, Shown shown) {
    if (!property) {
        return;
    }
    Row row{std::move(label),
            shown_value(property->value, shown),
            std::string(shown.as_percent ? "%" : property->unit),
            "",
            reference_to(*property),
            certainty_text(property->certainty)};
    if (property->range) {
        row.range = shown_value(property->range->first, shown) + " to " +
                    shown_value(property->range->second, shown);
    }
    rows_.push_back(std::move(row));
}

std::string PropertyTable::reference_to(const Property& property) {
    std::string reference = source_mark(place_of(property.source, sources_));
    if (!property.note.empty()) {
        reference.append(" ").append(note_mark(place_of(property.note, notes_)));
    }
    return reference;
}

std::string PropertyTable::rows_text() const {
    constexpr std::array kColumns{&Row::label, &Row::value, &Row::unit, &Row::range,
                                  &Row::reference};
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
        out += wrapped(source_mark(i).append(" ").append(sources_[i]));
    }
    if (!notes_.empty()) {
        out += "\nNotes\n";
    }
    for (std::size_t i = 0; i < notes_.size(); ++i) {
        out += wrapped(note_mark(i).append(" ").append(notes_[i]));
    }
    return out;
}

}  // namespace bowfront
