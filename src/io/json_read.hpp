#pragma once
/// \file
/// From text to a tree of values; the door to the JSON library.

#include <memory>
#include <string_view>

#include "faults.hpp"
#include "json_node.hpp"

namespace bowfront::io {

/// The tree of a JSON text, comments allowed. Keys that stand twice are faults, and the first
/// counts; the tree is given none the less, so that other faults can be found.
///
/// The bounds are kMostBytes, kMostDepth and kMostValues.
/// @returns  null after a fault that leaves no tree
[[nodiscard]] std::shared_ptr<const JsonNode> read_json(std::string_view text, Faults& faults);

}  // namespace bowfront::io
