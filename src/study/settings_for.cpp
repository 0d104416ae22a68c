#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "setting.hpp"

namespace bowfront::study {
namespace {

// Steps in a millimetre: 0.1 mm for what is fitted, 0.5 mm for what is sawn or seen.
constexpr double kFine = 10;
constexpr double kCoarse = 2;

constexpr double kLeast = 0.1;      // mm; of a size that can't be nothing
constexpr double kDeeper = 20;      // mm; more of play or depth is no small change any more
constexpr double kLookShare = 0.25; // of a size that is seen
constexpr double kBoardShare = 0.5; // of a board or post
constexpr double kPaneShare = 0.1;  // of a pane or blank

// Thicknesses that sheet is sold in, mm; common practice, no source.
const std::vector<double> kMetricSheets{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25};
// The same in inches: 1/16 to 1.
const std::vector<double> kInchSheets{1.5875, 2.38125, 3.175, 4.7625, 6.35, 9.525, 12.7, 19.05, 25.4};
// Cutters, mm; common practice, no source.
const std::vector<double> kMetricCutters{1, 1.5, 2, 2.5, 3, 3.175, 4, 5, 6, 6.35, 8, 10, 12, 12.7};
const std::vector<double> kInchCutters{1.5875, 2.38125, 3.175, 4.7625, 6.35, 9.525, 12.7};
// Bendable boards for skins, mm; common practice, no source.
const std::vector<double> kMetricSkins{1, 1.5, 2, 3, 4, 5, 6, 6.5, 8};
const std::vector<double> kInchSkins{1.5875, 3.175, 4.7625, 6.35};

std::string quoted(std::string_view word) {
    return '"' + std::string(word) + '"';
}

class Settings {
  public:
    Settings(const Case& c, const Finding& finding, const CaseFile& file)
        : c_(c), file_(file), about_(finding.about), inches_(c.units == LengthUnit::inch) {
        for (const PaneSpec& pane : c.panes) {
            const std::string side(side_text(pane.side));
            if (about_ == side || about_.starts_with(side + "/") || about_ == "form-" + side) {
                pane_ = &pane;
            }
        }
    }

    [[nodiscard]] std::vector<Setting> take() { return std::move(list_); }

    void of(const Finding& finding) {
        switch (finding.code) {
            case Code::fit_engagement:
            case Code::fit_room: place_in_frame(); break;
            case Code::fit_chance:
                place_in_frame();
                groove_width();
                break;
            case Code::fit_face_clearance: faces(); break;
            case Code::fit_loading: loading(); break;
            case Code::fit_bend: bend(); break;
            case Code::fit_heat: heat(); break;
            case Code::fit_oven: oven(); break;
            case Code::fit_stock: stock(); break;
            case Code::fit_shrink: method(); break;
            case Code::fit_radius: radius(); break;
            case Code::fit_load: load(); break;
            case Code::frame_post_on_plate: post_on_plate(); break;
            case Code::frame_cutter: cutter(); break;
            case Code::frame_web:
            case Code::frame_cheek: timber_round_grooves(); break;
            case Code::frame_floor: floor(); break;
            case Code::form_skin: skin(); break;
            case Code::form_sweep: form_sweep(); break;
            default: break;  // proofs and faults of files are not of the case's numbers
        }
    }

  private:
    // --- what each kind of finding may depend on ---

    void place_in_frame() {
        const std::string part = about_.substr(std::min(about_.size(), about_.find('/') + 1));
        const bool upright = part == "top" || part == "bottom" || part == "vertical";
        const bool both = about_.find('/') == std::string::npos;
        if (upright || both) {
            upright_play();
            depth("base");
            depth("top");
        }
        if (!upright || both) {
            end_play();
            depth("post");
            sawn();
        }
        method();
        if (upright && own_height()) {
            look("/frame/clear_height", "the clear height");
        }
        if (!upright && own_length()) {
            own_side();
        }
        number({"/fit/least_engagement", "the least engagement", Touches::demand, Amount::length,
                kFine, 0, kDeeper});
        tolerance("cut", "the tolerance of cuts");
        tolerance("groove_depth", "the tolerance of the grooves' depth");
        tolerance("opening", "the tolerance of the openings");
        spread();
    }

