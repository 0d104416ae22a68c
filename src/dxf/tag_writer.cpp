#include "dxf/tag_writer.hpp"

#include <array>
#include <charconv>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront::dxf {
namespace {

constexpr std::string_view kLineEnd = "\r\n";
constexpr std::size_t kCodeWidth = 3;  // group codes stand right-aligned in three columns

// Enough for a sign and the 20 digits of a 64-bit integer.
using Digits = std::array<char, 24>;

template <class Integer>
std::string_view digits(Digits& buffer, Integer value, int base = 10) {
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, base);
    return {buffer.data(), static_cast<std::size_t>(result.ptr - buffer.data())};
}

bool printable(std::string_view value) {
    for (const char c : value) {
        if (c < ' ' || c > '~') {
            return false;
        }
    }
    return true;
}

}  // namespace

void TagWriter::code(int code) {
    Digits buffer{};
    const std::string_view shown = digits(buffer, code);
    text_.append(shown.size() < kCodeWidth ? kCodeWidth - shown.size() : 0, ' ');
    text_ += shown;
    text_ += kLineEnd;
}

void TagWriter::text(int code, std::string_view value) {
    BOWFRONT_EXPECTS(printable(value));
    this->code(code);
    text_ += value;
    text_ += kLineEnd;
}

void TagWriter::integer(int code, std::int64_t value) {
    Digits buffer{};
    text(code, digits(buffer, value));
}

void TagWriter::real(int code, double value) {
    std::string shown = number_text(value);
    if (shown.find_first_of(".e") == std::string::npos) {
        shown += ".0";
    }
    text(code, shown);
}

void TagWriter::handle(int code, std::uint64_t value) {
    constexpr int kHexadecimal = 16;
    Digits buffer{};
    std::string shown(digits(buffer, value, kHexadecimal));
    for (char& c : shown) {
        if (c >= 'a') {
            c = static_cast<char>(c - 'a' + 'A');
        }
    }
    text(code, shown);
}

void TagWriter::point(int code, Point at) {
    constexpr int kToY = 10;
    real(code, at.x);
    real(code + kToY, at.y);
}

void TagWriter::flat_point(int code, Point at) {
    constexpr int kToZ = 20;
    point(code, at);
    real(code + kToZ, 0);
}

}  // namespace bowfront::dxf
