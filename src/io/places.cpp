#include "bowfront/io/places.hpp"

#include <string>
#include <utility>

#include "json_node.hpp"
#include "pointer_steps.hpp"

namespace bowfront::io {
namespace {

// Where a walk along a pointer ended.
struct Walk {
    const JsonNode* node = nullptr;      // the last value on the way
    const JsonMember* member = nullptr;  // the member that holds it, where an object does
    bool arrived = false;
};

Walk walk(const JsonNode& root, std::string_view pointer) {
    Walk at{&root, nullptr, false};
    while (!pointer.empty()) {
        if (pointer.front() != '/') {
            return at;
        }
        pointer.remove_prefix(1);
        const std::string_view step = pointer.substr(0, pointer.find('/'));
        pointer.remove_prefix(step.size());
        if (at.node->kind == JsonNode::Kind::list) {
            const auto index = index_of(step);
            if (!index || *index >= at.node->items.size()) {
                return at;
            }
            at = {&at.node->items[*index], nullptr, false};
        } else {
            const JsonMember* const member = at.node->find(unescaped(step));
            if (member == nullptr) {
                return at;
            }
            at = {&member->value, member, false};
        }
    }
    at.arrived = true;
    return at;
}

}  // namespace

Places::Places(std::shared_ptr<const JsonNode> root) noexcept : root_(std::move(root)) {}

bool Places::holds(std::string_view pointer) const {
    return root_ != nullptr && walk(*root_, pointer).arrived;
}

Place Places::of_value(std::string_view pointer) const {
    return root_ != nullptr ? walk(*root_, pointer).node->place : Place{};
}

Place Places::of_key(std::string_view pointer) const {
    if (root_ == nullptr) {
        return {};
    }
    const Walk found = walk(*root_, pointer);
    return found.arrived && found.member != nullptr ? found.member->place : found.node->place;
}

}  // namespace bowfront::io
