// Lists the bodies of a case as plain numbers, so that a program without this library can make the
// same solids. One record a line, a part's own lines after its `part` line:
//
//   part ASSEMBLY HEIGHT FACE        FACE is high or low: where recesses and bores open
//   outline N X Y BULGE ...          of the section: the outer one first, then holes
//   recess DEPTH                     its outlines follow as recess-outline lines
//   recess-outline N X Y BULGE ...
//   bore X Y DIAMETER DEPTH
//   place OX OY OZ XX XY XZ ZX ZY ZZ origin, local X, local Z

#include <exception>
#include <iostream>

#include "bowfront/base/number_text.hpp"
#include "bowfront/pipeline/design.hpp"
#include "pipeline/parts.hpp"

namespace {

using namespace bowfront;

// A case file is a page of text.
constexpr std::size_t kMost = 1 << 20;

void print(std::initializer_list<double> numbers) {
    for (const double number : numbers) {
        std::cout << ' ' << number_text(number);
    }
}

void print(const char* keyword, const Contour& outline) {
    std::cout << keyword << ' ' << outline.size();
    for (const Vertex& vertex : outline.vertices()) {
        print({vertex.at.x, vertex.at.y, vertex.bulge});
    }
    std::cout << '\n';
}

void print(const char* keyword, const Region& region) {
    print(keyword, region.outer);
    for (const Contour& hole : region.holes) {
        print(keyword, hole);
    }
}

void print(const Part& part) {
    const Body& body = part.body;
    std::cout << "part " << part.assembly;
    print({body.height});
    std::cout << (body.face == Face::high ? " high\n" : " low\n");
    print("outline", body.section);
    for (const Recess& recess : body.recesses) {
        std::cout << "recess";
        print({recess.depth});
        std::cout << '\n';
        print("recess-outline", recess.area);
    }
    for (const Bore& bore : body.bores) {
        std::cout << "bore";
        print({bore.centre.x, bore.centre.y, bore.diameter, bore.depth});
        std::cout << '\n';
    }
    for (const auto& [origin, x, z] : part.placements) {
        std::cout << "place";
        print({origin.x, origin.y, origin.z, x.x, x.y, x.z, z.x, z.y, z.z});
        std::cout << '\n';
    }
}

}  // namespace

int main(int argument_count, char** arguments) {
    if (argument_count != 2) {
        std::cerr << "usage: list_bodies CASE\n";
        return 2;
    }
    try {
        for (const Part& part : all_parts(design(read_text(arguments[1], kMost), arguments[1]))) {
            print(part);
        }
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 4;
    }
    return 0;
}
