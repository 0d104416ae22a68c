#include "bowfront/io/varied_case.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"
#include "bowfront/io/nearest.hpp"
#include "bowfront/model/values.hpp"
#include "case_parts.hpp"
#include "contradictions.hpp"
#include "json_put.hpp"
#include "json_read.hpp"
#include "object_reader.hpp"

namespace bowfront::io {
namespace {

// How a varied number is written and read.
struct Numeral {
    bool bare = true;  // as a JSON number
    std::string unit;
    NumberIn in;

    [[nodiscard]] JsonNode node(const std::string& number, Place place) const {
        return bare ? JsonNode{JsonNode::Kind::number, place, number, {}, {}}
                    : JsonNode{JsonNode::Kind::text, place, number + " " + unit, {}, {}};
    }
};

// What stands behind the last digit of a quantity.
std::string unit_of(const std::string& text) {
    const std::size_t digit = text.find_last_of("0123456789");
    if (digit == std::string::npos) {
        return {};
    }
    const std::size_t first = text.find_first_not_of(' ', digit + 1);
    return first == std::string::npos ? std::string() : text.substr(first);
}

std::string words_of(const Faults& faults) {
    const Diagnostic first = faults.in_file_order().front();
    return first.found + "; " + first.wanted;
}

[[noreturn]] void refuse(const std::string& pointer, std::string found, std::string wanted) {
    throw InputError({{Code::input_value, {}, 0, 0, pointer, "--vary: " + std::move(found),
                       std::move(wanted)}});
}

std::vector<double> values_of(const Case& c) {
    std::vector<double> values;
    visit_values(c, [&](double value, const Origin&) { values.push_back(value); });
    return values;
}

std::vector<std::string> pointers_of(const Case& c) {
    std::vector<std::string> pointers;
    visit_values(c, [&](double, const Origin& origin) { pointers.push_back(origin.pointer); });
    return pointers;
}

}  // namespace

struct VariedCase::Impl {
    std::string file_name;
    std::vector<Varied> varied;
    std::vector<Numeral> numerals;
    std::vector<std::vector<std::size_t>> places;
    JsonNode tree;
    Case base;

    // The case of a tree, and how the number at a pointer of it is read.
    Case read(const JsonNode& root, Faults& faults, const std::string& pointer, NumberIn* in) const {
        Reading reading(faults);
        reading.set_sheet_keys(Reading::SheetKeys::of_library_too);
        reading.watch(pointer);
        ObjectReader file(reading, root);
        Case whole = read_sections(file);
        if (in != nullptr) {
            *in = reading.watched();
        }
        return whole;
    }

    Case read_sound(const JsonNode& root, const std::string& pointer) const {
        Faults faults(file_name);
        Case whole = read(root, faults, pointer, nullptr);
        if (!faults.empty()) {
            throw InputError(faults.in_file_order());
        }
        return whole;
    }

    [[nodiscard]] VariedValue value(std::size_t which, std::size_t number) const {
        Faults faults(file_name);
        Reading reading(faults);
        reading.set_unit(base.units);
        const JsonNode node = numerals[which].node(varied[which].number(number), {});
        const auto value = numerals[which].in(reading, {&node, varied[which].pointer});
        return value ? VariedValue{*value, {}} : VariedValue{0, words_of(faults)};
    }

    // The first of the values, from one on, that can stand in the file and is not `other`.
    [[nodiscard]] std::optional<std::size_t> allowed(std::size_t which, std::size_t from,
                                                     std::optional<double> other) const {
        for (std::size_t i = from; i < varied[which].count; ++i) {
            const VariedValue taken = value(which, i);
            if (taken.fault.empty() && taken.value != other) {
                return i;
            }
        }
        return std::nullopt;
    }

    [[noreturn]] void refuse_pointer(const std::string& pointer) const {
        const std::vector<std::string> known = pointers_of(base);
        const std::vector<std::string_view> words(known.begin(), known.end());
        const std::string near = nearest(pointer, words);
        refuse(pointer, "no number of the case stands there that can be varied",
               near.empty() ? "the JSON pointer of a number, such as /frame/clear_height; stock and "
                              "words can't be varied"
                            : "did you mean " + near + "?");
    }