    void faces() {
        groove_width();
        sheet_thickness();
        depth("post");
        tolerance("groove_width", "the tolerance of the grooves' width");
        tolerance("sheet_thickness", "the tolerance of the sheet's thickness");
    }

    void loading() {
        upright_play();
        end_play();
        groove_width();
        depth("top");
        depth("base");
        depth("post");
        words("/frame/loading", "the loading", Touches::look, c_.frame.loading,
              std::array{std::pair{"slide-in", Loading::slide_in},
                         std::pair{"beaded", Loading::beaded},
                         std::pair{"lift-and-drop", Loading::lift_and_drop}},
              [](Case& c, Loading loading) {
                  c.frame.loading.value = loading;
                  if (!c.frame.post.hold.given()) {
                      c.frame.post.hold.value =
                          loading == Loading::beaded ? Hold::rabbet : Hold::groove;
                  }
              });
        words("/frame/post/hold", "the posts' hold", Touches::look, c_.frame.post.hold,
              std::array{std::pair{"groove", Hold::groove}, std::pair{"rabbet", Hold::rabbet}},
              [](Case& c, Hold hold) { c.frame.post.hold.value = hold; });
        sheet_thickness();
    }

    void bend() {
        const PaneSpec* const pane = pane_;
        if (pane == nullptr) {
            return;
        }
        words(pane->pointer + "/bend", "the " + side() + " pane's bend", Touches::method, pane->bend,
              std::array{std::pair{"heat", Bend::heat}, std::pair{"cold", Bend::cold}},
              [side = pane->side](Case& c, Bend bend) { spec(c, side).bend.value = bend; });
        sheet_thickness();
        front_arc();
    }

    void heat() {
        constexpr double kReach = 40;  // K
        if (c_.oven && pane_ != nullptr && c_.sheets.at(pane_->sheet).like->forming) {
            const double proposed = c_.sheets.at(pane_->sheet).like->forming->set.value;
            const double now = c_.oven->set ? c_.oven->set->value : proposed;
            number({"/oven/set", "the oven's setting", Touches::size, Amount::temperature, 1,
                    now - kReach, now + kReach, {}, now});
        }
        number({"/oven/accuracy", "the oven's accuracy", Touches::demand,
                Amount::temperature_difference, 1, 0, kReach});
    }

    void oven() {
        trim();
        method();
        blank("width");
        blank("length");
        shrink_the_pane();
        for (const auto& [index, name] : {std::pair{0, "width"}, std::pair{1, "depth"}}) {
            larger("/oven/inside/" + std::to_string(index), "the oven's inside " + std::string(name));
        }
    }

    void stock() {
        trim();
        method();
        blank("width");
        blank("length");
        shrink_the_pane();
        for (const StockItem& item : c_.stock) {
            if (pane_ != nullptr && (item.material == pane_->sheet ||
                                     item.material == c_.sheets.at(pane_->sheet).like->name)) {
                larger(item.pointer + "/size/0", "the width of the sheet in stock");
                larger(item.pointer + "/size/1", "the length of the sheet in stock");
            }
        }
    }

    void radius() {
        groove_width();
        sawn();
        sheet_thickness();
        front_arc();
        tolerance("groove_width", "the tolerance of the grooves' width");
        tolerance("sheet_thickness", "the tolerance of the sheet's thickness");
        spread();
    }

    void load() {
        sheet_thickness();
        upright_play();
        end_play();
        depth("top");
        depth("post");
        look("/frame/clear_height", "the clear height");
        own_side();
        front_arc();
        number({"/service/push", "the push of a hand", Touches::demand, Amount::force, 1, 1,
                kMostPush});
    }

