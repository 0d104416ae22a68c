#pragma once
/// \file
/// From the text of a case file to everything that is known of the case without making solids.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/build_sums.hpp"
#include "bowfront/fit/access.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/loading_path.hpp"
#include "bowfront/fit/shelf.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/fit/timber_list.hpp"
#include "bowfront/io/read_case.hpp"
#include "bowfront/pattern/part.hpp"
#include "bowfront/study/chance.hpp"
#include "bowfront/study/shop_sizes.hpp"
#include "bowfront/study/spread.hpp"
#include "bowfront/whole/access_weight.hpp"
#include "bowfront/whole/cost.hpp"
#include "bowfront/whole/whole_sums.hpp"

namespace bowfront {

/// How a case is opened, solved.
struct OpenedCase {
    AccessSums<double> sums;
    fit::AccessLayout layout;
    whole::AccessWeight weight;
};

/// A case, read, solved and checked.
struct Design {
    io::ReadCase read;
    CaseSums<double> sums;
    fit::Layout layout;
    study::Chance chance;
    std::vector<fit::LoadingPath> paths;  ///< in the order of the sums
    fit::Shelves shelves;
    std::vector<study::PaneSpreads> spreads;
    study::ShopSizes shop;
    whole::WholeSums<double> whole;
    std::optional<whole::CostSums<double>> cost;  ///< where the case file has prices
    BuildSums<double> build;
    TimberList<double> timber;
    std::optional<OpenedCase> access;                     ///< where the case file plans it
    std::vector<Finding> findings;

    [[nodiscard]] const Case& c() const noexcept { return read.value; }
    [[nodiscard]] Status verdict() const noexcept { return bowfront::verdict(findings); }
};

/// Reads, solves and checks a case.
/// @param file_name  as the user named it, for messages
/// @param chance     how the chance of a first-time fit is estimated
/// @throws InputError with every fault of the file, or with every reason why it can't be built
[[nodiscard]] Design design(std::string_view text, const std::string& file_name,
                            const study::ChanceOptions& chance = {});

/// The text of a file that the user names.
/// @throws InputError where it can't be read, is no ordinary file or pipe, or passes `most` bytes
[[nodiscard]] std::string read_text(const std::string& path, std::size_t most);

/// Every figure of a design by its path, and the derivation of one.
/// @param quantity  a path in the report, items named by pane side, part id or check
/// @throws InputError where nothing has that path; the message names the nearest one that is there
[[nodiscard]] std::string explain_figure(const Design& design, const std::string& quantity,
                                         bool as_json);

}  // namespace bowfront
