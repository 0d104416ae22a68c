#pragma once
/// \file
/// A change of the case file that settles a finding, tried out before it is told.

#include <string>
#include <vector>

#include "bowfront/base/status.hpp"

namespace bowfront {

/// What a change touches, from what nobody sees in the finished case to what the maker asks for.
enum class Touches {
    size,    ///< play, grooves, blanks, boards, form, oven: hidden, or seen by nobody
    method,  ///< how the work is done
    look,    ///< what the case looks like and what sheet it takes, or how its panes are put in
    demand   ///< what is asked of the case, or of the shop: limits, loads, tolerances, tools
};

/// One value of the case file put in the place of another. All sums and checks were done again
/// with it: the finding that it belongs to ends as told, and no other one fails that did not fail
/// before. Where the finding failed, others may warn that did not, and are then named.
struct Change {
    std::string pointer;  ///< JSON pointer of the value; the file may leave it out
    std::string from;     ///< the value as the file spells it, or the default that stands in for it
    std::string to;       ///< the new value as JSON text, in the file's units
    std::string words;    ///< for people: `make the end clearance 2.5 mm (now 3 mm)`
    Touches touches = Touches::size;
    double relative = 0;  ///< how large it is against the value; 1 for a word in place of another
    Status before = Status::fail;  ///< of the finding
    Status after = Status::pass;   ///< of the finding
    std::vector<std::string> brings = {};  ///< checks that warn only since: id, about
};

}  // namespace bowfront
