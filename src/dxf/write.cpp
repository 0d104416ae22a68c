#include <utility>

#include "bowfront/dxf/dxf.hpp"
#include "dxf/entity_writer.hpp"
#include "dxf/layer.hpp"
#include "dxf/layout.hpp"
#include "dxf/skeleton.hpp"
#include "dxf/soundness.hpp"
#include "dxf/tag_writer.hpp"

namespace bowfront::dxf {

std::string write(const Pattern& pattern, std::string_view title, const Stamp& stamp,
                  const Options& options) {
    expect_sound(pattern);
    const Layout layout = lay_out(pattern, title, stamp);

    TagWriter body;
    const std::uint64_t first =
        write_tables_and_blocks(body, options.version, coloured(layout.layers), layout.extent);
    body.text(0, "SECTION");
    body.text(2, "ENTITIES");
    EntityWriter entities(body, options.version, kModelSpace, first);
    entities.write(layout);
    body.text(0, "ENDSEC");
    write_objects_and_end(body, options.version);

    // The header comes last, as it names a handle above all others, and goes first.
    TagWriter file;
    write_header(file, options.version, layout.extent, entities.next_handle());
    file.append(body);
    return std::move(file).take();
}

}  // namespace bowfront::dxf
