#include <cmath>
#include <numbers>

#include "bowfront/fit/plan.hpp"
#include "chain_side.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

// The sides of a chain before one is solved for: where each ends, and which way it goes on.
template <class N>
class Walk {
  public:
    explicit Walk(Book<N>& book) : book_(book) {}

    // The first side's chord lies along X.
    void start(N lead) { heading_ = -lead; }

    // A side whose chord leaves its start's tangent by an angle, `lead`.
    void side(const std::string& path, N chord, N lead, N turned, N turn) {
        using std::cos;
        using std::sin;
        const N along = heading_ + lead;
        constexpr std::string_view kSource = "the chain's chords, one after the other";
        x_ = book_.figure({path, "end_x"}, "x", Kind::length, x_ + chord * cos(along), kSource);
        y_ = book_.figure({path, "end_y"}, "y", Kind::length, y_ + chord * sin(along), kSource);
        chord_heading_ = value_of(along);
        heading_ = book_.figure({path, "end_heading"}, "ψ", Kind::angle, heading_ + turned + turn,
                                "direction in which the next side starts");
    }

    [[nodiscard]] double chord_heading() const { return chord_heading_; }
    [[nodiscard]] N x() const { return x_; }
    [[nodiscard]] N y() const { return y_; }
    [[nodiscard]] N heading() const { return heading_; }

  private:
    Book<N>& book_;
    N x_{0};
    N y_{0};
    N heading_{0};
    double chord_heading_ = 0;
};

// Writes the sides of a plan one after the other.
template <class N>
class SideWriter {
  public:
    SideWriter(const Plan& plan, Book<N>& book) : plan_(plan), book_(book), order_(sides_of(plan)) {
        sides_.reserve(order_.size());
    }

    std::vector<SideSums<N>> write() {
        switch (plan_.shape) {
            case PlanShape::rectangle:
            case PlanShape::bow_front:
                front_and_three_sides();
                break;
            case PlanShape::quarter_round:
                quarter_round();
                break;
            case PlanShape::half_round:
                arc(arc_over("front", width()), Bow::out, 0, plan_.arc_panes);
                straight(width(), kPi);
                break;
            case PlanShape::bow_ends:
                bow_ends();
                break;
            case PlanShape::serpentine:
                serpentine();
                break;
            case PlanShape::polygon:
                plan_.corners.empty() ? regular_polygon() : free_polygon();
                break;
            case PlanShape::sides:
                chain();
                break;
        }
        return std::move(sides_);
    }

    // As `write` for a chain, and how far it ends from where it started.
    PlanGap write_open_chain() {
        const Walk<N> walk = chain();
        const bool follows = plan_.chain.back().turn_follows;
        return {{value_of(walk.x()), value_of(walk.y())},
                follows ? 0 : value_of(walk.heading()) - value_of(first_heading_) - 2 * kPi};
    }

  private:
    N width() { return book_.input("w_p", Kind::length, plan_.width); }
    N depth() { return book_.input("d_p", Kind::length, plan_.depth); }

    ArcSizes<N> arc_over(std::string_view name, N chord) {
        return forming::arc_over_chord(plan_.front->measure, angle_or_length(*plan_.front, book_),
                                       chord, "plan/" + std::string(name), book_);
    }

    SideSums<N>& next() {
        SideSums<N> side;
        side.side = order_[sides_.size()];
        sides_.push_back(std::move(side));
        return sides_.back();
    }

    void straight(N length, double heading, int panes = 1) {
        for (int i = 0; i < panes; ++i) {
            SideSums<N>& side = next();
            SidePiece<N> piece;
            piece.length = panes == 1 ? length
                                      : book_.figure({"plan", side.side.name(), "length"}, "S",
                                                     Kind::length, length / panes, kPlanSource);
            piece.chord_heading = heading;
            be(side, piece);
        }
    }

    void arc(const ArcSizes<N>& whole, Bow bow, double chord_heading, int panes) {
        const double turned = (bow == Bow::out ? 1 : -1) * value_of(whole.sweep);
        for (int i = 0; i < panes; ++i) {
            SideSums<N>& side = next();
            be(side, arc_piece(panes == 1 ? whole : part_of(whole, panes, side.side.name()), bow,
                               chord_heading + turned * ((i + 0.5) / panes - 0.5)));
        }
    }

    // A side of one piece.
    static void be(SideSums<N>& side, const SidePiece<N>& piece) {
        side.length = piece.length;
        side.chord = piece.chord();
        side.chord_heading = piece.chord_heading;
        side.pieces.assign(1, piece);
    }

