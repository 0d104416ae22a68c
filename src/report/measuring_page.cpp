#include <utility>

#include "bowfront/base/markup_text.hpp"
#include "bowfront/report/measuring_card.hpp"

namespace bowfront::report {
namespace {

constexpr int kPlaces = 3;    // to write a size in that is measured in several places

constexpr std::string_view kStyle =
    "@page { size: A4; margin: 14mm; }\n"
    "body { font: 9.5pt/1.3 sans-serif; color: #000; max-width: 182mm; margin: 0 auto; }\n"
    "h1 { font-size: 15pt; margin: 0 0 2mm; }\n"
    "p { margin: 0 0 2mm; }\n"
    "ol { padding: 0; margin: 4mm 0 0; list-style: none; counter-reset: step; }\n"
    "li { counter-increment: step; margin-bottom: 4mm; }\n"
    "li > p.step { font-weight: bold; break-after: avoid; }\n"
    "li > p.step::before { content: counter(step) \". \"; }\n"
    ".box { display: inline-block; width: 3.6mm; height: 3.6mm; border: 0.3mm solid #000; "
    "margin-right: 2mm; vertical-align: -0.5mm; }\n"
    ".hold { border-left: 1.2mm solid #000; padding-left: 2mm; break-after: avoid; }\n"
    ".hold b { letter-spacing: 0.3mm; }\n"
    "table { border-collapse: collapse; width: 181mm; table-layout: fixed; }\n"
    "col.what { width: 78mm; }\ncol.drawn { width: 22mm; }\ncol.window { width: 42mm; }\n"
    "thead { display: table-header-group; }\n"
    "tr { break-inside: avoid; }\n"
    "th, td { border: 0.2mm solid #666; padding: 0.6mm 1.4mm; text-align: left; "
    "font-weight: normal; }\n"
    "th { font-size: 8pt; background: #eee; print-color-adjust: exact; "
    "-webkit-print-color-adjust: exact; }\n"
    "td { height: 5.2mm; font-size: 9pt; }\n"
    "td.size { text-align: right; white-space: nowrap; }\n";

std::string place_text(const CardField& field) {
    std::string text(side_text(field.side));
    if (field.list == "openings") {
        text += " opening";
    } else if (field.list == "grooves") {
        text += " groove";
    }
    return text + ", " + field.what;
}

class Page {
  public:
    Page(const Case& c, std::string_view mark) : unit_(c.units) {
        const std::string name = markup_text(c.name);
        text_ = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>"
                "Measuring card: " +
                name + "</title>\n<style>\n" + std::string(kStyle) +
                "</style>\n</head>\n<body>\n<h1>Measuring card: " + name +
                "</h1>\n" +
                (mark.empty() ? std::string()
                              : "<p class=\"hold\"><b>" + markup_text(std::string(mark)) + "</b></p>\n") +
                "<p>Work down the page. At each HOLD write down what was really made, in " +
                (unit_ == LengthUnit::inch ? "inches" : "millimetres") +
                ", before the next step. Within its window a size does what was designed; outside "
                "of it nothing need be lost: copy the sizes into measuring-card.json and ask "
                "<b>bowfront inspect</b> what can be done.</p>\n"
                "<p>Measured by ____________________ on ______________ with a rule or tape good to "
                "&plusmn; ________ and a calliper good to &plusmn; ________</p>\n<ol>\n";
    }

    void add(const WorkStep& step) {
        text_ += "<li><p class=\"step\"><span class=\"box\"></span>" + markup_text(step.step) +
                 "</p>\n";
        if (!step.hold.empty()) {
            text_ += "<p class=\"hold\"><b>HOLD</b> " + markup_text(step.hold) + "</p>\n";
        }
        if (!step.fields.empty()) {
            add_table(step.fields);
        }
        text_ += "</li>\n";
    }

    [[nodiscard]] std::string take() { return std::move(text_) + "</ol>\n</body>\n</html>\n"; }

  private:
    void add_table(const std::vector<CardField>& fields) {
        text_ += "<table>\n<colgroup><col class=\"what\"><col class=\"drawn\"><col class=\"window\">"
                 "<col span=\"" +
                 std::to_string(kPlaces) + "\"></colgroup>\n<thead><tr><th>size</th><th>drawn</th><th>window</th><th colspan=\"" +
                 std::to_string(kPlaces) + "\">measured</th></tr></thead>\n";
        for (const CardField& field : fields) {
            text_ += "<tr><td>" + markup_text(place_text(field)) + "</td><td class=\"size\">" +
                     card_length(field.drawn, unit_) + "</td><td class=\"size\">" + window_text(field, unit_) +
                     "</td>";
            if (field.several) {
                for (int i = 0; i < kPlaces; ++i) {
                    text_ += "<td class=\"blank\"></td>";
                }
            } else {
                text_ += "<td class=\"blank\" colspan=\"" + std::to_string(kPlaces) + "\"></td>";
            }
            text_ += "</tr>\n";
        }
        text_ += "</table>\n";
    }

    LengthUnit unit_;
    std::string text_;
};

}  // namespace

std::string measuring_page(const Case& c, const CaseSums<double>& sums, std::string_view mark) {
    Page page(c, mark);
    for (const WorkStep& step : order_of_work(c, sums)) {
        page.add(step);
    }
    return page.take();
}

}  // namespace bowfront::report