    // How the number of a varied place is written and read; the tree gets a first value there.
    void settle(std::size_t which) {
        const std::string& pointer = varied[which].pointer;
        JsonNode probe = tree;
        JsonNode* const place = put(probe, pointer);
        if (place == nullptr) {
            refuse_pointer(pointer);
        }
        Numeral numeral;
        numeral.unit = varied[which].unit;
        if (numeral.unit.empty() && place->kind == JsonNode::Kind::text) {
            numeral.unit = unit_of(place->text);
        }
        numeral.bare = numeral.unit.empty();
        const Place where = place->place;
        *place = numeral.node(varied[which].number(0), where);
        Faults faults(file_name);
        (void)read(probe, faults, pointer, &numeral.in);
        if (!numeral.in) {
            refuse_pointer(pointer);
        }
        numerals.push_back(numeral);
        const auto first = allowed(which, 0, std::nullopt);
        if (!first) {
            refuse(pointer, "none of its numbers can stand there", value(which, 0).fault);
        }
        *place = numeral.node(varied[which].number(*first), where);
        tree = std::move(probe);
        base = read_sound(tree, pointer);
    }

    // Which values of the case change with a varied one: found by changing it.
    void find_places(std::size_t which) {
        const std::string& pointer = varied[which].pointer;
        std::vector<std::size_t>& found = places.emplace_back();
        const std::vector<double> before = values_of(base);
        const std::vector<std::string> pointers = pointers_of(base);
        for (std::size_t i = 0; i < pointers.size(); ++i) {
            if (pointers[i] == pointer) {
                found.push_back(i);
            }
        }
        if (found.empty()) {
            refuse_pointer(pointer);
        }
        const auto other = allowed(which, 0, before[found.front()]);
        if (!other) {
            return;  // one value only: it is in the base already
        }
        JsonNode changed = tree;
        JsonNode* const place = put(changed, pointer);
        *place = numerals[which].node(varied[which].number(*other), place->place);
        Faults faults(file_name);
        const std::vector<double> after = values_of(read(changed, faults, pointer, nullptr));
        BOWFRONT_EXPECTS(after.size() == before.size());
        const double value = after[found.front()];
        for (std::size_t i = 0; i < after.size(); ++i) {
            if (after[i] != before[i] && pointers[i] != pointer) {
                BOWFRONT_EXPECTS(after[i] == value);
                found.push_back(i);
            }
        }
    }
};

VariedCase::VariedCase(std::string_view text, const std::string& file_name,
                       std::vector<Varied> varied)
    : impl_(std::make_unique<Impl>()) {
    impl_->file_name = file_name;
    impl_->varied = std::move(varied);
    Faults faults(file_name);
    const auto root = read_json(text, faults);
    if (root == nullptr || !faults.empty()) {
        throw InputError(faults.in_file_order());
    }
    impl_->tree = *root;
    impl_->base = impl_->read_sound(*root, {});
    for (std::size_t i = 0; i < impl_->varied.size(); ++i) {
        BOWFRONT_EXPECTS(impl_->varied[i].count >= 1);
        impl_->settle(i);
    }
    for (std::size_t i = 0; i < impl_->varied.size(); ++i) {
        impl_->find_places(i);
    }
}

VariedCase::VariedCase(VariedCase&&) noexcept = default;
VariedCase& VariedCase::operator=(VariedCase&&) noexcept = default;
VariedCase::~VariedCase() = default;

const Case& VariedCase::base() const noexcept {
    return impl_->base;
}

const std::vector<std::size_t>& VariedCase::places(std::size_t varied) const {
    return impl_->places.at(varied);
}

VariedValue VariedCase::value(std::size_t varied, std::size_t number) const {
    return impl_->value(varied, number);
}

std::string VariedCase::contradiction(const Case& c) {
    Faults faults({});
    Reading reading(faults);
    reading.set_unit(c.units);
    find_contradictions(c, Places(), reading);
    return faults.empty() ? std::string() : words_of(faults);
}

}  // namespace bowfront::io
