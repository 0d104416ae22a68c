#pragma once
/// \file
/// A text as tags. Nothing in it is trusted.

#include <cstddef>
#include <string>
#include <string_view>

#include "bowfront/base/code.hpp"

namespace bowfront::dxf {

/// A group code and its value, as they stand in the text.
struct Tag {
    int code = 0;
    std::string_view value;  ///< without the line end
    std::size_t line = 0;    ///< of the value, from 1

    /// The value without white space round it.
    [[nodiscard]] std::string_view word() const;
    /// Whether this tag begins the object `name` (`0` and the name).
    [[nodiscard]] bool begins(std::string_view name) const { return code == 0 && word() == name; }
};

/// A value as a message can show it: in quotes, short, and without bytes that move a cursor.
[[nodiscard]] std::string shown(std::string_view value);

/// Reads tags one after the other, with LF or CR LF, and passes over comments (code 999).
class TagReader {
  public:
    /// @param text  outlives the reader and its tags
    /// @param name  the file's name, for errors
    TagReader(std::string_view text, std::string name);

    /// The next tag, which stays the next. @throws InputError at the end, or where no tag stands
    [[nodiscard]] const Tag& peek();
    /// The next tag, taken. @throws InputError as `peek`
    Tag take();

    /// @throws InputError where the value is no whole number
    [[nodiscard]] int integer(const Tag& tag) const;
    /// @throws InputError where the value is no number with a decimal point, or a number that no
    ///         drawing in millimetres needs (over 1e9 in magnitude)
    [[nodiscard]] double real(const Tag& tag) const;

    [[noreturn]] void fail(Code code, std::size_t line, std::string found,
                           std::string wanted = {}) const;

  private:
    std::string_view take_line();
    void advance();

    std::string_view rest_;
    std::string name_;
    std::size_t line_ = 0;  // of the line taken last
    Tag next_;
    bool has_next_ = false;
};

}  // namespace bowfront::dxf
