#pragma once
/// \file
/// The groups of checks, one file each.

#include "bowfront/fit/checks.hpp"
#include "check_list.hpp"

namespace bowfront::fit {

void check_pane(const Case& c, const PaneSums<double>& pane, CheckList& list);
void check_radius(const Case& c, const PaneSums<double>& pane, CheckList& list);
void check_loads(const Case& c, const PaneSums<double>& pane, CheckList& list);
void check_heating(const Case& c, const HeatingSums<double>& heating, CheckList& list);
void check_blank(const Case& c, const PaneSums<double>& pane, CheckList& list);
void check_frame(const Case& c, const Layout& layout, CheckList& list);
/// What a plate of rails has to keep besides; nothing of one that is a board.
void check_rails(const Case& c, const Layout& layout, CheckList& list);
/// The joints of posts that are not butted.
void check_joints(const Case& c, const Layout& layout, CheckList& list);
void check_access(const Case& c, CheckList& list);
void check_form(const Case& c, const PaneForm<double>& form, CheckList& list);

/// What flexing a curved pane in comes to, against what its sheet bears for long:
/// `a strain of 0.36 % and a stress of 11.46 MPa in its faces, lasting limit 10.3 MPa`.
[[nodiscard]] std::string flexing_text(const Case& c, const PaneSums<double>& pane);

}  // namespace bowfront::fit
