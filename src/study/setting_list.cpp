#include "setting_list.hpp"

#include <algorithm>
#include <array>
#include <numbers>
#include <string>
#include <string_view>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront::study {
namespace {

// Steps in a millimetre: 0.1 mm for what is fitted, 0.5 mm for what is sawn or seen, 0.05 mm for
// tolerances.
constexpr double kFine = 10;
constexpr double kCoarse = 2;
constexpr double kFinest = 20;

// How far a value is tried: more is no small change any more.
constexpr double kLeast = 0.1;       // mm; of a size that can't be nothing
constexpr double kDeeper = 20;       // mm; of play and of grooves
constexpr double kWider = 50;        // mm; of a plate's margin
constexpr double kLookShare = 0.25;  // of a size that is seen
constexpr double kBoardShare = 0.5;  // of a board or post
constexpr double kPaneShare = 0.1;   // of a pane or blank
constexpr double kOvenReach = 40;    // K
constexpr double kMostSheet = 25.4;  // mm
constexpr double kMostCutter = 25.4; // mm
constexpr double kLeastTrim = 0.5;   // mm

// Thicknesses that sheet is sold in, mm; common practice, no source.
const std::vector<double> kMetricSheets{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25};
// 1/16 in to 1 in.
const std::vector<double> kInchSheets{1.5875, 2.38125, 3.175, 4.7625, 6.35,
                                      9.525,  12.7,    19.05, 25.4};
// Cutters, mm; common practice, no source.
const std::vector<double> kMetricCutters{1, 1.5, 2, 2.5, 3, 3.175, 4, 5, 6, 6.35, 8, 10, 12, 12.7};
// 1/16 in to 1/2 in.
const std::vector<double> kInchCutters{1.5875, 2.38125, 3.175, 4.7625, 6.35, 9.525, 12.7};

std::string quoted(std::string_view word) {
    return '"' + std::string(word) + '"';
}

template <class Enum>
using Words = std::vector<std::pair<const char*, Enum>>;

// A word of the case and the others that could stand there; `put` sets its meaning.
template <class Enum, class Put>
WordPlace one_of(WordPlace place, const Sourced<Enum>& now, const Words<Enum>& all, Put put) {
    for (const auto& [word, meaning] : all) {
        if (meaning == now.value) {
            place.from = quoted(word);
            place.shown = word;
        } else {
            place.options.push_back(
                {quoted(word), word, [put, to = meaning](Case& c) { put(c, to); }});
        }
    }
    return place;
}

std::string blank_json(const BlankSpec& blank) {
    if (blank.method.value != BlankMethod::as_cut || !blank.length || !blank.width) {
        return quoted(method_text(blank.method.value));
    }
    return "{ \"length\": \"" + rounded_text(blank.length->value, 2) + " mm\", \"width\": \"" +
           rounded_text(blank.width->value, 2) + " mm\" }";
}

// For all panes that share the word.
void put_method(Case& c, const std::string& word_at, BlankMethod to) {
    constexpr double kTrim = 10;  // mm; the default of the case file
    for (PaneSpec& pane : c.panes) {
        if (pane.blank.method.origin.pointer == word_at) {
            pane.blank.method.value = to;
            pane.blank.length.reset();
            pane.blank.width.reset();
            pane.blank.trim.value = kTrim;
        }
    }
}

// Empty where the tolerance goes by a class, or by the sheet's standard.
std::optional<double> length_of(const Tolerances& all, const std::string& key) {
    const std::array rows{std::pair{"cut", &all.cut}, std::pair{"groove_depth", &all.groove_depth},
                          std::pair{"groove_width", &all.groove_width},
                          std::pair{"opening", &all.opening},
                          std::pair{"sheet_thickness",
                                    all.sheet_thickness ? &*all.sheet_thickness : nullptr}};
    for (const auto& [name, spec] : rows) {
        if (name == key && spec != nullptr && !spec->value.by_class) {
            return spec->value.value;
        }
    }
    return std::nullopt;
}

}  // namespace

SettingList::SettingList(const Case& c, const Finding& finding, const CaseFile& file)
    : c_(c), file_(file), about_(finding.about) {
    for (const PaneSpec& pane : c.panes) {
        const std::string side(side_text(pane.side));
        if (belongs_to(about_, side) || about_ == "form-" + side) {
            pane_ = &pane;
        }
    }
}

