#include "bowfront/forming/form.hpp"

#include <cmath>
#include <numbers>
#include <string>

#include "bowfront/base/contract.hpp"

namespace bowfront::forming {

double least_inside_radius(const FormSpec& spec, double springback) {
    return (spec.cover.value + spec.skin.value) * (1 + springback);
}

namespace {

template <class N>
struct Layers {
    N cover;
    N skin;
    N overrun;
};

// The length of a form's pieces so far under the face: bends are shorter there, and hollow ones
// longer.
template <class N>
N run_length(const std::vector<FormPiece<N>>& pieces, N under) {
    N sum(0);
    for (const FormPiece<N>& piece : pieces) {
        sum = sum + piece.length;
        if (value_of(piece.radius) > 0) {
            sum = piece.hollow ? sum + under * piece.sweep : sum - under * piece.sweep;
        }
    }
    return sum;
}

// From the flattest to the steepest direction of pieces that turn by angles, to the one side or,
// hollow, to the other.
template <class N>
class Directions {
  public:
    void turn(N by, bool hollow) {
        now_ = hollow ? now_ - by : now_ + by;
        least_ = smaller(least_, now_);
        most_ = larger(most_, now_);
    }
    [[nodiscard]] N range() const { return most_ - least_; }

  private:
    N now_{0};
    N least_{0};
    N most_{0};
};

// A bend of the pane as the form has it; a straight of the pane's length.
template <class N>
FormPiece<N> form_piece(const FormTask<N>& task, const BentPiece<N>& bent, std::string_view path,
                        Book<N>& book) {
    FormPiece<N> piece{bent.length, N(0), N(0), bent.hollow};
    if (value_of(bent.inside_radius) == 0) {
        return piece;
    }
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N number,
                            std::string_view source) {
        return book.figure({path, key}, symbol, kind, number, source);
    };
    const N inside = figure("inside_radius", "Ri_f", Kind::length,
                            bent.inside_radius / (1 + task.springback),
                            "definition of springback as growth of the radius on release");
    piece.sweep = figure("pane_sweep", "ψ_p", Kind::angle,
                         bent.length / (inside + task.thickness / 2),
                         "the bend's length on the mid-surface stays: it turns further on the form");
    piece.radius =
        figure("face_radius", "Rs", Kind::length, bent.hollow ? inside + task.thickness : inside,
               bent.hollow ? "the sheet's other face lies in the hollow" : "the sheet's hollow face");
    piece.length = piece.radius * piece.sweep;
    return piece;
}

// The overrun at an end: straight on, or along the arc that the pane ends in.
template <class N>
void run_over(N overrun, FormPiece<N>& end) {
    end.length = end.length + overrun;
    if (value_of(end.radius) > 0) {
        end.sweep = end.sweep + overrun / end.radius;
    }
}

template <class N>
void form_run(const FormTask<N>& task, const Layers<N>& layers, std::string_view pane,
              Book<N>& book, FormSizes<N>& form) {
    Directions<N> released;
    Directions<N> on_form;
    const std::string base = "forms/" + std::string(pane);
    for (const BentPiece<N>& bent : task.pieces) {
        const std::string path = base + "/pieces/" + std::to_string(form.pieces.size() + 1);
        form.pieces.push_back(form_piece(task, bent, path, book));
        if (value_of(bent.inside_radius) > 0) {
            released.turn(bent.length / (bent.inside_radius + task.thickness / 2), bent.hollow);
        }
    }
    run_over(layers.overrun, form.pieces.front());
    run_over(layers.overrun, form.pieces.back());
    bool any = false;
    form.face_radius = form.skin_radius = N(0);
    for (std::size_t i = 0; i < form.pieces.size(); ++i) {
        FormPiece<N>& piece = form.pieces[i];
        const std::string path = base + "/pieces/" + std::to_string(i + 1);
        piece.length = book.figure({path, "length"}, "l_f", Kind::length, piece.length,
                                   "on the form's face, overruns included");
        if (value_of(piece.radius) == 0) {
            continue;
        }
        piece.sweep = book.figure({path, "sweep"}, "ψ", Kind::angle, piece.sweep,
                                  "on the form, overruns included");
        on_form.turn(piece.sweep, piece.hollow);
        const N skin = piece.hollow ? piece.radius + layers.cover
                                    : piece.radius - layers.cover - layers.skin;
        form.skin_radius = i == 0 || value_of(form.skin_radius) == 0
                               ? skin
                               : smaller(form.skin_radius, skin);
        if (!piece.hollow) {
            form.face_radius = any ? smaller(form.face_radius, piece.radius) : piece.radius;
            any = true;
        }
    }
    BOWFRONT_EXPECTS(any);
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N number,
                            std::string_view source) {
        return book.figure({base, key}, symbol, kind, number, source);
    };
    form.face_radius = figure("face_radius", "Rs", Kind::length, form.face_radius,
                              "the tightest bend that the form is not hollow in");
    form.rib_radius = figure("rib_radius", "Rr", Kind::length,
                             form.face_radius - layers.cover - layers.skin,
                             "geometry: skin and cover lie on the ribs");
    BOWFRONT_EXPECTS(value_of(form.rib_radius) > 0);
    form.skin_radius = figure("skin/radius", "Rk", Kind::length, form.skin_radius,
                              "the tightest bend of the skin's hollow face");
    form.rib_sweep = figure("rib_sweep", "ψ", Kind::angle, on_form.range(),
                            "between the steepest directions of the ribs' edge");
    form.pane_sweep = figure("pane_sweep", "θ_p", Kind::angle, released.range(),
                             "between the steepest directions of the pane when released");
}

}  // namespace

