#pragma once
/// \file
/// What an output says of its own making. It comes in from outside, so that no writer asks a clock.

#include <string>

namespace bowfront {

/// Time and tool of an output.
struct Stamp {
    std::string time = "1970-01-01T00:00:00";  ///< ISO 8601, without zone
    std::string tool = "bowfront";
    std::string version = "0";
};

}  // namespace bowfront
