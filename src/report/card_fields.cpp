#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "bowfront/base/number_text.hpp"
#include "bowfront/forming/pane.hpp"
#include "bowfront/model/plan_pieces.hpp"
#include "bowfront/report/measuring_card.hpp"
#include "bowfront/units/length_text.hpp"

namespace bowfront::report {
namespace {

constexpr int kDecimals = 2;  // mm

// A stretch of sizes.
struct Window {
    std::optional<double> low;
    std::optional<double> high;
};

Window around(double size, double tolerance) {
    return {size - tolerance, size + tolerance};
}

// Writes the fields of one side in one list.
class Fields {
  public:
    Fields(std::string_view list, const CaseSide& side, std::vector<CardField>& to)
        : list_(list), side_(side), to_(to) {}

    void one(std::string_view object, std::string_view key, std::string what, double drawn,
             const Window& window) {
        to_.push_back(
            {list_, side_, object, key, std::move(what), false, drawn, window.low, window.high});
    }
    void several(std::string_view key, std::string what, double drawn, const Window& window) {
        to_.push_back(
            {list_, side_, "", key, std::move(what), true, drawn, window.low, window.high});
    }

  private:
    std::string_view list_;
    CaseSide side_;
    std::vector<CardField>& to_;
};

// One direction of a pane.
struct Extent {
    double formed;
    double tolerance;
    double blank;
    bool along;  // the sheet's extrusion
};

// What a blank may be: the share of the pane's tolerance that is its cut's; of one that is trimmed
// after forming, whatever leaves the pane at the most shrink.
Window blank_window(const Case& c, const PaneSpec& spec, const Extent& extent) {
    const SheetSpec& sheet = c.sheets.at(spec.sheet);
    const double shrink = (extent.along ? sheet.shrink_along : sheet.shrink_across).value;
    const double spread = (extent.along ? sheet.spread_along : sheet.spread_across).value;
    if (spec.blank.method.value == BlankMethod::trim_after) {
        return {extent.formed / (1 - shrink - spread), std::nullopt};
    }
    return around(extent.blank,
                  forming::cut_of_blank(extent.tolerance, extent.blank, shrink, spread));
}

void write_blank(const Case& c, const PaneSums<double>& pane, Fields& fields) {
    const PaneSpec& spec = *c.pane(pane.side);
    const bool lengthwise = spec.along.value == Extrusion::length;
    fields.one("blank", "length", "blank, length before heating", pane.blank_length,
               blank_window(c, spec, {pane.length, pane.length_tolerance, pane.blank_length,
                                      lengthwise}));
    fields.one("blank", "width", "blank, width before heating", pane.blank_width,
               blank_window(c, spec, {pane.height, pane.height_tolerance, pane.blank_width,
                                      !lengthwise}));
}

// Chord and rise of the inside face, over the limits of the springback and of the pane's length.
void write_curve(const PaneSums<double>& pane, Fields& fields) {
    const RadiusSums<double>& radii = pane.radius_error;
    const auto half = [&](double radius, double length) {
        return length / (radius + pane.thickness / 2) / 2;
    };
    const auto chord = [&](double radius, double length) {
        return 2 * radius * std::sin(half(radius, length));
    };
    const auto rise = [&](double radius, double length) {
        return radius * (1 - std::cos(half(radius, length)));
    };
    const auto window = [&](const auto& measure) {
        double low = measure(pane.inside_radius, pane.length);
        double high = low;
        for (const double free : {radii.free_radius_least, radii.free_radius_most}) {
            for (const double longer : {-1, 1}) {
                const double size = measure(free - pane.thickness / 2,
                                            pane.length + longer * pane.length_tolerance);
                low = std::min(low, size);
                high = std::max(high, size);
            }
        }
        return Window{low, high};
    };
    fields.one("formed", "chord", "chord, straight between the ends of the inside face",
               chord(pane.inside_radius, pane.length), window(chord));
    fields.one("formed", "rise", "rise of the inside face over that chord, at its middle",
               rise(pane.inside_radius, pane.length), window(rise));
}

// The tightest of several bends over the limits of the springback; all of them as they are drawn.
void write_bends(const Case& c, const PaneSums<double>& pane, Fields& fields) {
    if (has_free_piece(c.plan, index(pane.side))) {
        return;  // one radius does not tell of a curve
    }
    const RadiusSums<double>& radii = pane.radius_error;
    const double half = pane.thickness / 2;
    std::string drawn;
    for (const BendSums<double>& bend : pane.bends) {
        drawn += (drawn.empty() ? "" : ", ") + card_length(bend.inside_radius, c.units);
    }
    fields.one("formed", "bends",
               "inside radius of each bend from the start on, as [" + drawn +
                   "], its ends then " + card_length(pane.chord, c.units) +
                   " apart from middle to middle; of the tightest",
               pane.inside_radius,
               {radii.free_radius_least - half, radii.free_radius_most - half});
}

void write_pane(const Case& c, const PaneSums<double>& pane, std::vector<CardField>& to) {
    Fields fields("panes", pane.side, to);
    if (pane.heated) {
        write_blank(c, pane, fields);
    }
    fields.one("formed", "length", pane.curved ? "length along the mid-surface" : "length",
               pane.length, around(pane.length, pane.length_tolerance));
    fields.one("formed", "height", "height", pane.height,
               around(pane.height, pane.height_tolerance));
    if (pane.heated && pane.is_run()) {
        write_bends(c, pane, fields);
    } else if (pane.heated) {
        write_curve(pane, fields);
    }
    fields.several("thickness", "thickness", pane.formed_thickness,
                   {pane.thinnest_formed, pane.thickest});
}

void write_grooves(const Case& c, const PaneSums<double>& pane, std::vector<CardField>& to) {
    Fields fields("grooves", pane.side, to);
    const Groove& groove = c.frame.groove;
    const FrameTolerances<double>& t = pane.tolerances;
    const auto depth = [&](std::string_view key, std::string what, double drawn, double limit) {
        fields.several(key, std::move(what), drawn, around(drawn, limit));
    };
    const auto in_post = [&](PaneEdge end) {
        return "depth in the post at the pane's " + std::string(edge_text(end));
    };
    depth("base", "depth in the base", groove.base_depth.value, t.base_depth);
    depth("top", "depth in the top", groove.top_depth.value, t.top_depth);
    depth("start", in_post(PaneEdge::start), groove.post_depth.value, t.post_depth);
    depth("end", in_post(PaneEdge::end), groove.post_depth.value, t.post_depth);
    depth("width", "width", groove.width.value, t.groove_width);
}

}  // namespace

std::vector<CardField> card_fields(const Case& c, const CaseSums<double>& sums) {
    std::vector<CardField> list;
    for (const PaneSums<double>& pane : sums.panes) {
        write_pane(c, pane, list);
    }
    for (const PaneSums<double>& pane : sums.panes) {
        Fields fields("openings", pane.side, list);
        fields.one("", "length", "between the posts, along the glazing line", pane.opening_length,
                   around(pane.opening_length, pane.tolerances.opening_length));
        fields.one("", "height", "between base and top", pane.opening_height,
                   around(pane.opening_height, pane.tolerances.opening_height));
    }
    for (const PaneSums<double>& pane : sums.panes) {
        write_grooves(c, pane, list);
    }
    return list;
}

std::string card_length(double millimetres, LengthUnit unit) {
    return unit == LengthUnit::inch ? inch_text(millimetres)
                                    : rounded_text(millimetres, kDecimals) + " mm";
}

std::string window_text(const CardField& field, LengthUnit unit) {
    if (field.low && field.high) {
        std::string low = card_length(*field.low, unit);
        low.resize(low.rfind(' '));  // the unit stands behind the second size
        return low + " to " + card_length(*field.high, unit);
    }
    if (field.low) {
        return card_length(*field.low, unit) + " or more";
    }
    return field.high ? card_length(*field.high, unit) + " or less" : std::string("any");
}

}  // namespace bowfront::report
