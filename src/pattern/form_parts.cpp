#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/forming/form_profile.hpp"
#include "bowfront/materials/board.hpp"
#include "bowfront/pattern/case_parts.hpp"

namespace bowfront::pattern {
namespace {

constexpr double kPi = std::numbers::pi;
// Choices of this tool, common practice, no source.
constexpr double kBaseMargin = 20;        // of the base beyond the end rails, mm
constexpr double kNotchCheek = 10;           // wood beside a notch in a foot, mm
constexpr double kLeastHollow = 10;          // height between feet that is worth cutting out, mm
constexpr double kBendLine = 15;          // scribed on a rib where a bend begins, mm
constexpr double kMostCrossHeight = 40;   // of cross-members and end rails, mm

// Sections lie in the plane of the ribs, local Y up; run along the form's axis they stand so.
Placement along_axis(double y_end) {
    // Local Z points towards −Y, so that local X is X and local Y is Z.
    return {.origin = {0, y_end, 0}, .x_axis = {1, 0, 0}, .z_axis = {0, -1, 0}};
}

// The form's figures in the plane of its ribs.
struct FormPlane {
    double radius = 0;       // of the ribs' arc edge
    double half_sweep = 0;
    double end_x = 0;        // of the arc's right end
    double foot = 0;         // height of the arc's ends over the base
    double centre_y = 0;     // of the arc's centre
    double foot_width = 0;   // 0: the rib is solid down to the base
    forming::FormProfile profile;  // of several pieces: the ribs' edge
    Point right;             // the ends of the ribs' edge
    Point left;
    double half_width = 0;   // of all that stands on the base
    std::array<double, 2> cross_x{};  // middles of the cross-members
    double cross_height = 0;
    double thickness = 0;    // of the boards
    double allowance = 0;
    double width = 0;        // along the axis
    double pitch = 0;
    int ribs = 0;
    [[nodiscard]] double rib_centre(int i) const {
        return -width / 2 + thickness / 2 + i * pitch;
    }
    // A band over the ribs' edge, between two distances from it.
    [[nodiscard]] Contour band_over(double inner, double outer) const {
        const double middle = (inner + outer) / 2;
        const std::vector<Segment> line =
            profile.edge.empty()
                ? std::vector{arc_segment({0, centre_y}, radius + middle, kPi / 2 - half_sweep,
                                          2 * half_sweep)}
                : forming::set_off(profile.edge, middle);
        return band(line, outer - inner, BandEnd::square, BandEnd::square);
    }
};

// The plane of a form of several pieces: ribs are solid from their edge down to the base.
void follow_profile(const FormSpec& spec, const FormSizes<double>& sizes, FormPlane& plane) {
    plane.profile = forming::form_profile(sizes, spec);
    plane.right = plane.profile.edge.front().from;
    plane.left = plane.profile.edge.back().to;
    for (const Segment& segment : plane.profile.edge) {
        plane.half_width = std::max(plane.half_width, segment.box().high.x);
    }
    const double quarter = (plane.right.x - plane.left.x) / 4;
    plane.cross_x = {plane.left.x + quarter, plane.right.x - quarter};
}

// The plane of a form of one arc.
void follow_arc(const FormSpec& spec, const FormSizes<double>& sizes, FormPlane& plane) {
    plane.radius = sizes.rib_radius;
    plane.half_sweep = sizes.rib_sweep / 2;
    plane.end_x = plane.radius * std::sin(plane.half_sweep);
    plane.right = {plane.end_x, plane.foot};
    plane.left = {-plane.end_x, plane.foot};
    plane.half_width = plane.end_x;
    plane.centre_y = plane.foot - plane.radius * std::cos(plane.half_sweep);
    // A foot is as wide as the arc band is deep, and has wood on both sides of the cross-member's
    // notch. Where feet or band would leave no hollow, the rib is solid.
    const double foot = std::max(spec.rib_depth.value,
                                 plane.thickness + plane.allowance + 2 * kNotchCheek);
    const double inner = plane.radius - spec.rib_depth.value;
    const double hollow = plane.end_x - foot;
    if (inner > 0 && hollow > 0 && hollow < inner) {
        const double inner_y = plane.centre_y + std::sqrt(inner * inner - hollow * hollow);
        if (inner_y > kLeastHollow) {
            plane.foot_width = foot;
        }
    }
    const double cross =
        plane.foot_width > 0 ? plane.end_x - plane.foot_width / 2 : plane.end_x / 2;
    plane.cross_x = {-cross, cross};
}

FormPlane form_plane(const FormSpec& spec, const FormSizes<double>& sizes) {
    FormPlane plane;
    plane.foot = spec.foot.value;
    plane.thickness = spec.rib_thickness.value;
    plane.allowance = spec.joint_allowance.value;
    plane.width = sizes.width;
    plane.pitch = sizes.rib_pitch;
    plane.ribs = static_cast<int>(std::lround(sizes.rib_count));
    plane.cross_height = std::min(kMostCrossHeight, plane.foot);
    sizes.pieces.empty() ? follow_arc(spec, sizes, plane) : follow_profile(spec, sizes, plane);
    return plane;
}

// The rib under a run of several pieces.
Contour solid_rib_outline(const FormPlane& plane) {
    std::vector<Segment> edge = {{{plane.left.x, 0}, {plane.right.x, 0}, 0},
                                 {{plane.right.x, 0}, plane.right, 0}};
    edge.insert(edge.end(), plane.profile.edge.begin(), plane.profile.edge.end());
    edge.push_back({plane.left, {plane.left.x, 0}, 0});
    return Contour::from_segments(edge);
}

Contour rib_outline(const FormPlane& plane, double depth) {
    if (!plane.profile.edge.empty()) {
        return solid_rib_outline(plane);
    }
    const Point centre{0, plane.centre_y};
    const double x = plane.end_x;
    std::vector<Segment> edge;
    const auto straight = [&](Point from, Point to) { edge.push_back({from, to, 0}); };
    if (plane.foot_width > 0) {
        const double inner = plane.radius - depth;
        const double hollow = x - plane.foot_width;
        const double inner_y = plane.centre_y + std::sqrt(inner * inner - hollow * hollow);
        const double half = std::asin(hollow / inner);
        straight({-x, 0}, {-hollow, 0});
        straight({-hollow, 0}, {-hollow, inner_y});
        Segment arc = arc_segment(centre, inner, kPi / 2 + half, -2 * half);
        arc.from = {-hollow, inner_y};
        arc.to = {hollow, inner_y};
        edge.push_back(arc);
        straight({hollow, inner_y}, {hollow, 0});
        straight({hollow, 0}, {x, 0});
    } else {
        straight({-x, 0}, {x, 0});
    }
    straight({x, 0}, {x, plane.foot});
    Segment top = arc_segment(centre, plane.radius, kPi / 2 - plane.half_sweep,
                              2 * plane.half_sweep);
    top.from = {x, plane.foot};
    top.to = {-x, plane.foot};
    edge.push_back(top);
    straight({-x, plane.foot}, {-x, 0});
    return Contour::from_segments(edge);
}

Region cut(const Contour& outline, const std::vector<Contour>& notches) {
    std::vector<Region> tools;
    for (const Contour& notch : notches) {
        tools.push_back({notch, {}});
    }
    auto left = subtract({{outline, {}}}, tools);
    BOWFRONT_EXPECTS(left.size() == 1);
    return left.front();
}

class FormParts {
  public:
    FormParts(const Case& c, const PaneForm<double>& form)
        : spec_(c.form), form_(form), plane_(form_plane(c.form, form.sizes)) {}

