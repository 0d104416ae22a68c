#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/materials/timber.hpp"
#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

const WordOf<Loading, 3> kLoading{"a loading",
                                  {{{"slide-in", Loading::slide_in},
                                    {"beaded", Loading::beaded},
                                    {"lift-and-drop", Loading::lift_and_drop}}}};
const WordOf<PostSection, 3> kSection{"a post's section",
                                      {{{"fitted", PostSection::fitted},
                                        {"square", PostSection::square},
                                        {"round", PostSection::round}}}};
const WordOf<Hold, 2> kHold{"a hold", {{{"groove", Hold::groove}, {"rabbet", Hold::rabbet}}}};

const WordOf<Grain, 2> kGrain{"a direction of the grain",
                              {{{"width", Grain::width}, {"depth", Grain::depth}}}};
const WordOf<PostSawn, 2> kPostSawn{"how a post is sawn",
                                    {{{"any", PostSawn::any}, {"rift", PostSawn::rift}}}};
const WordOf<Sawn, 3> kSawn{
    "a way of sawing",
    {{{"flat", Sawn::flat}, {"quarter", Sawn::quarter}, {"plywood", Sawn::plywood}}}};

struct TimberIn {
    using Result = std::string;
    std::optional<std::string> operator()(Reading& reading, const Value& value) const {
        std::vector<std::string_view> names;
        for (const Timber& timber : timbers()) {
            names.push_back(timber.name);
        }
        const auto index = word_index(reading, value, "a timber of the library", names);
        return index ? std::optional<std::string>(names[*index]) : std::nullopt;
    }
};

Plate read_plate(ObjectReader plate) {
    Plate out;
    out.thickness = plate.needed("thickness", LengthIn{kPositive});
    out.margin = plate.needed("margin", LengthIn{kPositive});
    out.build.kind = read_build_kind(plate);
    out.grain = plate.or_default("grain", kGrain, out.build.rails() ? Use::unused : Use::used);
    out.sawn = plate.or_default("sawn", kSawn);
    read_rails(plate, out.margin, out.build);
    plate.finish();
    return out;
}

Sourced<Hold> read_hold(ObjectReader& post, Loading loading) {
    const auto given = post.given("hold", kHold);
    if (given) {
        return *given;
    }
    if (loading != Loading::beaded) {
        return post.assumed("hold", kHold, Use::used);
    }
    const std::string why = "beaded panes stand in rabbets on all edges";
    post.reading().assume(post.pointer_of("hold"), "rabbet", why);
    return {Hold::rabbet, {Origin::Kind::assumed, post.pointer_of("hold"), 0, why}};
}

Post read_post(ObjectReader post, Loading loading) {
    Post out;
    out.width = post.needed("width", LengthIn{kPositive});
    if (const auto depth = post.take("depth")) {
        out.depth = post.read(*depth, LengthIn{kPositive}).value_or(Sourced<double>{});
    } else {
        out.depth = {out.width.value, post.assume_rule("depth")};
    }
    out.section = post.or_default("section", kSection);
    out.hold = read_hold(post, loading);
    out.sawn = post.or_default("sawn", kPostSawn);
    read_post_joint(post, out);
    post.finish();
    return out;
}

Groove read_groove(ObjectReader groove) {
    Groove out;
    out.width = groove.needed("width", LengthIn{kPositive});
    ObjectReader depth = groove.needed_object("depth");
    out.base_depth = depth.needed("base", LengthIn{kPositive});
    out.top_depth = depth.needed("top", LengthIn{kPositive});
    out.post_depth = depth.needed("post", LengthIn{kPositive});
    depth.finish();
    groove.finish();
    return out;
}

}  // namespace

Frame read_frame(ObjectReader frame) {
    Frame out;
    out.timber = frame.needed("timber", TimberIn{});
    out.clear_height = frame.needed("clear_height", LengthIn{kPositive});
    out.base = read_plate(frame.needed_object("base"));
    out.top = read_plate(frame.needed_object("top"));
    out.loading = frame.or_default("loading", kLoading);
    out.post = read_post(frame.needed_object("post"), *out.loading);
    out.groove = read_groove(frame.needed_object("groove"));
    ObjectReader bead = frame.object("bead");
    const bool rabbets = *out.loading == Loading::beaded || *out.post.hold == Hold::rabbet;
    out.bead_width =
        bead.or_default("width", LengthIn{kPositive}, rabbets ? Use::used : Use::unused);
    bead.finish();
    frame.finish();
    return out;
}

}  // namespace bowfront::io
