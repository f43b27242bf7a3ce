# The font that is built into the library, so that the paper looks the same on every machine.
find_file(BLOCKWRIGHT_FONT DejaVuSans.ttf
  PATHS /usr/share/fonts /usr/local/share/fonts PATH_SUFFIXES truetype/dejavu dejavu TTF
  DOC "TrueType font built into the program")
if(NOT BLOCKWRIGHT_FONT)
  message(FATAL_ERROR "DejaVuSans.ttf was not found. Install the package fonts-dejavu-core, or "
                      "give the file with -DBLOCKWRIGHT_FONT=/path/DejaVuSans.ttf.")
endif()
add_layer(text
  HEADERS refuse.hpp utf8.hpp units.hpp json_document.hpp json_values.hpp json_edit.hpp typeface.hpp
    text_fonts.hpp input_line.hpp small_letters.hpp
  SOURCES input_line.cpp refuse.cpp utf8.cpp units.cpp
          json/json_builder.cpp json/json_document.cpp json/json_reason.cpp
          json/separator_reason.cpp json/text_reason.cpp
          json/json_members.cpp json/json_values.cpp json/json_writing.cpp json/json_edit.cpp
          fonts/typeface.cpp fonts/typeface_subset.cpp fonts/text_runs.cpp fonts/text_fonts.cpp
  USES base
  LINKS fmt::fmt nlohmann_json::nlohmann_json PkgConfig::HARFBUZZ)
set_source_files_properties(text/fonts/text_fonts.cpp PROPERTIES
  COMPILE_DEFINITIONS BLOCKWRIGHT_FONT_FILE="${BLOCKWRIGHT_FONT}"
  OBJECT_DEPENDS "${BLOCKWRIGHT_FONT}")
