#include "bowfront/model/access.hpp"

#include <array>

namespace bowfront {

std::string_view access_text(const Access& access) noexcept {
    constexpr std::array<std::string_view, std::variant_size_v<Access::Way>> kWords{
        "lift-off-top", "lift-out-pane", "sliding-pair", "hinged-door"};
    return kWords[access.way.index()];
}

}  // namespace bowfront
