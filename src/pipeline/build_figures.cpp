#include "build_figures.hpp"

namespace bowfront {

std::vector<TimberPiece> timber_pieces(const std::vector<Part>& parts) {
    std::vector<TimberPiece> pieces;
    for (const Part& part : parts) {
        if (part.timber) {
            pieces.push_back({part.id, part.count(), part.timber->length, part.timber->width,
                              part.timber->thickness, volume(part.body)});
        }
    }
    return pieces;
}

void add_build_figures(const Design& design, const std::vector<Part>& parts, Workings& workings) {
    Book<Traced> book(workings);
    (void)fit::build_sums(design.c(), design.layout, book);
    (void)fit::timber_list(design.c(), timber_pieces(parts), book);
}

}  // namespace bowfront