    void post_on_plate() {
        margin();
        post("width");
        post("depth");
        section();
    }

    void cutter() {
        number({"/cutter/diameter", "the cutter's diameter", Touches::size, Amount::length, kFine,
                kLeast, kMostCutter, inches_ ? kInchCutters : kMetricCutters});
        groove_width();
    }

    void timber_round_grooves() {
        depth("post");
        groove_width();
        margin();
        cutter();
        post("width");
        post("depth");
        section();
        number({"/webs/web", "the web asked for", Touches::demand, Amount::length, kFine, 0, kDeeper});
        number({"/webs/cheek", "the cheek asked for", Touches::demand, Amount::length, kFine, 0,
                kDeeper});
    }

    void floor() {
        depth(about_);
        share("/frame/" + about_ + "/thickness", "the " + about_ + "'s thickness", Touches::size,
              kBoardShare);
        tolerance("groove_depth", "the tolerance of the grooves' depth");
        number({"/webs/floor", "the floor asked for", Touches::demand, Amount::ratio, 1, 0, 1});
    }

    void skin() {
        constexpr double kMostSkin = 25;  // mm
        number({"/form/skin/thickness", "the skin's thickness", Touches::size, Amount::length, kFine,
                kLeast, kMostSkin, inches_ ? kInchSkins : kMetricSkins});
        front_arc();
    }

    void form_sweep() {
        constexpr double kMostOverrun = 500;  // mm
        number({"/form/overrun", "the form's overrun", Touches::size, Amount::length, 1, 0,
                kMostOverrun});
        front_arc();
    }

    // --- single settings ---

