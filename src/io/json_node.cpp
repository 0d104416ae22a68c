#include "json_node.hpp"

namespace bowfront::io {

const JsonMember* JsonNode::find(std::string_view key) const noexcept {
    for (const JsonMember& member : members) {
        if (member.key == key) {
            return &member;
        }
    }
    return nullptr;
}

std::string_view kind_text(JsonNode::Kind kind) noexcept {
    switch (kind) {
        case JsonNode::Kind::null:
            return "null";
        case JsonNode::Kind::truth:
            return "true or false";
        case JsonNode::Kind::number:
            return "a number";
        case JsonNode::Kind::text:
            return "a text";
        case JsonNode::Kind::list:
            return "a list";
        case JsonNode::Kind::object:
            break;
    }
    return "an object";
}

std::string pointer_step(std::string_view pointer, std::string_view step) {
    std::string out(pointer);
    out += '/';
    for (const char c : step) {
        if (c == '~') {
            out += "~0";
        } else if (c == '/') {
            out += "~1";
        } else {
            out += c;
        }
    }
    return out;
}

std::string pointer_step(std::string_view pointer, std::size_t index) {
    return std::string(pointer) + '/' + std::to_string(index);
}

}  // namespace bowfront::io