bool can_be_drawn_off(const FormSizes<double>& form) {
    constexpr double kPi = std::numbers::pi;
    if (form.pieces.empty()) {
        return form.rib_sweep < kPi;
    }
    // Bent further than this, the form's own ends would come near each other.
    constexpr double kMost = 1.25 * kPi;
    return form.rib_sweep <= kPi + kHalfTurnRounding ||
           (form.pane_sweep <= kPi + kHalfTurnRounding && form.rib_sweep <= kMost);
}

template <class N>
FormSizes<N> form_sizes(const FormTask<N>& task, const FormSpec& spec, std::string_view pane,
                        Book<N>& book) {
    using std::ceil;
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N number,
                            std::string_view source) {
        return book.figure({"forms", pane, key}, symbol, kind, number, source);
    };
    const N cover = book.input("c", Kind::length, spec.cover);
    const N skin = book.input("k", Kind::length, spec.skin);
    const N overrun = book.input("o", Kind::length, spec.overrun);
    const N overhang = book.input("h", Kind::length, spec.overhang);
    const N rib_thickness = book.input("b", Kind::length, spec.rib_thickness);
    const N spacing = book.input("p_max", Kind::length, spec.rib_spacing);
    const N clearance = book.input("q", Kind::length, spec.fence_clearance);

    FormSizes<N> form;
    if (task.pieces.empty()) {
        form.face_radius = figure("face_radius", "Rs", Kind::length,
                                  task.inside_radius / (1 + task.springback),
                                  "definition of springback as growth of the radius on release");
        form.rib_radius = figure("rib_radius", "Rr", Kind::length, form.face_radius - cover - skin,
                                 "geometry: skin and cover lie on the ribs");
        BOWFRONT_EXPECTS(value_of(form.rib_radius) > 0);
        form.rib_sweep = figure("rib_sweep", "ψ", Kind::angle,
                                (task.inside_radius * task.sweep + 2 * overrun) / form.face_radius,
                                "geometry: the pane's inside arc and an overrun at each end");
        form.skin_radius = form.rib_radius;
        form.pane_sweep = task.sweep;
    } else {
        form_run(task, {cover, skin, overrun}, pane, book, form);
    }
    form.width = figure("skin/width", "B", Kind::length, task.blank_width + 2 * overhang,
                        "the blank and an overhang at each side");
    form.rib_count = figure("rib_count", "n", Kind::count,
                            larger(N(2), ceil((form.width - rib_thickness) / spacing) + 1),
                            "fewest ribs whose centres lie no further apart than the spacing");
    form.rib_pitch = figure("rib_pitch", "p", Kind::length,
                            (form.width - rib_thickness) / (form.rib_count - 1),
                            "ribs flush with the form's ends, evenly spaced");
    form.skin_length = figure("skin/length", "Ls", Kind::length,
                              task.pieces.empty()
                                  ? (form.face_radius - cover - skin / 2) * form.rib_sweep
                                  : run_length(form.pieces, cover + skin / 2),
                              "geometry: length on the skin's mid-surface");
    form.fence_gap = figure("fence_gap", "F", Kind::length, task.widest_hot + clearance,
                            "the hot sheet when it has shrunk least, and a clearance");
    return form;
}

template FormSizes<double> form_sizes(const FormTask<double>&, const FormSpec&, std::string_view,
                                      Book<double>&);
template FormSizes<Traced> form_sizes(const FormTask<Traced>&, const FormSpec&, std::string_view,
                                      Book<Traced>&);

}  // namespace bowfront::forming
