#include "bowfront/fit/checks.hpp"

#include "check_groups.hpp"

namespace bowfront::fit {

std::vector<Finding> pane_checks(const Case& c, const CaseSums<double>& sums) {
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
    return list.take();
}

std::vector<Finding> frame_checks(const Case& c, const Layout& layout) {
    CheckList list;
    check_frame(c, layout, list);
    check_rails(c, layout, list);
    check_joints(c, layout, list);
    return list.take();
}

std::vector<Finding> form_checks(const Case& c, const CaseSums<double>& sums) {
    CheckList list;
    for (const auto& form : sums.forms) {
        check_form(c, form, list);
    }
    return list.take();
}

std::vector<Finding> checks(const Case& c, const CaseSums<double>& sums, const Layout& layout) {
    std::vector<Finding> all = pane_checks(c, sums);
    append(frame_checks(c, layout), all);
    append(form_checks(c, sums), all);
    return all;
}

}  // namespace bowfront::fit
