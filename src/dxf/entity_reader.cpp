#include "dxf/entity_reader.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace bowfront::dxf {
namespace {

// Group codes. Source: public DXF reference.
constexpr int kText = 1;
constexpr int kLayer = 8;
constexpr int kPoint = 10;
constexpr int kEnd = 11;
constexpr int kElevation = 38;
constexpr int kSize = 40;
constexpr int kBulge = 42;
constexpr int kStartAngle = 50;
constexpr int kEndAngle = 51;
constexpr int kFlags = 70;
constexpr int kVertexCount = 90;
constexpr int kExtrusion = 210;
constexpr int kToY = 10;  // from the code of an x to that of its y, and to that of its z
constexpr int kToZ = 20;

// Flags of polylines: the line type's pattern runs on round the corners, which changes no line.
constexpr int kClosed = 1;
constexpr int kPatternRunsOn = 128;

// An arc that nears a full turn by less than 1e-6 rad, as a bulge.
constexpr double kSteepestBulge = 4e6;

// Appends a segment, arcs of more than half a turn in halves.
void append_split(std::vector<Segment>& segments, const Segment& segment) {
    if (std::abs(segment.bulge) <= 1) {
        segments.push_back(segment);
        return;
    }
    Segment first = segment.part(0, 0.5);
    Segment second = segment.part(0.5, 1);
    second.from = first.to;
    segments.push_back(first);
    segments.push_back(second);
}

}  // namespace

const Tag* EntityReader::Record::find(int code) const {
    const auto found =
        std::find_if(tags.begin(), tags.end(), [code](const Tag& tag) { return tag.code == code; });
    return found == tags.end() ? nullptr : &*found;
}

EntityReader::Record EntityReader::take_record() {
    Record record{tags_.take(), {}};
    while (tags_.peek().code != 0) {
        record.tags.push_back(tags_.take());
    }
    return record;
}

double EntityReader::real(const Record& record, int code) const {
    const Tag* tag = record.find(code);
    if (tag == nullptr) {
        tags_.fail(Code::input_missing_key, record.head.line,
                   std::string(record.head.word()) + " has no group " + std::to_string(code));
    }
    return tags_.real(*tag);
}

double EntityReader::real_or(const Record& record, int code, double otherwise) const {
    const Tag* tag = record.find(code);
    return tag == nullptr ? otherwise : tags_.real(*tag);
}

int EntityReader::integer_or(const Record& record, int code, int otherwise) const {
    const Tag* tag = record.find(code);
    return tag == nullptr ? otherwise : tags_.integer(*tag);
}

double EntityReader::positive(const Record& record, int code) const {
    const double value = real(record, code);
    if (value <= 0) {
        tags_.fail(Code::input_value, record.find(code)->line, "the size is not positive");
    }
    return value;
}

Point EntityReader::point(const Record& record, int code) const {
    return {real(record, code), real(record, code + kToY)};
}

// What is seen from below, or stands above the plane, would not be cut where it is drawn.
void EntityReader::expect_flat(const Record& record) const {
    const bool from_above = real_or(record, kExtrusion, 0) == 0 &&
                            real_or(record, kExtrusion + kToY, 0) == 0 &&
                            real_or(record, kExtrusion + kToZ, 1) > 0;
    const bool in_plane = real_or(record, kPoint + kToZ, 0) == 0 &&
                          real_or(record, kEnd + kToZ, 0) == 0 &&
                          real_or(record, kElevation, 0) == 0;
    if (!from_above || !in_plane) {
        tags_.fail(Code::input_value, record.head.line,
                   std::string(record.head.word()) + " does not lie in the drawing's plane",
                   "z = 0, seen from above");
    }
}

Entity EntityReader::take() {
    struct Kind {
        std::string_view name;
        void (EntityReader::*read)(const Record&, Entity&);
    };
    static constexpr std::array kKinds = {Kind{"LWPOLYLINE", &EntityReader::light_polyline},
                                          Kind{"POLYLINE", &EntityReader::heavy_polyline},
                                          Kind{"LINE", &EntityReader::line},
                                          Kind{"ARC", &EntityReader::arc},
                                          Kind{"CIRCLE", &EntityReader::circle},
                                          Kind{"TEXT", &EntityReader::text}};
    const Record record = take_record();
    const std::string_view type = record.head.word();
    const auto kind = std::find_if(kKinds.begin(), kKinds.end(),
                                   [type](const Kind& known) { return known.name == type; });
    if (kind == kKinds.end()) {
        tags_.fail(Code::input_value, record.head.line, shown(type) + " is no entity that is read",
                   "LWPOLYLINE, POLYLINE, LINE, ARC, CIRCLE or TEXT");
    }
    const Tag* layer = record.find(kLayer);
    if (layer == nullptr || layer->word().empty()) {
        tags_.fail(Code::input_missing_key, record.head.line,
                   std::string(type) + " stands on no layer");
    }
    expect_flat(record);
    Entity entity;
    entity.layer = layer->word();
    (this->*kind->read)(record, entity);
    return entity;
}

void EntityReader::line(const Record& record, Entity& entity) {
    const Segment segment{point(record, kPoint), point(record, kEnd), 0};
    if (segment.length() <= kJoint) {
        tags_.fail(Code::input_value, record.head.line, "a line without length");
    }
    entity.kind = Entity::Kind::open;
    entity.path.segments = {segment};
}

