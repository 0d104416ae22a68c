#pragma once
/// \file
/// A display case as the case file describes it: every value with its origin, nothing derived.
///
/// Lengths in mm, angles in rad, temperatures in °C, ratios and humidities as plain numbers (1.5 %
/// is 0.015). Ranges stand beside each field; `io::read_case` holds a file to them, and code that
/// fills a Case by hand is held to them by `fit::objections`.

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/origin.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/materials/tolerance_class.hpp"
#include "bowfront/model/build.hpp"
#include "bowfront/model/access.hpp"
#include "bowfront/model/plan.hpp"
#include "bowfront/model/prices.hpp"
#include "bowfront/model/standing.hpp"
#include "bowfront/model/shelf.hpp"

namespace bowfront {

/// Unit of a bare length in the case file.
enum class LengthUnit { millimetre, inch };

/// Which way the grain of base or top runs in plan.
enum class Grain { width, depth };

/// How the boards of base or top were cut from the log; plywood moves too little to count.
enum class Sawn { flat, quarter, plywood };

/// Base or top.
struct Plate {
    Sourced<double> thickness;  ///< > 0
    Sourced<double> margin;     ///< edge set out from the glazing line, > 0
    Sourced<Grain> grain;       ///< of a board; along each rail where it is built of rails
    Sourced<Sawn> sawn;
    Build build = {};
};

enum class PostSection { fitted, square, round };

/// How posts hold the panes' ends.
enum class Hold { groove, rabbet };

/// How the growth rings lie in a post: any way, or at about 45° to its faces. Its grain runs along
/// its length.
enum class PostSawn { any, rift };

struct Post {
    Sourced<double> width;  ///< along the glazing line, > 0; a round post's diameter
    Sourced<double> depth;  ///< across, ≥ width for a fitted post, = width for a round one
    Sourced<PostSection> section;
    Sourced<Hold> hold;
    Sourced<PostSawn> sawn;
    Sourced<PostJoint> joint = {};
    std::optional<Sourced<double>> joint_size = {};  ///< a tenon's side or a dowel's diameter,
                                                     ///< > 0; by rule where left out
};

/// `butt`, `tenon`, `dowel`.
[[nodiscard]] std::string_view joint_text(PostJoint joint) noexcept;

/// Grooves (or, where beaded, rabbets), centred on the glazing line.
struct Groove {
    Sourced<double> width;       ///< > 0
    Sourced<double> base_depth;  ///< > 0, under the base's thickness
    Sourced<double> top_depth;   ///< > 0, under the top's thickness
    Sourced<double> post_depth;  ///< along the glazing line from the post's face, > 0
};

enum class Loading { slide_in, beaded, lift_and_drop };

/// Frame of timber.
struct Frame {
    Sourced<std::string> timber;  ///< a name of the timber library
    Sourced<double> clear_height;  ///< opening between base and top, > 0
    Plate base;
    Plate top;
    Post post;
    Groove groove;
    Sourced<Loading> loading;
    Sourced<double> bead_width;  ///< bead that closes a rabbet in base or top, > 0
};

/// The edges of a pane; start and end follow the counter-clockwise way round.
enum class PaneEdge { bottom, top, start, end };
inline constexpr std::array kPaneEdges{PaneEdge::bottom, PaneEdge::top, PaneEdge::start,
                                       PaneEdge::end};

/// `bottom`, `top`, `start`, `end`.
[[nodiscard]] std::string_view edge_text(PaneEdge edge) noexcept;

/// Which way a sheet's extrusion runs in a pane.
enum class Extrusion { length, height };

/// How a curved pane gets its curve.
enum class Bend { heat, cold };

/// How the blank is cut. A flat pane's blank is its size whatever is asked, unless as cut.
enum class BlankMethod { allow_shrink, trim_after, as_cut };

/// `allow-shrink`, `trim-after`, `as-cut`.
[[nodiscard]] std::string_view method_text(BlankMethod method) noexcept;

struct BlankSpec {
    Sourced<BlankMethod> method;
    Sourced<double> trim;                   ///< trim-after: taken off at each edge, > 0
    std::optional<Sourced<double>> length;  ///< as-cut, > 0
    std::optional<Sourced<double>> width;   ///< as-cut, > 0
};

/// A size as it was measured once the thing was made.
struct MeasuredSize {
    double value = 0;        ///< mm, > 0
    double uncertainty = 0;  ///< ± mm of the measuring, ≥ 0
};

/// The radius of a formed pane's inside face, when nothing holds it, by measured chord and rise.
struct MeasuredRadius {
    double value = 0;  ///< mm, > 0
    double least = 0;  ///< with chord and rise off as far as the measuring may be, > 0, ≤ value
    double most = 0;   ///< the same, ≥ value
};

/// What was measured of a pane and of its place in the frame. Each size that is there takes the
/// place of the design's, and its uncertainty that of the design's tolerance. Of sizes measured in
/// several places: the one that the pane meets first.
struct AsMade {
    std::optional<MeasuredSize> blank_length;
    std::optional<MeasuredSize> blank_width;
    std::optional<MeasuredSize> length;     ///< as formed, on the mid-surface
    std::optional<MeasuredSize> height;     ///< as formed
    std::optional<MeasuredSize> thickness;  ///< at the thickest place
    std::optional<MeasuredSize> thinnest;   ///< at the thinnest place
    bool before_heating = false;  ///< both are of a sheet that is still to be heated, not as formed
    std::optional<MeasuredRadius> radius;   ///< takes the place of the springback and its spread
    std::vector<MeasuredRadius> bends;      ///< the same of each bend of a pane of several pieces
    std::optional<MeasuredSize> opening_length;  ///< along the glazing line
    std::optional<MeasuredSize> opening_height;
    std::optional<MeasuredSize> base_depth;    ///< of the groove, at the shallowest place
    std::optional<MeasuredSize> top_depth;     ///< the same
    std::optional<MeasuredSize> post_depth;    ///< the same, along the glazing line
    std::optional<MeasuredSize> groove_width;  ///< at the narrowest place
};

struct PaneSpec {
    CaseSide side;                  ///< one of `sides_of(plan)`
    std::string sheet;              ///< key into `Case::sheets`
    Sourced<double> thickness;      ///< as bought, > 0
    Sourced<Extrusion> along;
    Sourced<Bend> bend;
    BlankSpec blank;
    std::optional<Sourced<double>> length;  ///< the pane's own size, developed length, > 0
    std::optional<Sourced<double>> height;  ///< the pane's own size, > 0
    std::string pointer;            ///< JSON pointer of the pane
    AsMade made;                    ///< nothing in a case that is still on paper
};

/// A sheet as this case uses it: a library entry, with what the file says of a batch.
struct SheetSpec {
    std::string key;
    const Sheet* like = nullptr;
    Sourced<double> shrink_along;     ///< ratio, −0.1 to 0.2; positive is a loss
    Sourced<double> shrink_across;    ///< ratio, −0.1 to 0.2
    Sourced<double> spread_along;     ///< ± ratio, 0 to 0.1
    Sourced<double> spread_across;    ///< ± ratio, 0 to 0.1
    Sourced<double> springback;       ///< growth of radius on release, ratio, −0.2 to 0.5
    Sourced<double> springback_spread;  ///< ± ratio, 0 to 0.2
};

/// What the panes are given in the frame.
struct FitSpec {
    Sourced<double> end_clearance;      ///< at each end, centred, ≥ 0
    Sourced<double> top_clearance;      ///< slide-in and beaded, ≥ 0
    Sourced<double> loading_clearance;  ///< lift-and-drop, ≥ 0
    std::optional<Sourced<double>> least_engagement;  ///< ≥ 0; default: larger of 3 mm, thickness
};

/// A tolerance: a class of ISO 2768-1, or ± a length.
struct ToleranceSpec {
    std::optional<ToleranceClass> by_class;
    double value = 0;  ///< mm, ≥ 0; where not by class
};

struct Tolerances {
    Sourced<ToleranceSpec> cut;
    Sourced<ToleranceSpec> groove_depth;
    Sourced<ToleranceSpec> groove_width;
    Sourced<ToleranceSpec> opening;
    /// Empty: by the sheet's own standard.
    std::optional<Sourced<ToleranceSpec>> sheet_thickness;
};

/// Timber left round a groove.
struct Webs {
    Sourced<double> web;    ///< between two grooves, ≥ 0
    Sourced<double> cheek;  ///< beside a groove, ≥ 0
    Sourced<double> floor;  ///< share of the board's thickness under a groove, 0 to 1
};

/// The bending form.
struct FormSpec {
    Sourced<double> skin;         ///< thickness, > 0
    Sourced<double> cover;        ///< thickness of the cloth, ≥ 0
    Sourced<double> overrun;      ///< on the form's face beyond the pane, at each end, ≥ 0
    Sourced<double> overhang;     ///< of form and skin beyond the blank, at each side, ≥ 0
    Sourced<double> rib_thickness;    ///< > 0
    Sourced<double> rib_depth;        ///< radial depth of the arc band, > 0
    Sourced<double> rib_spacing;      ///< most distance of rib centres, > 0
    Sourced<double> foot;             ///< height of the feet under the arc's ends, > 0
    Sourced<double> joint_allowance;  ///< slot wider than the board it takes, ≥ 0
    Sourced<double> fence_depth;      ///< radial depth of a fence, > 0
    Sourced<double> fence_clearance;  ///< both sides together, ≥ 0
};

struct Oven {
    std::array<Sourced<double>, 3> inside;  ///< width, depth, height, > 0
    Sourced<double> accuracy;               ///< K, ± , ≥ 0
    std::optional<Sourced<double>> set;     ///< °C
};

/// The conditions that the case is built in and lives in.
struct Service {
    Sourced<double> built_temperature;                ///< °C
    Sourced<double> built_humidity;                   ///< 0 to 1
    std::array<Sourced<double>, 2> temperature;       ///< °C, low and high
    std::array<Sourced<double>, 2> humidity;          ///< 0 to 1, low and high
    Sourced<double> push;                             ///< of a hand in a pane's middle, N, ≥ 0
};

struct StockItem {
    std::string material;
    double thickness = 0;             ///< > 0
    std::array<double, 2> size{};     ///< > 0
    std::optional<int> count;         ///< ≥ 1; as many as needed where left out
    std::string pointer;
};

struct Cutter {
    Sourced<double> diameter;  ///< > 0
    Sourced<double> spacing;   ///< between parts on a sheet, ≥ 0
};

/// What the shop can set.
struct Shop {
    Sourced<double> step;  ///< of a saw's fence or a rule, 0.01 to 25.4
    Allowance allowance = {};
};

/// A whole case.
struct Case {
    std::string name;
    LengthUnit units = LengthUnit::millimetre;
    Plan plan;
    Frame frame;
    std::vector<PaneSpec> panes;  ///< at most one a side
    std::optional<Access> access;         ///< how it is opened, where that is planned
    std::optional<PaneSpec> access_pane;  ///< of the side that opens; not among `panes`
    std::map<std::string, SheetSpec> sheets;
    std::vector<ShelfSpec> shelves;  ///< in the order of the file
    FitSpec fit;
    Tolerances tolerance;
    Webs webs;
    FormSpec form;
    std::optional<Oven> oven;
    Service service;
    std::vector<StockItem> stock;
    Cutter cutter;
    Shop shop;
    std::optional<Contents> contents;
    Stand stand;
    std::optional<Prices> prices;

    /// The pane of a side; null where the side is open, or opens by `access`.
    [[nodiscard]] const PaneSpec* pane(const CaseSide& side) const noexcept;
    [[nodiscard]] PaneSpec* pane(const CaseSide& side) noexcept;
    /// Whether nothing closes a side.
    [[nodiscard]] bool is_open(const CaseSide& side) const noexcept;
};

/// An assumption that stands in for a value that the file leaves out.
struct Assumption {
    std::string pointer;
    std::string value;  ///< with its unit
    std::string why;
};

/// Values of a case that can't hold together, found after reading: where, what, and what would do.
struct Objection {
    std::string pointer;
    std::string found;
    std::string wanted;
};

}  // namespace bowfront
