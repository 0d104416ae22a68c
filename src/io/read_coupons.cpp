#include "bowfront/io/read_coupons.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <utility>

#include "bowfront/base/error.hpp"
#include "bowfront/base/quoted_text.hpp"
#include "bowfront/io/nearest.hpp"
#include "bowfront/units/length_text.hpp"
#include "bowfront/units/quantity.hpp"
#include "csv.hpp"
#include "plain_text.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

constexpr std::size_t kColumns = 3;
using Names = std::array<std::string_view, kColumns>;
constexpr Names kCouponColumns{"direction", "before", "after"};
constexpr Names kArcColumns{"radius_on_form", "chord", "rise"};
constexpr std::array<std::string_view, 2> kDirections{"along", "across"};

constexpr std::string_view kHeaderWanted =
    "\"direction,before,after\" for coupons, or \"radius_on_form,chord,rise\" for test arcs, with "
    "commas between";
constexpr std::string_view kLengthWanted =
    R"(a length in mm, such as 246.3, or with its unit, such as 9 11/16 in)";

// Of no use to anyone as a figure.
constexpr double kAbsurd = 10;

// Which field of a row holds each of the columns; none for a column that the header lacks.
using Layout = std::array<std::optional<std::size_t>, kColumns>;

std::size_t known_names(const CsvRow& header, const Names& names) {
    return static_cast<std::size_t>(
        std::count_if(header.fields.begin(), header.fields.end(), [&names](const CsvField& field) {
            return std::find(names.begin(), names.end(), field.text) != names.end();
        }));
}

Layout read_header(const CsvRow& header, const Names& names, Faults& faults) {
    Layout layout;
    for (std::size_t i = 0; i < header.fields.size(); ++i) {
        const CsvField& field = header.fields[i];
        const auto name = std::find(names.begin(), names.end(), field.text);
        if (name == names.end()) {
            const std::string meant = nearest(field.text, names);
            faults.add(Code::input_unknown_key, field.place, {},
                       "the column " + quoted_text(field.text) + " is not known here",
                       meant.empty() ? "only the columns " + listed(names)
                                     : "did you mean " + quoted_text(meant) + "?");
            continue;
        }
        auto& column = layout[static_cast<std::size_t>(name - names.begin())];
        if (column) {
            faults.add(Code::input_duplicate_key, field.place, {},
                       "the column " + quoted_text(field.text) + " stands a second time", "once");
        } else {
            column = i;
        }
    }
    for (std::size_t i = 0; i < kColumns; ++i) {
        if (!layout[i]) {
            faults.add(Code::input_missing_key, header.place, {},
                       "the column " + quoted_text(names[i]) + " is missing",
                       "all of " + listed(names));
        }
    }
    return layout;
}

// The cells of one row; a cell without a column or with a fault is nothing.
class Cells {
  public:
    Cells(const CsvRow& row, const Layout& layout, Faults& faults)
        : row_(row), layout_(layout), faults_(faults) {}

    [[nodiscard]] std::optional<SheetDirection> direction(std::size_t column) {
        const CsvField* const field = at(column);
        if (field == nullptr) {
            return std::nullopt;
        }
        const auto word = std::find(kDirections.begin(), kDirections.end(), field->text);
        if (word == kDirections.end()) {
            const std::string meant = nearest(field->text, kDirections);
            faults_.add(Code::input_value, field->place, {},
                        quoted_text(field->text) + " is not known here",
                        meant.empty() ? "a direction in the sheet: " + listed(kDirections)
                                      : "did you mean " + quoted_text(meant) + "?");
            return std::nullopt;
        }
        return word == kDirections.begin() ? SheetDirection::along : SheetDirection::across;
    }

    [[nodiscard]] std::optional<double> length(std::size_t column) {
        const CsvField* const field = at(column);
        if (field == nullptr) {
            return std::nullopt;
        }
        Quantity length = parse_length(field->text);
        if (!length) {
            const Quantity bare = parse_length(field->text + " mm");
            if (!bare) {
                refuse(*field, length.fault());
                return std::nullopt;
            }
            length = bare;
        }
        if (!kPositive.holds(length.value())) {
            faults_.add(Code::input_value, field->place, {},
                        quoted_text(field->text) + " is out of range",
                        "more than 0 mm, up to " + millimetre_text(kPositive.high));
            return std::nullopt;
        }
        return length.value();
    }

  private:
    [[nodiscard]] const CsvField* at(std::size_t column) const noexcept {
        return layout_[column] ? &row_.fields[*layout_[column]] : nullptr;
    }

    void refuse(const CsvField& field, const QuantityFault& fault) {
        const Code code = fault.kind == QuantityFault::Kind::unit   ? Code::input_unit
                          : fault.kind == QuantityFault::Kind::size ? Code::input_limit
                                                                    : Code::input_value;
        faults_.add(code, field.place, {}, field.text.empty() ? "the field is empty" : fault.found,
                    std::string(kLengthWanted));
    }

