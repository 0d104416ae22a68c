#include "bowfront/fit/checks.hpp"

#include "check_groups.hpp"

namespace bowfront::fit {

std::vector<Finding> checks(const Case& c, const CaseSums<double>& sums, const Layout& layout) {
    CheckList list;
    for (const auto& pane : sums.panes) {
        check_pane(c, pane, list);
        for (const auto& heating : sums.heating) {
            if (heating.side == pane.side) {
                check_heating(c, heating, list);
            }
        }
    }
    check_access(c, list);
    check_frame(c, layout, list);
    for (const auto& form : sums.forms) {
        check_form(c, form, list);
    }
    return list.take();
}

}  // namespace bowfront::fit
