#include "bowfront/fit/stand_off.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::fit {
namespace {

// What a point's distance is, and how it changes with a shift along X and along Y and a turn.
struct Off {
    double by = 0;
    std::array<double, 3> change{};
};

using Column = std::array<double, 4>;

// Solves four equations in four unknowns; rows of `matrix` are equations.
Column solved(std::array<Column, 4> matrix, Column right) {
    for (std::size_t pivot = 0; pivot < 4; ++pivot) {
        std::size_t best = pivot;
        for (std::size_t row = pivot + 1; row < 4; ++row) {
            if (std::abs(matrix[row][pivot]) > std::abs(matrix[best][pivot])) {
                best = row;
            }
        }
        std::swap(matrix[pivot], matrix[best]);
        std::swap(right[pivot], right[best]);
        for (std::size_t row = 0; row < 4; ++row) {
            if (row == pivot || matrix[row][pivot] == 0) {
                continue;
            }
            const double share = matrix[row][pivot] / matrix[pivot][pivot];
            for (std::size_t i = pivot; i < 4; ++i) {
                matrix[row][i] -= share * matrix[pivot][i];
            }
            right[row] -= share * right[pivot];
        }
    }
    for (std::size_t i = 0; i < 4; ++i) {
        right[i] /= matrix[i][i];
    }
    return right;
}

// How far a movement may go: shift along X and Y, and turn.
struct Bounds {
    std::array<double, 3> least{};
    std::array<double, 3> most{};
};

// The movement that makes the greatest of |off + change·x| least: the dual of that linear program,
// a weighing of points and bounds that no movement shifts, by the simplex method. A basis holds
// four columns: points, with the sign that they count by, and bounds, which it starts from.
class Levelling {
  public:
    Levelling(const std::vector<Off>& offs, const Bounds& bounds) : offs_(offs), bounds_(bounds) {
        const Basic first = point(offs_.front(), 1);
        for (std::size_t i = 0; i < 3; ++i) {
            basis_[i] = bound(i, first.column[i] > 0 ? -1 : 1);
        }
        basis_[3] = first;
    }

    // Shift along X and Y, and turn.
    [[nodiscard]] std::array<double, 3> movement() {
        // Each exchange weighs more; a few dozen do, and rounding can't keep it going for ever.
        constexpr int kMost = 400;
        Column price = prices();
        for (int i = 0; i < kMost; ++i) {
            const Entry entering = dearest(price);
            if (entering.gain <= kEnough || !exchange(entering.column)) {
                break;
            }
            price = prices();
        }
        return {-price[0], -price[1], -price[2]};
    }

  private:
    struct Basic {
        Column column{};
        double cost = 0;
    };
    struct Entry {
        Basic column;
        double gain = 0;
    };
    static constexpr double kEnough = 1e-12;  // mm

    [[nodiscard]] static Basic point(const Off& off, double sign) {
        return {{sign * off.change[0], sign * off.change[1], sign * off.change[2], 1},
                sign * off.by};
    }

    // That a movement goes no further one way.
    [[nodiscard]] Basic bound(std::size_t axis, double sign) const {
        Basic held;
        held.column[axis] = sign;
        held.cost = sign > 0 ? -bounds_.most[axis] : bounds_.least[axis];
        return held;
    }

    [[nodiscard]] Column prices() const {
        std::array<Column, 4> rows{};
        Column costs{};
        for (std::size_t i = 0; i < 4; ++i) {
            rows[i] = basis_[i].column;
            costs[i] = basis_[i].cost;
        }
        return solved(rows, costs);
    }

    [[nodiscard]] Entry dearest(const Column& price) const {
        Entry best;
        const auto ask = [&](const Basic& column) {
            double gain = column.cost;
            for (std::size_t i = 0; i < 4; ++i) {
                gain -= price[i] * column.column[i];
            }
            if (gain > best.gain) {
                best = {column, gain};
            }
        };
        for (const Off& off : offs_) {
            ask(point(off, 1));
            ask(point(off, -1));
        }
        for (std::size_t axis = 0; axis < 3; ++axis) {
            ask(bound(axis, 1));
            ask(bound(axis, -1));
        }
        return best;
    }

    [[nodiscard]] Column in_basis(const Column& column) const {
        std::array<Column, 4> rows{};
        for (std::size_t i = 0; i < 4; ++i) {
            for (std::size_t j = 0; j < 4; ++j) {
                rows[i][j] = basis_[j].column[i];
            }
        }
        return solved(rows, column);
    }

    bool exchange(const Basic& entering) {
        const Column weights = in_basis({0, 0, 0, 1});
        const Column share = in_basis(entering.column);
        std::size_t leaving = 4;
        double least = HUGE_VAL;
        for (std::size_t i = 0; i < 4; ++i) {
            constexpr double kNone = 1e-11;
            if (share[i] > kNone && std::max(0.0, weights[i]) / share[i] < least) {
                least = std::max(0.0, weights[i]) / share[i];
                leaving = i;
            }
        }
        if (leaving == 4) {
            return false;
        }
        basis_[leaving] = entering;
        return true;
    }

