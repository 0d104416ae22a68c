#pragma once
/// \file
/// What people and programs are told of a case: report.json, the cut list, the text of `check`.

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/build_sums.hpp"
#include "bowfront/fit/loading_path.hpp"
#include "bowfront/fit/shelf.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/fit/timber_list.hpp"
#include "bowfront/model/case.hpp"
#include "bowfront/pattern/part.hpp"
#include "bowfront/study/chance.hpp"
#include "bowfront/study/shop_sizes.hpp"
#include "bowfront/study/spread.hpp"
#include "bowfront/whole/access_weight.hpp"
#include "bowfront/whole/cost.hpp"
#include "bowfront/whole/whole_sums.hpp"

namespace bowfront::report {

/// A file of the output folder.
struct FileEntry {
    std::string path;       ///< relative to the folder, with `/`
    std::string sha256;     ///< hexadecimal
    std::string read_back;  ///< `pass`, or how the file was proven otherwise
};

/// A part with the file that its pattern stands in.
struct PartEntry {
    const Part* part = nullptr;
    std::string file;  ///< relative path; empty where the pattern was withheld
};

/// An engagement as it was measured on the solids.
struct MeasuredEntry {
    std::string about;
    double expected = 0;  ///< mm
    double measured = 0;  ///< mm
};

/// How the case is opened.
struct OpenedEntry {
    const AccessSums<double>& sums;
    const whole::AccessWeight& weight;
};

/// All that a report is made from. References must outlive the call.
struct Content {
    const Case& c;
    const std::vector<Assumption>& assumed;
    const CaseSums<double>& sums;
    const study::Chance& chance;
    const std::vector<study::PaneSpreads>& spreads;
    const study::ShopSizes& shop;
    const std::vector<Finding>& findings;
    const std::vector<fit::LoadingPath>& paths;  ///< of the panes, in the order of the sums
    const whole::WholeSums<double>& whole;
    const std::optional<whole::CostSums<double>>& cost;  ///< where the case file has prices
    const fit::Shelves& shelves;
    const BuildSums<double>& build;
    const TimberList<double>& timber;
    std::vector<PartEntry> parts = {};
    std::vector<FileEntry> files = {};
    std::vector<MeasuredEntry> measured = {};
    std::optional<OpenedEntry> opened = {};  ///< where the case file plans it
    bool despite_failures = false;  ///< patterns were written though a check fails
};

/// report.json (schemas/report.schema.json). All lengths in mm, angles in degrees, temperatures in
/// °C, stresses in MPa, masses in kg. @throws ContractError where a number is not finite
[[nodiscard]] std::string to_json(const Content& content);

/// The paths that a report.json lists as its files; empty for a text that is none.
[[nodiscard]] std::set<std::string> listed_files(std::string_view report_json);

/// The text of `check`: verdict, panes, blanks, shelves, forms, what does not pass and what to do, what was
/// assumed, cautions.
[[nodiscard]] std::string to_text(const Content& content);

/// cutlist.csv (RFC 4180): one line for each part.
[[nodiscard]] std::string cut_list(const Content& content);

/// The usual cautions for the work that a case asks for.
[[nodiscard]] std::vector<std::string> cautions(const Content& content);

/// The mark that stands on everything of a case that fails a check.
inline constexpr std::string_view kFailedMark = "FAILED ITS CHECKS";

}  // namespace bowfront::report
