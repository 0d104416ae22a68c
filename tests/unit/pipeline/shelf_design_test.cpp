// Shelves from the text of a case file to findings, advice and parts.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "bowfront/base/error.hpp"
#include "bowfront/io/edited_text.hpp"
#include "bowfront/pipeline/advise.hpp"
#include "bowfront/pipeline/design.hpp"

namespace bowfront {
namespace {

using testing::Contains;
using testing::Field;
using testing::HasSubstr;

constexpr study::ChanceOptions kChance{1000, 1};

std::string with_shelf(const std::string& shelf) {
    std::string text =
        read_text(BOWFRONT_SOURCE_DIR "/examples/pilot-boat/case.json", io::kMostBytes);
    const std::string before = "\"fit\":";
    return text.replace(text.find(before), before.size(),
                        "\"shelves\": [ { " + shelf + " } ],\n  " + before);
}

constexpr const char* kThin =
    R"("height": 120, "material": "cast-acrylic", "thickness": 6, "load": "5 kg")";

Design advised(const std::string& text) {
    Design of = design(text, "case.json", kChance);
    advise(of, text);
    return of;
}

const Finding& finding(const Design& of, std::string_view id) {
    return *std::ranges::find(of.findings, id, &Finding::id);
}

TEST(ShelfDesign, names_changes_that_settle_its_findings) {
    const std::string text = with_shelf(kThin);
    const Design of = advised(text);
    const Finding& sag = finding(of, "shelf-sag");
    ASSERT_EQ(sag.status, Status::fail);
    ASSERT_THAT(sag.changes, Contains(Field(&Change::pointer, "/shelves/0/thickness")));
    for (const Change& change : sag.changes) {
        io::EditedText edited(text);
        edited.put(change.pointer, change.to);
        EXPECT_EQ(finding(design(edited.text(), "case.json", kChance), "shelf-sag").status,
                  change.after)
            << change.words;
    }
}

TEST(ShelfDesign, names_the_clearance_that_a_leaning_pane_leaves) {
    const Design of = advised(with_shelf(
        R"("height": 120, "material": "plywood", "thickness": 18, "load": "1 kg", "clearance": "0.3 mm")"));
    const Finding& room = finding(of, "shelf-room");
    ASSERT_EQ(room.status, Status::warn);
    EXPECT_THAT(room.changes, Contains(Field(&Change::pointer, "/shelves/0/clearance")));
}

TEST(ShelfDesign, tells_objections_with_their_places) {
    try {
        (void)design(
            with_shelf(R"("height": 400, "material": "plywood", "thickness": 9, "load": "5 kg")"),
            "case.json", kChance);
        FAIL() << "a shelf in the top was taken";
    } catch (const InputError& error) {
        ASSERT_EQ(error.diagnostics().size(), 1U);
        const Diagnostic& fault = error.diagnostics().front();
        EXPECT_EQ(fault.code, Code::input_contradiction);
        EXPECT_EQ(fault.pointer, "/shelves/0/height");
        EXPECT_GT(fault.line, 0U);
        EXPECT_THAT(fault.text(), HasSubstr("at most the clear height of 380 mm"));
    }
}

TEST(ShelfDesign, explains_its_figures_down_to_the_file) {
    const Design of = design(with_shelf(kThin), "case.json", kChance);
    const std::string told = explain_figure(of, "shelves/shelf-1/sag/nominal", false);
    EXPECT_THAT(told, HasSubstr("a plate on its corners alone"));
    EXPECT_THAT(told, HasSubstr("/shelves/0/load"));
    EXPECT_THAT(told, HasSubstr("the modulus of acrylic falls to about half"));
}

}  // namespace
}  // namespace bowfront
