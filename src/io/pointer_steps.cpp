#include "pointer_steps.hpp"

#include <charconv>

namespace bowfront::io {

std::string unescaped(std::string_view step) {
    std::string out;
    for (std::size_t i = 0; i < step.size(); ++i) {
        if (step[i] == '~' && i + 1 < step.size() && (step[i + 1] == '0' || step[i + 1] == '1')) {
            out += step[i + 1] == '0' ? '~' : '/';
            ++i;
        } else {
            out += step[i];
        }
    }
    return out;
}

std::optional<std::size_t> index_of(std::string_view step) noexcept {
    std::size_t index = 0;
    const auto result = std::from_chars(step.data(), step.data() + step.size(), index);
    if (result.ec != std::errc{} || result.ptr != step.data() + step.size()) {
        return std::nullopt;
    }
    return index;
}

}  // namespace bowfront::io
