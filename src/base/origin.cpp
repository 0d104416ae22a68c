#include "bowfront/base/origin.hpp"

namespace bowfront {

std::string_view certainty_text(Certainty certainty) noexcept {
    switch (certainty) {
        case Certainty::seen: return "read in the source";
        case Certainty::reproduced: return "read in a reproduction of the source";
        case Certainty::remembered: return "from memory, not verified";
        case Certainty::computed: return "computed";
        case Certainty::common_practice: return "common practice, no source";
        case Certainty::choice: break;
    }
    return "choice of this tool within published ranges";
}

}  // namespace bowfront
