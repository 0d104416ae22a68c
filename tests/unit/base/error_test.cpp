#include "bowfront/base/error.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <string>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(Diagnostic, says_where_what_and_what_would_be_right) {
    Diagnostic fault{.code = Code::input_value,
                     .file = "case.json",
                     .line = 4,
                     .column = 12,
                     .pointer = "/plan/width",
                     .found = "-520 mm is not above 0",
                     .wanted = "give a length over 0"};
    EXPECT_EQ(fault.text(),
              "case.json:4:12: BF-IN-004 /plan/width: -520 mm is not above 0; give a length over 0");
    fault.line = 0;
    fault.pointer = "";
    fault.wanted = "";
    EXPECT_EQ(fault.text(), "case.json: BF-IN-004: -520 mm is not above 0");
    fault.file = "";
    EXPECT_EQ(fault.text(), "BF-IN-004: -520 mm is not above 0");
}

TEST(InputError, holds_every_fault_and_tells_each_on_a_line) {
    Diagnostic first;
    first.code = Code::input_unknown_key;
    first.found = "\"widht\" is not known";
    Diagnostic second;
    second.code = Code::input_missing_key;
    second.found = "\"width\" is missing";
    const InputError error({first, second});
    EXPECT_EQ(error.diagnostics().size(), 2U);
    EXPECT_STREQ(error.what(),
                 "BF-IN-005: \"widht\" is not known\nBF-IN-006: \"width\" is missing");
}

TEST(IoError, names_path_and_reason) {
    const IoError error("out/case", "no space left");
    EXPECT_STREQ(error.what(), "BF-OUT-002 out/case: no space left");
    const IoError refused("out/case", "is not empty", Code::output_refused);
    EXPECT_STREQ(refused.what(), "BF-OUT-001 out/case: is not empty");
    EXPECT_EQ(error.path(), "out/case");
    EXPECT_EQ(error.reason(), "no space left");
}

TEST(KernelError, names_operation_part_and_detail) {
    const KernelError error("prism", "post-front-left", "not done");
    EXPECT_STREQ(error.what(), "solid kernel: prism of post-front-left: not done");
    EXPECT_EQ(error.operation(), "prism");
    EXPECT_EQ(error.part(), "post-front-left");
    EXPECT_EQ(error.detail(), "not done");
}

TEST(Codes, have_texts_of_their_own_in_the_order_of_the_list) {
    std::set<std::string_view> texts;
    int next = 0;
    for (const CodeEntry& entry : code_table()) {
        EXPECT_EQ(static_cast<int>(entry.code), next++) << entry.text;
        EXPECT_TRUE(texts.insert(entry.text).second) << entry.text << " stands twice";
        EXPECT_THAT(std::string(entry.text), testing::MatchesRegex("BF-[A-Z]+-[0-9][0-9][0-9]"));
        EXPECT_FALSE(entry.meaning.empty());
        EXPECT_EQ(code_text(entry.code), entry.text);
    }
    // The last of the list: a code added behind it has to be entered in the table as well.
    EXPECT_EQ(code_table().back().code, Code::output_failed);
}

void promise(double width) { BOWFRONT_EXPECTS(width > 0); }

TEST(Contract, names_the_promise_but_not_the_builder_s_machine) {
    EXPECT_NO_THROW(promise(1));
    try {
        promise(0);
        FAIL() << "a broken promise passed";
    } catch (const ContractError& error) {
        EXPECT_THAT(error.what(), HasSubstr("width > 0"));
        EXPECT_THAT(error.what(), HasSubstr("error_test.cpp:"));
        EXPECT_THAT(error.what(), Not(HasSubstr("/")));
    }
}

}  // namespace
}  // namespace bowfront
