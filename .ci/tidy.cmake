# The program, its fuzz targets and its tests under both sanitizers, by clang++, with clang-tidy run on
# each file of src/ beside the compiler. BLOCKWRIGHT_TEST_OBJECTS links the tests that another build has
# compiled. Optimised as for fuzzing: at -O1 clang++ puts nothing in line, and the tests take much longer.
#   cmake -C .ci/tidy.cmake -S . -B build-tidy && ninja -C build-tidy
# In place of clang-tidy's bugprone-reserved-identifier, a tenth of the time of all checks; this costs none.
set(CMAKE_CXX_FLAGS "-Wreserved-identifier" CACHE STRING "")
include(${CMAKE_CURRENT_LIST_DIR}/fuzz.cmake)
set(CMAKE_CXX_CLANG_TIDY clang-tidy --quiet CACHE STRING "")
