#include "object_reader.hpp"

#include <algorithm>

#include "bowfront/base/quoted_text.hpp"
#include "bowfront/io/case_keys.hpp"
#include "bowfront/io/nearest.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

bool holds(std::span<const std::string_view> words, std::string_view word) noexcept {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// The object of a file that a key belongs to, where it is exactly one.
std::optional<std::string_view> only_home_of(std::span<const ObjectKeys> table,
                                              std::string_view key) {
    std::optional<std::string_view> home;
    for (const ObjectKeys& row : table) {
        if (holds(row.keys, key)) {
            if (home) {
                return std::nullopt;
            }
            home = row.object;
        }
    }
    return home;
}

}  // namespace

ObjectReader::ObjectReader(Reading& reading, const JsonNode& root)
    : ObjectReader(reading, &root, {}, {}) {}

ObjectReader::ObjectReader(Reading& reading, const JsonNode* node, std::string pointer,
                           std::string pattern)
    : reading_(&reading), node_(node), pointer_(std::move(pointer)), pattern_(std::move(pattern)) {
    if (node_ != nullptr && node_->kind != JsonNode::Kind::object) {
        reading_->refuse_type(value(), "an object with " + listed(keys_of(reading_->keys(), pattern_)));
        node_ = nullptr;
        silent_ = true;
    }
}

ObjectReader ObjectReader::silent(std::string_view key) const {
    ObjectReader child(*reading_, nullptr, pointer_of(key), pointer_step(pattern_, key));
    child.silent_ = true;
    return child;
}

ObjectReader ObjectReader::object(std::string_view key) {
    const auto value = take(key);
    if (silent_) {
        return silent(key);
    }
    return value ? object_of(*value, key) : left_out(key);
}

ObjectReader ObjectReader::left_out(std::string_view key) const {
    return {*reading_, nullptr, pointer_of(key), pointer_step(pattern_, key)};
}

ObjectReader ObjectReader::needed_object(std::string_view key) {
    const auto value = take_needed(key);
    return value ? object_of(*value, key) : silent(key);
}

ObjectReader ObjectReader::item(const Value& value, std::string_view list_key) const {
    return {*reading_, value.node, value.pointer,
            pointer_step(pointer_step(pattern_, list_key), "*")};
}

ObjectReader ObjectReader::object_of(const Value& value, std::string_view key) const {
    return {*reading_, value.node, value.pointer, pointer_step(pattern_, key)};
}

std::optional<Value> ObjectReader::take(std::string_view key) {
    asked_.push_back(key);
    const JsonMember* const member = node_ != nullptr ? node_->find(key) : nullptr;
    return member != nullptr ? std::optional(Value{&member->value, pointer_of(key)}) : std::nullopt;
}

std::optional<Value> ObjectReader::take_needed(std::string_view key) {
    auto value = take(key);
    if (!value && !silent_) {
        // An object that is left out altogether is missed where it would stand: in the whole file.
        const Place place = node_ != nullptr ? node_->place : Place{1, 1};
        reading_->faults().add(Code::input_missing_key, place, pointer_of(key),
                               quoted_text(key) + " is missing", "it has no default");
    }
    return value;
}

Origin ObjectReader::assume(std::string_view key, const Default& row, Use use) {
    if (use == Use::used && !silent_) {
        reading_->assume(pointer_of(key), std::string(row.value), std::string(row.why));
    }
    return {Origin::Kind::assumed, pointer_of(key), 0, std::string(row.why)};
}

Origin ObjectReader::assume_rule(std::string_view key, Use use) {
    const Default& row = default_of(pointer_step(pattern_, key));
    BOWFRONT_EXPECTS(row.kind == Default::Kind::rule);
    return assume(key, row, use);
}

std::vector<Value> ObjectReader::items(std::string_view key) {
    const auto list = take(key);
    if (!list) {
        return {};
    }
    if (list->node->kind != JsonNode::Kind::list) {
        reading_->refuse_type(*list, "a list in square brackets");
        return {};
    }
    std::vector<Value> all;
    for (std::size_t i = 0; i < list->node->items.size(); ++i) {
        all.push_back({&list->node->items[i], pointer_step(list->pointer, i)});
    }
    return all;
}

std::vector<Value> ObjectReader::items_of(const Value& list, std::size_t count,
                                          std::string_view what) {
    const bool is_list = list.node->kind == JsonNode::Kind::list;
    if (!is_list) {
        reading_->refuse_type(list, what);
        return {};
    }
    if (list.node->items.size() != count) {
        reading_->refuse(list, Code::input_type,
                         "a list of " + std::to_string(list.node->items.size()) + " stands here",
                         std::string(what));
        return {};
    }
    std::vector<Value> all;
    for (std::size_t i = 0; i < count; ++i) {
        all.push_back({&list.node->items[i], pointer_step(list.pointer, i)});
    }
    return all;
}

void ObjectReader::refuse_key(const JsonMember& member) {
    if (reading_->faults().full()) {
        reading_->faults().add(Code::input_unknown_key, member.place, {}, {}, {});
        return;
    }
    const auto known = keys_of(reading_->keys(), pattern_);
    const std::string meant = nearest(member.key, known);
    std::string wanted = "one of " + listed(known);
    if (!meant.empty()) {
        wanted = "did you mean " + quoted_text(meant) + "?";
    } else if (const auto home = only_home_of(reading_->keys(), member.key)) {
        wanted = quoted_text(member.key) + " stands in " +
                 (home->empty() ? "the outermost object" : std::string(*home));
    }
    reading_->faults().add(Code::input_unknown_key, member.place, pointer_of(member.key),
                           "the key " + quoted_text(member.key) + " is not known here", wanted);
}

void ObjectReader::finish() {
    const auto known = keys_of(reading_->keys(), pattern_);
    for (const std::string_view key : known) {
        BOWFRONT_EXPECTS(holds(asked_, key));
    }
    if (node_ == nullptr) {
        return;
    }
    for (const JsonMember& member : node_->members) {
        if (!holds(known, member.key)) {
            refuse_key(member);
        }
    }
}

}  // namespace bowfront::io