bool SettingList::own_height() const noexcept {
    return pane_ != nullptr && (pane_->height || pane_->blank.width);
}

bool SettingList::own_length() const noexcept {
    return pane_ != nullptr && (pane_->length || pane_->blank.length);
}

void SettingList::number(const NumberPlace& place) {
    const bool there = std::any_of(list_.begin(), list_.end(), [&](const Setting& setting) {
        return setting.pointer == place.pointer;
    });
    if (there) {
        return;
    }
    if (auto setting = number_setting(c_, file_, place)) {
        list_.push_back(std::move(*setting));
    }
}

void SettingList::word(WordPlace place) {
    list_.push_back(word_setting(file_, std::move(place)));
}

void SettingList::share(const std::string& pointer, const std::string& name, Touches touches,
                        double share, double steps) {
    if (const auto now = number_at(c_, pointer)) {
        number({pointer, name, touches, Amount::length, steps, *now * (1 - share),
                *now * (1 + share)});
    }
}

void SettingList::play(const std::string& key, const std::string& name) {
    const std::string pointer = "/fit/" + key;
    number({pointer, name, Touches::size, Amount::length, kFine, 0,
            number_at(c_, pointer).value_or(0) + kDeeper});
}

void SettingList::own(const std::string& key) {
    if (pane_ != nullptr) {
        share(pane_->pointer + "/size/" + key, "the " + side() + " pane's own " + key, Touches::size,
              kPaneShare, kFine);
    }
}

void SettingList::upright_play() {
    if (c_.frame.loading.value == Loading::lift_and_drop) {
        play("loading_clearance", "the loading clearance");
    } else {
        play("top_clearance", "the top clearance");
    }
    own("height");
    blank("width");
}

void SettingList::end_play() {
    play("end_clearance", "the end clearance");
    own("length");
    blank("length");
}

void SettingList::blank(const std::string& key) {
    if (pane_ != nullptr) {
        share(pane_->pointer + "/blank/" + key, "the " + key + " of the " + side() + " blank",
              Touches::size, kPaneShare, kFine);
    }
}

// A method that is written out as an object is replaced with its trim.
void SettingList::method() {
    if (pane_ == nullptr) {
        return;
    }
    const BlankSpec& blank = pane_->blank;
    const std::string word_at = blank.method.origin.pointer;
    const std::string pointer =
        word_at.ends_with("/method") ? word_at.substr(0, word_at.rfind('/')) : word_at;
    WordPlace place{pointer,           "the method of the " + side() + " blank",
                    Touches::method,   blank_json(blank),
                    std::string(method_text(blank.method.value)), {}};
    for (const BlankMethod to : {BlankMethod::trim_after, BlankMethod::allow_shrink}) {
        if (to != blank.method.value) {
            place.options.push_back({quoted(method_text(to)), std::string(method_text(to)),
                                     [to, word_at](Case& c) { put_method(c, word_at, to); }});
        }
    }
    word(std::move(place));
}

void SettingList::trim() {
    if (pane_ != nullptr && pane_->blank.trim.given()) {
        number({pane_->blank.trim.origin.pointer, "the trim of the " + side() + " blank",
                Touches::size, Amount::length, kCoarse, kLeastTrim, pane_->blank.trim.value});
    }
}

void SettingList::bend() {
    if (pane_ != nullptr) {
        word(one_of({pane_->pointer + "/bend", "the " + side() + " pane's bend", Touches::method, {},
                     {}, {}},
                    pane_->bend, {{"heat", Bend::heat}, {"cold", Bend::cold}},
                    [side = pane_->side](Case& c, Bend to) { c.pane(side)->bend.value = to; }));
    }
}

void SettingList::depth(const std::string& key) {
    const std::string pointer = "/frame/groove/depth/" + key;
    const std::string name =
        key == "post" ? "the depth of the post grooves" : "the depth of the " + key + " groove";
    number({pointer, name, Touches::size, Amount::length, kFine, kLeast,
            number_at(c_, pointer).value_or(0) + kDeeper});
}

void SettingList::groove_width() {
    number({"/frame/groove/width", "the width of the grooves", Touches::size, Amount::length, kFine,
            kLeast, c_.frame.groove.width.value + kDeeper});
}

void SettingList::sheet_thickness() {
    if (pane_ != nullptr) {
        number({pane_->pointer + "/thickness", "the " + side() + " sheet's thickness",
                Touches::look, Amount::length, kFine, kLeast, kMostSheet,
                inches() ? kInchSheets : kMetricSheets});
    }
}

