#include "bowfront/figure/book.hpp"

namespace bowfront {

std::string FigurePath::text() const {
    std::string text(first);
    for (const std::string_view piece : {second, third, fourth}) {
        if (!piece.empty()) {
            text += '/';
            text += piece;
        }
    }
    return text;
}

Traced Book<Traced>::input(std::string_view symbol, Kind kind, const Sourced<double>& value) {
    // Inputs are filed under the place of the case file where they stand, or would stand.
    return workings_.input("case" + value.origin.pointer, symbol, kind, value.value, value.origin);
}

Traced Book<Traced>::reference(const FigurePath& path, std::string_view symbol, Kind kind,
                               double value, const Reference& reference) {
    return workings_.input(path.text(), symbol, kind, value,
                           {Origin::Kind::library, {}, 0, std::string(reference.source)});
}

Traced Book<Traced>::figure(const FigurePath& path, std::string_view symbol, Kind kind,
                            Traced value, std::string_view source) {
    return workings_.figure(path.text(), symbol, kind, value, source);
}

Traced Book<Traced>::solved(const FigurePath& path, std::string_view symbol, Kind kind,
                            double value, std::string_view condition,
                            std::initializer_list<Traced> inputs, std::string_view source) {
    return workings_.solved(path.text(), symbol, kind, value, condition, std::vector<Traced>(inputs),
                            source);
}

}  // namespace bowfront
