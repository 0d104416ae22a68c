#include <dlfcn.h>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"
#include "bowfront/module/kernel_module.hpp"
#include "bowfront/step/step.hpp"
#include "module/read_back.hpp"
#include "support/sample_assembly.hpp"

namespace bowfront {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

// What an engagement measured on solids may differ from the sums, mm.
constexpr double kReach = 1e-6;

Part part(const std::string& id, const std::string& assembly, const Body& body,
          std::vector<Placement> placements) {
    Part made;
    made.id = id;
    made.name = "The " + id;
    made.assembly = assembly;
    made.group = "frame";
    made.body = body;
    made.placements = std::move(placements);
    return made;
}

/// A pane between two posts, on a plate and under another; and a form of two ribs.
SolidRequest sound_request() {
    SolidRequest request;
    request.title = "Pilot boat";
    request.stamp = {"2024-05-06T07:08:09", "bowfront", "1.2.3"};
    Body base = sample::block({-40, -40}, {340, 40}, 20);
    base.recesses.push_back({Region{Contour::rectangle({0, -2.4}, {300, 2.4}), {}}, 6});
    Body top = base;
    top.face = Face::low;
    const Body post = sample::notched_post(42, 4.8, 15, 380);
    request.parts = {
        part("base", "case", base, {sample::at(0, 0, -20)}),
        part("top", "case", top, {sample::at(0, 0, 380)}),
        part("post-left", "case", post, {sample::at(0, 0, 0)}),
        part("rib", "form-front", sample::block({0, 0}, {100, 70}, 18),
             {sample::at(0, 0, 0), sample::at(0, 0, 180)}),
        part("post-right", "case", post, {sample::turned(std::numbers::pi, {300, 0, 0})}),
        part("pane-front", "case", sample::block({9, -1.5}, {288.5, 1.5}, 389.5),
             {sample::at(0, 0, -6)}),
    };
    using Edge = EngagementProbe::Edge;
    request.probes = {{"front/bottom", "pane-front", "base", Edge::bottom, {}, 6},
                      {"front/top", "pane-front", "top", Edge::top, {}, 3.5},
                      {"front/start", "pane-front", "post-left", Edge::start, {9, 0}, 12},
                      {"front/end", "pane-front", "post-right", Edge::end, {288.5, 0}, 9.5}};
    return request;
}

TEST(SolidShop, makes_a_file_of_each_assembly_in_order) {
    std::vector<std::string> told;
    const SolidResult result = module::make_solids(
        sound_request(), [&](const std::string& step) { told.push_back(step); });
    ASSERT_THAT(result.files, SizeIs(2));
    EXPECT_EQ(result.files[0].assembly, "case");
    EXPECT_EQ(result.files[1].assembly, "form-front");
    EXPECT_EQ(result.files[0].difference, "");
    EXPECT_EQ(result.files[1].difference, "");
    EXPECT_THAT(step::read(result.files[0].text), SizeIs(5));
    const auto ribs = step::read(result.files[1].text);
    ASSERT_THAT(ribs, SizeIs(2));
    EXPECT_EQ(ribs[1].name, "The rib");
    EXPECT_EQ(ribs[1].group, "frame");
    EXPECT_THAT(told, testing::Contains(HasSubstr("form-front")));
    EXPECT_THAT(result.interferences, IsEmpty());
}

TEST(SolidShop, measures_engagements_that_agree_with_the_sums) {
    const SolidResult result = module::make_solids(sound_request(), {});
    ASSERT_THAT(result.engagements, SizeIs(4));
    for (const MeasuredEngagement& engagement : result.engagements) {
        EXPECT_NEAR(engagement.measured, engagement.expected, kReach) << engagement.about;
    }
}

TEST(SolidShop, names_the_parts_that_stand_in_one_place_within_an_assembly) {
    SolidRequest request = sound_request();
    request.parts[5].body.section.outer = Contour::rectangle({9, -2.5}, {288.5, 2.5});
    request.parts[3].placements[1] = sample::at(0, 0, 10);  // ribs are 18 thick
    const SolidResult result = module::make_solids(request, {});
    std::vector<std::string> pairs;
    for (const Interference& interference : result.interferences) {
        pairs.push_back(interference.first + "+" + interference.second);
        EXPECT_GT(interference.depth, 0.05);
        EXPECT_GT(interference.volume, 0);
    }
    EXPECT_THAT(pairs, ElementsAre("base+pane-front", "top+pane-front", "post-left+pane-front",
                                   "post-right+pane-front", "rib+rib"));
}

TEST(SolidShop, refuses_a_request_that_does_not_hold_together) {
    SolidRequest request = sound_request();
    request.probes[0].frame_part = "bottom";
    EXPECT_THROW(static_cast<void>(module::make_solids(request, {})), ContractError);
    request = sound_request();
    request.parts[0].placements.clear();
    EXPECT_THROW(static_cast<void>(module::make_solids(request, {})), ContractError);
    request = sound_request();
    request.parts[0].body.height = -1;
    EXPECT_THROW(static_cast<void>(module::make_solids(request, {})), KernelError);
}

TEST(SolidShop, answers_alike_through_the_module) {
    void* opened = dlopen(BOWFRONT_KERNEL_MODULE, RTLD_NOW | RTLD_LOCAL);
    ASSERT_NE(opened, nullptr) << dlerror();
    const auto make = reinterpret_cast<module::Entry>(dlsym(opened, module::kEntryName));
    ASSERT_NE(make, nullptr);
    SolidResult through;
    make(sound_request(), {}, through);
    const SolidResult direct = module::make_solids(sound_request(), {});
    ASSERT_THAT(through.files, SizeIs(2));
    EXPECT_EQ(through.files[0].text, direct.files[0].text);
    EXPECT_EQ(through.files[1].text, direct.files[1].text);
    SolidRequest broken = sound_request();
    broken.parts[2].body.height = -1;
    try {
        make(broken, {}, through);
        ADD_FAILURE() << "a negative height passed";
    } catch (const KernelError& error) {  // thrown by code of the module
        EXPECT_EQ(error.part(), "post-left");
    }
}

TEST(ReadBack, shows_the_first_difference) {
    const step::Assembly written = sample::assembly();
    const auto read = step::read(step::write(written, {}));
    EXPECT_EQ(module::difference(written, read), "");
    auto changed = read;
    changed.pop_back();
    EXPECT_THAT(module::difference(written, changed), HasSubstr("9 instances were written, 8"));
    changed = read;
    changed[3].name = "Bottom";
    EXPECT_THAT(module::difference(written, changed), HasSubstr("'Bottom'"));
    changed = read;
    changed[3].group = "glazing";
    EXPECT_THAT(module::difference(written, changed), HasSubstr("glazing"));
    changed = read;
    changed[3].measures.volume *= 1 + 1e-8;
    EXPECT_THAT(module::difference(written, changed), HasSubstr("'Base'"));
    changed = read;
    changed[3].measures.box.high.y += 1e-5;
    EXPECT_THAT(module::difference(written, changed), HasSubstr("'Base'"));
    changed = read;
    changed[0] = changed[1];
    EXPECT_THAT(module::difference(written, changed), HasSubstr("'Pad'"))
        << "one instance read twice, another not at all";
}

}  // namespace
}  // namespace bowfront