    std::vector<Part> parts() {
        add_rib();
        add_base();
        add_cross_members();
        add_skin();
        add_rails();
        add_fences();
        return std::move(parts_);
    }

  private:
    Part& add(std::string_view id, std::string name, Region section, double height) {
        const std::string side(side_text(form_.side));
        const Board& board = *find_board("plywood");
        Part part;
        part.id = "form-" + side + "-" + std::string(id);
        part.name = "Form, " + side + ": " + std::move(name);
        part.assembly = "form-" + side;
        part.group = "form";
        part.material = std::string(board.name);
        part.density = board.density.value;
        part.finish = Finish::plywood;
        part.body.section = std::move(section);
        part.body.height = height;
        part.pattern.outline = part.body.section;
        part.pattern.thickness = height;
        return parts_.emplace_back(std::move(part));
    }

    void add_rib() {
        const double half = (plane_.thickness + plane_.allowance) / 2;
        std::vector<Contour> notches;
        for (const double x : plane_.cross_x) {
            notches.push_back(
                Contour::rectangle({x - half, -1}, {x + half, plane_.cross_height / 2}));
        }
        Part& rib = add("rib", "rib", cut(rib_outline(plane_, spec_.rib_depth.value), notches),
                        plane_.thickness);
        for (int i = 0; i < plane_.ribs; ++i) {
            rib.placements.push_back(along_axis(plane_.rib_centre(i) + plane_.thickness / 2));
        }
        if (!plane_.profile.edge.empty()) {
            scribe_bend_lines(rib);
            return;
        }
        const double top = plane_.centre_y + plane_.radius;
        const double low =
            plane_.foot_width > 0 ? top - spec_.rib_depth.value : plane_.cross_height;
        rib.pattern.scribes.push_back({{Segment{{0, low}, {0, top}, 0}}});
        rib.note = "scribed line is the middle of the arc";
    }