// Boards are planed to any thickness, sheets are not.
void SettingList::shelf_thickness(const ShelfSpec& shelf) {
    constexpr double kThickest = 60;  // mm
    NumberPlace place{shelf.pointer + "/thickness", "the shelf's thickness", Touches::look,
                      Amount::length, kCoarse, 1, kThickest};
    if (shelf.sheet != nullptr) {
        place.sizes = inches() ? kInchSheets : kMetricSheets;
    }
    number(place);
}

void SettingList::shelf_support(const ShelfSpec& shelf) {
    const auto same = [at = shelf.pointer](const ShelfSpec& other) { return other.pointer == at; };
    word(one_of({shelf.pointer + "/support", "what the shelf lies on", Touches::method, {}, {}, {}},
                shelf.support, {{"pins", ShelfSupport::pins}, {"rails", ShelfSupport::rails}},
                [same](Case& c, ShelfSupport to) {
                    std::ranges::find_if(c.shelves, same)->support.value = to;
                }));
}

void SettingList::cutter() {
    number({"/cutter/diameter", "the cutter's diameter", Touches::size, Amount::length, kFine,
            kLeast, kMostCutter, inches() ? kInchCutters : kMetricCutters});
}

void SettingList::plate_thickness(const std::string& plate) {
    share("/frame/" + plate + "/thickness", "the " + plate + "'s thickness", Touches::size,
          kBoardShare, kCoarse);
}

void SettingList::margin(const std::string& plate) {
    const std::string pointer = "/frame/" + plate + "/margin";
    if (const auto now = number_at(c_, pointer)) {
        number({pointer, "the " + plate + "'s margin", Touches::look, Amount::length, kCoarse, kLeast,
                *now + kWider});
    }
}

void SettingList::inset(const std::string& plate) {
    const std::string pointer = "/frame/" + plate + "/inset";
    if (const auto now = number_at(c_, pointer)) {
        number({pointer, "the inset of the " + plate + "'s rails", Touches::look, Amount::length,
                kCoarse, kLeast, *now + kWider});
    }
}

void SettingList::rail_boards(const std::string& plate) {
    larger("/frame/" + plate + "/board_width", "the width of the boards for the " + plate);
}

void SettingList::run_out(const std::string& plate) {
    constexpr double kMost = std::numbers::pi / 4;  // the most that a case file may ask for
    const std::string pointer = "/frame/" + plate + "/run_out";
    if (const auto now = number_at(c_, pointer)) {
        number({pointer, "the run-out that the " + plate + "'s rails may have", Touches::demand,
                Amount::angle, kFine, *now, kMost});
    }
}

void SettingList::post(const std::string& key) {
    share("/frame/post/" + key, "the posts' " + key, Touches::look, kBoardShare, kCoarse);
}

void SettingList::joint_size() {
    if (c_.frame.post.joint_size) {
        share("/frame/post/joint_size", "the size of the posts' joints", Touches::size, kBoardShare,
              kCoarse);
    }
}

void SettingList::section() {
    word(one_of({"/frame/post/section", "the posts' section", Touches::look, {}, {}, {}},
                c_.frame.post.section,
                {{"fitted", PostSection::fitted},
                 {"square", PostSection::square},
                 {"round", PostSection::round}},
                [](Case& c, PostSection to) { c.frame.post.section.value = to; }));
}

// The hold follows the loading where the file does not give it.
void SettingList::loading() {
    word(one_of({"/frame/loading", "the loading", Touches::look, {}, {}, {}}, c_.frame.loading,
                {{"slide-in", Loading::slide_in},
                 {"beaded", Loading::beaded},
                 {"lift-and-drop", Loading::lift_and_drop}},
                [](Case& c, Loading to) {
                    c.frame.loading.value = to;
                    if (!c.frame.post.hold.given()) {
                        c.frame.post.hold.value =
                            to == Loading::beaded ? Hold::rabbet : Hold::groove;
                    }
                }));
}

void SettingList::hold() {
    word(one_of({"/frame/post/hold", "the posts' hold", Touches::look, {}, {}, {}},
                c_.frame.post.hold, {{"groove", Hold::groove}, {"rabbet", Hold::rabbet}},
                [](Case& c, Hold to) { c.frame.post.hold.value = to; }));
}

