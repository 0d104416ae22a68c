#include "bowfront/report/measuring_card.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "bowfront/base/number_text.hpp"
#include "bowfront/units/length_text.hpp"

namespace bowfront::report {
namespace {

constexpr int kDecimals = 2;  // mm

class Card {
  public:
    explicit Card(const Case& c) : inches_(c.units == LengthUnit::inch) {
        text_ += "// What was really made. Write each size in place of its null, in " +
                 std::string(inches_ ? "inches" : "millimetres") +
                 " or with its unit (\"12.5 mm\");\n"
                 "// what stays null keeps the design's size, which stands beside it. Then:\n"
                 "//   bowfront inspect CASE MEASURED.json\n"
                 "{\n  \"bowfront_measured\": 1,\n  \"units\": \"" +
                 (inches_ ? "in" : "mm") +
                 "\",\n  // What your measuring may be off, plus or minus: a rule or tape, and a "
                 "calliper.\n"
                 "  \"uncertainty\": { \"length\": \"0.2 mm\", \"thickness\": \"0.02 mm\" }";
    }

    template <class Panes, class Write>
    void list(std::string_view key, const Panes& panes, Write write) {
        text_ += ",\n  \"" + std::string(key) + "\": [";
        bool first = true;
        for (const PaneSums<double>& pane : panes) {
            text_ += std::string(first ? "" : ",") + "\n    {\n      \"side\": \"" +
                     std::string(side_text(pane.side)) + "\"";
            write(pane);
            text_ += "\n    }";
            first = false;
        }
        text_ += "\n  ]";
    }

    /// A key with nothing in it yet, after a comment on its own line.
    void blank(std::string_view key, double nominal, std::string_view what) {
        text_ += ",\n      // " + std::string(what) + ": " + length(nominal) + "\n      \"" +
                 std::string(key) + "\": null";
    }

    /// An object of such keys.
    void open(std::string_view key) {
        text_ += ",\n      \"" + std::string(key) + "\": {";
        inner_ = true;
    }
    void inner(std::string_view key, double nominal, std::string_view what) {
        text_ += std::string(inner_ ? "" : ",") + "\n        // " + std::string(what) + ": " +
                 length(nominal) + "\n        \"" + std::string(key) + "\": null";
        inner_ = false;
    }
    void close() { text_ += "\n      }"; }

    [[nodiscard]] std::string take() { return std::move(text_) + "\n}\n"; }

  private:
    [[nodiscard]] std::string length(double millimetres) const {
        return inches_ ? inch_text(millimetres) : rounded_text(millimetres, kDecimals) + " mm";
    }

    bool inches_;
    bool inner_ = false;  // nothing stands in the inner object yet
    std::string text_;
};

void write_pane(const PaneSums<double>& pane, Card& card) {
    if (pane.heated) {
        card.open("blank");
        card.inner("length", pane.blank_length, "before heating");
        card.inner("width", pane.blank_width, "before heating");
        card.close();
    }
    card.open("formed");
    card.inner("length", pane.length, pane.curved ? "along the mid-surface" : "length");
    card.inner("height", pane.height, "height");
    if (pane.curved) {
        const double half = pane.sweep / 2;
        card.inner("chord", 2 * pane.inside_radius * std::sin(half),
                   "straight between the ends of the inside face");
        card.inner("rise", pane.inside_radius * (1 - std::cos(half)),
                   "of the inside face over that chord, at its middle");
    }
    card.close();
    card.blank("thickness", pane.formed_thickness, "in several places, [a, b, c]");
}

}  // namespace

std::string measuring_card(const Case& c, const CaseSums<double>& sums) {
    Card card(c);
    const Groove& groove = c.frame.groove;
    card.list("panes", sums.panes,
              [&](const PaneSums<double>& pane) { write_pane(pane, card); });
    card.list("openings", sums.panes, [&](const PaneSums<double>& pane) {
        card.blank("length", pane.opening_length, "between the posts, along the glazing line");
        card.blank("height", pane.opening_height, "between base and top");
    });
    card.list("grooves", sums.panes, [&](const PaneSums<double>& pane) {
        card.blank("base", groove.base_depth.value, "depths in several places, [a, b, c]");
        card.blank("top", groove.top_depth.value, "depths");
        const auto post = [&](PaneEdge end) {
            card.blank(edge_text(end), groove.post_depth.value,
                       "depths in the post at the " + std::string(side_text(pane.side)) +
                           " pane's " + std::string(edge_text(end)));
        };
        post(PaneEdge::start);
        post(PaneEdge::end);
        card.blank("width", groove.width.value, "widths");
    });
    return card.take();
}

}  // namespace bowfront::report
