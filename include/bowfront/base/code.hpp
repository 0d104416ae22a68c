#pragma once
/// \file
/// The codes that errors and checks carry, in one table.

#include <span>
#include <string_view>

namespace bowfront {

/// What an error or a check is about. The text form (`BF-IN-003`) never changes its meaning.
enum class Code {
    // The user's files and options.
    input_unreadable,
    input_syntax,
    input_type,
    input_value,
    input_unknown_key,
    input_missing_key,
    input_duplicate_key,
    input_contradiction,
    input_limit,
    input_unit,
    // The fit of a pane.
    fit_engagement,
    fit_room,
    fit_face_clearance,
    fit_loading,
    fit_bend,
    fit_heat,
    fit_oven,
    fit_stock,
    fit_shrink,
    fit_radius,
    fit_chance,
    fit_load,
    fit_path,
    fit_shop_size,
    // The frame.
    frame_post_on_plate,
    frame_cutter,
    frame_web,
    frame_cheek,
    frame_floor,
    frame_rail_board,
    frame_rail_run_out,
    frame_rail_joint,
    frame_post_joint,
    // The form.
    form_skin,
    form_sweep,
    // The case as a whole.
    case_tipping,
    case_mass,
    // Shelves.
    shelf_sag,
    shelf_stress,
    shelf_room,
    shelf_tip,
    shelf_pin,
    // How the case is opened.
    access_engagement,
    access_way,
    access_room,
    access_push,
    access_pull,
    access_timber,
    access_top,
    access_lift,
    access_overlap,
    access_faces,
    access_tipping,
    // The proof of what was made.
    proof_interference,
    proof_pattern,
    // The output folder.
    output_refused,
    output_failed,
};

/// A row of the table: the code's text and what it says.
struct CodeEntry {
    Code code;
    std::string_view text;     ///< `BF-FIT-001`
    std::string_view meaning;  ///< one clause
};

/// Every code there is, in order.
[[nodiscard]] std::span<const CodeEntry> code_table() noexcept;

/// The text of a code, `BF-FIT-001`.
[[nodiscard]] std::string_view code_text(Code code) noexcept;

}  // namespace bowfront
