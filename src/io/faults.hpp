#pragma once
/// \file
/// The faults of one file, gathered while it is read.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/error.hpp"
#include "bowfront/io/places.hpp"

namespace bowfront::io {

class Faults {
  public:
    explicit Faults(std::string file);

    void add(Code code, Place place, std::string pointer, std::string found, std::string wanted);

    [[nodiscard]] bool empty() const noexcept { return all_.empty(); }
    /// Whether further faults will only be counted: their words are then not worth finding.
    [[nodiscard]] bool full() const noexcept;

    /// Whether a fault was found at the pointer, inside that value, or at a value round it.
    [[nodiscard]] bool touch(std::string_view pointer) const noexcept;

    /// All of them as they stand in the file, no more than kMostFaults and one that counts the
    /// rest.
    [[nodiscard]] std::vector<Diagnostic> in_file_order() const;

  private:
    std::string file_;
    std::vector<Diagnostic> all_;  // no more than kMostFaults
    std::size_t more_ = 0;
};

}  // namespace bowfront::io
