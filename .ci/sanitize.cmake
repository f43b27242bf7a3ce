# AddressSanitizer and UndefinedBehaviorSanitizer, with the standard library's own checks on. Only
# the layers that calculate are optimised, and only a little (src/CMakeLists.txt): that takes the least
# time together. The program takes part in tests/determinism.sh.
#   cmake -C .ci/sanitize.cmake -S . -B build-sanitize
set(BLOCKWRIGHT_PICTURES OFF CACHE BOOL "")
set(CMAKE_VERIFY_INTERFACE_HEADER_SETS OFF CACHE BOOL "")
set(BLOCKWRIGHT_BENCHMARKS OFF CACHE BOOL "speed under sanitizers says nothing")
include(${CMAKE_CURRENT_LIST_DIR}/dev.cmake)
set(BLOCKWRIGHT_SANITIZE ON CACHE BOOL "")
set(BLOCKWRIGHT_UNITY ON CACHE BOOL "")
set(CMAKE_CXX_FLAGS_RELEASE "-O0 -g1 -D_GLIBCXX_ASSERTIONS" CACHE STRING "")
