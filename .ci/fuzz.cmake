# The fuzz targets, with AddressSanitizer and UndefinedBehaviorSanitizer; see tests/fuzz/run.
#   cmake -C .ci/fuzz.cmake -S . -B build-fuzz && ninja -C build-fuzz fuzz
include(${CMAKE_CURRENT_LIST_DIR}/compiler_cache.cmake)
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE "-O2 -g1" CACHE STRING "")
set(BLOCKWRIGHT_TESTS ON CACHE BOOL "")
set(BLOCKWRIGHT_PICTURES OFF CACHE BOOL "")
set(BLOCKWRIGHT_WERROR ON CACHE BOOL "")
set(BLOCKWRIGHT_UNITY ON CACHE BOOL "")
set(BLOCKWRIGHT_FUZZ ON CACHE BOOL "")