void SettingList::sawn() {
    const std::pair<std::string, Plate Frame::*> plates[] = {{"base", &Frame::base},
                                                             {"top", &Frame::top}};
    for (const auto& [name, plate] : plates) {
        word(one_of({"/frame/" + name + "/sawn", "the sawing of the " + name, Touches::method, {}, {},
                     {}},
                    (c_.frame.*plate).sawn,
                    {{"flat", Sawn::flat}, {"quarter", Sawn::quarter}, {"plywood", Sawn::plywood}},
                    [plate = plate](Case& c, Sawn to) { (c.frame.*plate).sawn.value = to; }));
    }
}

void SettingList::post_sawn() {
    word(one_of({"/frame/post/sawn", "the sawing of the posts", Touches::method, {}, {}, {}},
                c_.frame.post.sawn, {{"any", PostSawn::any}, {"rift", PostSawn::rift}},
                [](Case& c, PostSawn to) { c.frame.post.sawn.value = to; }));
}

void SettingList::clear_height() {
    share("/frame/clear_height", "the clear height", Touches::look, kLookShare, kCoarse);
}

void SettingList::own_side() {
    if (pane_ == nullptr) {
        return;
    }
    const PlanShape shape = c_.plan.shape;
    if (shape == PlanShape::polygon || shape == PlanShape::sides) {
        own_chained_side();
        return;
    }
    const std::string_view side = side_text(pane_->side);
    const bool across = side.starts_with("front") || side.starts_with("back");
    share(across ? "/plan/width" : "/plan/depth", across ? "the plan's width" : "the plan's depth",
          Touches::look, kLookShare, kCoarse);
}

void SettingList::own_chained_side() {
    if (c_.plan.shape == PlanShape::polygon) {
        if (c_.plan.corners.empty()) {
            share("/plan/side", "the polygon's sides", Touches::look, kLookShare, kCoarse);
        }
        return;  // a corner of its own moves two sides at once
    }
    const std::string straight = side_pointer(c_.plan, index(pane_->side)) + "/straight";
    if (number_at(c_, straight)) {
        share(straight, "the " + std::string(side_text(pane_->side)) + "'s length", Touches::look,
              kLookShare, kCoarse);
    }
}

namespace {

// Which piece of a run a size is of: ` of piece 2`; empty where its side is no run.
std::string piece_text(const std::string& pointer) {
    constexpr std::string_view kRun = "/run/";
    const std::size_t at = pointer.find(kRun);
    if (at == std::string::npos) {
        return {};
    }
    const std::size_t from = at + kRun.size();
    const int index = std::stoi(pointer.substr(from, pointer.find('/', from) - from));
    return " of piece " + std::to_string(index + 1);
}

}  // namespace

void SettingList::front_arc() {
    if (pane_ == nullptr) {
        return;
    }
    for (const FrontArc* const arc : arc_measures(c_.plan, index(pane_->side))) {
        if (!arc->value.given()) {
            continue;  // there is nothing in the file to change
        }
        const double now = arc->value.value;
        const bool angle = arc->measure == ArcMeasure::sweep;
        number({arc->value.origin.pointer,
                "the " + std::string(side_text(pane_->side)) + "'s " +
                    std::string(measure_text(arc->measure)) +
                    piece_text(arc->value.origin.pointer),
                Touches::look, angle ? Amount::angle : Amount::length, kCoarse,
                now * (1 - kLookShare), now * (1 + kLookShare)});
    }
}

void SettingList::oven_set() {
    if (!c_.oven || pane_ == nullptr || !c_.sheets.at(pane_->sheet).like->forming) {
        return;
    }
    const double proposed = c_.sheets.at(pane_->sheet).like->forming->set.value;
    const double now = c_.oven->set ? c_.oven->set->value : proposed;
    number({"/oven/set", "the oven's setting", Touches::size, Amount::temperature, 1,
            now - kOvenReach, now + kOvenReach, {}, now});
}

void SettingList::larger(const std::string& pointer, const std::string& name) {
    if (const auto now = number_at(c_, pointer)) {
        number({pointer, name, Touches::demand, Amount::length, 1, *now, *now * 3});
    }
}

void SettingList::tolerance(const std::string& key, const std::string& name) {
    if (const auto now = length_of(c_.tolerance, key)) {
        number({"/tolerance/" + key, name, Touches::demand, Amount::length, kFinest, 0, *now});
    }
}

}  // namespace bowfront::study
