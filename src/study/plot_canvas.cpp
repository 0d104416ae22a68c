#include "study/plot_canvas.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "bowfront/base/markup_text.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront::study {
namespace {

// Pixels.
constexpr double kWidth = 760;
constexpr double kHeight = 520;
constexpr double kLeft = 86;
constexpr double kRight = 24;
constexpr double kAbove = 78;
constexpr double kBelow = 66;
constexpr double kTick = 5;
constexpr double kKeyRow = 52;

constexpr std::string_view kInk = "#333333";
constexpr std::string_view kQuiet = "#8a8a8a";

std::string attribute(std::string_view name, std::string_view value) {
    return " " + std::string(name) + "=\"" + std::string(value) + "\"";
}

std::string word(Spot at, std::string_view anchor, std::string_view text, double size,
                 std::string_view more = {}) {
    return "<text" + attribute("x", pixel_text(at.x)) + attribute("y", pixel_text(at.y)) +
           attribute("text-anchor", anchor) + attribute("font-size", pixel_text(size)) +
           std::string(more) + ">" + markup_text(text) + "</text>\n";
}

std::string rule(Spot from, Spot to, std::string_view style) {
    return "<line" + attribute("x1", pixel_text(from.x)) + attribute("y1", pixel_text(from.y)) +
           attribute("x2", pixel_text(to.x)) + attribute("y2", pixel_text(to.y)) + " " +
           std::string(style) + "/>\n";
}

// Round numbers that an axis is marked at.
struct Ticks {
    std::vector<double> at;
    int decimals = 0;
};

Ticks ticks_of(Span span) {
    constexpr double kWanted = 7;
    const double rough = (span.high - span.low) / kWanted;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    double step = 10 * power;
    for (const double times : {1.0, 2.0, 5.0}) {
        if (times * power >= rough) {
            step = times * power;
            break;
        }
    }
    Ticks ticks;
    ticks.decimals = std::clamp(static_cast<int>(-std::floor(std::log10(step))), 0, 12);
    const double slack = step * 1e-9;  // so that rounding leaves no end out
    for (double n = std::ceil((span.low - slack) / step); n * step <= span.high + slack; ++n) {
        ticks.at.push_back(n * step);
    }
    return ticks;
}

}  // namespace

std::string pixel_text(double value) {
    return rounded_text(value, 2);
}

Spot PlotCanvas::at(double x, double y) const {
    const double right = (x - across_.low) / (across_.high - across_.low);
    const double up = (y - up_.low) / (up_.high - up_.low);
    return {kLeft + right * (kWidth - kLeft - kRight),
            kHeight - kBelow - up * (kHeight - kAbove - kBelow)};
}

void PlotCanvas::area(double x0, double y0, double x1, double y1, std::string_view fill) {
    const Spot a = at(x0, y0);
    const Spot b = at(x1, y1);
    shapes_ += "<rect" + attribute("x", pixel_text(std::min(a.x, b.x))) +
               attribute("y", pixel_text(std::min(a.y, b.y))) +
               attribute("width", pixel_text(std::abs(a.x - b.x))) +
               attribute("height", pixel_text(std::abs(a.y - b.y))) + attribute("fill", fill) +
               attribute("shape-rendering", "crispEdges") + "/>\n";  // no seams between cells
}

void PlotCanvas::straight(double x0, double y0, double x1, double y1, std::string_view style) {
    shapes_ += rule(at(x0, y0), at(x1, y1), style);
}

void PlotCanvas::chain(const std::string& points, std::string_view style) {
    shapes_ += "<polyline" + attribute("points", points) + attribute("fill", "none") + " " +
               std::string(style) + "/>\n";
}

void PlotCanvas::key(std::string_view fill, std::string_view text) {
    constexpr double kSquare = 12;
    constexpr double kLetter = 6.4;  // of the key's size, on average
    const double x = kLeft + key_at_;
    keys_ += "<rect" + attribute("x", pixel_text(x)) + attribute("y", pixel_text(kKeyRow - kSquare)) +
             attribute("width", pixel_text(kSquare)) + attribute("height", pixel_text(kSquare)) +
             attribute("fill", fill) + attribute("stroke", kQuiet) +
             attribute("stroke-width", "0.5") + "/>\n";
    keys_ += word({x + kSquare + 6, kKeyRow - 2}, "start", text, 12);
    key_at_ += kSquare + 26 + kLetter * static_cast<double>(text.size());
}

std::string PlotCanvas::svg(std::string_view title, std::string_view across,
                            std::string_view up) const {
    const std::string ink = "stroke=\"" + std::string(kInk) + "\"";
    std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\"" +
                      attribute("width", pixel_text(kWidth)) +
                      attribute("height", pixel_text(kHeight)) +
                      attribute("viewBox", "0 0 " + pixel_text(kWidth) + " " + pixel_text(kHeight)) +
                      " font-family=\"sans-serif\" fill=\"" + std::string(kInk) + "\">\n";
    out += "<title>" + markup_text(title) + "</title>\n";
    out += "<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n";
    out += shapes_ + keys_;
    out += word({kLeft, 28}, "start", title, 16);
    const Spot corner = at(across_.low, up_.low);
    const Spot far = at(across_.high, up_.high);
    out += rule(corner, {far.x, corner.y}, ink) + rule(corner, {corner.x, far.y}, ink);
    const Ticks along = ticks_of(across_);
    for (const double x : along.at) {
        const Spot spot = at(x, up_.low);
        out += rule(spot, {spot.x, spot.y + kTick}, ink);
        out += word({spot.x, spot.y + kTick + 14}, "middle", fixed_text(x, along.decimals), 12);
    }
    const Ticks upward = ticks_of(up_);
    for (const double y : upward.at) {
        const Spot spot = at(across_.low, y);
        out += rule(spot, {spot.x - kTick, spot.y}, ink);
        out += word({spot.x - kTick - 4, spot.y + 4}, "end", fixed_text(y, upward.decimals), 12);
    }
    out += word({(corner.x + far.x) / 2, kHeight - 18}, "middle", across, 13);
    const Spot side{22, (corner.y + far.y) / 2};
    out += word(side, "middle", up, 13,
                attribute("transform", "rotate(-90 " + pixel_text(side.x) + " " +
                                           pixel_text(side.y) + ")"));
    return out + "</svg>\n";
}

}  // namespace bowfront::study
