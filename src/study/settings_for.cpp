#include <algorithm>
#include <string>
#include <string_view>

#include "setting_list.hpp"

namespace bowfront::study {
namespace {

// What each kind of finding may depend on. The order counts only among changes of one size.

constexpr double kFine = 10;      // steps in a millimetre
constexpr double kMostMillimetres = 20;  // of a least size that is asked for
// Bendable boards for skins, mm; common practice, no source.
const std::vector<double> kMetricSkins{1, 1.5, 2, 3, 4, 5, 6, 6.5, 8};
// 1/16 in to 1/4 in.
const std::vector<double> kInchSkins{1.5875, 3.175, 4.7625, 6.35};

void least(SettingList& list, const std::string& pointer, const std::string& name) {
    list.number({pointer, name, Touches::demand, Amount::length, kFine, 0, kMostMillimetres});
}

void place_in_frame(SettingList& list) {
    const std::string_view about = list.about();
    const std::size_t slash = about.find('/');
    const bool whole = slash == std::string_view::npos;
    const std::string_view part = whole ? about : about.substr(slash + 1);
    const bool upright = part == "top" || part == "bottom" || part == "vertical";
    if (upright || whole) {
        list.upright_play();
        list.depth("base");
        list.depth("top");
    }
    if (!upright || whole) {
        list.end_play();
        list.depth("post");
        list.sawn();
        list.post_sawn();
    }
    list.method();
    if (list.own_height() && upright) {
        list.clear_height();
    }
    if (list.own_length() && !upright) {
        list.own_side();
    }
    least(list, "/fit/least_engagement", "the least engagement");
    list.tolerance("cut", "the tolerance of cuts");
    list.tolerance("groove_depth", "the tolerance of the grooves' depth");
    list.tolerance("opening", "the tolerance of the openings");
}

void faces(SettingList& list) {
    list.groove_width();
    list.sheet_thickness();
    list.depth("post");
    list.tolerance("groove_width", "the tolerance of the grooves' width");
    list.tolerance("sheet_thickness", "the tolerance of the sheet's thickness");
}

void first_time_fit(SettingList& list) {
    place_in_frame(list);
    faces(list);
}

void shop_size(SettingList& list) {
    constexpr double kFinest = 20;  // steps in a millimetre
    constexpr double kWidest = 25.4;  // mm; the most that a case file may ask for
    first_time_fit(list);
    list.number({"/shop/step", "the step that the shop can set", Touches::demand, Amount::length,
                 kFinest, 1 / kFinest, kWidest});
}

void loading(SettingList& list) {
    list.upright_play();
    list.end_play();
    list.groove_width();
    for (const char* const groove : {"top", "base", "post"}) {
        list.depth(groove);
    }
    list.loading();
    list.hold();
    list.sheet_thickness();
}

void any_of_pane(SettingList& list) {
    first_time_fit(list);
    loading(list);
}

void bend(SettingList& list) {
    list.bend();
    list.sheet_thickness();
    list.front_arc();
}

void heat(SettingList& list) {
    constexpr double kMostKelvin = 50;
    list.oven_set();
    list.number({"/oven/accuracy", "the oven's accuracy", Touches::demand,
                 Amount::temperature_difference, 1, 0, kMostKelvin});
}

void blank_size(SettingList& list) {
    list.trim();
    list.method();
    list.blank("width");
    list.blank("length");
    list.clear_height();
    list.own_side();
}

void oven(SettingList& list) {
    blank_size(list);
    list.larger("/oven/inside/0", "the oven's inside width");
    list.larger("/oven/inside/1", "the oven's inside depth");
}

void stock(SettingList& list) {
    blank_size(list);
    const PaneSpec* const pane = list.pane();
    for (const StockItem& item : list.c().stock) {
        if (pane != nullptr && (item.material == pane->sheet ||
                                item.material == list.c().sheets.at(pane->sheet).like->name)) {
            list.larger(item.pointer + "/size/0", "the width of the sheet in stock");
            list.larger(item.pointer + "/size/1", "the length of the sheet in stock");
        }
    }
}

void radius(SettingList& list) {
    list.groove_width();
    list.sawn();
    list.sheet_thickness();
    list.front_arc();
    list.tolerance("groove_width", "the tolerance of the grooves' width");
    list.tolerance("sheet_thickness", "the tolerance of the sheet's thickness");
}

void way_in(SettingList& list) {
    if (list.pane() == nullptr) {  // of the frame: how the last pane gets in
        list.loading();
        return;
    }
    list.groove_width();
    list.upright_play();
    list.end_play();
    list.depth("top");
    list.loading();
    list.hold();
    list.sheet_thickness();
}

void load(SettingList& list) {
    constexpr double kMostPush = 2000;  // N; the most that a case file may ask for
    list.sheet_thickness();
    list.upright_play();
    list.end_play();
    list.depth("top");
    list.depth("post");
    list.clear_height();
    list.own_side();
    list.front_arc();
    list.number({"/service/push", "the push that a pane must bear", Touches::demand, Amount::force,
                 1, 1, kMostPush});
}

std::string plate_of(const SettingList& list) {
    return list.about().substr(0, list.about().find('/'));
}

void post_on_plate(SettingList& list) {
    list.margin(plate_of(list));
    list.post("width");
    list.post("depth");
    list.section();
}

void cutter(SettingList& list) {
    list.cutter();
    list.groove_width();
}

void timber_round_grooves(SettingList& list) {
    list.depth("post");
    cutter(list);
    post_on_plate(list);
    least(list, "/webs/web", "the web that is asked for");
    least(list, "/webs/cheek", "the cheek that is asked for");
}

void floor(SettingList& list) {
    list.depth(plate_of(list));
    list.plate_thickness(plate_of(list));
    list.tolerance("groove_depth", "the tolerance of the grooves' depth");
    list.number({"/webs/floor", "the floor that is asked for", Touches::demand, Amount::ratio, 1, 0,
                 1});
}

void skin(SettingList& list) {
    constexpr double kThickest = 25;  // mm
    list.number({"/form/skin/thickness", "the skin's thickness", Touches::size, Amount::length,
                 kFine, 1, kThickest, list.inches() ? kInchSkins : kMetricSkins});
    list.front_arc();
}

void form_sweep(SettingList& list) {
    constexpr double kLongest = 500;  // mm
    list.number(
        {"/form/overrun", "the form's overrun", Touches::size, Amount::length, 1, 0, kLongest});
    list.front_arc();
}

// The shelf that a finding is about: `shelf-1/panes` is about the first.
const ShelfSpec* shelf_of(const SettingList& list) {
    for (std::size_t i = 0; i < list.c().shelves.size(); ++i) {
        const std::string id = "shelf-" + std::to_string(i + 1);
        if (list.about() == id || list.about().starts_with(id + "/")) {
            return &list.c().shelves[i];
        }
    }
    return nullptr;
}

void shelf(SettingList& list, Code code) {
    const ShelfSpec* const of = shelf_of(list);
    if (of == nullptr) {
        return;
    }
    if (code == Code::shelf_room) {
        list.number({of->pointer + "/clearance", "the shelf's clearance", Touches::size,
                     Amount::length, kFine, 0, kMostMillimetres});
        list.tolerance("cut", "the tolerance of cuts");
        return;
    }
    list.shelf_support(*of);
    if (code == Code::shelf_pin) {
        list.post("width");
        list.post("depth");
    } else {
        list.shelf_thickness(*of);
    }
}

}  // namespace

std::vector<Setting> settings_for(const Case& c, const Finding& finding, const CaseFile& file) {
    SettingList list(c, finding, file);
    switch (finding.code) {
        case Code::fit_engagement:
        case Code::fit_room: place_in_frame(list); break;
        case Code::fit_face_clearance: faces(list); break;
        case Code::fit_loading: loading(list); break;
        case Code::fit_bend: bend(list); break;
        case Code::fit_heat: heat(list); break;
        case Code::fit_oven: oven(list); break;
        case Code::fit_stock: stock(list); break;
        case Code::fit_shrink: list.method(); break;
        case Code::fit_radius: radius(list); break;
        case Code::fit_path: way_in(list); break;
        case Code::fit_chance: first_time_fit(list); break;
        case Code::fit_load: load(list); break;
        case Code::fit_shop_size: shop_size(list); break;
        case Code::frame_post_on_plate: post_on_plate(list); break;
        case Code::frame_cutter: cutter(list); break;
        case Code::frame_web:
        case Code::frame_cheek: timber_round_grooves(list); break;
        case Code::frame_floor: floor(list); break;
        case Code::form_skin: skin(list); break;
        case Code::form_sweep: form_sweep(list); break;
        case Code::shelf_sag:
        case Code::shelf_stress:
        case Code::shelf_room:
        case Code::shelf_tip:
        case Code::shelf_pin: shelf(list, finding.code); break;
        default:
            // A check of a pane that has no row here; proofs of parts are not for a value to settle.
            if (list.pane() != nullptr) {
                any_of_pane(list);
            }
            break;
    }
    return list.take();
}

}  // namespace bowfront::study