    // One of the equal pieces that an arc is divided into.
    ArcSizes<N> part_of(const ArcSizes<N>& whole, int panes, std::string_view name) {
        using std::cos;
        using std::sin;
        const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N value) {
            return book_.figure({"plan", name, key}, symbol, kind, value, kPlanSource);
        };
        ArcSizes<N> part;
        part.radius = figure("radius", "R", Kind::length, whole.radius);
        part.sweep = figure("sweep", "θ", Kind::angle, whole.sweep / panes);
        part.chord = figure("chord", "c", Kind::length, 2 * part.radius * sin(part.sweep / 2));
        part.rise = figure("rise", "f", Kind::length, part.radius * (1 - cos(part.sweep / 2)));
        part.length = figure("length", "S_f", Kind::length, part.radius * part.sweep);
        return part;
    }

    void front_and_three_sides() {
        const N across = width();
        if (plan_.shape == PlanShape::bow_front) {
            arc(arc_over("front", across), Bow::out, 0, plan_.arc_panes);
        } else {
            straight(across, 0);
        }
        straight(depth(), kPi / 2);
        straight(across, kPi);
        straight(depth(), 3 * kPi / 2);
    }

    void quarter_round() {
        using std::sqrt;
        const N across = width();
        const N deep = depth();
        const N chord = book_.figure({"plan", "front", "chord"}, "c", Kind::length,
                                     sqrt(across * across + deep * deep), kPlanSource);
        arc(arc_over("front", chord), Bow::out, std::atan2(value_of(deep), value_of(across)),
            plan_.arc_panes);
        straight(across, kPi);
        straight(deep, 3 * kPi / 2);
    }

    void bow_ends() {
        const N across = width();
        const ArcSizes<N> end = arc_over("ends", depth());
        straight(across, 0);
        arc(end, Bow::out, kPi / 2, plan_.arc_panes);
        straight(across, kPi);
        arc(end, Bow::out, 3 * kPi / 2, plan_.arc_panes);
    }

    void serpentine() {
        const N across = width();
        const N chord = book_.figure({"plan", "front", "chord"}, "c", Kind::length,
                                     across / plan_.arcs, "the front's width in equal parts");
        const ArcSizes<N> each = arc_over("front", chord);
        for (int i = 0; i < plan_.arcs; ++i) {
            arc(each, i % 2 == 0 ? Bow::out : Bow::in, 0, plan_.arc_panes);
        }
        straight(depth(), kPi / 2);
        straight(across, kPi);
        straight(depth(), 3 * kPi / 2);
    }

    void regular_polygon() {
        const N side = book_.input("s", Kind::length, plan_.side);
        for (int i = 0; i < plan_.count; ++i) {
            straight(side, 2 * kPi * i / plan_.count);
        }
    }

    void free_polygon() {
        using std::sqrt;
        const auto& corners = plan_.corners;
        const auto at = [&](std::size_t i, std::size_t axis) {
            return book_.input(axis == 0 ? "x" : "y", Kind::length,
                               corners[i % corners.size()][axis]);
        };
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const N x = at(i + 1, 0) - at(i, 0);
            const N y = at(i + 1, 1) - at(i, 1);
            straight(book_.figure({"plan", order_[i].name(), "length"}, "S", Kind::length,
                                  sqrt(x * x + y * y), kPlanSource),
                     std::atan2(value_of(y), value_of(x)));
        }
    }

    void place(ChainSide<N> side, const std::string& path, int panes, double chord_heading) {
        if (side.pieces.size() == 1) {
            const SidePiece<N>& piece = side.pieces.front();
            piece.curved ? arc(piece.arc, piece.bow, chord_heading, panes)
                         : straight(piece.length, chord_heading, panes);
            return;
        }
        SideSums<N>& sums = next();
        for (SidePiece<N>& piece : side.pieces) {
            piece.chord_heading += chord_heading - value_of(side.lead);
            sums.length =
                &piece == &side.pieces.front() ? piece.length : sums.length + piece.length;
        }
        sums.length = book_.figure({path, "length"}, "S", Kind::length, sums.length,
                                   "its pieces, one after the other");
        sums.chord = side.chord;
        sums.chord_heading = chord_heading;
        sums.pieces = std::move(side.pieces);
    }

    Walk<N> chain() {
        Walk<N> walk(book_);
        for (const SideSpec& spec : plan_.chain) {
            const std::string path = "plan/" + spec.name;
            if (spec.closing) {
                closing(spec, path, walk);
                break;
            }
            ChainSide<N> side = chain_side(spec, path, book_);
            if (sides_.empty()) {
                walk.start(side.lead);
                first_heading_ = walk.heading();
            }
            walk.side(path, side.chord, side.lead, side.turned,
                      spec.turn_follows ? N(0) : book_.input("τ", Kind::angle, spec.turn));
            place(std::move(side), path, spec.panes, walk.chord_heading());
        }
        return walk;
    }

    void closing(const SideSpec& spec, const std::string& path, const Walk<N>& walk) {
        using std::sqrt;
        const N chord = book_.figure({path, "chord"}, "c", Kind::length,
                                     sqrt(walk.x() * walk.x() + walk.y() * walk.y()),
                                     "from where the chain ends to where it starts");
        const double heading = std::atan2(-value_of(walk.y()), -value_of(walk.x()));
        const PieceSpec& piece = spec.pieces.front();
        if (piece.arc.empty()) {
            straight(chord, heading, spec.panes);
            return;
        }
        const FrontArc& given = piece.arc.front();
        arc(forming::arc_over_chord(given.measure, angle_or_length(given, book_), chord, path,
                                    book_),
            piece.bow.value, heading, spec.panes);
    }

    const Plan& plan_;
    Book<N>& book_;
    std::vector<CaseSide> order_;
    std::vector<SideSums<N>> sides_;
    N first_heading_{0};
};

}  // namespace

template <class N>
std::vector<SideSums<N>> solve_sides(const Plan& plan, Book<N>& book) {
    return SideWriter<N>(plan, book).write();
}

template std::vector<SideSums<double>> solve_sides(const Plan&, Book<double>&);
template std::vector<SideSums<Traced>> solve_sides(const Plan&, Book<Traced>&);

PlanGap plan_gap(const Plan& plan) {
    if (plan.shape != PlanShape::sides || plan.chain.back().closing) {
        return {};
    }
    Book<double> book;
    return SideWriter<double>(plan, book).write_open_chain();
}

}  // namespace bowfront::fit
