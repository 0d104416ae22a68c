#include "bowfront/base/contract.hpp"

#include <string_view>

namespace bowfront {

void contract_failed(const char* condition, const char* file, int line) {
    // Only the file's own name: the path of the machine that built it is nobody's business.
    std::string_view name(file);
    if (const auto slash = name.rfind('/'); slash != std::string_view::npos) {
        name.remove_prefix(slash + 1);
    }
    throw ContractError("contract broken: " + std::string(condition) + " (" + std::string(name) +
                        ":" + std::to_string(line) + ")");
}

}  // namespace bowfront
