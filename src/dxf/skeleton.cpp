/// Source: public DXF reference; that this much is enough, and no less, was tried on several readers.

#include "dxf/skeleton.hpp"

#include <algorithm>

namespace bowfront::dxf {
namespace {

// Handles of the fixed records. Layers and entities take those from kFirstFree on.
constexpr std::uint64_t kNobody = 0;
constexpr std::uint64_t kViewportTable = 0x1;
constexpr std::uint64_t kLinetypeTable = 0x2;
constexpr std::uint64_t kLayerTable = 0x3;
constexpr std::uint64_t kStyleTable = 0x4;
constexpr std::uint64_t kViewTable = 0x5;
constexpr std::uint64_t kFrameTable = 0x6;
constexpr std::uint64_t kApplicationTable = 0x7;
constexpr std::uint64_t kDimensionTable = 0x8;
constexpr std::uint64_t kBlockTable = 0x9;
constexpr std::uint64_t kViewport = 0x10;
constexpr std::uint64_t kByBlock = 0x11;
constexpr std::uint64_t kByLayer = 0x12;
constexpr std::uint64_t kContinuous = 0x13;
constexpr std::uint64_t kStyle = 0x14;
constexpr std::uint64_t kApplication = 0x15;
constexpr std::uint64_t kDimension = 0x16;
constexpr std::uint64_t kLayerZero = 0x17;
constexpr std::uint64_t kModelBegin = 0x21;
constexpr std::uint64_t kModelEnd = 0x22;
constexpr std::uint64_t kPaperSpace = 0x24;
constexpr std::uint64_t kPaperBegin = 0x25;
constexpr std::uint64_t kPaperEnd = 0x26;
constexpr std::uint64_t kRootDictionary = 0x28;
constexpr std::uint64_t kGroups = 0x29;
constexpr std::uint64_t kFirstFree = 0x30;

constexpr int kMillimetres = 4;
constexpr int kMetric = 1;
constexpr int kBlackOrWhite = 7;

void begin_section(TagWriter& tags, std::string_view name) {
    tags.text(0, "SECTION");
    tags.text(2, name);
}

void end_section(TagWriter& tags) {
    tags.text(0, "ENDSEC");
}

/// Writes tables in either release: R12 has neither handles, owners nor subclasses.
class TableWriter {
  public:
    TableWriter(TagWriter& tags, Version version) : tags_(tags), version_(version) {}

    void begin(std::string_view name, std::uint64_t handle, std::size_t entries) {
        tags_.text(0, "TABLE");
        tags_.text(2, name);
        table_ = handle;
        if (full()) {
            tags_.handle(5, handle);
            tags_.handle(330, kNobody);
            tags_.text(100, "AcDbSymbolTable");
        }
        tags_.integer(70, static_cast<std::int64_t>(entries));
    }

    /// @param handle_code  5, but 105 for dimension styles
    void entry(std::string_view type, std::uint64_t handle, std::string_view subclass,
               std::string_view name, int handle_code = 5) {
        tags_.text(0, type);
        if (full()) {
            tags_.handle(handle_code, handle);
            tags_.handle(330, table_);
            tags_.text(100, "AcDbSymbolTableRecord");
            tags_.text(100, subclass);
        }
        tags_.text(2, name);
        if (type != "BLOCK_RECORD") {
            tags_.integer(70, 0);
        }
    }

    void end() { tags_.text(0, "ENDTAB"); }

    void empty(std::string_view name, std::uint64_t handle) {
        begin(name, handle, 0);
        end();
    }

    [[nodiscard]] bool full() const { return version_ == Version::ac1015; }

