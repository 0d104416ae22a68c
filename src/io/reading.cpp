#include "reading.hpp"

#include <algorithm>

#include "bowfront/units/length_text.hpp"

namespace bowfront::io {

std::string Reading::length_text(double millimetres) const {
    return unit_ == LengthUnit::inch ? inch_text(millimetres) : millimetre_text(millimetres);
}

void Reading::refuse(const Value& value, Code code, std::string found, std::string wanted) {
    faults_.add(code, value.node->place, value.pointer, std::move(found), std::move(wanted));
}

void Reading::refuse_type(const Value& value, std::string_view wanted) {
    refuse(value, Code::input_type, std::string(kind_text(value.node->kind)) + " stands here",
           std::string(wanted));
}

void Reading::assume(std::string pointer, std::string value, std::string why) {
    assumed_.push_back({std::move(pointer), std::move(value), std::move(why)});
}

void Reading::list_used(const Origin& origin, std::string value) {
    const bool listed =
        std::any_of(assumed_.begin(), assumed_.end(),
                    [&origin](const Assumption& entry) { return entry.pointer == origin.pointer; });
    if (origin.kind == Origin::Kind::given || listed) {
        return;
    }
    const bool library = origin.kind == Origin::Kind::library;
    assume(origin.pointer, std::move(value),
           library ? "not measured: " + origin.source : origin.source);
}

Origin given_at(const Value& value) {
    return {Origin::Kind::given, value.pointer, value.node->place.line, {}};
}

}  // namespace bowfront::io
