# The developer's build: as released, with the tests, warnings are errors. It shares its flags with the
# released build, so that a compiler cache serves both.
#   cmake -C .ci/dev.cmake -S . -B build && ninja -C build && ctest --test-dir build
include(${CMAKE_CURRENT_LIST_DIR}/compiler_cache.cmake)
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(BLOCKWRIGHT_TESTS ON CACHE BOOL "")
set(CMAKE_VERIFY_INTERFACE_HEADER_SETS ON CACHE BOOL "each public header compiled alone")
set(BLOCKWRIGHT_PICTURES ON CACHE BOOL "")
set(BLOCKWRIGHT_BENCHMARKS ON CACHE BOOL "compiled, so that they stay in step; never run")
set(BLOCKWRIGHT_WERROR ON CACHE BOOL "")
