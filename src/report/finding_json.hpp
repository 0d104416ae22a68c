#pragma once
/// \file
/// A finding as JSON, the same in every file that holds one.

#include <nlohmann/json.hpp>

#include "bowfront/base/finding.hpp"

namespace bowfront::report {

/// The one door for numbers: nothing that is not finite passes, and −0 is 0.
/// @throws ContractError for NaN or infinity
[[nodiscard]] nlohmann::ordered_json number_json(double value);

/// A list with each item as `write` makes it.
template <class Items, class Write>
[[nodiscard]] nlohmann::ordered_json list_json(const Items& items, Write write) {
    nlohmann::ordered_json json = nlohmann::ordered_json::array();
    for (const auto& item : items) {
        json.push_back(write(item));
    }
    return json;
}

/// A change of the case file with what becomes of the finding.
[[nodiscard]] nlohmann::ordered_json change_json(const Change& change);

/// A check with its limit, margin, advice, and the changes that were found, where any.
[[nodiscard]] nlohmann::ordered_json check_json(const Finding& finding);

}  // namespace bowfront::report
