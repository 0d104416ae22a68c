#pragma once
/// \file
/// Tags as drawn things.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/dxf/dxf.hpp"
#include "dxf/tag_reader.hpp"

namespace bowfront::dxf {

/// Reads the entities of a section, one after the other.
class EntityReader {
  public:
    explicit EntityReader(TagReader& tags) : tags_(tags) {}

    /// Takes the entity that begins at the next tag.
    /// @throws InputError for a kind that is not known, and for one that is not whole
    [[nodiscard]] Entity take();

  private:
    /// The tags of one object, up to the next one.
    struct Record {
        Tag head;
        std::vector<Tag> tags;

        [[nodiscard]] const Tag* find(int code) const;
    };

    [[nodiscard]] Record take_record();
    [[nodiscard]] double real(const Record& record, int code) const;
    [[nodiscard]] double real_or(const Record& record, int code, double otherwise) const;
    [[nodiscard]] int integer_or(const Record& record, int code, int otherwise) const;
    [[nodiscard]] double positive(const Record& record, int code) const;
    [[nodiscard]] Point point(const Record& record, int code) const;
    void expect_flat(const Record& record) const;

    void line(const Record& record, Entity& entity);
    void arc(const Record& record, Entity& entity);
    void circle(const Record& record, Entity& entity);
    void text(const Record& record, Entity& entity);
    void light_polyline(const Record& record, Entity& entity);
    void heavy_polyline(const Record& record, Entity& entity);

    struct PlacedVertex {
        Vertex vertex;
        std::size_t line = 0;
    };
    void polyline(const Record& record, const std::vector<PlacedVertex>& vertices, int flags,
                  Entity& entity) const;
    [[nodiscard]] double bulge(const Tag& tag) const;

    TagReader& tags_;
};

}  // namespace bowfront::dxf
