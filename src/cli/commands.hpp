#pragma once
/// \file
/// The commands; each returns an exit code, and throws as the library does.

#include "options.hpp"

namespace bowfront::cli {

[[nodiscard]] int run(const StartRequest& request);
[[nodiscard]] int run(const CheckRequest& request);
[[nodiscard]] int run(const MakeRequest& request);
[[nodiscard]] int run(const ExplainRequest& request);
[[nodiscard]] int run(const SweepRequest& request);
[[nodiscard]] int run(const CalibrateRequest& request);
[[nodiscard]] int run(const InspectRequest& request);
[[nodiscard]] int run(const MaterialsRequest& request);
[[nodiscard]] int run(const SchemaRequest& request);

}  // namespace bowfront::cli
