#include "bowfront/io/schema.hpp"

#include "embedded_texts.hpp"

namespace bowfront::io {

std::vector<std::string_view> schema_names() {
    std::vector<std::string_view> names;
    for (const EmbeddedText& schema : embedded_schemas()) {
        names.push_back(schema.name);
    }
    return names;
}

std::optional<std::string_view> schema_text(std::string_view name) noexcept {
    for (const EmbeddedText& schema : embedded_schemas()) {
        if (schema.name == name) {
            return schema.text;
        }
    }
    return std::nullopt;
}

}  // namespace bowfront::io
