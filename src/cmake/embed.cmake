# Writes a C++ file that holds the text of some files, so that each has one copy in the project.
# cmake -DOUTPUT=table.cpp -DFUNCTION=embedded_schemas -DFILES=a.schema.json,b.schema.json -P ...
# A file is named in the table by what stands before its first full stop.
string(REPLACE "," ";" FILES "${FILES}")
list(SORT FILES)
set(rows)
foreach(file ${FILES})
  get_filename_component(name ${file} NAME_WE)
  file(READ ${file} text)
  string(APPEND rows "    EmbeddedText{\"${name}\", R\"embedded(${text})embedded\"},\n")
endforeach()
file(WRITE ${OUTPUT} "#include <array>

#include \"io/embedded_texts.hpp\"

namespace bowfront::io {
namespace {

constexpr std::array kTable = {
${rows}};

}  // namespace

std::span<const EmbeddedText> ${FUNCTION}() noexcept { return kTable; }

}  // namespace bowfront::io
")
