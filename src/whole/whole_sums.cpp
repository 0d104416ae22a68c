#include "bowfront/whole/whole_sums.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/geom/hull.hpp"

namespace bowfront::whole {
namespace {

constexpr double kGravity = 9.80665;  // m/s², standard
constexpr std::string_view kMoments =
    "the centre of several masses is their mean, each by its mass";

// The share of the sum of its members' capabilities that a team of so many has.
constexpr std::array kTeamShares{1.0, 2.0 / 3, 1.0 / 2, 1.0 / 2};

// The glazing line as one outline.
Contour plan_outline(const fit::GlazingLine& line) {
    std::vector<Segment> all;
    for (const auto& side : line.sides) {
        all.insert(all.end(), side.begin(), side.end());
    }
    return Contour::from_segments(all);
}

template <class N>
class Whole {
  public:
    Whole(const Case& c, const fit::Layout& layout, Book<N>& book)
        : c_(c), layout_(layout), book_(book) {}

    WholeSums<N> run(const std::vector<Part>& parts) {
        weigh(parts);
        const N base = book_.input("t_b", Kind::length, c_.frame.base.thickness);
        sums_.height = figure("height", "H", Kind::length,
                              base + book_.input("h", Kind::length, c_.frame.clear_height) +
                                  book_.input("t_t", Kind::length, c_.frame.top.thickness),
                              "base, clear height and top");
        sums_.unknown_parts = figure(
            "unknown_parts", "n_u", Kind::count, N(static_cast<double>(sums_.unknown.size())),
            "counted: parts of a material whose density the library doesn't have");
        add_contents();
        if (!sums_.unknown.empty() || weights_.empty()) {
            return std::move(sums_);
        }
        const Weight<N> empty = together("empty", weights_);
        sums_.empty = standing("empty", empty);
        if (sums_.contents) {
            sums_.loaded = standing("loaded", together("loaded", {empty, *sums_.contents}));
        }
        return std::move(sums_);
    }

  private:
    N figure(std::string_view key, std::string_view symbol, Kind kind, N value,
             std::string_view source) {
        return book_.figure({"whole", key}, symbol, kind, value, source);
    }

    // Each part, and each group in the order in which its first part comes.
    void weigh(const std::vector<Part>& parts) {
        std::vector<std::pair<std::string, N>> groups;
        for (const Part& part : parts) {
            if (part.assembly != kWeighed) {
                continue;
            }
            if (part.density <= 0) {
                (void)part_volume(part, book_);
                sums_.unknown.push_back(part.id);
                continue;
            }
            const Weight<N> weight = part_weight(part, book_);
            weights_.push_back(weight);
            const auto group = std::find_if(groups.begin(), groups.end(), [&](const auto& entry) {
                return entry.first == part.group;
            });
            if (group == groups.end()) {
                groups.emplace_back(part.group, weight.mass);
            } else {
                group->second = group->second + weight.mass;
            }
        }
        for (auto& [name, mass] : groups) {
            sums_.groups.emplace_back(
                name, book_.figure({"whole", "groups", name}, "m_" + name, Kind::mass, mass,
                                   "the parts of the group together"));
        }
    }

    void add_contents() {
        if (!c_.contents) {
            return;
        }
        constexpr std::string_view kGiven = "what the case file says of the contents";
        constexpr std::string_view kMiddle = "the middle of the plan's area";
        const Contents& contents = *c_.contents;
        const Point middle = plan_outline(layout_.line).centroid();
        const auto entered = [&](std::string_view key, std::string_view symbol, Kind kind, N value,
                                 std::string_view source) {
            return book_.figure({"whole", "contents", key}, symbol, kind, value, source);
        };
        const auto across = [&](std::string_view key, std::string_view symbol,
                                const std::optional<Sourced<double>>& given, double centre) {
            return given ? entered(key, symbol, Kind::length,
                                   book_.input(symbol, Kind::length, *given), kGiven)
                         : entered(key, symbol, Kind::length, N(centre), kMiddle);
        };
        Weight<N> weight;
        weight.mass = entered("mass", "m_c", Kind::mass,
                              book_.input("m_c", Kind::mass, contents.mass), kGiven);
        weight.x = across("x", "x_c", contents.x, middle.x);
        weight.y = across("y", "y_c", contents.y, middle.y);
        weight.z = contents.height
                       ? entered("z", "z_c", Kind::length,
                                 book_.input("z_c", Kind::length, *contents.height), kGiven)
                       : entered("z", "z_c", Kind::length,
                                 book_.input("h", Kind::length, c_.frame.clear_height) / N(2),
                                 "assumed: half the clear height");
        sums_.contents = weight;
    }

