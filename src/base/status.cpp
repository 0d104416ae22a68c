#include "bowfront/base/status.hpp"

namespace bowfront {

std::string_view status_text(Status status) noexcept {
    switch (status) {
        case Status::pass: return "pass";
        case Status::warn: return "warn";
        case Status::fail: break;
    }
    return "fail";
}

}  // namespace bowfront
