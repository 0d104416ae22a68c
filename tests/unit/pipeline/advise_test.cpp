#include "bowfront/pipeline/advise.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <optional>
#include <random>

#include "bowfront/base/error.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/io/edited_text.hpp"

namespace bowfront {
namespace {

using testing::HasSubstr;

/// The seed is printed with every failure; files that can't be built are drawn again.
constexpr unsigned kSeed = 20240917;
constexpr int kFiles = 6;
constexpr study::ChanceOptions kChance{1000, 1};

std::string pilot_boat_text() {
    return read_text(BOWFRONT_SOURCE_DIR "/examples/pilot-boat/case.json", io::kMostBytes);
}

std::string with(const std::string& text,
                 const std::vector<std::pair<std::string, std::string>>& values) {
    io::EditedText edited(text);
    for (const auto& [pointer, value] : values) {
        edited.put(pointer, value);
    }
    return edited.text();
}

using Statuses = std::map<std::pair<std::string, std::string>, Status>;

Statuses statuses(const std::vector<Finding>& findings) {
    Statuses all;
    for (const Finding& finding : findings) {
        all[{finding.id, finding.about}] = finding.status;
    }
    return all;
}

Status status_in(const Statuses& all, const std::pair<std::string, std::string>& name) {
    const auto found = all.find(name);
    return found == all.end() ? Status::pass : found->second;
}

// Case files with sizes, words and units drawn at random, each of them near to what fits.
class RandomFiles {
  public:
    std::string next() {
        for (;;) {
            std::string text = drawn();
            try {
                (void)design(text, "case.json", kChance);
                return text;
            } catch (const InputError&) {
                continue;
            }
        }
    }

