add_layer(write
  HEADERS writers.hpp
  SOURCES svg.cpp svg_parts.cpp xml_text.cpp pattern_json.cpp
          pdf.cpp pdf_content.cpp pdf_catalog.cpp pdf_objects.cpp pdf_fonts.cpp
  USES base text geometry pattern layout
  LINKS nlohmann_json::nlohmann_json PkgConfig::QPDF)
# libqpdf asks its users which of its two pointer types they are written for. Its headers are C++17
# and clang++ refuses them as C++20: they have a vector of a class that is not complete yet.
set_source_files_properties(write/pdf_objects.cpp PROPERTIES
  COMPILE_DEFINITIONS POINTERHOLDER_TRANSITION=4
  COMPILE_OPTIONS -std=c++17)
