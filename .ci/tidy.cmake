# The program and its fuzz targets built by clang++, with clang-tidy run on each file beside the
# compiler.
#   cmake -C .ci/tidy.cmake -S . -B build-tidy && ninja -C build-tidy blockwright fuzz
include(${CMAKE_CURRENT_LIST_DIR}/fuzz.cmake)
set(CMAKE_CXX_CLANG_TIDY clang-tidy --quiet CACHE STRING "")
