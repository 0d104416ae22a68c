#include "bowfront/fit/timber_list.hpp"

#include "bowfront/base/contract.hpp"
#include "bowfront/units/volume.hpp"

namespace bowfront::fit {
namespace {

constexpr std::string_view kRough = "finished size and the shop's allowance";
constexpr std::string_view kFeet = "a board foot is 144 in³ (NIST Handbook 130), by rough sizes";

// The allowances, entered once.
template <class N>
struct Allowances {
    N length;
    N width;
    N thickness;
};

template <class N>
struct Row {
    TimberRow<N> shown;
    N finished_volume;  // mm³, of all that are alike
    N rough_volume;     // mm³, the same
};

template <class N>
Row<N> timber_row(const TimberPiece& piece, const Allowances<N>& more, Book<N>& book) {
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind,
                            const N& value, std::string_view source) {
        return book.figure({"timber/pieces", piece.id, key}, symbol, kind, value, source);
    };
    const auto finished = [&](std::string_view key, std::string_view symbol, double value) {
        return figure(key, symbol, Kind::length, N(value),
                      "box of the finished part along its grain");
    };
    Row<N> row;
    TimberRow<N>& shown = row.shown;
    shown.id = piece.id;
    shown.count =
        figure("count", "n", Kind::count, N(piece.count), "number of places it stands in");
    shown.finished = {finished("finished/length", "l", piece.length),
                      finished("finished/width", "w", piece.width),
                      finished("finished/thickness", "t", piece.thickness)};
    shown.rough = {
        figure("rough/length", "l_r", Kind::length, shown.finished.length + more.length, kRough),
        figure("rough/width", "w_r", Kind::length, shown.finished.width + more.width, kRough),
        figure("rough/thickness", "t_r", Kind::length, shown.finished.thickness + more.thickness,
               kRough)};
    row.rough_volume =
        shown.count * shown.rough.length * shown.rough.width * shown.rough.thickness;
    shown.volume = figure("volume", "V", Kind::plain, row.rough_volume / kCubicMetre,
                          "rough sizes, m³");
    shown.board_feet =
        figure("board_feet", "b", Kind::plain, row.rough_volume / kBoardFoot, kFeet);
    row.finished_volume =
        shown.count * figure("finished_volume", "v", Kind::plain, N(piece.volume),
                             "volume of the part, mm³");
    return row;
}

}  // namespace

template <class N>
TimberList<N> timber_list(const Case& c, const std::vector<TimberPiece>& pieces, Book<N>& book) {
    BOWFRONT_EXPECTS(!pieces.empty());
    const Allowance& allowance = c.shop.allowance;
    const Allowances<N> more{book.input("a_l", Kind::length, allowance.length),
                             book.input("a_w", Kind::length, allowance.width),
                             book.input("a_t", Kind::length, allowance.thickness)};
    TimberList<N> list;
    N feet{};
    N volume{};
    N finished{};
    for (const TimberPiece& piece : pieces) {
        Row<N> row = timber_row(piece, more, book);
        const bool first = list.rows.empty();
        feet = first ? row.shown.board_feet : feet + row.shown.board_feet;
        volume = first ? row.shown.volume : volume + row.shown.volume;
        finished = first ? row.finished_volume : finished + row.finished_volume;
        list.rows.push_back(std::move(row.shown));
    }
    const auto total = [&](std::string_view key, std::string_view symbol, const N& value,
                           std::string_view source) {
        return book.figure({"timber", key}, symbol, Kind::plain, value, source);
    };
    list.board_feet = total("board_feet", "B", feet, kFeet);
    list.volume = total("volume", "V_r", volume, "rough sizes, m³");
    list.finished_volume =
        total("finished_volume", "V_f", finished / kCubicMetre, "volumes of the parts, m³");
    list.cut_away = total("cut_away", "q", 1 - list.finished_volume / list.volume,
                       "share of the rough timber that does not stay in the case");
    return list;
}

template TimberList<double> timber_list(const Case&, const std::vector<TimberPiece>&,
                                        Book<double>&);
template TimberList<Traced> timber_list(const Case&, const std::vector<TimberPiece>&,
                                        Book<Traced>&);

}  // namespace bowfront::fit
