#pragma once
/// \file
/// Drawn things as tags, for either release.

#include <cstdint>

#include "bowfront/dxf/dxf.hpp"
#include "dxf/layout.hpp"
#include "dxf/tag_writer.hpp"

namespace bowfront::dxf {

/// Writes the entities of a layout into model space.
class EntityWriter {
  public:
    /// @param owner         handle of model space's block record (AC1015)
    /// @param first_handle  each entity takes the next one (AC1015)
    EntityWriter(TagWriter& tags, Version version, std::uint64_t owner, std::uint64_t first_handle)
        : tags_(tags), version_(version), owner_(owner), next_handle_(first_handle) {}

    void write(const Layout& layout);

    /// A handle above all that were given.
    [[nodiscard]] std::uint64_t next_handle() const { return next_handle_; }

  private:
    enum class Ends { open, joined };

    void begin(std::string_view type, std::string_view layer, std::string_view subclass);
    void text(const Label& label);
    void line(std::string_view layer, Point from, Point to);
    void circle(const Circle& circle);
    void polyline(std::string_view layer, const std::vector<Vertex>& vertices, Ends ends);
    void light_polyline(std::string_view layer, const std::vector<Vertex>& vertices, Ends ends);
    void heavy_polyline(std::string_view layer, const std::vector<Vertex>& vertices, Ends ends);

    TagWriter& tags_;
    Version version_;
    std::uint64_t owner_;
    std::uint64_t next_handle_;
};

}  // namespace bowfront::dxf
