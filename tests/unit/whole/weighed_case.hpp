#pragma once
/// \file
/// A case with its sums, its frame and its parts, weighed.

#include "bowfront/fit/layout.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "bowfront/whole/whole_sums.hpp"

namespace bowfront::whole {

struct WeighedCase {
    explicit WeighedCase(const Case& c)
        : sums(fit::solve(c)),
          layout(fit::layout(c, sums)),
          parts(pattern::case_parts(c, sums, layout)),
          whole(whole_sums(c, layout, parts)) {}

    CaseSums<double> sums;
    fit::Layout layout;
    std::vector<Part> parts;
    WholeSums<double> whole;
};

}  // namespace bowfront::whole
