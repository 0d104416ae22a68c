#include "dxf/layer.hpp"

#include <algorithm>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/dxf/dxf.hpp"

namespace bowfront::dxf {
namespace {

// A name says hundredths of a millimetre; a depth that it would call 0 is none.
constexpr int kDepthDecimals = 2;
constexpr double kLeastDepth = 0.005;
// The longest name of R12.
constexpr std::size_t kLongestName = 31;

std::string depth_layer(std::string_view operation, double depth) {
    BOWFRONT_EXPECTS(std::isfinite(depth) && depth >= kLeastDepth);
    std::string name(operation);
    name += '-' + fixed_text(depth, kDepthDecimals);
    std::replace(name.begin(), name.end(), '.', '_');
    BOWFRONT_EXPECTS(name.size() <= kLongestName);
    return name;
}

// Indices 10, 20 … 240 of the format's colours run once round the hues; steps of seven put layers
// that follow each other far apart and come round to the first only after all 24.
int hue(int order) {
    constexpr int kFirst = 10;
    constexpr int kHues = 24;
    constexpr int kStride = 7;
    return kFirst + 10 * (order * kStride % kHues);
}

}  // namespace

std::string recess_layer(double depth) {
    return depth_layer("recess", depth);
}

std::string bore_layer(double depth) {
    return depth_layer("bore", depth);
}

std::vector<Layer> coloured(const std::vector<std::string>& names) {
    constexpr int kBlackOrWhite = 7;
    constexpr int kGrey = 8;
    std::vector<Layer> layers;
    int order = 0;
    for (const std::string& name : names) {
        const int colour = name == kOuterLayer   ? kBlackOrWhite
                           : name == kLabelLayer ? kGrey
                                                 : hue(order++);
        layers.push_back({name, colour});
    }
    return layers;
}

}  // namespace bowfront::dxf
