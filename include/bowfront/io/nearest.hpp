#pragma once
/// \file
/// The word that a misspelt one was meant to be.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace bowfront::io {

/// How many letters must be put in, left out, replaced or swapped with their neighbour to turn one
/// word into the other, no letter touched twice. Counted in bytes; capitals count as small letters.
/// Source: the four kinds of misspelling counted by F. J. Damerau, Comm. ACM 7 (1964), 171
[[nodiscard]] std::size_t spelling_distance(std::string_view a, std::string_view b);

/// The candidate that is spelt most like the word; the first of several; empty where none is near
/// enough to be worth offering (more than a third of the word's letters wrong, and more than one).
[[nodiscard]] std::string nearest(std::string_view word,
                                  std::span<const std::string_view> candidates);

}  // namespace bowfront::io
