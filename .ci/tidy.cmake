# The program built by clang++, with clang-tidy run on each file beside the compiler.
#   cmake -C .ci/tidy.cmake -S . -B build-tidy && ninja -C build-tidy
include(${CMAKE_CURRENT_LIST_DIR}/compiler_cache.cmake)
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_CXX_CLANG_TIDY clang-tidy --quiet CACHE STRING "")
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE "-O2" CACHE STRING "")
set(BLOCKWRIGHT_TESTS OFF CACHE BOOL "")
set(BLOCKWRIGHT_EXAMPLES OFF CACHE BOOL "")
set(BLOCKWRIGHT_WERROR ON CACHE BOOL "")
set(BLOCKWRIGHT_UNITY ON CACHE BOOL "")
