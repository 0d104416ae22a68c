#pragma once
/// \file
/// The one place that knows how a tag looks in the file: group code on one line, value on the next.

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

#include "bowfront/geom/point.hpp"

namespace bowfront::dxf {

/// Collects tags as text with CR LF line ends. Entities and tables write through it only.
class TagWriter {
  public:
    /// A text value. @param value  one line of printable ASCII
    void text(int code, std::string_view value);
    void integer(int code, std::int64_t value);
    /// A real, with all digits that read back to the same number, and always with a point or an
    /// exponent, since strict readers tell reals from integers by that. @param value  finite
    void real(int code, double value);
    /// An object's own handle or a reference to another's, in hexadecimal.
    void handle(int code, std::uint64_t value);
    /// A point in the plane: x at `code`, y at `code` + 10.
    void point(int code, Point at);
    /// A point at height 0: as `point`, and z at `code` + 20.
    void flat_point(int code, Point at);
    /// Tags that another writer has collected.
    void append(const TagWriter& other) { text_ += other.text_; }

    [[nodiscard]] std::string take() && { return std::move(text_); }

  private:
    void code(int code);

    std::string text_;
};

}  // namespace bowfront::dxf
