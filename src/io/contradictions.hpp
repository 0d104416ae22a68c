#pragma once
/// \file
/// Values of a case file that are right one by one and can't hold together.

#include "reading.hpp"

namespace bowfront::io {

/// Adds a fault for each contradiction that the file's own values can tell, with what the last of
/// them would have to be. Values that have faults already are left alone.
void find_contradictions(const Case& whole, const Places& places, Reading& reading);

}  // namespace bowfront::io
