#pragma once
/// \file
/// The frame of a drawing: axes with ticks and labels, and shapes in data coordinates, as SVG.

#include <string>
#include <string_view>

namespace bowfront::study {

/// A stretch of numbers along an axis.
struct Span {
    double low = 0;
    double high = 1;  ///< > low
};

/// A point of the drawing, in pixels from its upper left corner.
struct Spot {
    double x = 0;
    double y = 0;
};

/// Builds one drawing. Shapes stand in the order in which they are added, axes on top of them.
class PlotCanvas {
  public:
    PlotCanvas(Span across, Span up) : across_(across), up_(up) {}

    [[nodiscard]] Spot at(double x, double y) const;
    /// A filled rectangle between two corners in data coordinates.
    void area(double x0, double y0, double x1, double y1, std::string_view fill);
    /// A straight in data coordinates.
    void straight(double x0, double y0, double x1, double y1, std::string_view style);
    /// A chain of points `x,y x,y` in pixels, as put together from `at`.
    void chain(const std::string& points, std::string_view style);
    /// A coloured square with a word in the row above the drawing.
    void key(std::string_view fill, std::string_view word);

    /// The whole file.
    [[nodiscard]] std::string svg(std::string_view title, std::string_view across,
                                  std::string_view up) const;

  private:
    std::string shapes_;
    std::string keys_;
    double key_at_ = 0;
    Span across_;
    Span up_;
};

/// A number for SVG: two decimals are finer than any screen.
[[nodiscard]] std::string pixel_text(double value);

}  // namespace bowfront::study
