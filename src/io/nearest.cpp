#include "bowfront/io/nearest.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace bowfront::io {
namespace {

// Longer words are no misspelling of anything here, and their table would be large.
constexpr std::size_t kLongestWord = 64;

char small(char c) noexcept {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

}  // namespace

std::size_t spelling_distance(std::string_view a, std::string_view b) {
    // row[j] is the distance of the first i letters of a and the first j of b.
    std::vector<std::size_t> before_last;
    std::vector<std::size_t> last(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before_last = std::exchange(last, row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const bool same = small(a[i - 1]) == small(b[j - 1]);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0U : 1U)});
            if (i > 1 && j > 1 && small(a[i - 1]) == small(b[j - 2]) &&
                small(a[i - 2]) == small(b[j - 1])) {
                row[j] = std::min(row[j], before_last[j - 2] + 1);
            }
        }
    }
    return row[b.size()];
}

std::string nearest(std::string_view word, std::span<const std::string_view> candidates) {
    if (word.size() > kLongestWord) {
        return {};
    }
    std::string_view best;
    std::size_t least = std::max(word.size() / 3, std::size_t{1});
    for (const std::string_view candidate : candidates) {
        const std::size_t longer = std::max(word.size(), candidate.size());
        const std::size_t distance =
            longer > kLongestWord ? longer : spelling_distance(word, candidate);
        // A word of which nothing is left is not that word misspelt.
        if (distance <= least && distance < longer && (best.empty() || distance < least)) {
            best = candidate;
            least = distance;
        }
    }
    return std::string(best);
}

}  // namespace bowfront::io
