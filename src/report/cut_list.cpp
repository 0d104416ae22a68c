#include "bowfront/base/number_text.hpp"
#include "bowfront/report/report.hpp"

namespace bowfront::report {
namespace {

constexpr int kDecimals = 2;  // mm; a shop can't set less

std::string field(std::string_view text) {
    if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
        return std::string(text);
    }
    std::string quoted = "\"";
    for (const char c : text) {
        quoted += c;
        if (c == '"') {
            quoted += '"';
        }
    }
    return quoted + '"';
}

}  // namespace

std::string cut_list(const Content& content) {
    std::string text;
    if (verdict(content.findings) == Status::fail) {
        text += "# " + std::string(kFailedMark) + "\r\n";
    }
    text +=
        "id,name,count,material,length_mm,width_mm,thickness_mm,area_each_mm2,mass_each_kg,file,"
        "note\r\n";
    for (const PartEntry& entry : content.parts) {
        const Part& part = *entry.part;
        const Box box = part.pattern.outline.box();
        const std::string mass = part.density > 0 ? rounded_text(part.mass(), 4) : std::string();
        for (const std::string& value :
             {part.id, part.name, std::to_string(part.count()), part.material,
              rounded_text(box.width(), kDecimals), rounded_text(box.height(), kDecimals),
              rounded_text(part.pattern.thickness, kDecimals),
              rounded_text(part.pattern.outline.area(), kDecimals), mass, entry.file}) {
            text += field(value) + ",";
        }
        text += field(part.note) + "\r\n";
    }
    return text;
}

}  // namespace bowfront::report
