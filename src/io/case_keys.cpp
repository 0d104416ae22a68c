#include "bowfront/io/case_keys.hpp"

#include <algorithm>
#include <array>

#include "bowfront/base/contract.hpp"

namespace bowfront::io {
namespace {

using Word = std::string_view;

constexpr std::array kCase = {Word{"$schema"}, Word{"bowfront"}, Word{"name"},      Word{"units"},
                              Word{"plan"},    Word{"frame"},    Word{"panes"},     Word{"blank"},
                              Word{"sheets"},  Word{"fit"},      Word{"tolerance"}, Word{"webs"},
                              Word{"form"},    Word{"oven"},     Word{"service"},   Word{"stock"},
                              Word{"cutter"}, Word{"shop"},     Word{"shelves"},  Word{"contents"},
                              Word{"stand"}, Word{"prices"}, Word{"access"}};
constexpr std::array kPlan = {Word{"shape"}, Word{"width"}, Word{"depth"}, Word{"front"},
                              Word{"ends"}, Word{"arcs"}, Word{"count"}, Word{"side"},
                              Word{"corners"}, Word{"sides"}, Word{"axis"}};
constexpr std::array kShapeArc = {Word{"radius"}, Word{"rise"}, Word{"sweep"}, Word{"length"},
                                  Word{"panes"}};
constexpr std::array kChainSide = {Word{"name"}, Word{"straight"}, Word{"arc"}, Word{"bow"},
                                   Word{"ellipse"}, Word{"curve"}, Word{"chord_error"},
                                   Word{"run"}, Word{"turn"}, Word{"panes"}, Word{"closing"}};
constexpr std::array kRunPiece = {Word{"straight"}, Word{"arc"}, Word{"bow"},
                                  Word{"ellipse"}, Word{"curve"}, Word{"chord_error"}};
constexpr std::array kEllipse = {Word{"semi_axes"}, Word{"from"}, Word{"to"}};
constexpr std::array kCurve = {Word{"through"}};
constexpr std::array kChainArc = {Word{"radius"}, Word{"rise"}, Word{"sweep"}, Word{"length"},
                                  Word{"chord"}};
constexpr std::array kFrame = {Word{"timber"}, Word{"clear_height"}, Word{"base"},    Word{"top"},
                               Word{"post"},   Word{"groove"},       Word{"loading"}, Word{"bead"}};
constexpr std::array kPlate = {Word{"thickness"},   Word{"margin"}, Word{"build"},
                               Word{"grain"},       Word{"sawn"},   Word{"inset"},
                               Word{"board_width"}, Word{"corner"}, Word{"run_out"},
                               Word{"segments"}};
constexpr std::array kPost = {Word{"width"}, Word{"depth"}, Word{"section"}, Word{"hold"},
                              Word{"sawn"},  Word{"joint"}, Word{"joint_size"}};
constexpr std::array kGroove = {Word{"width"}, Word{"depth"}};
constexpr std::array kGrooveDepth = {Word{"base"}, Word{"top"}, Word{"post"}};
constexpr std::array kWidth = {Word{"width"}};
constexpr std::array kPane = {Word{"side"}, Word{"sheet"}, Word{"thickness"}, Word{"along"},
                              Word{"bend"}, Word{"blank"}, Word{"size"}};
constexpr std::array kPaneBlank = {Word{"method"}, Word{"trim"}, Word{"length"}, Word{"width"}};
constexpr std::array kPaneSize = {Word{"length"}, Word{"height"}};
constexpr std::array kBlank = {Word{"method"}, Word{"trim"}};
constexpr std::array kSheet = {Word{"like"}, Word{"shrink"}, Word{"springback"}};
constexpr std::array kShrink = {Word{"along"}, Word{"across"}, Word{"spread"}};
constexpr std::array kDirections = {Word{"along"}, Word{"across"}};
constexpr std::array kSpringback = {Word{"radius"}, Word{"spread"}};
constexpr std::array kFit = {Word{"end_clearance"}, Word{"top_clearance"},
                             Word{"loading_clearance"}, Word{"least_engagement"}};
constexpr std::array kTolerance = {Word{"cut"}, Word{"groove_depth"}, Word{"groove_width"},
                                   Word{"opening"}, Word{"sheet_thickness"}};
constexpr std::array kWebs = {Word{"web"}, Word{"cheek"}, Word{"floor"}};
constexpr std::array kForm = {Word{"skin"}, Word{"cover"}, Word{"overrun"},        Word{"overhang"},
                              Word{"ribs"}, Word{"fence"}, Word{"joint_allowance"}};
constexpr std::array kThickness = {Word{"thickness"}};
constexpr std::array kRibs = {Word{"thickness"}, Word{"depth"}, Word{"max_spacing"}, Word{"foot"}};
constexpr std::array kFence = {Word{"depth"}, Word{"clearance"}};
constexpr std::array kOven = {Word{"inside"}, Word{"accuracy"}, Word{"set"}};
constexpr std::array kService = {Word{"built_at"}, Word{"temperature"}, Word{"humidity"},
                                 Word{"push"}};
constexpr std::array kBuiltAt = {Word{"temperature"}, Word{"humidity"}};
constexpr std::array kStock = {Word{"material"}, Word{"thickness"}, Word{"size"}, Word{"count"}};
constexpr std::array kShelf = {Word{"height"}, Word{"material"}, Word{"thickness"},
                               Word{"clearance"}, Word{"load"}, Word{"support"}};
constexpr std::array kCutter = {Word{"diameter"}, Word{"spacing"}};
constexpr std::array kShop = {Word{"step"}, Word{"allowance"}};
constexpr std::array kAllowance = {Word{"length"}, Word{"width"}, Word{"thickness"}};
constexpr std::array kContents = {Word{"mass"}, Word{"height"}, Word{"x"}, Word{"y"}};
constexpr std::array kAccess = {Word{"kind"},      Word{"side"},   Word{"held"},
                                Word{"peg"},       Word{"headroom"}, Word{"groove"},
                                Word{"clearance"}, Word{"lift_clearance"}, Word{"overlap"},
                                Word{"pull"},      Word{"hinge"},  Word{"pivot"},
                                Word{"pin"},       Word{"angle"}};
constexpr std::array kPeg = {Word{"diameter"}, Word{"length"}};
constexpr std::array kAccessGroove = {Word{"width"}, Word{"depth"}, Word{"web"}};
constexpr std::array kAccessDepth = {Word{"base"}, Word{"top"}};
constexpr std::array kStand = {Word{"fixed"}};
constexpr std::array kPrices = {Word{"currency"}, Word{"waste"}, Word{"materials"},
                                Word{"hardware"}};
constexpr std::array kMaterialPrice = {Word{"material"}, Word{"thickness"}, Word{"price"}};
constexpr std::array kHardware = {Word{"name"}, Word{"count"}, Word{"price"}};

constexpr std::array kTable = {
    ObjectKeys{"", kCase},
    ObjectKeys{"/plan", kPlan},
    ObjectKeys{"/plan/front", kShapeArc},
    ObjectKeys{"/plan/ends", kShapeArc},
    ObjectKeys{"/plan/sides/*", kChainSide},
    ObjectKeys{"/plan/sides/*/arc", kChainArc},
    ObjectKeys{"/plan/sides/*/ellipse", kEllipse},
    ObjectKeys{"/plan/sides/*/curve", kCurve},
    ObjectKeys{"/plan/sides/*/run/*", kRunPiece},
    ObjectKeys{"/plan/sides/*/run/*/arc", kChainArc},
    ObjectKeys{"/plan/sides/*/run/*/ellipse", kEllipse},
    ObjectKeys{"/plan/sides/*/run/*/curve", kCurve},
    ObjectKeys{"/frame", kFrame},
    ObjectKeys{"/frame/base", kPlate},
    ObjectKeys{"/frame/top", kPlate},
    ObjectKeys{"/frame/post", kPost},
    ObjectKeys{"/frame/groove", kGroove},
    ObjectKeys{"/frame/groove/depth", kGrooveDepth},
    ObjectKeys{"/frame/bead", kWidth},
    ObjectKeys{"/panes/*", kPane},
    ObjectKeys{"/panes/*/blank", kPaneBlank},
    ObjectKeys{"/panes/*/size", kPaneSize},
    ObjectKeys{"/blank", kBlank},
    ObjectKeys{"/sheets/*", kSheet},
    ObjectKeys{"/sheets/*/shrink", kShrink},
    ObjectKeys{"/sheets/*/shrink/spread", kDirections},
    ObjectKeys{"/sheets/*/springback", kSpringback},
    ObjectKeys{"/shelves/*", kShelf},
    ObjectKeys{"/fit", kFit},
    ObjectKeys{"/tolerance", kTolerance},
    ObjectKeys{"/webs", kWebs},
    ObjectKeys{"/form", kForm},
    ObjectKeys{"/form/skin", kThickness},
    ObjectKeys{"/form/cover", kThickness},
    ObjectKeys{"/form/ribs", kRibs},
    ObjectKeys{"/form/fence", kFence},
    ObjectKeys{"/oven", kOven},
    ObjectKeys{"/service", kService},
    ObjectKeys{"/service/built_at", kBuiltAt},
    ObjectKeys{"/stock/*", kStock},
    ObjectKeys{"/cutter", kCutter},
    ObjectKeys{"/shop", kShop},
    ObjectKeys{"/contents", kContents},
    ObjectKeys{"/access", kAccess},
    ObjectKeys{"/access/peg", kPeg},
    ObjectKeys{"/access/groove", kAccessGroove},
    ObjectKeys{"/access/groove/depth", kAccessDepth},
    ObjectKeys{"/stand", kStand},
    ObjectKeys{"/prices", kPrices},
    ObjectKeys{"/prices/materials/*", kMaterialPrice},
    ObjectKeys{"/prices/hardware/*", kHardware},
    ObjectKeys{"/shop/allowance", kAllowance},
};

}  // namespace

std::span<const ObjectKeys> case_keys() noexcept {
    return kTable;
}

std::span<const std::string_view> keys_of(std::span<const ObjectKeys> table,
                                          std::string_view object) {
    const auto row = std::find_if(table.begin(), table.end(), [object](const ObjectKeys& keys) {
        return keys.object == object;
    });
    BOWFRONT_EXPECTS(row != table.end());
    return row->keys;
}

std::span<const std::string_view> keys_of(std::string_view object) {
    return keys_of(kTable, object);
}

}  // namespace bowfront::io
