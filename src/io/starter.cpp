#include "bowfront/io/starter.hpp"

#include <algorithm>

#include "bowfront/base/contract.hpp"
#include "embedded_texts.hpp"

namespace bowfront::io {

std::vector<std::string_view> starter_shapes() {
    std::vector<std::string_view> shapes;
    for (const EmbeddedText& starter : embedded_starters()) {
        shapes.push_back(starter.name);
    }
    return shapes;
}

std::string starter(std::string_view shape) {
    const auto all = embedded_starters();
    const auto found = std::find_if(all.begin(), all.end(), [shape](const EmbeddedText& starter) {
        return starter.name == shape;
    });
    BOWFRONT_EXPECTS(found != all.end());
    return std::string(found->text);
}

}  // namespace bowfront::io