    const CsvRow& row_;
    const Layout& layout_;
    Faults& faults_;
};

// Whether a row's ratio could stand in a case file; a slip of the pen mostly can't.
bool is_plausible(double ratio, const SheetRange& range, std::string_view what, const CsvRow& row,
                  Faults& faults) {
    if (ratio >= range.low && ratio <= range.high) {
        return true;
    }
    const std::string found =
        std::abs(ratio) <= kAbsurd ? "of " + percent_text(ratio) : std::string("beyond all measure");
    faults.add(Code::input_contradiction, row.place, {},
               "the row makes a " + std::string(what) + ' ' + found,
               percent_text(range.low) + " to " + percent_text(range.high) +
                   "; measure again, or take the row out");
    return false;
}

std::optional<Coupon> read_coupon(const CsvRow& row, Cells& cells, Faults& faults) {
    const auto direction = cells.direction(0);
    const auto before = cells.length(1);
    const auto after = cells.length(2);
    if (!direction || !before || !after) {
        return std::nullopt;
    }
    const Coupon coupon{*direction, *before, *after, row.place.line};
    return is_plausible(coupon.shrink(), kShrinkRange, "shrink", row, faults)
               ? std::optional(coupon)
               : std::nullopt;
}

std::optional<TestArc> read_arc(const CsvRow& row, Cells& cells, Faults& faults) {
    const auto radius = cells.length(0);
    const auto chord = cells.length(1);
    const auto rise = cells.length(2);
    if (!radius || !chord || !rise) {
        return std::nullopt;
    }
    const TestArc arc{*radius, *chord, *rise, row.place.line};
    return is_plausible(arc.springback(), kSpringbackRange, "springback", row, faults)
               ? std::optional(arc)
               : std::nullopt;
}

template <class Sample>
using ReadRow = std::optional<Sample> (*)(const CsvRow&, Cells&, Faults&);

template <class Sample>
std::vector<Sample> read_rows(std::span<const CsvRow> rows, const Names& names,
                              ReadRow<Sample> read_row, Faults& faults) {
    const CsvRow& header = rows.front();
    const Layout layout = read_header(header, names, faults);
    std::vector<Sample> samples;
    for (const CsvRow& row : rows.subspan(1)) {
        if (!row.sound) {
            continue;
        }
        if (row.field_count != header.field_count) {
            faults.add(Code::input_syntax, row.place, {},
                       "the row has " + std::to_string(row.field_count) + " fields",
                       std::to_string(header.field_count) +
                           " as in the header; a full stop, not a comma, inside a number");
            continue;
        }
        Cells cells(row, layout, faults);
        if (const auto sample = read_row(row, cells, faults)) {
            samples.push_back(*sample);
        }
    }
    if (rows.size() == 1) {
        faults.add(Code::input_missing_key, header.place, {}, "no row stands below the header",
                   "a row for each thing that was measured");
    }
    return samples;
}

Measurements read_rows(const std::vector<CsvRow>& rows, Faults& faults) {
    if (rows.empty()) {
        faults.add(Code::input_missing_key, {1, 1}, {}, "the file has no header",
                   std::string(kHeaderWanted));
        return {};
    }
    const CsvRow& header = rows.front();
    if (!header.sound) {
        return {};  // told already; its names can't be trusted
    }
    const std::size_t for_coupons = known_names(header, kCouponColumns);
    const std::size_t for_arcs = known_names(header, kArcColumns);
    if (for_coupons == 0 && for_arcs == 0) {
        faults.add(Code::input_unknown_key, header.place, {},
                   quoted_text(header.fields.front().text) + " begins no header that is known here",
                   std::string(kHeaderWanted));
        return {};
    }
    if (for_arcs > for_coupons) {
        return read_rows<TestArc>(rows, kArcColumns, read_arc, faults);
    }
    return read_rows<Coupon>(rows, kCouponColumns, read_coupon, faults);
}

}  // namespace

Measurements read_coupons(std::string_view text, const std::string& file_name) {
    Faults faults(file_name);
    Measurements measurements;
    if (text.size() > kMostCouponBytes) {
        faults.add(Code::input_limit, {}, {},
                   "the file has " + std::to_string(text.size()) + " bytes",
                   "at most " + std::to_string(kMostCouponBytes) + " (1 MiB)");
    } else if (const auto plain = plain_text(text, faults)) {
        measurements = read_rows(read_csv(*plain, kMostCoupons + 1, faults), faults);
    }
    if (!faults.empty()) {
        throw InputError(faults.in_file_order());
    }
    return measurements;
}

}  // namespace bowfront::io
