#pragma once
/// \file
/// Where the sums name their figures: for plain numbers a book that writes nothing, for traced
/// numbers one that enters each figure in its Workings.

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/figure/workings.hpp"

namespace bowfront {

/// A path in pieces, joined only where it is written down: `panes`, `front`, `blank/length`.
struct FigurePath {
    std::string_view first;
    std::string_view second = {};
    std::string_view third = {};
    std::string_view fourth = {};
    [[nodiscard]] std::string text() const;
};

/// A value that has no place in the case file: from a library or a standard.
struct Reference {
    std::string_view source;
};

template <class N>
class Book;

/// Plain numbers: nothing is recorded, nothing is allocated.
template <>
class Book<double> {
  public:
    double input(std::string_view, Kind, const Sourced<double>& value) { return value.value; }
    double reference(const FigurePath&, std::string_view, Kind, double value, const Reference&) {
        return value;
    }
    double figure(const FigurePath&, std::string_view, Kind, double value, std::string_view) {
        return value;
    }
    double solved(const FigurePath&, std::string_view, Kind, double value, std::string_view,
                  std::initializer_list<double>, std::string_view) {
        return value;
    }
};

/// Traced numbers.
template <>
class Book<Traced> {
  public:
    explicit Book(Workings& workings) : workings_(workings) {}
    /// An input under the pointer of its origin.
    Traced input(std::string_view symbol, Kind kind, const Sourced<double>& value);
    /// A value from a library or a standard.
    Traced reference(const FigurePath& path, std::string_view symbol, Kind kind, double value,
                     const Reference& reference);
    /// Names a result.
    Traced figure(const FigurePath& path, std::string_view symbol, Kind kind, Traced value,
                  std::string_view source);
    /// Names a result found by iteration; see Workings::solved.
    Traced solved(const FigurePath& path, std::string_view symbol, Kind kind, double value,
                  std::string_view condition, std::initializer_list<Traced> inputs,
                  std::string_view source);

  private:
    Workings& workings_;
};

}  // namespace bowfront
