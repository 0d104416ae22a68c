#include "bowfront/study/sweep_plot.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"
#include "bowfront/base/number_text.hpp"
#include "study/plot_canvas.hpp"

namespace bowfront::study {
namespace {

constexpr std::string_view kFails = "#f4c7c3";
constexpr std::string_view kImpossible = "#d9d9d9";
constexpr std::string_view kEdge = R"(stroke="#b3261e" stroke-width="2")";
constexpr std::string_view kCurve =
    R"(stroke="#1f5fa8" stroke-width="2" stroke-linejoin="round" stroke-linecap="round")";
constexpr std::string_view kZero = R"(stroke="#8a8a8a" stroke-dasharray="4 3")";

[[noreturn]] void refuse(std::string found, std::string wanted) {
    throw InputError({{Code::input_value, {}, 0, 0, {}, "--plot: " + std::move(found),
                       std::move(wanted)}});
}

// Half a step on either side of each number, so that every variant has a cell of its own.
double step_of(const Steps& steps) {
    return steps.count() > 1 ? steps.number(1) - steps.number(0) : 1;
}
Span span_of(const Steps& steps) {
    const double half = std::abs(step_of(steps)) / 2;
    const double first = steps.number(0);
    const double last = steps.number(steps.count() - 1);
    return {std::min(first, last) - half, std::max(first, last) + half};
}

bool has_margin(const Judgement& judgement) {
    return judgement.outcome != Outcome::impossible;
}
bool fails(const Judgement& judgement) {
    return judgement.outcome == Outcome::fail;
}

// The margins of all that can be built; 0 to 0 where nothing can.
Span margins_of(const std::vector<Judgement>& judgements) {
    Span span{0, 0};
    bool any = false;
    for (const Judgement& one : judgements) {
        if (has_margin(one)) {
            span = any ? Span{std::min(span.low, one.margin), std::max(span.high, one.margin)}
                       : Span{one.margin, one.margin};
            any = true;
        }
    }
    return span;
}

bool any_of(const std::vector<Judgement>& judgements, Outcome outcome) {
    return std::any_of(judgements.begin(), judgements.end(),
                       [outcome](const Judgement& one) { return one.outcome == outcome; });
}

void add_marks(PlotCanvas& canvas, const std::vector<Judgement>& judgements) {
    if (any_of(judgements, Outcome::fail)) {
        canvas.key(kFails, "a check fails");
    }
    if (any_of(judgements, Outcome::impossible)) {
        canvas.key(kImpossible, "can't be built");
    }
}

std::string curve(const std::string& title, const Axis& axis,
                  const std::vector<Judgement>& judgements) {
    Span up = margins_of(judgements);
    up = {std::min(up.low, 0.0), std::max(up.high, 0.0)};
    const double pad = up.high > up.low ? (up.high - up.low) * 0.06 : 1;
    up = {up.low - pad, up.high + pad};
    const Span across = span_of(axis.steps);
    PlotCanvas canvas(across, up);
    const double half = step_of(axis.steps) / 2;
    std::string points;
    const auto end_stretch = [&] {
        if (!points.empty()) {
            canvas.chain(points, kCurve);
            points.clear();
        }
    };
    for (std::size_t i = 0; i < judgements.size(); ++i) {
        if (fails(judgements[i]) || !has_margin(judgements[i])) {
            const double x = axis.steps.number(i);
            canvas.area(x - half, up.low, x + half, up.high,
                        fails(judgements[i]) ? kFails : kImpossible);
        }
    }
    canvas.straight(across.low, 0, across.high, 0, kZero);
    for (std::size_t i = 0; i < judgements.size(); ++i) {
        if (!has_margin(judgements[i])) {
            end_stretch();
            continue;
        }
        const Spot spot = canvas.at(axis.steps.number(i), judgements[i].margin);
        points += (points.empty() ? "" : " ") + pixel_text(spot.x) + "," + pixel_text(spot.y);
    }
    end_stretch();
    add_marks(canvas, judgements);
    return canvas.svg(title, axis.name, "least worst margin, mm");
}

// From pale to deep as the margin grows; those below nothing are told by a warm tint.
std::string shade(double margin, const Span& all) {
    struct Colour {
        double red, green, blue;
    };
    constexpr std::array<Colour, 2> kGood = {Colour{232, 241, 250}, Colour{31, 95, 168}};
    constexpr std::array<Colour, 2> kShort = {Colour{253, 236, 200}, Colour{200, 90, 20}};
    const auto& [pale, deep] = margin >= 0 ? kGood : kShort;
    const double most = margin >= 0 ? std::max(all.high, 0.0) : std::max(-all.low, 0.0);
    const double share = most > 0 ? std::abs(margin) / most : 0;
    const auto mixed = [share](double from, double to) {
        return rounded_text(std::round(from + (to - from) * share), 0);
    };
    return "rgb(" + mixed(pale.red, deep.red) + "," + mixed(pale.green, deep.green) + "," +
           mixed(pale.blue, deep.blue) + ")";
}

class Field {
  public:
    Field(const Axis& rows, const Axis& columns, const std::vector<Judgement>& judgements)
        : rows_(rows.steps), columns_(columns.steps), judgements_(judgements),
          margins_(margins_of(judgements)), canvas_(span_of(columns_), span_of(rows_)),
          half_row_(step_of(rows_) / 2), half_column_(step_of(columns_) / 2) {}

