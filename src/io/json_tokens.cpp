#include "json_tokens.hpp"

#include <algorithm>

namespace bowfront::io {
namespace {

constexpr std::string_view kBlank = " \t\r\n";
constexpr std::string_view kMarks = "{}[],:";

bool is_in(std::string_view set, char c) noexcept {
    return set.find(c) != std::string_view::npos;
}

}  // namespace

void JsonTokens::advance_to(std::size_t offset) noexcept {
    for (; at_ < offset; ++at_) {
        if (text_[at_] == '\n') {
            ++line_;
            line_begin_ = at_ + 1;
        }
    }
}

bool JsonTokens::skip_blank() noexcept {
    for (;;) {
        advance_to(std::min(text_.find_first_not_of(kBlank, at_), text_.size()));
        const std::string_view rest = text_.substr(at_);
        if (rest.starts_with("//")) {
            advance_to(std::min(text_.find('\n', at_), text_.size()));
        } else if (rest.starts_with("/*")) {
            const std::size_t close = text_.find("*/", at_ + 2);
            if (close == std::string_view::npos) {
                return false;
            }
            advance_to(close + 2);
        } else {
            return true;
        }
    }
}

std::size_t JsonTokens::end_of_text() const noexcept {
    for (std::size_t at = at_ + 1; at < text_.size(); ++at) {
        if (text_[at] == '\\') {
            ++at;
        } else if (text_[at] == '"') {
            return at + 1;
        }
    }
    return std::string_view::npos;
}

std::size_t JsonTokens::end_of_word() const noexcept {
    std::size_t at = at_;
    while (at < text_.size() && !is_in(kBlank, text_[at]) && !is_in(kMarks, text_[at]) &&
           text_[at] != '"' && text_.substr(at, 2) != "//" && text_.substr(at, 2) != "/*") {
        ++at;
    }
    return at;
}

JsonToken JsonTokens::next() noexcept {
    const bool blank_closed = skip_blank();
    JsonToken token{JsonToken::Kind::end, at_, {}, {line_, at_ - line_begin_ + 1}};
    if (at_ == text_.size()) {
        return token;
    }
    std::size_t end = text_.size();
    if (!blank_closed) {
        token.kind = JsonToken::Kind::unclosed;
    } else if (is_in(kMarks, text_[at_])) {
        token.kind = JsonToken::Kind::mark;
        end = at_ + 1;
    } else if (text_[at_] == '"') {
        end = end_of_text();
        token.kind =
            end == std::string_view::npos ? JsonToken::Kind::unclosed : JsonToken::Kind::text;
    } else {
        token.kind = JsonToken::Kind::word;
        end = end_of_word();
    }
    end = std::min(end, text_.size());
    token.spelling = text_.substr(at_, end - at_);
    advance_to(end);
    return token;
}

JsonToken JsonTokens::next_value() noexcept {
    for (;;) {
        const JsonToken token = next();
        if (token.kind != JsonToken::Kind::mark || token.spelling == "{" || token.spelling == "[") {
            return token;
        }
    }
}

}  // namespace bowfront::io
