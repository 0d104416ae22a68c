#include "json_read.hpp"

#include <cstdint>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "bowfront/base/quoted_text.hpp"
#include "bowfront/io/read_case.hpp"
#include "json_tokens.hpp"
#include "plain_text.hpp"
#include "syntax.hpp"

namespace bowfront::io {
namespace {

// Receives the library's events, which come in the order of the text, and takes the place of each
// from our own walk along it. A number is kept as it is spelt: the library would read it by the
// rules of the locale.
class TreeBuilder {
  public:
    using Json = nlohmann::json;

    TreeBuilder(std::string_view text, Faults& faults)
        : text_(text), tokens_(text), faults_(faults), root_(std::make_shared<JsonNode>()) {}

    bool null() { return leaf(JsonNode::Kind::null); }
    bool boolean(bool /*value*/) { return spelt_leaf(JsonNode::Kind::truth); }
    bool number_integer(Json::number_integer_t /*value*/) {
        return spelt_leaf(JsonNode::Kind::number);
    }
    bool number_unsigned(Json::number_unsigned_t /*value*/) {
        return spelt_leaf(JsonNode::Kind::number);
    }
    bool number_float(Json::number_float_t /*value*/, const std::string& /*spelling*/) {
        return spelt_leaf(JsonNode::Kind::number);
    }
    bool string(std::string& value) {
        if (!leaf(JsonNode::Kind::text)) {
            return false;
        }
        newest_->text = std::move(value);
        return true;
    }
    bool binary(Json::binary_t& /*value*/) { return false; }  // no such thing in a text

    bool start_object(std::size_t /*count*/) { return open(JsonNode::Kind::object); }
    bool start_array(std::size_t /*count*/) { return open(JsonNode::Kind::list); }
    bool end_array() {
        open_.pop_back();
        return true;
    }
    bool end_object() {
        std::size_t index = 0;
        std::erase_if(open_.back().node->members, [this, &index](const JsonMember& /*member*/) {
            return open_.back().repeated.count(index++) != 0;
        });
        open_.pop_back();
        return true;
    }

    bool key(std::string& value) {
        const JsonToken token = tokens_.next_value();
        Open& object = open_.back();
        const auto [first, is_new] = object.keys.emplace(value, token.place);
        if (!is_new) {
            object.repeated.insert(object.node->members.size());
            faults_.add(
                Code::input_duplicate_key, token.place, pointer_step(pointer(), value),
                "the key " + quoted_text(value) + " stands a second time",
                "once in an object; the first is on line " + std::to_string(first->second.line));
        }
        object.node->members.push_back({std::move(value), token.place, {}});
        return true;
    }

    bool parse_error(std::size_t position, const std::string& /*token*/,
                     const nlohmann::detail::exception& /*sentence*/) {
        const std::size_t offset = position == 0 ? 0 : position - 1;
        const auto fault = find_syntax_fault(text_);
        const SyntaxFault told = fault ? *fault : number_too_large(text_, offset);
        faults_.add(fault ? Code::input_syntax : Code::input_limit, told.place, {}, told.found,
                    told.wanted);
        return false;
    }

    [[nodiscard]] std::shared_ptr<const JsonNode> tree() const noexcept { return root_; }

  private:
    // A list or object whose end has not come yet.
    struct Open {
        JsonNode* node;
        std::map<std::string, Place> keys;
        std::set<std::size_t> repeated;  // indices of members whose key was there before
    };

    bool spelt_leaf(JsonNode::Kind kind) {
        if (!leaf(kind)) {
            return false;
        }
        newest_->text = newest_spelling_;
        return true;
    }

    bool leaf(JsonNode::Kind kind) {
        const JsonToken token = tokens_.next_value();
        if (++count_ > kMostValues) {
            faults_.add(Code::input_limit, token.place, {},
                        "the file holds more than " + std::to_string(kMostValues) + " values",
                        "at most that many");
            return false;
        }
        newest_ = &slot();
        newest_->kind = kind;
        newest_->place = token.place;
        newest_spelling_ = token.spelling;
        return true;
    }

    bool open(JsonNode::Kind kind) {
        if (!leaf(kind)) {
            return false;
        }
        if (open_.size() == kMostDepth) {
            faults_.add(
                Code::input_limit, newest_->place, {},
                "lists and objects are nested more than " + std::to_string(kMostDepth) + " deep",
                "at most that deep");
            return false;
        }
        open_.push_back({newest_, {}, {}});
        return true;
    }

    // Where the value that comes now belongs. The open nodes stay where they are, since only the
    // innermost grows.
    JsonNode& slot() {
        if (open_.empty()) {
            return *root_;
        }
        JsonNode& parent = *open_.back().node;
        return parent.kind == JsonNode::Kind::list ? parent.items.emplace_back()
                                                   : parent.members.back().value;
    }

    // Pointer of the innermost open node.
    [[nodiscard]] std::string pointer() const {
        std::string out;
        for (std::size_t i = 0; i + 1 < open_.size(); ++i) {
            const JsonNode& node = *open_[i].node;
            out = node.kind == JsonNode::Kind::list ? pointer_step(out, node.items.size() - 1)
                                                    : pointer_step(out, node.members.back().key);
        }
        return out;
    }

    std::string_view text_;
    JsonTokens tokens_;
    Faults& faults_;
    std::shared_ptr<JsonNode> root_;
    std::vector<Open> open_;
    JsonNode* newest_ = nullptr;
    std::string_view newest_spelling_;
    std::size_t count_ = 0;
};

}  // namespace

std::shared_ptr<const JsonNode> read_json(std::string_view text, Faults& faults) {
    if (text.size() > kMostBytes) {
        faults.add(Code::input_limit, {}, {},
                   "the file has " + std::to_string(text.size()) + " bytes",
                   "at most " + std::to_string(kMostBytes) + " (4 MiB)");
        return nullptr;
    }
    const auto plain = plain_text(text, faults);
    if (!plain) {
        return nullptr;
    }
    TreeBuilder builder(*plain, faults);
    const bool whole = nlohmann::json::sax_parse(plain->begin(), plain->end(), &builder,
                                                 nlohmann::json::input_format_t::json, true, true);
    return whole ? builder.tree() : nullptr;
}

}  // namespace bowfront::io