    PlotCanvas drawn() {
        for (std::size_t row = 0; row < rows_.count(); ++row) {
            add_row(row);
        }
        for (std::size_t row = 0; row < rows_.count(); ++row) {
            for (std::size_t column = 0; column < columns_.count(); ++column) {
                add_edges(row, column);
            }
        }
        add_keys();
        return std::move(canvas_);
    }

  private:
    [[nodiscard]] const Judgement& at(std::size_t row, std::size_t column) const {
        return judgements_[row * columns_.count() + column];
    }
    [[nodiscard]] std::string fill(const Judgement& one) const {
        return has_margin(one) ? shade(one.margin, margins_) : std::string(kImpossible);
    }

    // Neighbours of one colour are one rectangle.
    void add_row(std::size_t row) {
        const double y = rows_.number(row);
        std::size_t first = 0;
        for (std::size_t i = 1; i <= columns_.count(); ++i) {
            const std::string colour = fill(at(row, first));
            if (i == columns_.count() || fill(at(row, i)) != colour) {
                canvas_.area(columns_.number(first) - half_column_, y - half_row_,
                             columns_.number(i - 1) + half_column_, y + half_row_, colour);
                first = i;
            }
        }
    }

    // The border of the region in which a check fails, against its neighbours right and above.
    void add_edges(std::size_t row, std::size_t column) {
        const bool here = fails(at(row, column));
        const double x = columns_.number(column) + half_column_;
        const double y = rows_.number(row) + half_row_;
        if (column + 1 < columns_.count() && fails(at(row, column + 1)) != here) {
            canvas_.straight(x, y - 2 * half_row_, x, y, kEdge);
        }
        if (row + 1 < rows_.count() && fails(at(row + 1, column)) != here) {
            canvas_.straight(x - 2 * half_column_, y, x, y, kEdge);
        }
        if (here) {  // a stroke across each cell that fails
            canvas_.straight(x - 2 * half_column_, y - 2 * half_row_, x, y,
                             R"(stroke="#b3261e" stroke-width="0.6" stroke-opacity="0.55")");
        }
    }

    void add_keys() {
        const auto mm = [](double margin) { return rounded_text(margin, 2) + " mm"; };
        if (margins_.low < 0) {
            canvas_.key(shade(margins_.low, margins_), "margin " + mm(margins_.low));
        }
        canvas_.key(shade(0, margins_), "0 mm");
        if (margins_.high > 0) {
            canvas_.key(shade(margins_.high, margins_), mm(margins_.high));
        }
        if (any_of(judgements_, Outcome::fail)) {
            canvas_.key("#b3261e", "hatched: a check fails");
        }
        if (any_of(judgements_, Outcome::impossible)) {
            canvas_.key(kImpossible, "can't be built");
        }
    }

    const Steps& rows_;
    const Steps& columns_;
    const std::vector<Judgement>& judgements_;
    Span margins_;
    PlotCanvas canvas_;
    double half_row_;
    double half_column_;
};

}  // namespace

SweepPlot::SweepPlot(const Sweep& sweep) : title_(sweep.base.name), axes_(sweep.axes) {
    if (axes_.empty() || axes_.size() > 2) {
        refuse(std::to_string(axes_.size()) + " values are varied", "one or two");
    }
    if (sweep.shard.of != 1) {
        refuse("a part of a table makes no drawing", "no --shard");
    }
    if (sweep.count() > kMostDrawn) {
        refuse(std::to_string(sweep.count()) + " variants can't be told apart in a drawing",
               "at most " + std::to_string(kMostDrawn));
    }
}

void SweepPlot::add(const TablePart& part) {
    judgements_.insert(judgements_.end(), part.judgements.begin(), part.judgements.end());
}

std::string SweepPlot::svg() const {
    std::size_t count = 1;
    for (const Axis& axis : axes_) {
        count *= axis.steps.count();
    }
    BOWFRONT_EXPECTS(judgements_.size() == count);
    const std::string title = title_ + ": least worst margin";
    if (axes_.size() == 1) {
        return curve(title, axes_[0], judgements_);
    }
    return Field(axes_[0], axes_[1], judgements_).drawn().svg(title, axes_[1].name, axes_[0].name);
}

}  // namespace bowfront::study