    void number(const NumberPlace& place) {
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

    void share(const std::string& pointer, const std::string& name, Touches touches, double share,
               double steps = kCoarse) {
        if (const auto now = number_at(c_, pointer)) {
            number({pointer, name, touches, Amount::length, steps, *now * (1 - share),
                    *now * (1 + share)});
        }
    }

    void look(const std::string& pointer, const std::string& name) {
        share(pointer, name, Touches::look, kLookShare);
    }

    // What a shop can't change but by buying another.
    void larger(const std::string& pointer, const std::string& name) {
        if (const auto now = number_at(c_, pointer)) {
            number({pointer, name, Touches::demand, Amount::length, 1, *now, *now * 3});
        }
    }

    void play(const std::string& key, const std::string& name) {
        const std::string pointer = "/fit/" + key;
        const auto now = number_at(c_, pointer);
        number({pointer, name, Touches::size, Amount::length, kFine, 0, now.value_or(0) + kDeeper});
    }

    void upright_play() {
        if (c_.frame.loading.value == Loading::lift_and_drop) {
            play("loading_clearance", "the loading clearance");
        } else {
            play("top_clearance", "the top clearance");
        }
        own("height", "height");
        blank("width");
    }

    void end_play() {
        play("end_clearance", "the end clearance");
        own("length", "length");
        blank("length");
    }

    void depth(const std::string& key) {
        const std::string pointer = "/frame/groove/depth/" + key;
        const auto now = number_at(c_, pointer);
        const std::string name =
            key == "post" ? "the depth of the post grooves" : "the depth of the " + key + " groove";
        number({pointer, name, Touches::size, Amount::length, kFine, kLeast,
                now.value_or(0) + kDeeper});
    }

    void groove_width() {
        number({"/frame/groove/width", "the width of the grooves", Touches::size, Amount::length,
                kFine, kLeast, c_.frame.groove.width.value + kDeeper});
    }

    void own(const std::string& key, const std::string& what) {
        if (pane_ != nullptr) {
            share(pane_->pointer + "/size/" + key, "the " + side() + " pane's own " + what,
                  Touches::size, kPaneShare, kFine);
        }
    }

    void blank(const std::string& key) {
        if (pane_ != nullptr) {
            share(pane_->pointer + "/blank/" + key, "the " + key + " of the " + side() + " blank",
                  Touches::size, kPaneShare, kFine);
        }
    }

    [[nodiscard]] bool own_height() const {
        return pane_ != nullptr && (pane_->height || pane_->blank.width);
    }
    [[nodiscard]] bool own_length() const {
        return pane_ != nullptr && (pane_->length || pane_->blank.length);
    }

    // The case's size along the pane's side.
    void own_side() {
        if (pane_ == nullptr) {
            return;
        }
        const bool across = pane_->side == CaseSide::front || pane_->side == CaseSide::back;
        look(across ? "/plan/width" : "/plan/depth", across ? "the plan's width" : "the plan's depth");
    }

    void shrink_the_pane() {
        look("/frame/clear_height", "the clear height");
        own_side();
    }

    void sheet_thickness() {
        constexpr double kMostSheet = 25.4;  // mm
        if (pane_ != nullptr) {
            number({pane_->pointer + "/thickness", "the " + side() + " sheet's thickness",
                    Touches::size, Amount::length, kFine, kLeast, kMostSheet,
                    inches_ ? kInchSheets : kMetricSheets});
        }
    }

    void front_arc() {
        if (!c_.plan.front || pane_ == nullptr || pane_->side != CaseSide::front) {
            return;
        }
        const auto& front = *c_.plan.front;
        const double now = front.value.value;
        const std::string& pointer = front.value.origin.pointer;
        const std::string name = "the front's " + pointer.substr(pointer.rfind('/') + 1);
        const bool angle = front.measure == ArcMeasure::sweep;
        number({pointer, name, Touches::look, angle ? Amount::angle : Amount::length, kCoarse,
                now * (1 - kLookShare), now * (1 + kLookShare)});
    }

    void margin() {
        const std::string plate = about_.substr(0, about_.find('/'));
        if (plate == "base" || plate == "top") {
            share("/frame/" + plate + "/margin", "the " + plate + "'s margin", Touches::look, 1);
        }
    }

    void post(const std::string& key) {
        share("/frame/post/" + key, "the posts' " + key, Touches::look, kBoardShare);
    }

    void section() {
        words("/frame/post/section", "the posts' section", Touches::look, c_.frame.post.section,
              std::array{std::pair{"fitted", PostSection::fitted},
                         std::pair{"square", PostSection::square},
                         std::pair{"round", PostSection::round}},
              [](Case& c, PostSection section) { c.frame.post.section.value = section; });
    }

    void sawn() {
        for (const auto& [key, plate] : {std::pair{"base", &Frame::base}, std::pair{"top", &Frame::top}}) {
            const std::string name(key);
            words("/frame/" + name + "/sawn", "how the " + name + " is sawn", Touches::method,
                  (c_.frame.*plate).sawn,
                  std::array{std::pair{"flat", Sawn::flat}, std::pair{"quarter", Sawn::quarter},
                             std::pair{"plywood", Sawn::plywood}},
                  [plate = plate](Case& c, Sawn sawn) { (c.frame.*plate).sawn.value = sawn; });
        }
    }

    void tolerance(const std::string& key, const std::string& name) {
        constexpr double kFiner = 20;  // steps of 0.05 mm
        const auto by_class = [&](const ToleranceSpec& spec) { return spec.by_class.has_value(); };
        const Tolerances& all = c_.tolerance;
        const bool length =
            key == "cut"            ? !by_class(all.cut.value)
            : key == "groove_depth" ? !by_class(all.groove_depth.value)
            : key == "groove_width" ? !by_class(all.groove_width.value)
            : key == "opening"      ? !by_class(all.opening.value)
                                    : all.sheet_thickness && !by_class(all.sheet_thickness->value);
        const std::string pointer = "/tolerance/" + key;
        if (const auto now = number_at(c_, pointer); now && length) {
            number({pointer, name, Touches::demand, Amount::length, kFiner, 0, *now});
        }
    }

    // Only of a sheet that the file describes: the library's own is not the maker's to change.
    void spread() {
        if (pane_ == nullptr) {
            return;
        }
        const SheetSpec& sheet = c_.sheets.at(pane_->sheet);
        for (const Sourced<double>* const ratio :
             {&sheet.spread_along, &sheet.spread_across, &sheet.springback_spread}) {
            if (ratio->given()) {
                number({ratio->origin.pointer, "the spread of " + sheet.key, Touches::demand,
                        Amount::ratio, kFine, 0, ratio->value});
            }
        }
    }

    void trim() {
        if (pane_ != nullptr && pane_->blank.trim.given()) {
            number({pane_->blank.trim.origin.pointer, "the trim of the " + side() + " blank",
                    Touches::size, Amount::length, kCoarse, 0.5, pane_->blank.trim.value});
        }
    }

    // How the blank is cut. A method written out as an object is replaced with its trim.
    void method() {
        if (pane_ == nullptr) {
            return;
        }
        const BlankSpec& blank = pane_->blank;
        const std::string word_at = blank.method.origin.pointer;
        const std::string pointer =
            word_at.ends_with("/method") ? word_at.substr(0, word_at.rfind('/')) : word_at;
        WordPlace place{pointer,        "how the " + side() + " blank is cut",
                        Touches::method, {},
                        std::string(method_text(blank.method.value)), {}};
        place.from = blank_json(blank);
        for (const BlankMethod to : {BlankMethod::trim_after, BlankMethod::allow_shrink}) {
            if (to != blank.method.value) {
                place.options.push_back({quoted(method_text(to)), std::string(method_text(to)),
                                         [to, word_at](Case& c) { put_method(c, word_at, to); }});
            }
        }
        list_.push_back(word_setting(file_, std::move(place)));
    }

    static void put_method(Case& c, const std::string& word_at, BlankMethod to) {
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

    [[nodiscard]] static std::string blank_json(const BlankSpec& blank) {
        if (blank.method.value != BlankMethod::as_cut || !blank.length || !blank.width) {
            return quoted(method_text(blank.method.value));
        }
        return "{ \"length\": \"" + rounded_text(blank.length->value, 2) + " mm\", \"width\": \"" +
               rounded_text(blank.width->value, 2) + " mm\" }";
    }

    template <class Enum, std::size_t n, class Put>
    void words(const std::string& pointer, const std::string& name, Touches touches,
               const Sourced<Enum>& now, const std::array<std::pair<const char*, Enum>, n>& all,
               Put put) {
        WordPlace place{pointer, name, touches, {}, {}, {}};
        for (const auto& [word, meaning] : all) {
            if (meaning == now.value) {
                place.from = quoted(word);
                place.shown = word;
            } else {
                place.options.push_back(
                    {quoted(word), word, [put, meaning = meaning](Case& c) { put(c, meaning); }});
            }
        }
        list_.push_back(word_setting(file_, std::move(place)));
    }

    static PaneSpec& spec(Case& c, CaseSide side) {
        const auto found = std::find_if(c.panes.begin(), c.panes.end(),
                                        [side](const PaneSpec& pane) { return pane.side == side; });
        BOWFRONT_EXPECTS(found != c.panes.end());
        return *found;
    }

    [[nodiscard]] std::string side() const { return std::string(side_text(pane_->side)); }

    static constexpr double kMostPush = 2000;   // N; the most that a case file may ask for
    static constexpr double kMostCutter = 25.4;  // mm

    const Case& c_;
    const CaseFile& file_;
    std::string about_;
    bool inches_;
    const PaneSpec* pane_ = nullptr;
    std::vector<Setting> list_;
};

}  // namespace

std::vector<Setting> settings_for(const Case& c, const Finding& finding, const CaseFile& file) {
    Settings settings(c, finding, file);
    settings.of(finding);
    return settings.take();
}

}  // namespace bowfront::study
