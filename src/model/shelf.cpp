#include "bowfront/model/shelf.hpp"

namespace bowfront {

std::string_view support_text(ShelfSupport support) noexcept {
    return support == ShelfSupport::rails ? "rails" : "pins";
}

}  // namespace bowfront
