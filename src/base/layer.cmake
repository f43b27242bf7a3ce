configure_file(${CMAKE_CURRENT_LIST_DIR}/version.hpp.in
               ${PROJECT_BINARY_DIR}/generated/version.hpp @ONLY)
add_layer(base
  HEADERS embedded_file.hpp few.hpp length.hpp angle.hpp measure.hpp wording.hpp error.hpp number_text.hpp printable.hpp
          utf8.hpp version.hpp
  SOURCES wording.cpp error.cpp number_text.cpp printable.cpp utf8.cpp version.cpp
  LINKS fmt::fmt)
target_include_directories(blockwright_base PRIVATE ${PROJECT_BINARY_DIR}/generated)
