#include "csv.hpp"

#include <algorithm>
#include <utility>

namespace bowfront::io {
namespace {

constexpr std::string_view kBlanks = " \t";

std::string_view without_blanks_after(std::string_view text) noexcept {
    const std::size_t last = text.find_last_not_of(kBlanks);
    return last == std::string_view::npos ? std::string_view{} : text.substr(0, last + 1);
}

// One line of the text, read field by field.
class Line {
  public:
    Line(std::string_view text, std::size_t number, Faults& faults)
        : text_(text), number_(number), faults_(faults) {}

    CsvRow row() {
        row_.place = {number_, 1};
        for (;;) {
            skip_blanks();
            CsvField field{{}, here()};
            field.text = at_ < text_.size() && text_[at_] == '"' ? quoted() : bare();
            keep(std::move(field));
            if (at_ >= text_.size()) {
                return std::move(row_);
            }
            ++at_;  // the comma
        }
    }

  private:
    [[nodiscard]] Place here() const noexcept { return {number_, at_ + 1}; }

    void skip_blanks() noexcept {
        at_ = std::min(text_.find_first_not_of(kBlanks, at_), text_.size());
    }
    void skip_to_comma() noexcept { at_ = std::min(text_.find(',', at_), text_.size()); }

    void refuse(Place place, std::string found, std::string wanted) {
        faults_.add(Code::input_syntax, place, {}, std::move(found), std::move(wanted));
        row_.sound = false;
    }

    void keep(CsvField field) {
        if (field.text.size() > kMostFieldBytes) {
            faults_.add(Code::input_limit, field.place, {},
                        "a field of " + std::to_string(field.text.size()) + " bytes",
                        "at most " + std::to_string(kMostFieldBytes));
            row_.sound = false;
        }
        ++row_.field_count;
        if (row_.fields.size() < kMostFields) {
            row_.fields.push_back(std::move(field));
        }
    }

    std::string bare() {
        const std::size_t begin = at_;
        skip_to_comma();
        const std::string_view field = without_blanks_after(text_.substr(begin, at_ - begin));
        if (const std::size_t quote = field.find('"'); quote != std::string_view::npos) {
            refuse({number_, begin + quote + 1}, "a double quote inside a field",
                   "\"in\" for inches; or the whole field in quotes, each quote inside it doubled");
        }
        return std::string(field);
    }

    std::string quoted() {
        const Place opening = here();
        std::string field;
        for (;;) {
            const std::size_t quote = text_.find('"', at_ + 1);
            if (quote == std::string_view::npos) {
                refuse(opening, "a quoted field has no end on its line", "a closing double quote");
                at_ = text_.size();
                return {};
            }
            field += text_.substr(at_ + 1, quote - at_ - 1);
            at_ = quote + 1;
            if (at_ >= text_.size() || text_[at_] != '"') {
                break;
            }
            field += '"';
        }
        skip_blanks();
        if (at_ < text_.size() && text_[at_] != ',') {
            refuse(here(), "something stands after the end of a quoted field",
                   "a comma, or the end of the line; a quote inside a field is doubled");
            skip_to_comma();
        }
        return field;
    }

    std::string_view text_;
    std::size_t number_;
    Faults& faults_;
    std::size_t at_ = 0;
    CsvRow row_;
};

bool is_comment(std::string_view line) noexcept {
    const std::size_t first = line.find_first_not_of(kBlanks);
    return first == std::string_view::npos || line[first] == '#';
}

// A spreadsheet writes its empty rows as commas.
bool is_empty(const CsvRow& row) noexcept {
    return row.sound && std::all_of(row.fields.begin(), row.fields.end(),
                                    [](const CsvField& field) { return field.text.empty(); });
}

}  // namespace

std::vector<CsvRow> read_csv(std::string_view text, std::size_t most_rows, Faults& faults) {
    std::vector<CsvRow> rows;
    for (std::size_t number = 1; !text.empty(); ++number) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (line.ends_with('\r')) {
            line.remove_suffix(1);
        }
        if (is_comment(line)) {
            continue;
        }
        CsvRow row = Line(line, number, faults).row();
        if (is_empty(row)) {
            continue;
        }
        if (rows.size() == most_rows) {
            faults.add(Code::input_limit, row.place, {},
                       "the file has more than " + std::to_string(most_rows) + " rows",
                       "no more, the header counted");
            break;
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace bowfront::io
