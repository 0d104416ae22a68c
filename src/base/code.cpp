#include "bowfront/base/code.hpp"

#include <array>

namespace bowfront {
namespace {

constexpr std::array kTable = {
    CodeEntry{Code::input_unreadable, "BF-IN-001", "a file can't be read, or is not text"},
    CodeEntry{Code::input_syntax, "BF-IN-002", "the text is not of its format: JSON (comments allowed), DXF or CSV"},
    CodeEntry{Code::input_type, "BF-IN-003", "a value has the wrong type"},
    CodeEntry{Code::input_value, "BF-IN-004", "a value is out of its range or not one of its words"},
    CodeEntry{Code::input_unknown_key, "BF-IN-005", "a key that is not known"},
    CodeEntry{Code::input_missing_key, "BF-IN-006", "a key that is needed is not there"},
    CodeEntry{Code::input_duplicate_key, "BF-IN-007", "a key stands twice in one object"},
    CodeEntry{Code::input_contradiction, "BF-IN-008", "values that can't hold together"},
    CodeEntry{Code::input_limit, "BF-IN-009", "a file or a value is larger than its stated bound"},
    CodeEntry{Code::input_unit, "BF-IN-010", "a quantity has no unit, or one that is not known"},
    CodeEntry{Code::fit_engagement, "BF-FIT-001", "engagement of a pane's edge"},
    CodeEntry{Code::fit_room, "BF-FIT-002", "room for the pane in its grooves"},
    CodeEntry{Code::fit_face_clearance, "BF-FIT-003", "face clearance in a groove"},
    CodeEntry{Code::fit_loading, "BF-FIT-004", "whether the pane can be put in"},
    CodeEntry{Code::fit_bend, "BF-FIT-005", "whether the pane takes its radius, cold or heated"},
    CodeEntry{Code::fit_heat, "BF-FIT-006", "oven temperature against the sheet's limits"},
    CodeEntry{Code::fit_oven, "BF-FIT-007", "whether the blank goes into the oven flat"},
    CodeEntry{Code::fit_stock, "BF-FIT-008", "whether the blank can be cut from the stock"},
    CodeEntry{Code::fit_shrink, "BF-FIT-009", "whether the sheet's shrink was measured"},
    CodeEntry{Code::fit_radius, "BF-FIT-010", "a curved pane's own radius against its grooves'"},
    CodeEntry{Code::fit_chance, "BF-FIT-011", "how likely a pane fits at the first try"},
    CodeEntry{Code::fit_load, "BF-FIT-012", "what a push, or being carried, does to a pane"},
    CodeEntry{Code::fit_path, "BF-FIT-013", "whether a pane has a way in, followed position by position"},
    CodeEntry{Code::fit_shop_size, "BF-FIT-014", "whether what is cut to a shop's sizes still fits"},
    CodeEntry{Code::frame_post_on_plate, "BF-FRAME-001", "a post within base and top"},
    CodeEntry{Code::frame_cutter, "BF-FRAME-002", "the cutter against a groove's width"},
    CodeEntry{Code::frame_web, "BF-FRAME-003", "web between two grooves"},
    CodeEntry{Code::frame_cheek, "BF-FRAME-004", "cheek beside a groove"},
    CodeEntry{Code::frame_floor, "BF-FRAME-005", "floor under a groove"},
    CodeEntry{Code::frame_rail_board, "BF-FRAME-006", "the board that a piece of a rail takes"},
    CodeEntry{Code::frame_rail_run_out, "BF-FRAME-007", "how far the grain of a curved rail runs out"},
    CodeEntry{Code::frame_rail_joint, "BF-FRAME-008", "room for a joint's tongue under the grooves"},
    CodeEntry{Code::frame_post_joint, "BF-FRAME-009", "room for a post's tenon or dowels"},
    CodeEntry{Code::form_skin, "BF-FORM-001", "the skin against its bend radius"},
    CodeEntry{Code::form_sweep, "BF-FORM-002", "the form's arc: hot sheet must drape over it"},
    CodeEntry{Code::case_tipping, "BF-CASE-001", "whether the case stands or tips over"},
    CodeEntry{Code::case_mass, "BF-CASE-002", "whether what the case weighs is known"},
    CodeEntry{Code::shelf_sag, "BF-SHELF-001", "how far a shelf sags in years"},
    CodeEntry{Code::shelf_stress, "BF-SHELF-002", "stress in a shelf against what it bears for years"},
    CodeEntry{Code::shelf_room, "BF-SHELF-003", "room between a shelf and panes and posts"},
    CodeEntry{Code::shelf_tip, "BF-SHELF-004", "whether a shelf tips off what it lies on"},
    CodeEntry{Code::shelf_pin, "BF-SHELF-005", "timber round the bore of a shelf's pin"},
    CodeEntry{Code::access_engagement, "BF-ACCESS-001", "engagement of a pane that opens, at rest"},
    CodeEntry{Code::access_way, "BF-ACCESS-002", "whether what opens has a way to open"},
    CodeEntry{Code::access_room, "BF-ACCESS-003", "room of what opens between its posts"},
    CodeEntry{Code::access_push, "BF-ACCESS-004", "whether a push brings a shut pane out of its grooves"},
    CodeEntry{Code::access_pull, "BF-ACCESS-005", "room for fingers"},
    CodeEntry{Code::access_timber, "BF-ACCESS-006", "timber about what is cut for the opening"},
    CodeEntry{Code::access_top, "BF-ACCESS-007", "room above a case whose top comes off"},
    CodeEntry{Code::access_lift, "BF-ACCESS-008", "what is lifted to open the case"},
    CodeEntry{Code::access_overlap, "BF-ACCESS-009", "overlap of shut sliding panes"},
    CodeEntry{Code::access_faces, "BF-ACCESS-010", "sliding panes against each other"},
    CodeEntry{Code::access_tipping, "BF-ACCESS-011", "whether an open door tips the case"},
    CodeEntry{Code::proof_interference, "BF-PROOF-001", "two solids in one place"},
    CodeEntry{Code::proof_pattern, "BF-PROOF-002", "a pattern that a cutter could not cut"},
    CodeEntry{Code::output_refused, "BF-OUT-001", "a folder that is not ours to replace"},
    CodeEntry{Code::output_failed, "BF-OUT-002", "the output could not be written"},
};

}  // namespace

std::span<const CodeEntry> code_table() noexcept { return kTable; }

std::string_view code_text(Code code) noexcept {
    for (const CodeEntry& entry : kTable) {
        if (entry.code == code) {
            return entry.text;
        }
    }
    return "BF-???";
}

}  // namespace bowfront
