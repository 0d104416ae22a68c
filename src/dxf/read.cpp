#include <utility>

#include "bowfront/dxf/dxf.hpp"
#include "dxf/entity_reader.hpp"
#include "dxf/tag_reader.hpp"

namespace bowfront::dxf {
namespace {

// Bounds on what is read: far above any pattern, far under what would exhaust a machine.
constexpr std::size_t kMostBytes = std::size_t{64} << 20U;
constexpr std::size_t kMostEntities = 1'000'000;

constexpr std::string_view kBinaryMark = "AutoCAD Binary DXF";

/// Reads a file section by section.
class FileReader {
  public:
    explicit FileReader(TagReader& tags) : tags_(tags) {}

    Drawing read() {
        bool has_entities = false;
        while (!tags_.peek().begins("EOF")) {
            const std::string_view name = begin_section();
            if (name == "HEADER") {
                header();
            } else if (name == "TABLES") {
                tables();
            } else if (name == "ENTITIES") {
                entities();
                has_entities = true;
            } else {
                skip();
            }
        }
        if (!has_entities) {
            tags_.fail(Code::input_missing_key, tags_.peek().line, "the file draws nothing",
                       "a section ENTITIES");
        }
        return std::move(drawing_);
    }

  private:
    std::string_view begin_section() {
        constexpr int kName = 2;
        const Tag begin = tags_.take();
        if (!begin.begins("SECTION")) {
            tags_.fail(Code::input_syntax, begin.line, "no section begins here",
                       "0 and SECTION, or 0 and EOF");
        }
        const Tag name = tags_.take();
        if (name.code != kName) {
            tags_.fail(Code::input_syntax, name.line, "a section has no name", "2 and its name");
        }
        return name.word();
    }

    // Whether the section goes on; its end is taken.
    bool goes_on() {
        const Tag& tag = tags_.peek();
        if (tag.begins("ENDSEC")) {
            tags_.take();
            return false;
        }
        if (tag.begins("SECTION") || tag.begins("EOF")) {
            tags_.fail(Code::input_syntax, tag.line, "a section is not ended", "0 and ENDSEC");
        }
        return true;
    }

    void skip() {
        while (goes_on()) {
            tags_.take();
        }
    }

    void header() {
        constexpr int kVariable = 9;
        constexpr int kText = 1;
        constexpr int kInteger = 70;
        std::string_view variable;
        while (goes_on()) {
            const Tag tag = tags_.take();
            if (tag.code == kVariable) {
                variable = tag.word();
            } else if (variable == "$ACADVER" && tag.code == kText) {
                drawing_.version = tag.word();
            } else if (variable == "$INSUNITS" && tag.code == kInteger) {
                drawing_.units = tags_.integer(tag);
            }
        }
    }

    void tables() {
        constexpr int kName = 2;
        bool in_layer = false;
        while (goes_on()) {
            const Tag tag = tags_.take();
            if (tag.code == 0) {
                in_layer = tag.begins("LAYER");
            } else if (in_layer && tag.code == kName) {
                drawing_.layers.emplace_back(tag.word());
                in_layer = false;
            }
        }
    }

    void entities() {
        EntityReader reader(tags_);
        while (goes_on()) {
            if (drawing_.entities.size() == kMostEntities) {
                tags_.fail(Code::input_limit, tags_.peek().line, "the drawing is too large",
                           "at most a million entities");
            }
            drawing_.entities.push_back(reader.take());
        }
    }

    TagReader& tags_;
    Drawing drawing_;
};

}  // namespace

Drawing read(std::string_view text, const std::string& name) {
    TagReader tags(text, name);
    if (text.size() > kMostBytes) {
        tags.fail(Code::input_limit, 0, "the file is larger than 64 MiB");
    }
    if (text.starts_with(kBinaryMark)) {
        tags.fail(Code::input_syntax, 1, "the file is a binary one", "DXF as text");
    }
    return FileReader(tags).read();
}

}  // namespace bowfront::dxf
