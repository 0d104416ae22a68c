#pragma once
/// \file
/// Properties set in columns, with numbered sources and lettered notes below.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "bowfront/materials/property.hpp"

namespace bowfront {

/// How a value is printed.
struct Shown {
    int decimals = 6;         ///< at most
    bool as_percent = false;  ///< a ratio times 100, with `%` as its unit
};

/// Collects properties and sets them as text.
class PropertyTable {
  public:
    explicit PropertyTable(std::string title) : title_(std::move(title)) {}

    /// Adds a row; an absent property adds nothing.
    void add(std::string label, const std::optional<Property>& property, Shown shown = {});

    [[nodiscard]] std::string text() const;

  private:
    struct Row {
        std::string label;
        std::string value;
        std::string unit;
        std::string range;
        std::string reference;  // `[2] a`: the source's number, the note's letter
        std::string_view status;
    };
    [[nodiscard]] std::string reference_to(const Property& property);
    [[nodiscard]] std::string rows_text() const;

    std::string title_;
    std::vector<Row> rows_;
    std::vector<std::string_view> sources_;
    std::vector<std::string_view> notes_;
};

}  // namespace bowfront
