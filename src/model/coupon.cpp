#include "bowfront/model/coupon.hpp"

namespace bowfront {

std::string_view direction_text(SheetDirection direction) noexcept {
    return direction == SheetDirection::along ? "along" : "across";
}

}  // namespace bowfront
