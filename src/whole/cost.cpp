#include "bowfront/whole/cost.hpp"

#include <algorithm>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront::whole {
namespace {

constexpr std::string_view kRectangle =
    "the rectangle that the part is sawn from: the box of its pattern";

// Parts that are bought as one material.
struct Lot {
    const Part* first = nullptr;
    std::vector<const Part*> parts;

    [[nodiscard]] bool timber() const { return first->finish == Finish::timber; }
    [[nodiscard]] double thickness() const { return first->pattern.thickness; }
    /// Timber is bought by its volume, whatever its thickness.
    [[nodiscard]] bool takes(const Part& part) const {
        return first->material == part.material && first->finish == part.finish &&
               (timber() || thickness() == part.pattern.thickness);
    }
    [[nodiscard]] std::string what() const {
        return timber() ? first->material
                        : first->material + " " + rounded_text(thickness(), 3) + " mm";
    }
};

std::vector<Lot> lots_of(const std::vector<Part>& parts) {
    std::vector<Lot> lots;
    for (const Part& part : parts) {
        const auto lot = std::find_if(lots.begin(), lots.end(),
                                      [&](const Lot& entry) { return entry.takes(part); });
        if (lot == lots.end()) {
            lots.push_back({&part, {&part}});
        } else {
            lot->parts.push_back(&part);
        }
    }
    return lots;
}

// Letters, digits, hyphens and points only: an id stands in the path of a figure.
std::string id_of(const std::string& what, const std::vector<std::string>& taken) {
    std::string id;
    const std::string unit = " mm";
    for (const char c : what.ends_with(unit) ? what.substr(0, what.size() - unit.size()) : what) {
        const bool plain =
            (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.';
        id += plain ? c : '-';
    }
    std::string unique = id;
    for (int number = 2; std::count(taken.begin(), taken.end(), unique) != 0; ++number) {
        unique = id + "-" + std::to_string(number);
    }
    return unique;
}

template <class N>
class Coster {
  public:
    Coster(const Case& c, Book<N>& book) : c_(c), book_(book) {}

    CostSums<N> run(const std::vector<Part>& parts) {
        BOWFRONT_EXPECTS(c_.prices.has_value());
        sums_.currency = c_.prices->currency;
        sums_.waste = book_.figure({"cost", "waste"}, "w", Kind::ratio,
                                   book_.input("w", Kind::ratio, c_.prices->waste),
                                   "bought beyond the net size");
        for (const Lot& lot : lots_of(parts)) {
            add(lot);
        }
        for (const Hardware& hardware : c_.prices->hardware) {
            add(hardware);
        }
        N total(0);
        for (const CostRow<N>& row : sums_.rows) {
            total = &row == &sums_.rows.front() ? row.cost : total + row.cost;
        }
        sums_.total = book_.figure({"cost", "total"}, "K", Kind::plain, total,
                                   "all rows together, in " + sums_.currency);
        return std::move(sums_);
    }

  private:
    // The price of one thickness comes before that of all; a sheet of the maker's own that has none
    // costs what the sheet costs that it is like.
    [[nodiscard]] const MaterialPrice* price_of(const Lot& lot) const {
        const auto sheet = c_.sheets.find(lot.first->material);
        std::vector<std::string> names{lot.first->material};
        if (sheet != c_.sheets.end()) {
            names.emplace_back(sheet->second.like->name);
        }
        for (const std::string& name : names) {
            const MaterialPrice* general = nullptr;
            for (const MaterialPrice& price : c_.prices->materials) {
                if (price.material != name) {
                    continue;
                }
                if (price.thickness == lot.thickness()) {
                    return &price;
                }
                general = price.thickness ? general : &price;
            }
            if (general != nullptr) {
                return general;
            }
        }
        return nullptr;
    }

    // One sheet of the stock of a lot, mm²; nothing where there is none.
    [[nodiscard]] const StockItem* stock_of(const Lot& lot, const MaterialPrice& price) const {
        const auto item =
            std::find_if(c_.stock.begin(), c_.stock.end(), [&](const StockItem& entry) {
                return (entry.material == lot.first->material ||
                        entry.material == price.material) &&
                       entry.thickness == lot.thickness();
            });
        return item == c_.stock.end() ? nullptr : &*item;
    }

    void add(const Lot& lot) {
        const MaterialPrice* const price = price_of(lot);
        const bool by_sheet = price != nullptr && price->unit == PriceUnit::sheet;
        const StockItem* const stock = by_sheet ? stock_of(lot, *price) : nullptr;
        if (price == nullptr || (by_sheet && stock == nullptr)) {
            sums_.not_priced.push_back(lot.what());
            return;
        }
        CostRow<N> row;
        row.what = lot.what();
        row.id = id_of(row.what, ids_);
        ids_.push_back(row.id);
        row.unit = price->unit;
        if (!lot.timber()) {
            row.thickness = figure(row, "thickness", "t", N(lot.thickness()), "the board or sheet",
                                   Kind::length);
        }
        row.net = figure(row, "net", "q_n", net_size(lot) / unit_of(row, stock),
                         "the parts' rectangles together, in the price's unit");
        using std::ceil;
        const N wanted = row.net * (N(1) + sums_.waste);
        row.quantity =
            figure(row, "quantity", "q", by_sheet ? ceil(wanted) : wanted,
                   by_sheet ? "net size and waste, in whole sheets" : "net size and waste");
        finish(std::move(row), price->amount);
    }

    void add(const Hardware& hardware) {
        CostRow<N> row;
        row.what = hardware.name;
        row.id = "hardware-" + std::to_string(++hardware_count_);
        row.unit = PriceUnit::each;
        row.net = figure(row, "net", "q_n", N(hardware.count), "as many as the case file says");
        row.quantity = figure(row, "quantity", "q", row.net, "no waste");
        finish(std::move(row), hardware.amount);
    }

    void finish(CostRow<N> row, const Sourced<double>& amount) {
        row.price = figure(row, "price", "p", book_.input("p", Kind::plain, amount),
                           "of the case file, for one of the unit");
        row.cost = figure(row, "cost", "K", row.quantity * row.price, "quantity times price");
        sums_.rows.push_back(std::move(row));
    }

    // Of all parts of a lot, mm², or mm³ of timber.
    N net_size(const Lot& lot) {
        std::optional<N> total;
        for (const Part* const part : lot.parts) {
            const Box box = part->pattern.outline.box();
            N size =
                book_.reference({"cost", "parts", part->id, "rectangle"}, "A[" + part->id + "]",
                                Kind::plain, box.width() * box.height(), {kRectangle});
            if (lot.timber()) {
                size = size * book_.reference({"cost", "parts", part->id, "thickness"},
                                              "t[" + part->id + "]", Kind::length,
                                              part->pattern.thickness, {"the part's own size"});
            }
            if (part->count() != 1) {
                size = size * N(part->count());
            }
            total = total ? *total + size : size;
        }
        return *total;
    }

    N unit_of(const CostRow<N>& row, const StockItem* stock) {
        return stock != nullptr ? book_.reference({"cost", "rows", row.id, "sheet"}, "A_s",
                                                  Kind::plain, stock->size[0] * stock->size[1],
                                                  {"one sheet of the case file's stock, mm²"})
                                : N(unit_size(row.unit));
    }

    N figure(const CostRow<N>& row, std::string_view key, std::string_view symbol, N value,
             std::string_view source, Kind kind = Kind::plain) {
        return book_.figure({"cost", "rows", row.id, key}, std::string(symbol) + "[" + row.id + "]",
                            kind, value, source);
    }

    const Case& c_;
    Book<N>& book_;
    CostSums<N> sums_;
    std::vector<std::string> ids_;
    int hardware_count_ = 0;
};

}  // namespace

CostSums<double> cost_sums(const Case& c, const std::vector<Part>& parts) {
    Book<double> book;
    return Coster<double>(c, book).run(parts);
}

CostSums<Traced> cost_sums(const Case& c, const std::vector<Part>& parts, Workings& workings) {
    Book<Traced> book(workings);
    return Coster<Traced>(c, book).run(parts);
}

}  // namespace bowfront::whole
