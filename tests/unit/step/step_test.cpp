#include "bowfront/step/step.hpp"

#include <algorithm>
#include <thread>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"
#include "support/sample_assembly.hpp"

namespace bowfront {
namespace {

using step::ReadInstance;
using testing::HasSubstr;
using testing::Not;

// Half of the last of 13 digits of a coordinate up to 1 m, as a share of a sheet 1 mm thick.
constexpr double kFileVolume = 1e-9;
constexpr double kFilePoint = 1e-6;

const Stamp kStamp{"2024-05-06T07:08:09", "bowfront", "1.2.3"};

/// One file for the tests that only look at it: making it anew for each would be most of their
/// time.
const std::string& sample_text() {
    static const std::string text = step::write(sample::assembly(), kStamp);
    return text;
}

std::string read_fault(const std::string& text) {
    try {
        static_cast<void>(step::read(text));
    } catch (const KernelError& error) {
        return error.what();
    }
    return "none";
}

TEST(Step, reads_back_every_instance_in_its_place) {
    const step::Assembly assembly = sample::assembly();
    const std::vector<ReadInstance> read = step::read(sample_text());
    std::size_t instances = 0;
    for (const step::Item& item : assembly.items) {
        for (const Placement& placement : item.placements) {
            ++instances;
            const Measures wanted = solid::measure(item.solid.placed(placement));
            const auto found = std::find_if(read.begin(), read.end(), [&](const auto& instance) {
                return instance.name == item.name && instance.group == item.group &&
                       std::abs(instance.measures.box.low.x - wanted.box.low.x) < kFilePoint &&
                       std::abs(instance.measures.box.low.y - wanted.box.low.y) < kFilePoint &&
                       std::abs(instance.measures.box.high.z - wanted.box.high.z) < kFilePoint;
            });
            ASSERT_NE(found, read.end()) << item.name;
            EXPECT_NEAR(found->measures.volume, item.volume, kFileVolume * item.volume);
            EXPECT_NEAR(found->measures.area, wanted.area, kFileVolume * wanted.area);
            EXPECT_NEAR(found->measures.centroid.y, wanted.centroid.y, kFilePoint);
            EXPECT_EQ(found->measures.faces, wanted.faces);
        }
    }
    EXPECT_EQ(read.size(), instances);
}

TEST(Step, says_who_made_it_and_nothing_of_the_machine) {
    EXPECT_THAT(sample_text(), HasSubstr("'2024-05-06T07:08:09'"));
    EXPECT_THAT(sample_text(), HasSubstr("'bowfront 1.2.3'"));
    EXPECT_THAT(sample_text(), HasSubstr("AUTOMOTIVE_DESIGN"));
    EXPECT_THAT(sample_text(), Not(HasSubstr("Open CASCADE STEP translator")));
}

TEST(Step, gives_the_same_bytes_again) {
    EXPECT_EQ(step::write(sample::assembly(), kStamp), sample_text());
    step::Assembly other = sample::assembly();
    other.items.pop_back();
    EXPECT_NE(step::write(other, kStamp), sample_text());
    EXPECT_EQ(step::write(sample::assembly(), kStamp), sample_text());
}

TEST(Step, gives_the_same_bytes_from_threads_at_once) {
    const step::Assembly assembly = sample::assembly();
    constexpr std::size_t kThreads = 4;
    constexpr std::size_t kRounds = 4;
    std::vector<std::size_t> equal(kThreads, 0);
    std::vector<std::thread> threads;
    for (std::size_t& count : equal) {
        threads.emplace_back([&] {
            for (std::size_t round = 0; round < kRounds; ++round) {
                count += step::write(assembly, kStamp) == sample_text() ? 1U : 0U;
            }
        });
    }
    for (std::thread& thread : threads) {
        thread.join();
    }
    EXPECT_THAT(equal, testing::Each(kRounds));
}

TEST(Step, brings_any_name_back) {
    for (const std::string name :
         {"it's", "'quoted'", "a, 'b', c", "('x')", "ends in '", "back\\slash", "\\X2\\00F6\\X0\\",
          "Möwe; 玻璃 🚢", "/* no comment */", "#1=A();", "  blanks  "}) {
        step::Assembly assembly{name,
                                {sample::item("pad", name, name, Finish::glass,
                                              sample::block({0, 0}, {20, 20}, 3), {Placement{}})}};
        const auto read = step::read(step::write(assembly, kStamp));
        ASSERT_EQ(read.size(), 1U);
        EXPECT_EQ(read[0].name, name);
        EXPECT_EQ(read[0].group, name);
    }
}

TEST(Step, keeps_two_parts_of_one_solid_apart) {
    const Solid pad = solid::make(sample::block({0, 0}, {20, 20}, 3), "pad");
    const Solid raised = pad.placed(sample::at(0, 0, 50));
    const step::Assembly assembly{
        "pads",
        {{"a", "A", "", Finish::glass, pad, 1200, {sample::at(0, 0, 0)}},
         {"b", "B", "", Finish::glass, pad, 1200, {sample::at(40, 0, 0)}},
         {"c", "C", "", Finish::glass, raised, 1200, {sample::at(0, 0, 100)}}}};
    const auto read = step::read(step::write(assembly, kStamp));
    ASSERT_EQ(read.size(), 3U);
    EXPECT_EQ(read[0].name, "A");
    EXPECT_EQ(read[1].name, "B");
    EXPECT_EQ(read[2].name, "C");
    EXPECT_NEAR(read[2].measures.box.low.z, 150, kFilePoint);
}

TEST(Step, is_not_written_of_a_broken_assembly) {
    step::Assembly assembly = sample::assembly();
    assembly.items[1].id = assembly.items[0].id;
    EXPECT_THROW(static_cast<void>(step::write(assembly, kStamp)), ContractError);
    assembly = sample::assembly();
    assembly.items[1].placements.clear();
    EXPECT_THROW(static_cast<void>(step::write(assembly, kStamp)), ContractError);
    assembly.items.clear();
    EXPECT_THROW(static_cast<void>(step::write(assembly, kStamp)), ContractError);
}

TEST(StepText, cut_short_anywhere_is_refused) {
    const std::string& text = sample_text();
    constexpr std::size_t kPlaces = 200;
    for (std::size_t place = 0; place < kPlaces; ++place) {
        EXPECT_NE(read_fault(text.substr(0, text.size() * place / kPlaces)), "none") << place;
    }
}

TEST(StepText, with_a_stretch_missing_is_refused_or_read_whole_but_never_crashes) {
    const std::string& text = sample_text();
    const std::size_t body = text.find("DATA;");
    const std::size_t stretch = text.size() / 97;  // a prime, so that cuts fall anywhere in records
    std::size_t refused = 0;
    for (std::size_t from = body; from + 2 * stretch < text.size(); from += stretch) {
        std::string gap = text;
        gap.erase(from, stretch);
        refused += read_fault(gap) != "none" ? 1U : 0U;
    }
    EXPECT_GT(refused, 90U);
}

/// The text with the first record of a kind given other parameters.
std::string with_record(const std::string& keyword, const std::string& parameters) {
    std::string text = sample_text();
    const std::size_t from = text.find(keyword + "(") + keyword.size();
    return text.replace(from, text.find(";\n", from) - from, parameters);
}

TEST(StepText, with_records_that_the_kernel_falls_over_is_refused) {
    EXPECT_THAT(read_fault(with_record("CARTESIAN_POINT", "('',(0.,0.))")),
                HasSubstr("StepGeom_Axis2Placement3d is incomplete"));
    EXPECT_THAT(read_fault(with_record("SHAPE_DEFINITION_REPRESENTATION", "(#2,#10)")),
                HasSubstr("Entity has illegal type"));
    EXPECT_NE(read_fault(with_record("VERTEX_POINT", "('',#2)")), "none");
}

TEST(StepText, that_is_none_is_refused) {
    const std::string shell =
        "ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\nENDSEC;\nEND-ISO-10303-21;\n";
    for (const std::string& text :
         {std::string(), std::string("\0\0\0", 3), std::string("solid cube\nendsolid\n"), shell,
          std::string("ISO-10303-21;END-ISO-10303-21;")}) {
        EXPECT_NE(read_fault(text), "none") << text;
    }
}

TEST(StepText, leaves_standard_output_alone) {
    testing::internal::CaptureStdout();
    static_cast<void>(step::read(step::write(sample::assembly(), kStamp)));
    EXPECT_NE(read_fault(sample_text().substr(0, 40000)), "none");
    std::string gap = sample_text();
    gap.erase(40000, 3000);
    EXPECT_NE(read_fault(gap), "none");
    EXPECT_EQ(testing::internal::GetCapturedStdout(), "");
}

}  // namespace
}  // namespace bowfront
