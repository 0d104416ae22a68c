#include <set>
#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/figure/workings.hpp"

namespace bowfront {
namespace {

std::string origin_text(const Origin& origin) {
    switch (origin.kind) {
        case Origin::Kind::given: return "given at line " + std::to_string(origin.line);
        case Origin::Kind::assumed: return "assumed: " + origin.source;
        case Origin::Kind::library: return "library: " + origin.source;
        case Origin::Kind::computed: break;
    }
    return "computed; source of the formula: " + origin.source;
}

class Explainer {
  public:
    explicit Explainer(const Workings& workings) : workings_(workings) {}

    void figure(const Figure& figure, int depth) {
        const std::string margin(static_cast<std::size_t>(depth) * 2, ' ');
        text_ += margin + figure.symbol + " = " + figure_text(figure.kind, figure.value);
        if (figure.kind == Kind::angle) {
            text_ += " = " + rounded_text(figure.value, 9) + " rad";
        }
        text_ += "    " + figure.path + "\n";
        if (!shown_.insert(figure.path).second) {
            return;
        }
        if (!figure.formula.empty()) {
            text_ += margin + "  " + figure.symbol + " = " + figure.formula + "\n";
        }
        if (!figure.numbers.empty() && figure.numbers != figure.formula) {
            text_ += margin + "    = " + figure.numbers + "\n";
        }
        text_ += margin + "  " + origin_text(figure.origin) + "\n";
        for (const std::string& input : figure.inputs) {
            if (const Figure* next = workings_.find(input)) {
                this->figure(*next, depth + 2);
            }
        }
    }
    [[nodiscard]] std::string text() const { return text_; }

  private:
    const Workings& workings_;
    std::set<std::string> shown_;
    std::string text_;
};

}  // namespace

std::string explain(const Workings& workings, const std::string& path) {
    const Figure* figure = workings.find(path);
    BOWFRONT_EXPECTS(figure != nullptr);
    Explainer explainer(workings);
    explainer.figure(*figure, 0);
    return explainer.text();
}

}  // namespace bowfront