    // Short lines square to the ribs' edge where its bends begin and end.
    void scribe_bend_lines(Part& rib) {
        const std::vector<Segment>& edge = plane_.profile.edge;
        const double length = std::min(kBendLine, plane_.foot / 2);
        for (std::size_t i = 1; i < form_.sizes.pieces.size(); ++i) {
            if (!is_bend_line(i)) {
                continue;
            }
            const double at = plane_.profile.bend_lines[i - 1];
            const Point from = fit::point_at(edge, at);
            const Point inwards = left_of(fit::tangent_at(edge, at));
            rib.pattern.scribes.push_back({{Segment{from, from + inwards * length, 0}}});
        }
        rib.note = "scribed lines are where the bends begin and end; the pane's start lies at the "
                   "right end, its hollow faces down";
        if (has_hollow()) {
            rib.note += "; where the edge is hollow the sheet must be held down until it has cooled";
        }
    }

    // Whether a piece of the form begins at a bend line: the arcs that a curve is made of differ too
    // little from each other to be told apart.
    [[nodiscard]] bool is_bend_line(std::size_t piece) const {
        constexpr double kAlike = 1.2;
        const FormPiece<double>& before = form_.sizes.pieces[piece - 1];
        const FormPiece<double>& now = form_.sizes.pieces[piece];
        if (before.radius == 0 || now.radius == 0 || before.hollow != now.hollow) {
            return true;
        }
        return std::max(before.radius, now.radius) > kAlike * std::min(before.radius, now.radius);
    }

    [[nodiscard]] bool has_hollow() const {
        return std::any_of(form_.sizes.pieces.begin(), form_.sizes.pieces.end(),
                           [](const FormPiece<double>& piece) {
                               return piece.radius > 0 && piece.hollow;
                           });
    }

    void add_base() {
        const double x = plane_.half_width + plane_.thickness + kBaseMargin;
        const double y = plane_.width / 2;
        Part& base =
            add("base", "base", {Contour::rectangle({-x, -y}, {x, y}), {}}, plane_.thickness);
        base.placements = {{.origin = {0, 0, -plane_.thickness}}};
        for (int i = 0; i < plane_.ribs; ++i) {
            const double at = plane_.rib_centre(i);
            base.pattern.scribes.push_back(
                {{Segment{{plane_.left.x, at}, {plane_.right.x, at}, 0}}});
        }
        base.note = "scribed lines are the middles of the ribs";
    }