void EntityReader::arc(const Record& record, Entity& entity) {
    constexpr double kTurn = 360;
    constexpr double kDegree = std::numbers::pi / 180;
    const Point centre = point(record, kPoint);
    const double radius = positive(record, kSize);
    const double start = real(record, kStartAngle);
    double sweep = std::fmod(real(record, kEndAngle) - start, kTurn);
    if (sweep <= 0) {
        sweep += kTurn;  // arcs run counter-clockwise, and round to a start that is also the end
    }
    if (radius * sweep * kDegree <= kJoint) {
        tags_.fail(Code::input_value, record.head.line, "an arc without length");
    }
    const int pieces = sweep > kTurn / 2 ? 2 : 1;
    entity.kind = Entity::Kind::open;
    for (int i = 0; i < pieces; ++i) {
        entity.path.segments.push_back(arc_segment(
            centre, radius, (start + i * sweep / pieces) * kDegree, sweep / pieces * kDegree));
    }
}

void EntityReader::circle(const Record& record, Entity& entity) {
    entity.kind = Entity::Kind::circle;
    entity.contour = Contour::circle(point(record, kPoint), positive(record, kSize));
}

void EntityReader::text(const Record& record, Entity& entity) {
    const Tag* value = record.find(kText);
    if (value == nullptr) {
        tags_.fail(Code::input_missing_key, record.head.line, "TEXT has no group 1");
    }
    entity.kind = Entity::Kind::text;
    entity.text = value->value;
    entity.at = point(record, kPoint);
}

double EntityReader::bulge(const Tag& tag) const {
    const double value = tags_.real(tag);
    if (std::abs(value) > kSteepestBulge) {
        tags_.fail(Code::input_limit, tag.line, "a bulge of a full turn", "two arcs");
    }
    return value;
}

void EntityReader::light_polyline(const Record& record, Entity& entity) {
    std::vector<PlacedVertex> vertices;
    bool has_y = true;
    for (const Tag& tag : record.tags) {
        if (tag.code == kPoint) {
            if (!has_y) {
                break;
            }
            vertices.push_back({{{tags_.real(tag), 0}, 0}, tag.line});
            has_y = false;
        } else if (tag.code == kPoint + kToY && !has_y) {
            vertices.back().vertex.at.y = tags_.real(tag);
            has_y = true;
        } else if (tag.code == kBulge && !vertices.empty()) {
            vertices.back().vertex.bulge = bulge(tag);
        }
    }
    if (!has_y) {
        tags_.fail(Code::input_missing_key, vertices.back().line, "a vertex has an x and no y");
    }
    const int count = integer_or(record, kVertexCount, -1);
    if (count < 0 || static_cast<std::size_t>(count) != vertices.size()) {
        tags_.fail(Code::input_contradiction, record.head.line,
                   "LWPOLYLINE has " + std::to_string(vertices.size()) + " vertices",
                   "as many as its group 90 says");
    }
    polyline(record, vertices, integer_or(record, kFlags, 0), entity);
}

void EntityReader::heavy_polyline(const Record& record, Entity& entity) {
    std::vector<PlacedVertex> vertices;
    while (!tags_.peek().begins("SEQEND")) {
        if (!tags_.peek().begins("VERTEX")) {
            tags_.fail(Code::input_syntax, tags_.peek().line, "POLYLINE is not ended", "SEQEND");
        }
        const Record vertex = take_record();
        expect_flat(vertex);
        const Tag* bulge_tag = vertex.find(kBulge);
        vertices.push_back({{point(vertex, kPoint), bulge_tag == nullptr ? 0 : bulge(*bulge_tag)},
                            vertex.head.line});
    }
    static_cast<void>(take_record());
    polyline(record, vertices, integer_or(record, kFlags, 0), entity);
}

void EntityReader::polyline(const Record& record, const std::vector<PlacedVertex>& vertices,
                            int flags, Entity& entity) const {
    if ((flags & ~(kClosed | kPatternRunsOn)) != 0) {
        tags_.fail(Code::input_value, record.head.line,
                   "a polyline that is a mesh, a spline's or one in space",
                   "straights and arcs in the plane");
    }
    const bool closed = (flags & kClosed) != 0;
    constexpr std::size_t kFewest = 2;
    if (vertices.size() < kFewest) {
        tags_.fail(Code::input_value, record.head.line, "a polyline of fewer than two vertices");
    }
    std::vector<Segment> segments;
    segments.reserve(vertices.size());
    for (std::size_t i = 0; i + (closed ? 0 : 1) < vertices.size(); ++i) {
        const PlacedVertex& from = vertices[i];
        const Segment segment{from.vertex.at, vertices[(i + 1) % vertices.size()].vertex.at,
                              from.vertex.bulge};
        if (distance(segment.from, segment.to) <= kJoint) {
            tags_.fail(Code::input_value, from.line, "two vertices in one place");
        }
        append_split(segments, segment);
    }
    if (closed) {
        entity.kind = Entity::Kind::closed;
        std::vector<Vertex> joined;
        joined.reserve(segments.size());
        for (const Segment& segment : segments) {
            joined.push_back({segment.from, segment.bulge});
        }
        entity.contour = Contour(std::move(joined));
    } else {
        entity.kind = Entity::Kind::open;
        entity.path.segments = std::move(segments);
    }
}

}  // namespace bowfront::dxf
