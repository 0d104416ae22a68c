#include "json_put.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "pointer_steps.hpp"

namespace bowfront::io {
namespace {

JsonNode* item_of(JsonNode& list, const std::string& step) {
    const auto index = index_of(step);
    return index && *index < list.items.size() ? &list.items[*index] : nullptr;
}

JsonNode& member_of(JsonNode& object, const std::string& step, std::string_view way) {
    for (JsonMember& member : object.members) {
        if (member.key == step) {
            return member.value;
        }
    }
    JsonNode made{JsonNode::Kind::object, object.place, {}, {}, {}};
    if (way == "/sheets") {
        const JsonNode like{JsonNode::Kind::text, object.place, step, {}, {}};
        made.members.push_back({"like", object.place, like});
    }
    return object.members.emplace_back(JsonMember{step, object.place, std::move(made)}).value;
}

}  // namespace

JsonNode* put(JsonNode& root, std::string_view pointer) {
    JsonNode* at = &root;
    std::size_t done = 0;
    while (at != nullptr && done < pointer.size()) {
        const std::string_view way = pointer.substr(0, done);
        const std::size_t end = std::min(pointer.find('/', done + 1), pointer.size());
        const std::string step = unescaped(pointer.substr(done + 1, end - done - 1));
        if (pointer[done] != '/') {
            return nullptr;
        }
        if (at->kind == JsonNode::Kind::list) {
            at = item_of(*at, step);
        } else if (at->kind == JsonNode::Kind::object) {
            at = &member_of(*at, step, way);
        } else {
            at = nullptr;
        }
        done = end;
    }
    return at;
}

}  // namespace bowfront::io
