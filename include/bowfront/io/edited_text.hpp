#pragma once
/// \file
/// The text of a JSON file in which single values take the place of others; all else stays.

#include <memory>
#include <string>

namespace bowfront::io {

/// A JSON text, comments allowed, as its writer laid it out.
class EditedText {
  public:
    /// @param text  one that reads without a fault
    /// @throws ContractError for a text that is no JSON
    explicit EditedText(std::string text);
    EditedText(EditedText&&) noexcept;
    EditedText& operator=(EditedText&&) noexcept;
    ~EditedText();

    /// The value at a JSON pointer (RFC 6901) as it is spelt, white space and comments within it
    /// included; empty where the text has none there.
    [[nodiscard]] std::string spelling(const std::string& pointer) const;

    /// Puts a value at a JSON pointer. One that is there is replaced, to the byte; one that is left
    /// out becomes the last of its object, laid out as the one before it. Objects on the way that
    /// are missing are made. Comments, order and layout of all else stay.
    /// @param value  JSON text
    /// @throws ContractError where the way leads past the end of a list, or through a value that
    ///         holds no others
    void put(const std::string& pointer, const std::string& value);

    [[nodiscard]] const std::string& text() const noexcept { return text_; }

  private:
    struct Node;
    std::string text_;
    std::unique_ptr<Node> root_;
};

}  // namespace bowfront::io
