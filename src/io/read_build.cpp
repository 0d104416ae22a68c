#include <numbers>

#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

const WordOf<PlateBuild, 2> kBuild{"a way of building it",
                                   {{{"plate", PlateBuild::plate}, {"rails", PlateBuild::rails}}}};
const WordOf<RailCorner, 2> kCorner{"a joint of rails",
                                    {{{"mitre", RailCorner::mitre}, {"butt", RailCorner::butt}}}};

// At half a right angle the grain runs across the rail as much as along it.
constexpr Range kRunOut{0, std::numbers::pi / 4, Range::Low::open};
// More pieces would be shorter than any cutter could hold.
constexpr int kMostSegments = 100;

}  // namespace

Sourced<PlateBuild> read_build_kind(ObjectReader& plate) {
    return plate.or_default("build", kBuild);
}

void read_rails(ObjectReader& plate, const Sourced<double>& margin, Build& build) {
    const Use use = build.rails() ? Use::used : Use::unused;
    if (const auto inset = plate.given("inset", LengthIn{kPositive})) {
        build.inset = *inset;
    } else {
        build.inset = {margin.value, plate.assume_rule("inset", use)};
    }
    build.board_width = plate.or_default("board_width", LengthIn{kPositive}, use);
    build.corner = plate.or_default("corner", kCorner, use);
    build.run_out = plate.or_default("run_out", AngleIn{kRunOut}, use);
    build.segments = plate.given("segments", CountIn{kMostSegments});
    if (!build.segments) {
        (void)plate.assume_rule("segments", use);
    }
}

}  // namespace bowfront::io