  private:
    TagWriter& tags_;
    Version version_;
    std::uint64_t table_ = kNobody;
};

void write_viewport(TagWriter& tags, TableWriter& tables, const Box& extent) {
    constexpr double kMargin = 1.1;
    const double height = std::max(extent.width(), extent.height()) * kMargin;
    tables.begin("VPORT", kViewportTable, 1);
    tables.entry("VPORT", kViewport, "AcDbViewportTableRecord", "*ACTIVE");
    tags.point(10, {0, 0});  // the viewport fills the screen
    tags.point(11, {1, 1});
    tags.point(12, (extent.low + extent.high) * 0.5);
    tags.point(13, {0, 0});  // snap base, snap and grid spacing
    tags.point(14, {10, 10});
    tags.point(15, {10, 10});
    tags.point(16, {0, 0});  // seen from above
    tags.real(36, 1);
    tags.flat_point(17, {0, 0});
    tags.real(40, height);
    tags.real(41, 1);   // width to height
    tags.real(42, 50);  // lens length, of no effect in a flat view
    tables.end();
}

void write_linetype(TagWriter& tags, TableWriter& tables, std::uint64_t handle,
                    std::string_view name, std::string_view looks) {
    constexpr int kAlignment = 65;  // the only one there is, a capital A
    tables.entry("LTYPE", handle, "AcDbLinetypeTableRecord", name);
    tags.text(3, looks);
    tags.integer(72, kAlignment);
    tags.integer(73, 0);  // no dashes
    tags.real(40, 0);
}

void write_linetypes(TagWriter& tags, TableWriter& tables) {
    tables.begin("LTYPE", kLinetypeTable, tables.full() ? 3 : 1);
    if (tables.full()) {
        write_linetype(tags, tables, kByBlock, "ByBlock", "");
        write_linetype(tags, tables, kByLayer, "ByLayer", "");
    }
    write_linetype(tags, tables, kContinuous, tables.full() ? "Continuous" : "CONTINUOUS",
                   "Solid line");
    tables.end();
}

void write_layers(TagWriter& tags, TableWriter& tables, const std::vector<Layer>& layers) {
    const auto write = [&](const Layer& layer, std::uint64_t handle) {
        tables.entry("LAYER", handle, "AcDbLayerTableRecord", layer.name);
        tags.integer(62, layer.colour);
        tags.text(6, tables.full() ? "Continuous" : "CONTINUOUS");
    };
    tables.begin("LAYER", kLayerTable, layers.size() + 1);
    write({"0", kBlackOrWhite}, kLayerZero);  // must be there; nothing is ever drawn on it
    std::uint64_t handle = kFirstFree;
    for (const Layer& layer : layers) {
        write(layer, handle++);
    }
    tables.end();
}

void write_style(TagWriter& tags, TableWriter& tables) {
    constexpr double kLastHeight = 5;
    tables.begin("STYLE", kStyleTable, 1);
    tables.entry("STYLE", kStyle, "AcDbTextStyleTableRecord", "STANDARD");
    tags.real(40, 0);  // height not fixed
    tags.real(41, 1);
    tags.real(50, 0);
    tags.integer(71, 0);
    tags.real(42, kLastHeight);
    tags.text(3, "txt");
    tags.text(4, "");
    tables.end();
}

void write_dimension_style(TagWriter& tags, TableWriter& tables) {
    constexpr int kHandleCode = 105;  // 5 means something else in this table
    tables.begin("DIMSTYLE", kDimensionTable, 1);
    tags.text(100, "AcDbDimStyleTable");
    tables.entry("DIMSTYLE", kDimension, "AcDbDimStyleTableRecord", "STANDARD", kHandleCode);
    tables.end();
}

void write_block_records(TableWriter& tables) {
    tables.begin("BLOCK_RECORD", kBlockTable, 2);
    tables.entry("BLOCK_RECORD", kModelSpace, "AcDbBlockTableRecord", "*Model_Space");
    tables.entry("BLOCK_RECORD", kPaperSpace, "AcDbBlockTableRecord", "*Paper_Space");
    tables.end();
}

struct BlockHandles {
    std::uint64_t record;
    std::uint64_t begin;
    std::uint64_t end;
};

void write_block(TagWriter& tags, std::string_view name, const BlockHandles& handles) {
    tags.text(0, "BLOCK");
    tags.handle(5, handles.begin);
    tags.handle(330, handles.record);
    tags.text(100, "AcDbEntity");
    tags.text(8, "0");
    tags.text(100, "AcDbBlockBegin");
    tags.text(2, name);
    tags.integer(70, 0);
    tags.flat_point(10, {0, 0});
    tags.text(3, name);
    tags.text(1, "");
    tags.text(0, "ENDBLK");
    tags.handle(5, handles.end);
    tags.handle(330, handles.record);
    tags.text(100, "AcDbEntity");
    tags.text(8, "0");
    tags.text(100, "AcDbBlockEnd");
}

void write_full_tables(TagWriter& tags, TableWriter& tables, const std::vector<Layer>& layers,
                       const Box& extent) {
    write_viewport(tags, tables, extent);
    write_linetypes(tags, tables);
    write_layers(tags, tables, layers);
    write_style(tags, tables);
    tables.empty("VIEW", kViewTable);
    tables.empty("UCS", kFrameTable);
    tables.begin("APPID", kApplicationTable, 1);
    tables.entry("APPID", kApplication, "AcDbRegAppTableRecord", "ACAD");
    tables.end();
    write_dimension_style(tags, tables);
    write_block_records(tables);
}

}  // namespace

void write_header(TagWriter& tags, Version version, const Box& extent, std::uint64_t next_handle) {
    begin_section(tags, "HEADER");
    tags.text(9, "$ACADVER");
    tags.text(1, version == Version::ac1015 ? "AC1015" : "AC1009");
    if (version == Version::ac1015) {
        tags.text(9, "$HANDSEED");
        tags.handle(5, next_handle);
        tags.text(9, "$DWGCODEPAGE");
        tags.text(3, "ANSI_1252");
    }
    tags.text(9, "$EXTMIN");
    tags.flat_point(10, extent.low);
    tags.text(9, "$EXTMAX");
    tags.flat_point(10, extent.high);
    // R12 does not know these two, and skips them; later importers of an R12 file do heed them,
    // and would take the drawing for inches without.
    tags.text(9, "$INSUNITS");
    tags.integer(70, kMillimetres);
    tags.text(9, "$MEASUREMENT");
    tags.integer(70, kMetric);
    end_section(tags);
}

std::uint64_t write_tables_and_blocks(TagWriter& tags, Version version,
                                      const std::vector<Layer>& layers, const Box& extent) {
    TableWriter tables(tags, version);
    if (version == Version::r12) {
        begin_section(tags, "TABLES");
        write_linetypes(tags, tables);
        write_layers(tags, tables, layers);
        write_style(tags, tables);
        end_section(tags);
        return kNobody;
    }
    begin_section(tags, "CLASSES");
    end_section(tags);
    begin_section(tags, "TABLES");
    write_full_tables(tags, tables, layers, extent);
    end_section(tags);
    begin_section(tags, "BLOCKS");
    write_block(tags, "*Model_Space", {kModelSpace, kModelBegin, kModelEnd});
    write_block(tags, "*Paper_Space", {kPaperSpace, kPaperBegin, kPaperEnd});
    end_section(tags);
    return kFirstFree + layers.size();
}

void write_objects_and_end(TagWriter& tags, Version version) {
    const auto dictionary = [&tags](std::uint64_t handle, std::uint64_t owner) {
        tags.text(0, "DICTIONARY");
        tags.handle(5, handle);
        tags.handle(330, owner);
        tags.text(100, "AcDbDictionary");
    };
    if (version == Version::ac1015) {
        begin_section(tags, "OBJECTS");
        dictionary(kRootDictionary, kNobody);
        tags.text(3, "ACAD_GROUP");
        tags.handle(350, kGroups);
        dictionary(kGroups, kRootDictionary);
        end_section(tags);
    }
    tags.text(0, "EOF");
}

}  // namespace bowfront::dxf
