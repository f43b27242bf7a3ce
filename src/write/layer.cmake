add_layer(write
  HEADERS writers.hpp
  SOURCES svg.cpp svg_parts.cpp xml_text.cpp pattern_json.cpp
          pdf.cpp pdf_content.cpp pdf_catalog.cpp pdf_objects.cpp pdf_fonts.cpp
          qpdf_objects.cpp pdf_linked.cpp
  USES base text geometry pattern layout
  LINKS nlohmann_json::nlohmann_json PkgConfig::QPDF)
# libqpdf asks its users which of its two pointer types they are written for. Its headers are C++17
# and clang++ refuses them as C++20: they have a vector of a class that is not complete yet.
set_source_files_properties(write/qpdf_objects.cpp PROPERTIES
  COMPILE_DEFINITIONS POINTERHOLDER_TRANSITION=4
  COMPILE_OPTIONS -std=c++17)

# Programs that link the layer have libqpdf behind it from their start. Our own program has a
# new_pdf_objects() of its own, blockwright_pdf_loaded, which takes the place of pdf_linked.cpp (an
# object of its own in the library, so that it is left out) and loads the module with the first PDF.
set_source_files_properties(write/pdf_linked.cpp PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
add_library(blockwright_pdf_module MODULE write/pdf_module.cpp write/qpdf_objects.cpp)
set_target_properties(blockwright_pdf_module PROPERTIES PREFIX "" OUTPUT_NAME blockwright-pdf
  LIBRARY_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR}/src/cli)
target_link_libraries(blockwright_pdf_module PRIVATE blockwright_flags PkgConfig::QPDF)
add_library(blockwright_pdf_loaded OBJECT write/pdf_loaded.cpp)
target_compile_definitions(blockwright_pdf_loaded PRIVATE
  BLOCKWRIGHT_PDF_MODULE="$<TARGET_FILE_NAME:blockwright_pdf_module>")
target_link_libraries(blockwright_pdf_loaded PRIVATE blockwright_flags blockwright_base Threads::Threads ${CMAKE_DL_LIBS})
foreach(part IN ITEMS blockwright_pdf_module blockwright_pdf_loaded)
  target_include_directories(${part} PRIVATE ${PROJECT_SOURCE_DIR}/include)
endforeach()
install(TARGETS blockwright_pdf_module LIBRARY DESTINATION lib/blockwright)
