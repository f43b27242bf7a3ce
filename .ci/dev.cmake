# The developer's build: optimised, with symbols, warnings are errors.
#   cmake -C .ci/dev.cmake -S . -B build && ninja -C build && ctest --test-dir build
include(${CMAKE_CURRENT_LIST_DIR}/compiler_cache.cmake)
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(BLOCKWRIGHT_TESTS ON CACHE BOOL "")
set(BLOCKWRIGHT_EXAMPLES ON CACHE BOOL "")
set(BLOCKWRIGHT_WERROR ON CACHE BOOL "")
