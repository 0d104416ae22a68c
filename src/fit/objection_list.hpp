#pragma once
/// \file
/// Objections, as they are found.

#include <string>
#include <utility>
#include <vector>

#include "bowfront/model/case.hpp"

namespace bowfront::fit {

/// What can't hold together in a case.
class ObjectionList {
  public:
    void add(std::string pointer, std::string found, std::string wanted) {
        list_.push_back({std::move(pointer), std::move(found), std::move(wanted)});
    }
    [[nodiscard]] bool empty() const { return list_.empty(); }
    [[nodiscard]] std::vector<Objection> take() { return std::move(list_); }

  private:
    std::vector<Objection> list_;
};

}  // namespace bowfront::fit
