#pragma once
/// \file
/// What stands around the entities: without it strict importers refuse the file.

#include <cstdint>
#include <vector>

#include "bowfront/dxf/dxf.hpp"
#include "dxf/layer.hpp"
#include "dxf/tag_writer.hpp"

namespace bowfront::dxf {

/// Handle of the record that owns all entities of model space.
inline constexpr std::uint64_t kModelSpace = 0x20;

/// @param extent       of all that is drawn
/// @param next_handle  above every handle of the file
void write_header(TagWriter& tags, Version version, const Box& extent, std::uint64_t next_handle);

/// CLASSES (empty), TABLES and BLOCKS. @param extent  what the first view shows
/// @returns a handle above all that were given
[[nodiscard]] std::uint64_t write_tables_and_blocks(TagWriter& tags, Version version,
                                                    const std::vector<Layer>& layers,
                                                    const Box& extent);

/// OBJECTS, and the end of the file. R12 has no objects.
void write_objects_and_end(TagWriter& tags, Version version);

}  // namespace bowfront::dxf
