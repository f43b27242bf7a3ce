# The program and its fuzz targets built by clang++, with clang-tidy run on each file of src/ beside the
# compiler.
#   cmake -C .ci/tidy.cmake -S . -B build-tidy && ninja -C build-tidy blockwright fuzz
# In place of clang-tidy's bugprone-reserved-identifier, a tenth of the time of all checks; this costs none.
set(CMAKE_CXX_FLAGS "-Wreserved-identifier" CACHE STRING "")
# Not optimised, a third of the time to compile: a quarter of a minute of fuzzing finds little, and a long
# run builds its own (tests/fuzz/run).
set(CMAKE_CXX_FLAGS_RELEASE "-O0" CACHE STRING "")
include(${CMAKE_CURRENT_LIST_DIR}/fuzz.cmake)
set(CMAKE_CXX_CLANG_TIDY clang-tidy --quiet CACHE STRING "")