    void add_cross_members() {
        const double half = (plane_.thickness + plane_.allowance) / 2;
        std::vector<Contour> notches;
        for (int i = 0; i < plane_.ribs; ++i) {
            const double at = plane_.rib_centre(i) + plane_.width / 2;
            notches.push_back(Contour::rectangle({at - half, plane_.cross_height / 2},
                                                 {at + half, plane_.cross_height + 1}));
        }
        const Contour outline =
            Contour::rectangle({0, 0}, {plane_.width, plane_.cross_height});
        Part& cross = add("cross", "cross-member", cut(outline, notches), plane_.thickness);
        for (const double x : plane_.cross_x) {
            // Local X is Y, local Y is Z, so local Z is X.
            cross.placements.push_back(
                {.origin = {x - plane_.thickness / 2, -plane_.width / 2, 0},
                 .x_axis = {0, 1, 0},
                 .z_axis = {1, 0, 0}});
        }
        cross.note = "half-lapped with the ribs, " + rounded_text(plane_.allowance, 2) +
                     " mm wider than the board as the case file gives it";
    }

    void add_skin() {
        const double skin = spec_.skin.value;
        Part& part = add("skin", "skin", {plane_.band_over(0, skin), {}},
                         plane_.width);
        part.placements = {along_axis(plane_.width / 2)};
        const double length = form_.sizes.skin_length;
        part.pattern.outline = {Contour::rectangle({0, 0}, {length, plane_.width}), {}};
        part.pattern.thickness = skin;
        part.note = "pattern is flat; its length bends over the ribs";
        if (plane_.profile.edge.empty()) {
            part.pattern.scribes = {{{Segment{{length / 2, 0}, {length / 2, plane_.width}, 0}}}};
            return;
        }
        double at = 0;
        for (std::size_t i = 0; i < form_.sizes.pieces.size(); ++i) {
            const FormPiece<double>& piece = form_.sizes.pieces[i];
            if (i > 0 && is_bend_line(i)) {
                part.pattern.scribes.push_back(
                    {{Segment{{at, 0}, {at, plane_.width}, 0}}});
            }
            const double under = spec_.cover.value + skin / 2;
            at += piece.length + (piece.hollow ? under : -under) * piece.sweep;
        }
        part.note += "; scribed lines are where its bends begin and end";
    }

    // At the end of the ribs' edge; lower where the edge leans in and the skin's end looks down.
    [[nodiscard]] double rail_top(Point end) const {
        if (plane_.profile.edge.empty()) {
            return end.y;
        }
        const std::vector<Segment>& edge = plane_.profile.edge;
        const Point tangent =
            end.x > 0 ? edge.front().tangent(0) : edge.back().tangent(1);
        return end.y - std::max(0.0, left_of(tangent).y) * spec_.skin.value;
    }

    void add_rails() {
        const Contour outline = Contour::rectangle({0, 0}, {plane_.width, plane_.cross_height});
        Part& rail = add("rail", "end rail of the skin", {outline, {}}, plane_.thickness);
        for (const Point at : {Point{plane_.left.x - plane_.thickness, rail_top(plane_.left)},
                               Point{plane_.right.x, rail_top(plane_.right)}}) {
            rail.placements.push_back(
                {.origin = {at.x, -plane_.width / 2, at.y - plane_.cross_height},
                 .x_axis = {0, 1, 0},
                 .z_axis = {1, 0, 0}});
        }
        rail.note = "across the ribs' ends, under the skin's ends";
    }

    void add_fences() {
        const double inner = spec_.skin.value;
        Part& fence = add("fence", "fence",
                          {plane_.band_over(inner, inner + spec_.fence_depth.value), {}},
                          plane_.thickness);
        const double half = form_.sizes.fence_gap / 2;
        fence.placements = {along_axis(-half), along_axis(half + plane_.thickness)};
        fence.note = "on the skin, along both edges of the hot sheet, square to the form's axis";
    }

    const FormSpec& spec_;
    const PaneForm<double>& form_;
    FormPlane plane_;
    std::vector<Part> parts_;
};

}  // namespace

std::vector<Part> form_parts(const Case& c, const PaneForm<double>& form) {
    if (!forming::can_be_drawn_off(form.sizes)) {
        return {};
    }
    return FormParts(c, form).parts();
}

}  // namespace bowfront::pattern
