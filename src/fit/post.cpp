#include "bowfront/fit/post.hpp"

#include <cmath>
#include <numbers>
#include <optional>

#include "bowfront/base/contract.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;
// Angles closer than this count as one direction: far above the rounding of an angle, far below
// any angle that a plan means.
constexpr double kSameAngle = 1e-12;

double wrapped(double angle) { return std::remainder(angle, 2 * kPi); }

double size_of(const Post& post, FaceSize size) {
    return (size == FaceSize::half_width ? post.width.value : post.depth.value) / 2;
}

// Keeps the part of a convex polygon with p·n ≤ h.
std::vector<Point> clipped(const std::vector<Point>& polygon, Point n, double h) {
    std::vector<Point> kept;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point a = polygon[i];
        const Point b = polygon[(i + 1) % polygon.size()];
        const double da = dot(a, n) - h;
        const double db = dot(b, n) - h;
        if (da <= 0) {
            kept.push_back(a);
        }
        if ((da < 0 && db > 0) || (da > 0 && db < 0)) {
            kept.push_back(a + (b - a) * (da / (da - db)));
        }
    }
    return kept;
}

// The angle turned along an arc of radius `r` from the corner until it crosses the face whose
// normal stands at `delta` from the tangent (positive towards the curve's side) at distance `h`.
std::optional<double> arc_crossing(double delta, double h, double r) {
    const double s = h / r - std::sin(delta);
    if (std::abs(s) > 1) {
        return std::nullopt;
    }
    std::optional<double> first;
    for (const double root : {delta + std::asin(s), delta + kPi - std::asin(s)}) {
        double angle = std::fmod(root, 2 * kPi);
        angle += angle <= 0 ? 2 * kPi : 0;
        if (!first || angle < *first) {
            first = angle;
        }
    }
    return first;
}

struct Crossing {
    const PostFace* face = nullptr;
    double delta = 0;  // between tangent and normal, positive to the side that the line turns to
    double length = 0;
};

template <class N>
Crossing first_crossing(const Post& post, const std::vector<PostFace>& faces,
                        const LeavingLine<N>& line) {
    Crossing best;
    for (const PostFace& face : faces) {
        const double h = size_of(post, face.size);
        double delta = wrapped(face.angle - line.angle);
        if (line.curved && !line.turns_left) {
            delta = -delta;
        }
        if (std::abs(delta) < kSameAngle) {
            delta = 0;
        }
        std::optional<double> length;
        if (line.curved) {
            const double r = value_of(line.radius);
            if (const auto angle = arc_crossing(delta, h, r)) {
                length = r * *angle;
            }
        } else if (std::cos(delta) > kSameAngle) {
            length = h / std::cos(delta);
        }
        if (length && (best.face == nullptr || *length < best.length)) {
            best = {&face, delta, *length};
        }
    }
    return best;
}

}  // namespace

namespace {

// The tangent that a square post is square to.
double square_to(const CornerDirections& directions) {
    if (directions.next_curved != directions.previous_curved) {
        return directions.next_curved ? directions.previous : directions.next;
    }
    // Nearer square to X: whose sine is larger. Within rounding the next side wins.
    const double gained = std::abs(std::sin(directions.previous)) - std::abs(std::sin(directions.next));
    return gained > kSameAngle ? directions.previous : directions.next;
}

}  // namespace

std::vector<PostFace> post_faces(PostSection section, CornerDirections directions) {
    using enum FaceSize;
    switch (section) {
        case PostSection::round: return {};
        case PostSection::square: {
            const double along = square_to(directions);
            return {{along, half_width},
                    {along + kPi, half_width},
                    {along - kPi / 2, half_depth},
                    {along + kPi / 2, half_depth}};
        }
        case PostSection::fitted: break;
    }
    std::vector<PostFace> faces;
    for (const double angle : {directions.next, directions.previous}) {
        faces.push_back({angle, half_width});
        faces.push_back({angle + kPi / 2, half_depth});
        faces.push_back({angle - kPi / 2, half_depth});
    }
    return faces;
}

Contour post_outline(const Post& post, CornerDirections directions, Point corner) {
    if (post.section.value == PostSection::round) {
        return Contour::circle(corner, post.width.value / 2);
    }
    // A box that holds any section: strips that cross at a sharp corner reach far out, and are cut
    // off where the other strip ends, so a generous multiple of the depth is enough.
    const double far = 1e3 * (post.width.value + post.depth.value);
    std::vector<Point> polygon{{-far, -far}, {far, -far}, {far, far}, {-far, far}};
    for (const PostFace& face : post_faces(post.section.value, directions)) {
        polygon = clipped(polygon, direction(face.angle), size_of(post, face.size));
    }
    std::vector<Point> outline;
    for (const Point p : polygon) {
        const Point q = p + corner;
        if (outline.empty() || distance(outline.back(), q) > kJoint) {
            outline.push_back(q);
        }
    }
    while (outline.size() > 1 && distance(outline.front(), outline.back()) <= kJoint) {
        outline.pop_back();
    }
    BOWFRONT_EXPECTS(outline.size() >= 3);
    return Contour::polygon(outline);
}

template <class N>
N length_in_post(const Post& post, const std::vector<PostFace>& faces, const LeavingLine<N>& line,
                 Book<N>& book) {
    using std::asin;
    const N width = book.input("w", Kind::length, post.width);
    const FigurePath path{"panes", line.path, "in_post"};
    const auto named = [&](N length) {
        return book.figure(path, line.symbol, Kind::length, length, "geometry of line, arc and post");
    };
    if (faces.empty()) {
        return named(line.curved ? 2 * line.radius * asin(width / (4 * line.radius)) : width / 2);
    }
    const Crossing crossing = first_crossing(post, faces, line);
    BOWFRONT_EXPECTS(crossing.face != nullptr);
    const N half = crossing.face->size == FaceSize::half_width
                       ? width / 2
                       : book.input("e", Kind::length, post.depth) / 2;
    const double delta = crossing.delta;
    if (!line.curved) {
        return named(delta == 0 ? half : half / std::cos(delta));
    }
    if (delta == 0) {
        return named(line.radius * asin(half / line.radius));
    }
    const double rising = delta + std::asin(value_of(half) / value_of(line.radius) - std::sin(delta));
    const N turned = asin(half / line.radius - std::sin(delta));
    if (rising > 0) {
        return named(line.radius * (delta + turned));
    }
    return named(line.radius * (delta + kPi - turned));
}

template double length_in_post(const Post&, const std::vector<PostFace>&,
                               const LeavingLine<double>&, Book<double>&);
template Traced length_in_post(const Post&, const std::vector<PostFace>&,
                               const LeavingLine<Traced>&, Book<Traced>&);

}  // namespace bowfront::fit
