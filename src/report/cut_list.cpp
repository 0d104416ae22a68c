#include <string>
#include <vector>

#include "bowfront/base/number_text.hpp"
#include "bowfront/report/report.hpp"
#include "shop_size_text.hpp"

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

// The sizes of one part as a shop sets them; empty fields for a part that is fitted in its place.
class ShopColumns {
  public:
    explicit ShopColumns(const study::ShopSizes& shop) : shop_(shop) {}

    [[nodiscard]] std::vector<std::string> of(const Part& part) const {
        const Box box = part.pattern.outline.box();
        if (part.id.starts_with("bead-")) {
            return std::vector<std::string>(6);
        }
        // A pane that opens has no sizes there: rather smaller than one that binds.
        const study::Rounding way =
            part.id.starts_with("pane-") ? study::Rounding::down : study::Rounding::up;
        study::ShopSize length = board(box.width(), way);
        study::ShopSize width = board(box.height(), way);
        study::ShopSize thickness{part.pattern.thickness, part.pattern.thickness};
        if (part.id.starts_with("post-")) {
            thickness = shop_.post;
        }
        for (const study::PaneShopSizes& pane : shop_.panes) {
            if (part.id == "pane-" + std::string(side_text(pane.side))) {
                length = pane.length;
                width = pane.width;
            }
        }
        std::vector<std::string> fields;
        for (const study::ShopSize& size : {length, width, thickness}) {
            fields.push_back(shop_size_text(size.size, shop_.step));
            fields.push_back(rounded_text(size.over(), kDecimals));
        }
        return fields;
    }

  private:
    // The piece that an outline is cut from.
    [[nodiscard]] study::ShopSize board(double exact, study::Rounding way) const {
        return {exact, study::whole_steps(exact, shop_.step, way)};
    }

    const study::ShopSizes& shop_;
};

// The timber that a part is sawn from; empty fields for one that is not of solid timber.
std::vector<std::string> rough_columns(const Part& part, const TimberList<double>& timber) {
    constexpr int kFine = 6;  // of board feet and cubic metres: a bead takes little of either
    for (const TimberRow<double>& row : timber.rows) {
        if (row.id == part.id) {
            return {rounded_text(row.rough.length, kDecimals),
                    rounded_text(row.rough.width, kDecimals),
                    rounded_text(row.rough.thickness, kDecimals),
                    rounded_text(row.board_feet, kFine), rounded_text(row.volume, kFine)};
        }
    }
    return std::vector<std::string>(5);
}

}  // namespace

std::string cut_list(const Content& content) {
    std::string text;
    if (verdict(content.findings) == Status::fail) {
        text += "# " + std::string(kFailedMark) + "\r\n";
    }
    text +=
        "id,name,count,material,length_mm,width_mm,thickness_mm,shop_length,shop_length_over_mm,"
        "shop_width,shop_width_over_mm,shop_thickness,shop_thickness_over_mm,rough_length_mm,"
        "rough_width_mm,rough_thickness_mm,board_feet,volume_m3,area_each_mm2,mass_each_kg,file,"
        "note\r\n";
    const ShopColumns shop(content.shop);
    for (const PartEntry& entry : content.parts) {
        const Part& part = *entry.part;
        const Box box = part.pattern.outline.box();
        const std::string mass = part.density > 0 ? rounded_text(part.mass(), 4) : std::string();
        std::vector<std::string> fields{part.id,
                                        part.name,
                                        std::to_string(part.count()),
                                        part.material,
                                        rounded_text(box.width(), kDecimals),
                                        rounded_text(box.height(), kDecimals),
                                        rounded_text(part.pattern.thickness, kDecimals)};
        const std::vector<std::string> set = shop.of(part);
        fields.insert(fields.end(), set.begin(), set.end());
        const std::vector<std::string> rough = rough_columns(part, content.timber);
        fields.insert(fields.end(), rough.begin(), rough.end());
        fields.insert(fields.end(),
                      {rounded_text(part.pattern.outline.area(), kDecimals), mass, entry.file});
        for (const std::string& value : fields) {
            text += field(value) + ",";
        }
        text += field(part.note) + "\r\n";
    }
    return text;
}

}  // namespace bowfront::report
