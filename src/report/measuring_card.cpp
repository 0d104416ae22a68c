#include "bowfront/report/measuring_card.hpp"

#include <utility>


namespace bowfront::report {
namespace {

// Writes a file of measurements field by field: lists of sides, with objects in them.
class Card {
  public:
    explicit Card(LengthUnit unit) : unit_(unit) {
        const bool inches = unit == LengthUnit::inch;
        text_ += "// What was really made. Write each size in place of its null, in " +
                 std::string(inches ? "inches" : "millimetres") +
                 " or with its unit (\"12.5 mm\"),\n"
                 "// and of several places [a, b, c]. What stays null is not made yet: it keeps the "
                 "design's\n"
                 "// size, which stands beside it with its window. Then:\n"
                 "//   bowfront inspect CASE MEASURED.json\n"
                 "{\n  \"bowfront_measured\": 1,\n  \"units\": \"" +
                 (inches ? "in" : "mm") +
                 "\",\n  // What your measuring may be off, plus or minus: a rule or tape, and a "
                 "calliper.\n"
                 "  \"uncertainty\": { \"length\": \"0.2 mm\", \"thickness\": \"0.02 mm\" }";
    }

    void add(const CardField& field) {
        if (field.list != list_ || field.side != side_) {
            open_side(field);
        }
        if (field.object != object_) {
            close_object();
            open_object(field.object);
        }
        const std::string indent = object_.empty() ? "      " : "        ";
        text_ += std::string(first_ ? "" : ",") + "\n" + indent + "// " + field.what +
                 (field.several ? ", in several places" : "") + ": " + card_length(field.drawn, unit_) + ", " +
                 window_text(field, unit_) + "\n" + indent + "\"" + std::string(field.key) +
                 "\": null";
        first_ = false;
    }

    [[nodiscard]] std::string take() {
        close_list();
        return std::move(text_) + "\n}\n";
    }

  private:
    void open_side(const CardField& field) {
        close_side();
        if (field.list != list_) {
            close_list();
            text_ += ",\n  \"" + std::string(field.list) + "\": [";
            list_ = field.list;
        } else {
            text_ += ",";
        }
        side_ = field.side;
        text_ += "\n    {\n      \"side\": \"" + std::string(side_text(*side_)) + "\"";
        first_ = false;
    }
    void close_side() {
        close_object();
        if (side_) {
            text_ += "\n    }";
            side_.reset();
        }
    }
    void close_list() {
        close_side();
        if (!list_.empty()) {
            text_ += "\n  ]";
            list_ = {};
        }
    }
    void open_object(std::string_view object) {
        object_ = object;
        if (!object.empty()) {
            text_ += ",\n      \"" + std::string(object) + "\": {";
            first_ = true;
        }
    }
    void close_object() {
        if (!object_.empty()) {
            text_ += "\n      }";
            object_ = {};
            first_ = false;
        }
    }

    LengthUnit unit_;
    std::string_view list_;
    std::optional<CaseSide> side_;
    std::string_view object_;
    bool first_ = false;  // nothing stands in the open object yet
    std::string text_;
};

}  // namespace

std::string measuring_card(const Case& c, const CaseSums<double>& sums, std::string_view mark) {
    Card card(c.units);
    for (const CardField& field : card_fields(c, sums)) {
        card.add(field);
    }
    return (mark.empty() ? std::string() : "// " + std::string(mark) + "\n") + card.take();
}

}  // namespace bowfront::report
