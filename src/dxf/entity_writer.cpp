#include "dxf/entity_writer.hpp"

#include "dxf/layer.hpp"

namespace bowfront::dxf {
namespace {

// Group codes. Source: public DXF reference.
constexpr int kType = 0;
constexpr int kText = 1;
constexpr int kHandle = 5;
constexpr int kLayer = 8;
constexpr int kPoint = 10;
constexpr int kEnd = 11;
constexpr int kSize = 40;
constexpr int kBulge = 42;
constexpr int kVerticesFollow = 66;
constexpr int kFlags = 70;
constexpr int kVertexCount = 90;
constexpr int kSubclass = 100;
constexpr int kOwner = 330;

constexpr int kClosed = 1;

}  // namespace

void EntityWriter::begin(std::string_view type, std::string_view layer, std::string_view subclass) {
    tags_.text(kType, type);
    if (version_ == Version::ac1015) {
        tags_.handle(kHandle, next_handle_++);
        tags_.handle(kOwner, owner_);
        tags_.text(kSubclass, "AcDbEntity");
    }
    tags_.text(kLayer, layer);
    if (version_ == Version::ac1015) {
        tags_.text(kSubclass, subclass);
    }
}

void EntityWriter::text(const Label& label) {
    begin("TEXT", kLabelLayer, "AcDbText");
    tags_.flat_point(kPoint, label.at);
    tags_.real(kSize, label.height);
    tags_.text(kText, label.text);
    if (version_ == Version::ac1015) {
        tags_.text(kSubclass, "AcDbText");  // the format splits this class in two
    }
}

void EntityWriter::line(std::string_view layer, Point from, Point to) {
    begin("LINE", layer, "AcDbLine");
    tags_.flat_point(kPoint, from);
    tags_.flat_point(kEnd, to);
}

void EntityWriter::circle(const Circle& circle) {
    begin("CIRCLE", circle.layer, "AcDbCircle");
    tags_.flat_point(kPoint, circle.centre);
    tags_.real(kSize, circle.radius);
}

void EntityWriter::polyline(std::string_view layer, const std::vector<Vertex>& vertices,
                            Ends ends) {
    if (version_ == Version::ac1015) {
        light_polyline(layer, vertices, ends);
    } else {
        heavy_polyline(layer, vertices, ends);
    }
}

void EntityWriter::light_polyline(std::string_view layer, const std::vector<Vertex>& vertices,
                                  Ends ends) {
    begin("LWPOLYLINE", layer, "AcDbPolyline");
    tags_.integer(kVertexCount, static_cast<std::int64_t>(vertices.size()));
    tags_.integer(kFlags, ends == Ends::joined ? kClosed : 0);
    for (const Vertex& vertex : vertices) {
        tags_.point(kPoint, vertex.at);
        if (vertex.bulge != 0) {
            tags_.real(kBulge, vertex.bulge);
        }
    }
}

void EntityWriter::heavy_polyline(std::string_view layer, const std::vector<Vertex>& vertices,
                                  Ends ends) {
    begin("POLYLINE", layer, "");
    tags_.integer(kVerticesFollow, 1);
    tags_.flat_point(kPoint, {});  // the format wants a point here that means nothing
    tags_.integer(kFlags, ends == Ends::joined ? kClosed : 0);
    for (const Vertex& vertex : vertices) {
        begin("VERTEX", layer, "");
        tags_.flat_point(kPoint, vertex.at);
        if (vertex.bulge != 0) {
            tags_.real(kBulge, vertex.bulge);
        }
    }
    begin("SEQEND", layer, "");
}

void EntityWriter::write(const Layout& layout) {
    for (const Label& label : layout.labels) {
        text(label);
    }
    for (const Chain& chain : layout.scribes) {
        // An arc alone is written as a polyline too: an ARC has angles, and its ends would come
        // back rounded.
        const std::vector<Vertex>& vertices = chain.vertices;
        if (vertices.size() == 2 && vertices.front().bulge == 0) {
            line(kScribeLayer, vertices.front().at, vertices.back().at);
        } else {
            polyline(kScribeLayer, vertices, Ends::open);
        }
    }
    for (const Circle& bore : layout.bores) {
        circle(bore);
    }
    for (const Outline& outline : layout.outlines) {
        polyline(outline.layer, outline.contour.vertices(), Ends::joined);
    }
}

}  // namespace bowfront::dxf
