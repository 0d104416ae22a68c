#include "bowfront/fit/checks.hpp"

#include "check_groups.hpp"

namespace bowfront::fit {
namespace {

void check_panes(const Case& c, const CaseSums<double>& sums, CheckList& list) {
    for (const auto& pane : sums.panes) {
        check_pane(c, pane, list);
        for (const auto& heating : sums.heating) {
            if (heating.side == pane.side) {
                check_heating(c, heating, list);
            }
        }
    }
}

void check_forms(const Case& c, const CaseSums<double>& sums, CheckList& list) {
    for (const auto& form : sums.forms) {
        check_form(c, form, list);
    }
}

}  // namespace

std::vector<Finding> checks(const Case& c, const CaseSums<double>& sums, const Layout& layout) {
    CheckList list;
    check_panes(c, sums, list);
    check_frame(c, layout, list);
    check_forms(c, sums, list);
    return list.take();
}

std::vector<Finding> checks_of_sums(const Case& c, const CaseSums<double>& sums) {
    CheckList list;
    check_panes(c, sums, list);
    check_forms(c, sums, list);
    return list.take();
}

std::vector<Finding> checks_of_frame(const Case& c, const Layout& layout) {
    CheckList list;
    check_frame(c, layout, list);
    return list.take();
}

}  // namespace bowfront::fit
