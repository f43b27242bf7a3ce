# The font that is built into the library, so that the paper looks the same on every machine.
find_file(BLOCKWRIGHT_FONT DejaVuSans.ttf
  PATHS /usr/share/fonts /usr/local/share/fonts PATH_SUFFIXES truetype/dejavu dejavu TTF
  DOC "TrueType font built into the program")
if(NOT BLOCKWRIGHT_FONT)
  message(FATAL_ERROR "DejaVuSans.ttf was not found. Install the package fonts-dejavu-core, or "
                      "give the file with -DBLOCKWRIGHT_FONT=/path/DejaVuSans.ttf.")
endif()
add_layer(write
  HEADERS writers.hpp
  SOURCES svg.cpp svg_path.cpp svg_ids.cpp pattern_json.cpp
          pdf.cpp pdf_content.cpp pdf_layers.cpp pdf_navigation.cpp pdf_metadata.cpp
          pdf_objects.cpp pdf_fonts.cpp pdf_font.cpp
          typeface.cpp typeface_subset.cpp text_runs.cpp builtin_font.cpp
          clean_text.cpp stroke_look.cpp
  USES base text geometry pattern layout
  LINKS nlohmann_json::nlohmann_json PkgConfig::QPDF PkgConfig::HARFBUZZ)
# libqpdf asks its users which of its two pointer types they are written for. Its headers are C++17
# and clang++ refuses them as C++20: they have a vector of a class that is not complete yet.
set_source_files_properties(write/pdf_objects.cpp PROPERTIES
  COMPILE_DEFINITIONS POINTERHOLDER_TRANSITION=4
  COMPILE_OPTIONS -std=c++17)
set_source_files_properties(write/builtin_font.cpp PROPERTIES
  COMPILE_DEFINITIONS BLOCKWRIGHT_FONT_FILE="${BLOCKWRIGHT_FONT}"
  OBJECT_DEPENDS "${BLOCKWRIGHT_FONT}")
