# The visible top level of ROOT holds exactly these names (build folders and out/ aside).
#   cmake -D ROOT=<checkout> -P tests/layers/top_level.cmake
cmake_minimum_required(VERSION 3.25)
set(EXPECTED CMakeLists.txt DEVELOPERS.md README.md docs examples include src tests)

file(GLOB names RELATIVE "${ROOT}" "${ROOT}/*")
list(FILTER names EXCLUDE REGEX "^([.].*|build.*|out)$")
list(SORT names)
if(NOT names STREQUAL EXPECTED)
  list(JOIN names " " names)
  list(JOIN EXPECTED " " EXPECTED)
  message(FATAL_ERROR "The top level holds\n  ${names}\nbut should hold exactly\n  ${EXPECTED}")
endif()