    Weight<N> together(std::string_view state, const std::vector<Weight<N>>& weights) {
        const auto sum_of = [&](const auto& term) {
            N sum = term(weights.front());
            for (std::size_t i = 1; i < weights.size(); ++i) {
                sum = sum + term(weights[i]);
            }
            return sum;
        };
        const auto centre = [&](std::string_view key, std::string_view symbol, N total,
                                N Weight<N>::*axis) {
            const N moment =
                sum_of([&](const Weight<N>& weight) { return weight.mass * weight.*axis; });
            return book_.figure({"whole", state, "centre", key}, symbol, Kind::length,
                                moment / total, kMoments);
        };
        Weight<N> all;
        all.mass = book_.figure({"whole", state, "mass"}, symbol("M", state), Kind::mass,
                                sum_of([](const Weight<N>& weight) { return weight.mass; }),
                                "all parts together");
        all.x = centre("x", symbol("X", state), all.mass, &Weight<N>::x);
        all.y = centre("y", symbol("Y", state), all.mass, &Weight<N>::y);
        all.z = centre("z", symbol("Z", state), all.mass, &Weight<N>::z);
        return all;
    }

    static std::string symbol(std::string_view letter, std::string_view state) {
        return std::string(letter) + (state == "empty" ? "_e" : "_l");
    }

    Standing<N> standing(std::string_view state, const Weight<N>& weight) {
        return {weight, tipping(state, weight), edges(state, weight), people(state, weight.mass)};
    }

    Tipping<N> tipping(std::string_view state, const Weight<N>& weight) {
        const auto at = [&](std::string_view key) {
            return FigurePath{"whole", state, "tipping", key};
        };
        constexpr std::string_view kHull = "geometry: support function of a convex set";
        constexpr std::string_view kBalance =
            "statics: weight and push in balance about the edge of what it stands on";
        const HullEdge edge =
            nearest_hull_edge(*layout_.base.outline, {value_of(weight.x), value_of(weight.y)});
        Tipping<N> out;
        out.distance = book_.solved(
            at("distance"), symbol("d", state), Kind::length, edge.distance,
            "least distance, seen from above, to the convex hull of the base's underside",
            {weight.x, weight.y}, kHull);
        out.direction = book_.solved(at("direction"), symbol("β", state), Kind::angle,
                                     std::atan2(edge.outward.y, edge.outward.x),
                                     "the way to the nearest point of that hull, from X",
                                     {weight.x, weight.y}, kHull);
        using std::atan;
        const N base = book_.input("t_b", Kind::length, c_.frame.base.thickness);
        out.angle = book_.figure(at("angle"), symbol("φ", state), Kind::angle,
                                 atan(out.distance / (weight.z + base)), kBalance);
        const N gravity = book_.reference({"whole", "gravity"}, "g", Kind::plain, kGravity,
                                          {"standard acceleration of free fall, m/s²"});
        out.force = book_.figure(at("force"), symbol("F", state), Kind::force,
                                 weight.mass * gravity * out.distance / sums_.height, kBalance);
        return out;
    }

    Edges<N> edges(std::string_view state, const Weight<N>& weight) {
        const Box box = layout_.base.outline->box();
        const auto edge = [&](std::string_view key, std::string_view name, double at) {
            return book_.reference({"whole", "base", key}, name, Kind::length, at,
                                   {"outermost point of the base's outline"});
        };
        const auto inside = [&](std::string_view key, std::string_view letter, N distance) {
            return book_.figure({"whole", state, "edges", key}, symbol(letter, state), Kind::length,
                                distance, "geometry, in plan");
        };
        return {inside("left", "e_L", weight.x - edge("left", "x_L", box.low.x)),
                inside("right", "e_R", edge("right", "x_R", box.high.x) - weight.x),
                inside("front", "e_F", weight.y - edge("front", "y_F", box.low.y)),
                inside("back", "e_B", edge("back", "y_B", box.high.y) - weight.y)};
    }

    std::optional<N> people(std::string_view state, N mass) {
        const auto count = lifters(value_of(mass));
        if (!count) {
            return std::nullopt;
        }
        const N one = book_.reference(
            {"whole", "one_person_lifts"}, "m_p", Kind::mass, kOnePersonLifts,
            {"load constant of the revised NIOSH lifting equation (Waters et al. 1993), best of "
             "conditions; as restated by a national institute"});
        return book_.solved({"whole", state, "people"}, symbol("n", state), Kind::count, *count,
                            "the fewest people whose capability reaches the mass: of two, two "
                            "thirds of what they lift alone, of three or four, half",
                            {mass, one}, "HSE L23, paragraph 120; four as three");
    }

    const Case& c_;
    const fit::Layout& layout_;
    Book<N>& book_;
    std::vector<Weight<N>> weights_;
    WholeSums<N> sums_;
};

}  // namespace

std::optional<int> lifters(double mass) {
    for (std::size_t i = 0; i < kTeamShares.size(); ++i) {
        const double people = static_cast<double>(i + 1);
        if (mass <= people * kTeamShares[i] * kOnePersonLifts) {
            return static_cast<int>(i + 1);
        }
    }
    return std::nullopt;
}

WholeSums<double> whole_sums(const Case& c, const fit::Layout& layout,
                             const std::vector<Part>& parts) {
    Book<double> book;
    return Whole<double>(c, layout, book).run(parts);
}

WholeSums<Traced> whole_sums(const Case& c, const fit::Layout& layout,
                             const std::vector<Part>& parts, Workings& workings) {
    Book<Traced> book(workings);
    return Whole<Traced>(c, layout, book).run(parts);
}

}  // namespace bowfront::whole
