#include "bowfront/forming/form_profile.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::forming {
namespace {

constexpr double kPi = std::numbers::pi;

// A straight or an arc of the ribs' edge, positive to the left.
struct EdgePiece {
    double length = 0;
    double turned = 0;

    [[nodiscard]] double chord() const {
        return turned == 0 ? length : length * std::sin(turned / 2) / (turned / 2);
    }
};

std::vector<EdgePiece> edge_pieces(const FormSizes<double>& form, double under) {
    std::vector<EdgePiece> pieces;
    for (const FormPiece<double>& piece : form.pieces) {
        if (piece.radius == 0) {
            pieces.push_back({piece.length, 0});
            continue;
        }
        const double radius = piece.hollow ? piece.radius + under : piece.radius - under;
        pieces.push_back({radius * piece.sweep, piece.hollow ? -piece.sweep : piece.sweep});
    }
    return pieces;
}

// The heading that the edge starts with.
double start_heading(const std::vector<EdgePiece>& pieces) {
    double turned = 0;
    double least = 0;
    double most = 0;
    Point end;
    for (const EdgePiece& piece : pieces) {
        end = end + direction(turned + piece.turned / 2) * piece.chord();
        turned += piece.turned;
        least = std::min(least, turned);
        most = std::max(most, turned);
    }
    // Level: its chord runs to the left. Nothing leans in while all of it runs to the left.
    const double level = kPi - std::atan2(end.y, end.x);
    const double lowest = kPi / 2 - least;
    const double highest = 3 * kPi / 2 - most;
    if (lowest > highest - kHalfTurnRounding) {
        const double even = (lowest + highest) / 2;
        // Half a turn to the last digit stands upright to the last digit.
        return std::abs(even - kPi / 2) < kHalfTurnRounding ? kPi / 2 : even;
    }
    return std::clamp(level, lowest, highest);
}

std::vector<Segment> segments_of(const std::vector<EdgePiece>& pieces, double heading) {
    std::vector<Segment> segments;
    Point at;
    for (const EdgePiece& piece : pieces) {
        // Arcs of more than half a turn in two halves.
        const int parts = std::abs(piece.turned) > kPi ? 2 : 1;
        const EdgePiece part{piece.length / parts, piece.turned / parts};
        for (int i = 0; i < parts; ++i) {
            const Point next = at + direction(heading + part.turned / 2) * part.chord();
            segments.push_back({at, next, std::tan(part.turned / 4)});
            heading += part.turned;
            at = next;
        }
    }
    return segments;
}

}  // namespace

FormProfile form_profile(const FormSizes<double>& form, const FormSpec& spec) {
    BOWFRONT_EXPECTS(!form.pieces.empty());
    const auto pieces = edge_pieces(form, spec.cover.value + spec.skin.value);
    FormProfile profile;
    profile.edge = segments_of(pieces, start_heading(pieces));
    Box box;
    for (const Segment& segment : profile.edge) {
        box.add(segment.box());
    }
    const Point shift{-(box.low.x + box.high.x) / 2, spec.foot.value - box.low.y};
    for (Segment& segment : profile.edge) {
        segment = {segment.from + shift, segment.to + shift, segment.bulge};
    }
    double along = 0;
    for (const EdgePiece& piece : pieces) {
        along += piece.length;
        profile.bend_lines.push_back(along);
    }
    profile.bend_lines.pop_back();
    return profile;
}

std::vector<Segment> set_off(const std::vector<Segment>& chain, double right) {
    std::vector<Segment> off;
    off.reserve(chain.size());
    for (const Segment& s : chain) {
        // A left turn lies further out on its right, a right turn further in.
        BOWFRONT_EXPECTS(s.straight() || s.radius() + (s.bulge > 0 ? right : -right) > 0);
        off.push_back({s.from - left_of(s.tangent(0)) * right, s.to - left_of(s.tangent(1)) * right,
                       s.bulge});
    }
    return off;
}

}  // namespace bowfront::forming
