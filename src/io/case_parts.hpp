#pragma once
/// \file
/// The parts of a case file, each read by a function of its own.

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/model/case.hpp"
#include "object_reader.hpp"

namespace bowfront::io {

/// All sections, each held to its own ranges; what they contradict in each other is not asked.
[[nodiscard]] Case read_sections(ObjectReader& file);

[[nodiscard]] Plan read_plan(ObjectReader plan);
/// Whether the names of the plan's sides are known: nothing that they go by has a fault.
[[nodiscard]] bool names_known(Faults& faults);

[[nodiscard]] Frame read_frame(ObjectReader frame);

/// How a post is joined to base and top.
void read_post_joint(ObjectReader& post, Post& out);

/// How a plate is built.
[[nodiscard]] Sourced<PlateBuild> read_build_kind(ObjectReader& plate);

/// The keys of a plate that count where it is built of rails.
/// @param build  with its kind; gets the rest
void read_rails(ObjectReader& plate, const Sourced<double>& margin, Build& build);

/// The file's own sheets, by their keys.
[[nodiscard]] std::map<std::string, SheetSpec> read_sheets(ObjectReader& file);

/// The names that a pane's or a shelf's sheet may have: the file's own sheets, then the library's.
/// Valid as long as the case is.
[[nodiscard]] std::vector<std::string_view> sheet_names(const Case& whole);

/// A sheet as the library knows it.
[[nodiscard]] SheetSpec library_sheet(const Sheet& sheet);

/// Reads the panes and the blank that they share; `whole` has its plan and its own sheets already
/// and gets its panes and the library's sheets that they use.
void read_panes(ObjectReader& file, Case& whole);

/// Whether a pane is heated over a form: one on an arc, unless it is bent cold.
[[nodiscard]] bool is_heated(const PaneSpec& pane, const Plan& plan);

/// The shelves; `whole` has its own sheets already.
[[nodiscard]] std::vector<ShelfSpec> read_shelves(ObjectReader& file, const Case& whole);

[[nodiscard]] FitSpec read_fit(ObjectReader fit, Loading loading);
[[nodiscard]] Tolerances read_tolerances(ObjectReader tolerance);
[[nodiscard]] Webs read_webs(ObjectReader webs);
[[nodiscard]] FormSpec read_form(ObjectReader form, Use use);
[[nodiscard]] Oven read_oven(ObjectReader oven);
[[nodiscard]] Service read_service(ObjectReader service);
[[nodiscard]] std::vector<StockItem> read_stock(ObjectReader& file);
[[nodiscard]] Cutter read_cutter(ObjectReader cutter);
[[nodiscard]] Shop read_shop(ObjectReader shop, LengthUnit units);
[[nodiscard]] Contents read_contents(ObjectReader contents);
/// How the case is opened. The pane of the side that opens leaves `panes` for `access_pane`.
void read_access(ObjectReader access, Case& whole);
[[nodiscard]] Stand read_stand(ObjectReader stand);
/// @param whole  has its sheets and its stock already
[[nodiscard]] Prices read_prices(ObjectReader prices, const Case& whole);

}  // namespace bowfront::io
