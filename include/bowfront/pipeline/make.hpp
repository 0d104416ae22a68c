#pragma once
/// \file
/// Everything that a design comes to, written into a folder: all of it, or nothing.

#include <functional>
#include <string>

#include "bowfront/base/stamp.hpp"
#include "bowfront/dxf/dxf.hpp"
#include "bowfront/pipeline/design.hpp"
#include "bowfront/pipeline/solid_shop.hpp"

namespace bowfront {

/// How to make.
struct MakeOptions {
    std::string folder;             ///< where the output goes
    bool despite_failures = false;  ///< write patterns though a check fails, each marked so
    dxf::Options dxf;
    Stamp stamp;
};

/// What was made.
struct Made {
    std::vector<Finding> findings;  ///< of the design, and of the proof on the solids
    std::string report_json;
    std::string report_text;
    [[nodiscard]] Status verdict() const noexcept { return bowfront::verdict(findings); }
};

/// Makes solids, patterns and report, and puts them in the folder's place at once.
///
/// Every export is read back and compared before it counts. A folder that is not empty and holds no
/// report.json of ours is refused; whatever fails, what stood there before stays whole. Where a
/// check fails, nothing to cut from is written unless `despite_failures`.
/// @param shop      makes the solids
/// @param progress  told each step in a few words; what it throws ends the work
/// @throws IoError where the folder is refused or can't be written
/// @throws KernelError, ContractError where a proof fails: a fault of the program
[[nodiscard]] Made make(const Design& design, const MakeOptions& options, const SolidShop& shop,
                        const std::function<void(const std::string&)>& progress);

}  // namespace bowfront
