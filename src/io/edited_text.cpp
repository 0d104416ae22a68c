#include "bowfront/io/edited_text.hpp"

#include <nlohmann/json.hpp>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "bowfront/base/contract.hpp"
#include "json_tokens.hpp"
#include "pointer_steps.hpp"

namespace bowfront::io {

// One value of the text with the place that it takes there.
struct EditedText::Node {
    struct Member;
    enum class Kind { leaf, list, object } kind = Kind::leaf;
    std::size_t begin = 0;
    std::size_t end = 0;  // after the last byte
    std::vector<Node> items;
    std::vector<Member> members;

    [[nodiscard]] const Node* child(const std::string& step) const;
};

struct EditedText::Node::Member {
    std::string key;
    std::size_t begin = 0;  // of the key
    Node value;
};

const EditedText::Node* EditedText::Node::child(const std::string& step) const {
    if (kind == Kind::list) {
        const auto index = index_of(step);
        return index && *index < items.size() ? &items[*index] : nullptr;
    }
    for (const Member& member : members) {
        if (member.key == step) {
            return &member.value;
        }
    }
    return nullptr;
}

namespace {

constexpr std::string_view kBlank = " \t\r\n";

// The tree of a text that is known to be right.
template <class Node>
class Walk {
  public:
    Walk(std::string_view text, std::size_t from) : tokens_(text.substr(from)), from_(from) {}

    Node whole() { return value(tokens_.next()); }

  private:
    static bool is(const JsonToken& token, std::string_view mark) {
        return token.kind == JsonToken::Kind::mark && token.spelling == mark;
    }

    Node value(const JsonToken& first) {
        Node node;
        node.begin = from_ + first.begin;
        node.end = node.begin + first.spelling.size();
        if (is(first, "{")) {
            node.kind = Node::Kind::object;
            node.end = held_to("}", [&](const JsonToken& key) {
                BOWFRONT_EXPECTS(is(tokens_.next(), ":"));
                node.members.push_back({nlohmann::json::parse(key.spelling).get<std::string>(),
                                        from_ + key.begin, value(tokens_.next())});
            });
        } else if (is(first, "[")) {
            node.kind = Node::Kind::list;
            node.end = held_to("]", [&](const JsonToken& item) {
                node.items.push_back(value(item));
            });
        } else {
            BOWFRONT_EXPECTS(first.kind == JsonToken::Kind::text ||
                             first.kind == JsonToken::Kind::word);
        }
        return node;
    }

    // Everything up to a closing mark; its end.
    template <class Take>
    std::size_t held_to(std::string_view close, Take take) {
        for (JsonToken token = tokens_.next();; token = tokens_.next()) {
            if (is(token, close)) {
                return from_ + token.begin + 1;
            }
            BOWFRONT_EXPECTS(token.kind != JsonToken::Kind::end &&
                             token.kind != JsonToken::Kind::unclosed);
            if (!is(token, ",")) {
                take(token);
            }
        }
    }

    JsonTokens tokens_;
    std::size_t from_;
};

// The steps of a pointer, unescaped.
std::vector<std::string> steps_of(std::string_view pointer) {
    std::vector<std::string> steps;
    while (!pointer.empty()) {
        BOWFRONT_EXPECTS(pointer.front() == '/');
        pointer.remove_prefix(1);
        const std::string_view step = pointer.substr(0, pointer.find('/'));
        steps.push_back(unescaped(step));
        pointer.remove_prefix(step.size());
    }
    return steps;
}

// What stands before a key on its line, where that is white space only; else nothing.
std::optional<std::string> indentation(std::string_view text, std::size_t key) {
    const std::size_t newline = text.rfind('\n', key);
    const std::size_t line = newline == std::string_view::npos ? 0 : newline + 1;
    const std::string_view before = text.substr(line, key - line);
    const bool blank = newline != std::string_view::npos &&
                       before.find_first_not_of(kBlank) == std::string_view::npos;
    return blank ? std::optional(std::string(before)) : std::nullopt;
}

// Begin of the line on which a closing brace stands alone; nothing where it does not.
std::optional<std::size_t> own_line(std::string_view text, std::size_t brace) {
    const std::size_t last = text.find_last_not_of(" \t", brace - 1);
    return last != std::string_view::npos && text[last] == '\n' ? std::optional(last + 1)
                                                                : std::nullopt;
}

std::string_view line_end(std::string_view text, std::size_t line) {
    return line >= 2 && text[line - 2] == '\r' ? "\r\n" : "\n";
}

}  // namespace

EditedText::EditedText(std::string text) : text_(std::move(text)) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    const std::size_t from = text_.starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0;
    root_ = std::make_unique<Node>(Walk<Node>(text_, from).whole());
}

EditedText::EditedText(EditedText&&) noexcept = default;
EditedText& EditedText::operator=(EditedText&&) noexcept = default;
EditedText::~EditedText() = default;

std::string EditedText::spelling(const std::string& pointer) const {
    const Node* at = root_.get();
    for (const std::string& step : steps_of(pointer)) {
        at = at->child(step);
        if (at == nullptr) {
            return {};
        }
    }
    return text_.substr(at->begin, at->end - at->begin);
}

void EditedText::put(const std::string& pointer, const std::string& value) {
    const std::vector<std::string> steps = steps_of(pointer);
    const Node* at = root_.get();
    std::size_t done = 0;
    while (done < steps.size()) {
        const Node* const next = at->child(steps[done]);
        if (next == nullptr) {
            break;
        }
        at = next;
        ++done;
    }
    if (done == steps.size()) {
        text_.replace(at->begin, at->end - at->begin, value);
        *this = EditedText(std::move(text_));
        return;
    }
    BOWFRONT_EXPECTS(at->kind == Node::Kind::object);
    std::string made = value;
    for (std::size_t i = steps.size(); i-- > done;) {
        made = nlohmann::json(steps[i]).dump() + ": " + made;
        made = i > done ? "{ " + made + " }" : made;
    }
    const std::size_t brace = at->end - 1;
    if (at->members.empty()) {
        text_.insert(at->begin + 1, " " + made + " ");
        *this = EditedText(std::move(text_));
        return;
    }
    const std::size_t after = at->members.back().value.end;
    const auto indent = indentation(text_, at->members.back().begin);
    const auto line = own_line(text_, brace);
    if (indent && line) {
        // On a line of its own; comments behind the last value stay there.
        text_.insert(*line, *indent + made + std::string(line_end(text_, *line)));
        text_.insert(after, ",");
    } else {
        text_.insert(after, ", " + made);
    }
    *this = EditedText(std::move(text_));
}

}  // namespace bowfront::io
