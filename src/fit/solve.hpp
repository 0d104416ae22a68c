#pragma once
/// \file
/// The pieces that `solve` is put together from, templates over the kind of number.

#include "bowfront/fit/post.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::fit {

/// What the sums of one pane are asked of.
template <class N>
struct PaneTask {
    const Case& c;
    const PaneSpec& spec;
    const SideSums<N>& line;            ///< its stretch of glazing line
    const CornerDirections& start;      ///< of its corners
    const CornerDirections& end;
    std::string_view side;
    Book<N>& book;

    [[nodiscard]] N input(std::string_view symbol, const Sourced<double>& value) const {
        return book.input(symbol, Kind::length, value);
    }
    [[nodiscard]] N figure(std::string_view key, std::string_view symbol, N value,
                           std::string_view source, Kind kind = Kind::length) const {
        return book.figure({"panes", side, key}, symbol, kind, value, source);
    }
};

/// A size as it was measured, under `measured/KEY`.
template <class N>
[[nodiscard]] N measured_size(const PaneTask<N>& task, std::string_view key,
                              std::string_view symbol, const MeasuredSize& size) {
    const std::string path = "measured/" + std::string(key);
    return task.book.reference({"panes", task.side, path}, symbol, Kind::length, size.value,
                               {"as measured"});
}

/// What a measured size may be off, ± mm, under `measured/KEY/uncertainty`.
template <class N>
[[nodiscard]] N measured_limit(const PaneTask<N>& task, std::string_view key,
                               std::string_view symbol, const MeasuredSize& size) {
    const std::string path = "measured/" + std::string(key) + "/uncertainty";
    return task.book.reference({"panes", task.side, path}, symbol, Kind::length, size.uncertainty,
                               {"± of the measuring"});
}

/// The tolerance of a class for a size, ± mm; where the class has no row for it, the next one that
/// is not tighter. Source: ISO 2768-1:1989, table 1
[[nodiscard]] double class_tolerance(ToleranceClass by_class, double size);

/// The tolerance of one size, ± mm.
template <class N>
[[nodiscard]] N tolerance(const PaneTask<N>& task, std::string_view key, std::string_view symbol,
                          const Sourced<ToleranceSpec>& spec, double size);

/// Where a pane of several pieces bends, as formed and on its blank; its chord and its rise. After
/// its length.
/// @param shrink  along its length
template <class N>
void solve_run(const PaneTask<N>& task, N shrink, PaneSums<N>& pane);

/// What the bends of such a pane do to its fit: see RadiusSums. The sums that it shares with a pane
/// of one arc are left to `solve_radius`.
template <class N>
struct RunError {
    N share;
    N rise_off;
    N rise_off_worst;
    N off;        ///< largest difference of a bend's radius and its groove's, mm
};
template <class N>
[[nodiscard]] RunError<N> solve_run_error(const PaneTask<N>& task, const TimberStates<N>& timber,
                                          PaneSums<N>& pane);

/// The radius that a part of an arc has on a plate that has moved: of the circle through its ends
/// and its crown, under a figure of its own.
/// @param chord, rise  of the part, as built
/// @param heading      of its chord, rad from X
template <class N>
[[nodiscard]] N moved_radius(Book<N>& book, const PlateFactors<N>& plate, const FigurePath& path,
                             N chord, N rise, double heading);

/// Openings, formed size, blank, curve.
template <class N>
void solve_sizes(const PaneTask<N>& task, PaneSums<N>& pane);

/// Where a state's figures of a pane stand, below the pane's own path: `states/cold-dry`.
[[nodiscard]] std::string_view state_path(AirState state) noexcept;

/// The pane's place in the frame in each state of the air.
/// @param sheet  the factors of the pane's sheet
template <class N>
void solve_states(const PaneTask<N>& task, const TimberStates<N>& timber,
                  const std::array<N, kAirStates.size()>& sheet, PaneSums<N>& pane);

/// Engagement, clearances, room, loading.
template <class N>
void solve_edges(const PaneTask<N>& task, PaneSums<N>& pane);

/// The way in as closed formulas give it. After openings, sizes, room and tolerances.
template <class N>
void solve_loading(const PaneTask<N>& task, N top_depth, PaneSums<N>& pane);

/// A curved pane's own radius against its grooves'. After the edges.
template <class N>
void solve_radius(const PaneTask<N>& task, const TimberStates<N>& timber, PaneSums<N>& pane);

/// What a push and being carried do to a pane. After the edges.
template <class N>
void solve_loads(const PaneTask<N>& task, PaneSums<N>& pane);

}  // namespace bowfront::fit
