#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

// More than any floor of a house carries on the area of one case.
constexpr Range kContentsMass{0, 5000, Range::Low::open};

const WordOf<Fixing, 3> kFixing{
    "what the case is fixed to",
    {{{"none", Fixing::none}, {"wall", Fixing::wall}, {"floor", Fixing::floor}}}};

}  // namespace

Contents read_contents(ObjectReader contents) {
    Contents out;
    out.mass = contents.needed("mass", MassIn{kContentsMass});
    if (const auto height = contents.take("height")) {
        out.height = contents.read(*height, LengthIn{kNotNegative});
    } else {
        (void)contents.assume_rule("height");
    }
    out.x = contents.given("x", LengthIn{kAnywhere});
    out.y = contents.given("y", LengthIn{kAnywhere});
    contents.finish();
    return out;
}

Stand read_stand(ObjectReader stand) {
    Stand out;
    out.fixed = stand.or_default("fixed", kFixing);
    stand.finish();
    return out;
}

}  // namespace bowfront::io
