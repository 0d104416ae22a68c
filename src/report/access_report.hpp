#pragma once
/// \file
/// What the report says of how a case is opened.

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "bowfront/report/report.hpp"

namespace bowfront::report {

/// @param content  with `opened`
[[nodiscard]] nlohmann::ordered_json access_json(const Content& content);
[[nodiscard]] std::string access_text(const Content& content);

/// What is done for the opening while the case is built; empty where none is planned.
[[nodiscard]] std::vector<std::string> access_steps(const Case& c);

/// What to mind when the case is opened; empty where none is planned.
[[nodiscard]] std::vector<std::string> access_cautions(const Content& content);

}  // namespace bowfront::report
