#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

const WordOf<ShelfSupport, 2> kSupport{
    "what a shelf lies on", {{{"pins", ShelfSupport::pins}, {"rails", ShelfSupport::rails}}}};
// More than a case of the largest height could hold.
constexpr std::size_t kMostShelves = 100;
// Far beyond what any shelf of a case bears: a slip of the unit.
constexpr Range kLoad{0, 1000};

bool bears(const Board& board) noexcept {
    return board.modulus && board.bending_strength;
}
bool bears(const Timber& timber) noexcept {
    return timber.modulus && timber.modulus_of_rupture && timber.specific_gravity &&
           timber.tangential_coefficient;
}

// Every material that a shelf can be made of: the file's own sheets, then the libraries.
std::vector<std::string_view> material_names(const Case& whole) {
    std::vector<std::string_view> names = sheet_names(whole);
    for (const Board& board : boards()) {
        if (bears(board)) {
            names.push_back(board.name);
        }
    }
    for (const Timber& timber : timbers()) {
        if (bears(timber)) {
            names.push_back(timber.name);
        }
    }
    return names;
}

void read_material(ObjectReader& shelf, const Case& whole, ShelfSpec& spec) {
    const auto value = shelf.take_needed("material");
    const auto name = value ? shelf.read(*value, TextLine{"a material"}) : std::nullopt;
    if (!name) {
        return;
    }
    spec.material = *name;
    if (const auto own = whole.sheets.find(**name); own != whole.sheets.end()) {
        spec.sheet = own->second.like;
        return;
    }
    const std::vector<std::string_view> names = material_names(whole);
    if (!std::ranges::count(names, std::string_view(**name))) {
        // A sheet of the case's own whose key or entry is wrong has its fault already.
        if (!shelf.reading().faults().touch(pointer_step("/sheets", **name))) {
            (void)word_index(shelf.reading(), *value, "a sheet, a timber or plywood", names);
        }
        return;
    }
    spec.sheet = find_sheet(**name);
    spec.board = spec.sheet == nullptr ? find_board(**name) : nullptr;
    spec.timber = spec.sheet == nullptr && spec.board == nullptr ? find_timber(**name) : nullptr;
}

ShelfSpec read_shelf(ObjectReader shelf, const Case& whole) {
    ShelfSpec spec;
    spec.pointer = shelf.pointer();
    spec.height = shelf.needed("height", LengthIn{kPositive});
    read_material(shelf, whole, spec);
    spec.thickness = shelf.needed("thickness", LengthIn{kPositive});
    spec.clearance = shelf.or_default("clearance", LengthIn{kNotNegative});
    spec.load = shelf.needed("load", MassIn{kLoad});
    spec.support = shelf.or_default("support", kSupport);
    shelf.finish();
    return spec;
}

}  // namespace

std::vector<ShelfSpec> read_shelves(ObjectReader& file, const Case& whole) {
    std::vector<ShelfSpec> shelves;
    const std::vector<Value> list = file.items("shelves");
    if (list.size() > kMostShelves) {
        file.reading().refuse(*file.take("shelves"), Code::input_limit,
                              "the case has " + std::to_string(list.size()) + " shelves",
                              "at most " + std::to_string(kMostShelves));
        return shelves;
    }
    for (const Value& value : list) {
        shelves.push_back(read_shelf(file.item(value, "shelves"), whole));
    }
    return shelves;
}

}  // namespace bowfront::io
