#pragma once
/// \file
/// The words of a JSON text one after the other, with their places.

#include <cstddef>
#include <string_view>

#include "bowfront/io/places.hpp"

namespace bowfront::io {

/// One word of the text. Comments and white space are none.
struct JsonToken {
    enum class Kind {
        end,      ///< of the text
        mark,     ///< one of `{ } [ ] , :`
        text,     ///< in double quotes
        word,     ///< a run of anything else: a number, `true`, or what does not belong there
        unclosed  ///< a text or a comment that goes on to the end of the file
    } kind = Kind::end;
    std::size_t begin = 0;  ///< offset in the text
    std::string_view spelling;
    Place place;
};

/// Goes through any text, right or wrong; for right JSON the words are those of its grammar.
class JsonTokens {
  public:
    explicit JsonTokens(std::string_view text) noexcept : text_(text) {}

    /// The next word; `end` again and again after the last.
    JsonToken next() noexcept;

    /// The next word that begins a value or is a key: no closing bracket, comma or colon.
    JsonToken next_value() noexcept;

  private:
    // Steps over white space and comments; false inside a comment that is not closed.
    bool skip_blank() noexcept;
    void advance_to(std::size_t offset) noexcept;
    [[nodiscard]] std::size_t end_of_text() const noexcept;
    [[nodiscard]] std::size_t end_of_word() const noexcept;

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
    std::size_t line_begin_ = 0;
};

}  // namespace bowfront::io
