#include <array>

#include "bowfront/io/read_measured.hpp"

namespace bowfront::io {
namespace {

using Word = std::string_view;

constexpr std::array kFile = {Word{"$schema"}, Word{"bowfront_measured"}, Word{"units"},
                              Word{"uncertainty"}, Word{"panes"}, Word{"openings"},
                              Word{"grooves"}};
constexpr std::array kUncertainty = {Word{"length"}, Word{"thickness"}};
constexpr std::array kPane = {Word{"side"}, Word{"blank"}, Word{"formed"}, Word{"thickness"}};
constexpr std::array kBlank = {Word{"length"}, Word{"width"}};
constexpr std::array kFormed = {Word{"length"}, Word{"height"}, Word{"chord"}, Word{"rise"},
                               Word{"bends"}};
constexpr std::array kOpening = {Word{"side"}, Word{"length"}, Word{"height"}};
constexpr std::array kGrooves = {Word{"side"},  Word{"base"}, Word{"top"},
                                 Word{"start"}, Word{"end"},  Word{"width"}};

constexpr std::array kTable = {
    ObjectKeys{"", kFile},
    ObjectKeys{"/uncertainty", kUncertainty},
    ObjectKeys{"/panes/*", kPane},
    ObjectKeys{"/panes/*/blank", kBlank},
    ObjectKeys{"/panes/*/formed", kFormed},
    ObjectKeys{"/openings/*", kOpening},
    ObjectKeys{"/grooves/*", kGrooves},
};

}  // namespace

std::span<const ObjectKeys> measured_keys() noexcept {
    return kTable;
}

}  // namespace bowfront::io
