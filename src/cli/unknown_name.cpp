#include "unknown_name.hpp"

#include "bowfront/base/error.hpp"
#include "bowfront/io/nearest.hpp"

namespace bowfront::cli {

void refuse_unknown(std::string_view kind, const std::string& name,
                    std::span<const std::string_view> known) {
    const std::string near = io::nearest(name, known);
    std::string wanted;
    if (near.empty()) {
        wanted = "there are";
        for (const std::string_view word : known) {
            wanted += wanted.ends_with("are") ? " " : ", ";
            wanted += word;
        }
    } else {
        wanted = "did you mean " + near + "?";
    }
    throw InputError({{Code::input_value, {}, 0, 0, {},
                       "there is no " + std::string(kind) + " \"" + name + "\"", wanted}});
}

}  // namespace bowfront::cli
