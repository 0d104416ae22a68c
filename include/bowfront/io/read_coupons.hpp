#pragma once
/// \file
/// From the text of a coupons file to what was measured.

#include <cstddef>
#include <string>
#include <string_view>

#include "bowfront/model/coupon.hpp"

namespace bowfront::io {

/// The largest coupons file that is read, bytes.
inline constexpr std::size_t kMostCouponBytes = std::size_t{1} << 20;
/// The most rows below the header that are read.
inline constexpr std::size_t kMostCoupons = 10'000;

/// The measurements of a coupons file, each with its line.
///
/// The text is CSV (RFC 4180; line ends of either kind; no line break inside a field), UTF-8. Lines
/// that begin with `#`, empty lines and rows of empty fields are left out. The first row names the
/// columns, in any order: `direction,before,after` for coupons, `radius_on_form,chord,rise` for
/// test arcs. A direction is `along` or `across`; a length is in mm or carries its unit as in a
/// case file, above 0 and at most 20 m. Each shrink or springback is in the range of a case file.
///
/// @param file_name  as the user named it, for messages only
/// @throws InputError  with every fault of the text, in the order in which they stand there
[[nodiscard]] Measurements read_coupons(std::string_view text, const std::string& file_name);

}  // namespace bowfront::io
