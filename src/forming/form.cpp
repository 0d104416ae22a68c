#include "bowfront/forming/form.hpp"

#include <cmath>

#include "bowfront/base/contract.hpp"

namespace bowfront::forming {

double least_inside_radius(const FormSpec& spec, double springback) {
    return (spec.cover.value + spec.skin.value) * (1 + springback);
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
    form.face_radius = figure("face_radius", "Rs", Kind::length,
                              task.inside_radius / (1 + task.springback),
                              "definition of springback as growth of the radius on release");
    form.rib_radius = figure("rib_radius", "Rr", Kind::length, form.face_radius - cover - skin,
                             "geometry: skin and cover lie on the ribs");
    BOWFRONT_EXPECTS(value_of(form.rib_radius) > 0);
    form.rib_sweep = figure("rib_sweep", "ψ", Kind::angle,
                            (task.inside_radius * task.sweep + 2 * overrun) / form.face_radius,
                            "geometry: the pane's inside arc and an overrun at each end");
    form.width = figure("skin/width", "B", Kind::length, task.blank_width + 2 * overhang,
                        "the blank and an overhang at each side");
    form.rib_count = figure("rib_count", "n", Kind::count,
                            larger(N(2), ceil((form.width - rib_thickness) / spacing) + 1),
                            "fewest ribs whose centres lie no further apart than the spacing");
    form.rib_pitch = figure("rib_pitch", "p", Kind::length,
                            (form.width - rib_thickness) / (form.rib_count - 1),
                            "ribs flush with the form's ends, evenly spaced");
    form.skin_length = figure("skin/length", "Ls", Kind::length,
                              (form.face_radius - cover - skin / 2) * form.rib_sweep,
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
