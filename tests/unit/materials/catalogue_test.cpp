#include "bowfront/materials/catalogue.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <sstream>

namespace bowfront {
namespace {

using testing::AnyOf;
using testing::HasSubstr;

using Properties = std::vector<Property>;

void collect(Properties& into, const std::optional<Property>& property) {
    if (property) {
        into.push_back(*property);
    }
}

Properties properties(const Sheet& sheet) {
    Properties all{sheet.density,
                   sheet.modulus,
                   sheet.poisson,
                   sheet.expansion,
                   sheet.flexural_strength,
                   sheet.shrink_along,
                   sheet.shrink_across,
                   sheet.shrink_spread_along,
                   sheet.shrink_spread_across,
                   sheet.springback,
                   sheet.springback_spread,
                   thickness_tolerance(sheet, 2),
                   thickness_tolerance(sheet, 6)};
    for (const auto& each :
         {sheet.long_term_stress, sheet.cold_bend_multiple, sheet.conductivity, sheet.heat_capacity,
          sheet.glass_transition, sheet.service_max, drying_time(sheet, 3)}) {
        collect(all, each);
    }
    if (sheet.forming) {
        all.insert(all.end(),
                   {sheet.forming->core_min, sheet.forming->set, sheet.forming->face_max});
        collect(all, sheet.forming->drying);
    }
    if (sheet.moisture) {
        all.push_back({.value = 0,
                       .unit = "ratio",
                       .source = sheet.moisture->source,
                       .certainty = sheet.moisture->certainty,
                       .note = sheet.moisture->note});
    }
    return all;
}

Properties properties(const Timber& timber) {
    Properties all;
    for (const auto& each :
         {timber.radial_coefficient, timber.tangential_coefficient, timber.radial_shrinkage,
          timber.tangential_shrinkage, timber.specific_gravity, timber.density(), timber.modulus,
          timber.modulus_of_rupture, timber.compression_parallel, timber.compression_perpendicular,
          timber.shear, timber.hardness}) {
        collect(all, each);
    }
    return all;
}

Properties properties(const Board& board) {
    Properties all{board.density};
    for (const double thickness : {3.0, 15.0}) {
        collect(all, bend_radius(board, thickness, BendState::dry));
        collect(all, bend_radius(board, thickness, BendState::soaked));
    }
    return all;
}

// Calls `check(name, properties, description)` for every material.
template <class Check>
void for_each_material(Check check) {
    const auto each_of = [&](const auto& materials) {
        for (const auto& material : materials) {
            check(material.name, properties(material), describe(material));
        }
    };
    each_of(sheets());
    each_of(timbers());
    each_of(boards());
}

// Text with every run of blanks and line breaks as one blank, so that wrapping can't hide words.
std::string flowed(const std::string& text) {
    std::istringstream words(text);
    std::string out;
    for (std::string word; words >> word;) {
        out += (out.empty() ? "" : " ") + word;
    }
    return out;
}

std::vector<std::string> lines(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> all;
    for (std::string line; std::getline(in, line);) {
        all.push_back(line);
    }
    return all;
}

TEST(Materials, give_every_value_a_unit_a_source_and_a_sane_range) {
    const std::set<std::string_view> units{"kg/m3", "MPa", "ratio",   "1/K",      "degC",  "mm",
                                           "h",     "N",   "W/(m K)", "J/(kg K)", "1/% MC"};
    for_each_material([&](std::string_view name, const Properties& all, const std::string&) {
        EXPECT_FALSE(all.empty()) << name;
        for (const Property& each : all) {
            EXPECT_FALSE(each.source.empty()) << name << ' ' << each.value;
            EXPECT_TRUE(units.contains(each.unit)) << name << ' ' << each.unit;
            EXPECT_TRUE(std::isfinite(each.value)) << name;
            if (each.range) {
                EXPECT_LT(each.range->first, each.range->second) << name << ' ' << each.value;
                EXPECT_GE(each.value, each.range->first) << name;
                EXPECT_LE(each.value, each.range->second) << name;
            }
        }
    });
}

TEST(Materials, of_memory_alone_claim_no_document_but_a_table_by_name) {
    for_each_material([](std::string_view name, const Properties& all, const std::string&) {
        for (const Property& each : all) {
            if (each.certainty == Certainty::remembered) {
                EXPECT_THAT(std::string(each.source),
                            AnyOf("no document seen", HasSubstr("Wood Handbook")))
                    << name;
            } else {
                EXPECT_NE(each.source, "no document seen") << name << ' ' << each.value;
            }
        }
    });
}

TEST(MaterialNames, are_complete_and_unique) {
    const auto names = material_names();
    EXPECT_EQ(names.size(), sheets().size() + timbers().size() + boards().size());
    EXPECT_EQ(std::set(names.begin(), names.end()).size(), names.size());
    for (const std::string_view name : names) {
        EXPECT_TRUE(find_sheet(name) || find_timber(name) || find_board(name)) << name;
    }
}

TEST(MaterialNames, are_words_joined_by_hyphens) {
    for (const std::string_view name : material_names()) {
        EXPECT_TRUE(std::all_of(name.begin(), name.end(), [](char c) {
            return (c >= 'a' && c <= 'z') || c == '-';
        })) << name;
    }
}

TEST(ListMaterials, has_a_line_for_every_name) {
    const auto all = lines(list_materials());
    for (const std::string_view name : material_names()) {
        const std::string start = "  " + std::string(name) + "  ";
        EXPECT_EQ(std::count_if(all.begin(), all.end(),
                                [&](const std::string& line) { return line.starts_with(start); }),
                  1)
            << name;
    }
}

TEST(ListMaterials, says_what_chooses_between_them) {
    const std::string text = list_materials();
    EXPECT_THAT(text, HasSubstr("cast acrylic (PMMA); 1190 kg/m3, formed at 165 degC\n"));
    EXPECT_THAT(text, HasSubstr("560 kg/m3, moves 0.126 % radially, 0.248 % tangentially"));
}

TEST(Describe, mentions_every_source_status_and_note) {
    for_each_material([](std::string_view name, const Properties& all, const std::string& raw) {
        const std::string text = flowed(raw);
        for (const Property& each : all) {
            EXPECT_THAT(text, HasSubstr(std::string(each.source))) << name;
            EXPECT_THAT(text, HasSubstr(std::string(certainty_text(each.certainty)))) << name;
            EXPECT_THAT(text, HasSubstr(std::string(each.note))) << name;
        }
    });
}

TEST(Describe, gives_a_source_and_a_note_one_mark_however_many_values_share_them) {
    const std::string text = flowed(describe(*find_sheet("cast-acrylic")));
    const auto count = [&](std::string_view part) {
        int found = 0;
        for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
            ++found;
        }
        return found;
    };
    EXPECT_EQ(count("a sheet maker's thermoforming brief"), 1);
    EXPECT_EQ(count("measure a coupon of the same batch"), 1);
    EXPECT_EQ(count("[11] i "), 2) << "shrink along and across";
}

TEST(Describe, begins_with_the_name_and_ends_with_a_line_break) {
    EXPECT_TRUE(describe(*find_sheet("cast-acrylic")).starts_with("cast-acrylic: cast acrylic"));
    EXPECT_TRUE(describe(*find_timber("ash")).starts_with("ash: white ash"));
    EXPECT_TRUE(describe(*find_board("plywood")).starts_with("plywood: plywood"));
    for_each_material([](std::string_view, const Properties&, const std::string& text) {
        EXPECT_EQ(text.back(), '\n');
        EXPECT_EQ(text.find("\n\n\n"), std::string::npos);
    });
}

TEST(Describe, sets_sources_in_one_column_and_wraps_the_rest) {
    constexpr std::size_t kWidth = 100;
    for_each_material([&](std::string_view name, const Properties&, const std::string& text) {
        const auto all = lines(text);
        std::set<std::size_t> columns;
        bool in_rows = true;
        for (const std::string& line : all) {
            in_rows = in_rows && line != "Sources";
            if (in_rows && line.starts_with("  ")) {
                columns.insert(line.find('['));
            } else if (!in_rows) {
                EXPECT_LE(line.size(), kWidth) << name;
            }
            EXPECT_FALSE(line.ends_with(' ')) << name << ": " << line;
        }
        EXPECT_EQ(columns.size(), 1U) << name;
    });
}

TEST(Describe, shows_a_value_with_unit_range_source_and_status) {
    const std::string text = flowed(describe(*find_sheet("cast-acrylic")));
    EXPECT_THAT(text, HasSubstr("density 1190 kg/m3 1180 to 1190 [1] read in the source"));
    EXPECT_THAT(text, HasSubstr("shrink along 1.5 % 0 to 2 [11] i choice of this tool"));
    EXPECT_THAT(text, HasSubstr("thermal expansion 0.000072 1/K"));
    EXPECT_THAT(text, HasSubstr("thickness of 3 mm, +- 0.7 mm"));
    EXPECT_THAT(text, HasSubstr("growth at 60 % humidity 0.2 %"));
}

}  // namespace
}  // namespace bowfront
