#include <optional>
#include <string>

#include "bowfront/fit/shelf.hpp"
#include "check_list.hpp"
#include "solve_shelf.hpp"

namespace bowfront::fit {
namespace {

// Thicknesses that advice tries, mm.
constexpr double kThickest = 60;
constexpr double kThicknessStep = 0.5;

// The checks of one shelf.
class ShelfChecks {
  public:
    ShelfChecks(const Case& c, const CaseSums<double>& sums, const ShelfSpec& spec,
                const Shelf& shelf, CheckList& list)
        : c_(c), sums_(sums), spec_(spec), shelf_(shelf), list_(list) {}

    void check() {
        const ShelfSums<double>& of = shelf_.sums;
        list_.enter({Code::shelf_sag, "shelf-sag", shelf_.plan.id, "after years under its load",
                     "mm", figure("sag/nominal")},
                    of.sag, of.sag_worst, of.sag_limit, Bound::at_most,
                    [&](double) { return thicker(); });
        list_.enter(
            {Code::shelf_stress, "shelf-stress", shelf_.plan.id,
             "under its load, against what it bears for years", "MPa", figure("stress/nominal")},
            of.stress, of.stress_worst, of.stress_limit, Bound::at_most,
            [&](double) { return thicker(); });
        check_room();
        check_tip();
        for (const ShelfPin& pin : shelf_.plan.pins) {
            check_pin(pin);
        }
    }

  private:
    [[nodiscard]] std::string figure(const std::string& key) const {
        return "shelves/" + shelf_.plan.id + "/" + key;
    }
    [[nodiscard]] std::string about(const std::string& what) const {
        return shelf_.plan.id + "/" + what;
    }

    [[nodiscard]] bool bears(double thickness) const {
        ShelfSpec spec = spec_;
        spec.thickness.value = thickness;
        Book<double> book;
        const auto of = solve_shelf(ShelfTask<double>{c_, spec, shelf_.plan, book}, sums_);
        return of.sag_worst <= of.sag_limit && of.stress_worst <= of.stress_limit;
    }

    // The thinnest in steps of the trade that bears its load at worst.
    [[nodiscard]] std::string thicker() const {
        for (double t = kThicknessStep; t <= kThickest; t += kThicknessStep) {
            if (t > spec_.thickness.value && bears(t)) {
                return "make it at least " + mm(t) + " thick";
            }
        }
        return "put less on it, or take a stiffer material";
    }

    void check_room() {
        const ShelfSums<double>& of = shelf_.sums;
        const auto give = [](double missing) {
            return "make the shelf's clearance larger by " + at_least_text(missing);
        };
        list_.at_least({Code::shelf_room, "shelf-room", about("panes"),
                        "to the nearest pane, leaning in its groove at worst", "mm",
                        figure("gap/panes/nominal")},
                       of.pane_gap, of.pane_gap_least, 0, give);
        list_.at_least({Code::shelf_room, "shelf-room", about("posts"), "to the nearest post", "mm",
                        figure("gap/posts/nominal")},
                       of.post_gap, of.post_gap_least, 0, give);
    }

    void check_tip() {
        const bool pins = spec_.support.value == ShelfSupport::pins;
        list_.at_least({Code::shelf_tip, "shelf-tip", shelf_.plan.id,
                        "weight within what it lies on, the load on its outer half alone at worst",
                        "mm", figure("tip/nominal")},
                       shelf_.sums.tip, shelf_.sums.tip_worst, 0, [&](double) {
                           return std::string(
                                      "keep heavy things away from the edge that stands out "
                                      "beyond its ") +
                                  (pins ? "pins" : "rails") + ", or fix the shelf down there";
                       });
    }

    void check_pin(const ShelfPin& pin) {
        const std::string id = "pin-" + pin.name;
        list_.at_least({Code::shelf_pin, "shelf-pin", about(id), "timber round its bore", "mm",
                        figure("supports/" + id + "/bore/wall")},
                       pin.wall, kPinWall, [](double) {
                           return std::string(
                               "lay the shelf on rails, or make the posts wider and "
                               "deeper");
                       });
    }

    const Case& c_;
    const CaseSums<double>& sums_;
    const ShelfSpec& spec_;
    const Shelf& shelf_;
    CheckList& list_;
};

}  // namespace

std::vector<Finding> shelf_checks(const Case& c, const CaseSums<double>& sums,
                                  const Shelves& shelves) {
    CheckList list;
    for (std::size_t i = 0; i < shelves.list.size(); ++i) {
        ShelfChecks(c, sums, c.shelves[i], shelves.list[i], list).check();
    }
    return list.take();
}

}  // namespace bowfront::fit