    const std::vector<Off>& offs_;
    const Bounds& bounds_;
    std::array<Basic, 4> basis_{};
};

// A straight or an arc that knows how far points stand off it, without working out its circle anew.
class Piece {
  public:
    Piece(const Segment& segment, bool first, bool last)
        : straight_(segment.straight()),
          first_(first),
          last_(last),
          from_(segment.from),
          along_(segment.tangent(0)),
          length_(segment.length()) {
        if (!straight_) {
            centre_ = segment.centre();
            radius_ = segment.radius();
            left_ = segment.bulge > 0;
        }
    }

    struct Foot {
        double distance;  // to the left of the piece
        Point normal;     // to its left
    };
    // Where a point stands off square to the piece; the piece runs on where it is the first or
    // last.
    [[nodiscard]] bool over(Point p, Foot& foot) const {
        if (straight_) {
            const double at = dot(p - from_, along_);
            foot = {cross(along_, p - from_), left_of(along_)};
            return within(at);
        }
        const Point arm = p - centre_;
        const double away = norm(arm);
        const Point outwards = arm * (1 / away);
        foot = left_ ? Foot{radius_ - away, outwards * -1} : Foot{away - radius_, outwards};
        // The angle from the arc's start, the way that it turns.
        const Point start = (from_ - centre_) * (1 / radius_);
        double turned = std::atan2(cross(start, outwards), dot(start, outwards));
        turned = left_ ? turned : -turned;
        const double sweep = length_ / radius_;
        if (turned < (sweep - 2 * std::numbers::pi) / 2) {
            turned += 2 * std::numbers::pi;
        }
        return within(turned * radius_);
    }

  private:
    [[nodiscard]] bool within(double at) const {
        constexpr double kEdge = 1e-9;  // of neighbours, that no point falls between
        return (first_ || at >= -kEdge) && (last_ || at <= length_ + kEdge);
    }

    bool straight_;
    bool first_;
    bool last_;
    Point from_;
    Point along_;
    double length_;
    Point centre_;
    double radius_ = 0;
    bool left_ = true;
};

std::vector<Piece> pieces_of(const std::vector<Segment>& curve) {
    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < curve.size(); ++i) {
        pieces.emplace_back(curve[i], i == 0, i + 1 == curve.size());
    }
    return pieces;
}

// By no more than so many times what it stands off at first: a flat curve could else slide away
// along its groove.
constexpr double kFurthest = 2;

class Lie {
  public:
    Lie(const std::vector<Point>& points, const std::vector<Segment>& curve)
        : points_(points), pieces_(pieces_of(curve)) {
        for (const Point p : points_) {
            middle_ = middle_ + p * (1.0 / static_cast<double>(points_.size()));
        }
        for (const Point p : points_) {
            reach_ = std::max(reach_, distance(p, middle_));
        }
    }

    double least() {
        double best = greatest(offs());
        const double furthest = kFurthest * best;
        // Each step squares what is missing of the least.
        constexpr int kSteps = 8;
        for (int step = 0; step < kSteps && best > 0; ++step) {
            const std::vector<Off> now = offs();
            shift(Levelling(now, left(furthest)).movement());
            const double found = greatest(offs());
            constexpr double kSettled = 1e-10;  // mm
            const bool settled = found > best - kSettled;
            best = std::min(best, found);
            if (settled) {
                break;
            }
        }
        return best;
    }

  private:
    // Turned about the middle by the share of the reach that the third of the movement is.
    void shift(const std::array<double, 3>& by) {
        const double angle = by[2] / reach_;
        const Motion turn{angle, {}, false};
        for (Point& p : points_) {
            p = middle_ + turn(p - middle_) + Point{by[0], by[1]};
        }
        middle_ = middle_ + Point{by[0], by[1]};
        for (std::size_t i = 0; i < 3; ++i) {
            moved_[i] += by[i];
        }
    }

    // What is left of a distance to move by.
    [[nodiscard]] Bounds left(double furthest) const {
        Bounds bounds;
        for (std::size_t i = 0; i < 3; ++i) {
            bounds.least[i] = -furthest - moved_[i];
            bounds.most[i] = furthest - moved_[i];
        }
        return bounds;
    }

    [[nodiscard]] std::vector<Off> offs() const {
        std::vector<Off> all;
        all.reserve(points_.size());
        for (const Point p : points_) {
            Piece::Foot nearest{HUGE_VAL, {}};
            for (const Piece& piece : pieces_) {
                Piece::Foot foot{};
                if (piece.over(p, foot) && std::abs(foot.distance) < std::abs(nearest.distance)) {
                    nearest = foot;
                }
            }
            if (nearest.distance == HUGE_VAL) {
                continue;  // over a joint that turns away from it: its neighbours tell
            }
            const Point arm = left_of(p - middle_) * (1 / reach_);
            all.push_back(
                {nearest.distance, {nearest.normal.x, nearest.normal.y, dot(nearest.normal, arm)}});
        }
        return all;
    }

    static double greatest(const std::vector<Off>& offs) {
        double most = 0;
        for (const Off& off : offs) {
            most = std::max(most, std::abs(off.by));
        }
        return most;
    }

    std::vector<Point> points_;
    std::vector<Piece> pieces_;
    Point middle_;
    double reach_ = 0;
    std::array<double, 3> moved_{};  // shifts, and a turn over the reach
};

}  // namespace

double least_stand_off(const std::vector<Point>& points, const std::vector<Segment>& curve) {
    BOWFRONT_EXPECTS(points.size() >= 4 && !curve.empty());
    return Lie(points, curve).least();
}

}  // namespace bowfront::fit