  private:
    double draw(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    std::string length(double low, double high) {
        const double value = draw(low, high);
        constexpr double kInch = 25.4;
        switch (std::uniform_int_distribution<int>(0, 5)(random_)) {
            case 0: return '"' + rounded_text(value, 2) + " mm\"";
            case 1: return '"' + rounded_text(value / kInch, 3) + " in\"";
            case 2: return '"' + rounded_text(value / 10, 3) + " cm\"";
            default: return rounded_text(value, 1);
        }
    }
    std::string pick(std::initializer_list<const char*> words) {
        const auto at = std::uniform_int_distribution<std::size_t>(0, words.size() - 1)(random_);
        return words.begin()[at];
    }

    std::string drawn() {
        io::EditedText edited(pilot_boat_text());
        const std::string loading = pick({"slide-in", "beaded", "lift-and-drop"});
        edited.put("/frame/loading", '"' + loading + '"');
        edited.put("/frame/post/hold", loading == "slide-in" ? "\"groove\"" : "\"rabbet\"");
        edited.put("/frame/post/section", pick({"\"fitted\"", "\"square\""}));
        edited.put("/plan/width", length(400, 700));
        edited.put("/plan/depth", length(200, 300));
        edited.put("/plan/front", "{ \"rise\": " + length(30, 110) + " }");
        edited.put("/frame/clear_height", length(300, 500));
        edited.put("/frame/base/margin", length(18, 32));
        edited.put("/frame/top/margin", length(18, 32));
        edited.put("/frame/groove/width", length(3.4, 6));
        edited.put("/frame/groove/depth/base", length(2, 14));
        edited.put("/frame/groove/depth/top", length(8, 17));
        edited.put("/frame/groove/depth/post", length(11, 17));
        edited.put("/fit/end_clearance", length(0, 7));
        edited.put("/fit/top_clearance", length(0, 9));
        edited.put("/cutter/diameter", length(2, 5));
        edited.put("/oven/inside", "[" + length(480, 700) + ", " + length(380, 500) + ", 400]");
        edited.put("/oven/set", pick({"\"160 C\"", "\"166 C\"", "\"170 C\"", "\"340 F\""}));
        edited.put("/form/skin/thickness", length(1, 8));
        if (draw(0, 1) < 0.4) {
            edited.put("/panes/0/blank",
                       "{ \"length\": " + length(540, 570) + ", \"width\": " + length(390, 405) + " }");
        } else if (draw(0, 1) < 0.3) {
            edited.put("/blank", R"({ "method": "trim-after", "trim": 12 })");
        }
        return edited.text();
    }

    std::mt19937_64 random_{kSeed};
};

// The law of advice: done to the file and read anew, a change does what it says, and no harm.
TEST(Advise, tells_of_each_change_what_it_does_to_the_file) {
    RandomFiles files;
    std::size_t tried = 0;
    for (int i = 0; i < kFiles; ++i) {
        const std::string text = files.next();
        Design before = design(text, "case.json", kChance);
        advise(before, text);
        const Statuses old = statuses(before.findings);
        for (const Finding& finding : before.findings) {
            for (const Change& change : finding.changes) {
                SCOPED_TRACE(testing::Message()
                             << "seed " << kSeed << ", file " << i << ": " << finding.id << ' '
                             << finding.about << ": " << change.words << "\n" << text);
                ++tried;
                const Design after =
                    design(with(text, {{change.pointer, change.to}}), "case.json", kChance);
                const Statuses now = statuses(after.findings);
                EXPECT_EQ(change.before, finding.status);
                EXPECT_EQ(status_in(now, {finding.id, finding.about}), change.after);
                EXPECT_LT(change.after, change.before);
                for (const auto& [name, status] : now) {
                    const bool told =
                        std::count(change.brings.begin(), change.brings.end(),
                                   name.first + " " + name.second) != 0;
                    EXPECT_TRUE(status <= status_in(old, name) || (told && status == Status::warn))
                        << name.first << ' ' << name.second;
                }
            }
        }
    }
    EXPECT_GT(tried, 200U);
}

TEST(Corrected, case_reads_anew_as_told_and_ends_better_than_it_began) {
    RandomFiles files;
    const auto count = [](const std::vector<Finding>& findings) {
        std::size_t sum = 0;
        for (const Finding& finding : findings) {
            sum += static_cast<std::size_t>(finding.status);
        }
        return sum;
    };
    for (int i = 0; i < 2; ++i) {
        const std::string text = files.next();
        SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", file " << i << "\n" << text);
        const Corrected result = corrected(text, "case.json", kChance);
        std::string replayed = text;
        for (const Correction& one : result.made) {
            replayed = with(replayed, {{one.change.pointer, one.change.to}});
        }
        EXPECT_EQ(replayed, result.text);
        const Design again = design(result.text, "case.json", kChance);
        EXPECT_EQ(statuses(again.findings), statuses(result.after.findings));
        EXPECT_LE(result.after.verdict(), result.before.verdict());
        if (!result.made.empty()) {
            EXPECT_LT(count(result.after.findings), count(result.before.findings));
        }
    }
}

// A blank that was cut to the finished size: the heat takes 1.5 % of it.
std::string cut_to_finished_size() {
    const Design design = bowfront::design(pilot_boat_text(), "case.json", kChance);
    const auto& front = *design.sums.pane(CaseSide::front);
    return with(pilot_boat_text(),
                {{"/panes/0/blank", "{ \"length\": " + rounded_text(front.length, 1) +
                                        ", \"width\": " + rounded_text(front.height, 1) + " }"}});
}

TEST(Corrected, blank_that_was_cut_to_the_finished_size_is_cut_larger) {
    const Corrected result = corrected(cut_to_finished_size(), "case.json", kChance);
    EXPECT_EQ(result.before.verdict(), Status::fail);
    EXPECT_NE(result.after.verdict(), Status::fail);
    ASSERT_GE(result.made.size(), 2U);
    EXPECT_EQ(result.made[0].change.pointer, "/panes/0/blank/length");
    EXPECT_EQ(result.made[1].change.pointer, "/panes/0/blank/width");
}

TEST(Advise, tells_the_loss_by_shrink_of_each_edge_that_fails_by_it) {
    Design design = bowfront::design(cut_to_finished_size(), "case.json", kChance);
    advise(design, cut_to_finished_size());
    std::vector<std::string> edges;
    for (const Finding* const finding : worst_first(design.findings)) {
        if (finding->code == Code::fit_engagement) {
            edges.push_back(finding->about);
            EXPECT_FALSE(finding->changes.empty());
            // 542.7 mm and 393.5 mm, each times 0.015.
            EXPECT_THAT(finding->note, HasSubstr(finding->about == "front/top" ? "shrink takes 5.9 mm"
                                                                               : "shrink takes 8.14 mm"));
        }
    }
    EXPECT_EQ(edges, (std::vector<std::string>{"front/start", "front/end", "front/top"}));
}

TEST(Corrected, says_so_where_nothing_helps) {
    const std::string text = pilot_boat_text();
    const std::string wide = with(text, {{"/frame/groove/width", "5.8"}});
    const Corrected result = corrected(wide, "case.json", kChance);
    EXPECT_TRUE(result.made.empty());
    EXPECT_EQ(result.text, wide);
    EXPECT_EQ(result.after.verdict(), Status::warn);
}

TEST(Advise, is_shown_by_explain) {
    const std::string text = pilot_boat_text();
    Design design = bowfront::design(text, "case.json", kChance);
    advise(design, text);
    EXPECT_THAT(explain_figure(design, "checks/radius-contact/front", false),
                HasSubstr("/frame/groove/width from 4.8 to 5.5"));
    EXPECT_THAT(explain_figure(design, "checks/radius-contact/front", true),
                HasSubstr("\"pointer\": \"/frame/groove/width\""));
}

}  // namespace
}  // namespace bowfront
