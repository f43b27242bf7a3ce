# AddressSanitizer and UndefinedBehaviorSanitizer, with the standard library's own checks on.
#   cmake -C .ci/sanitize.cmake -S . -B build-sanitize
include(${CMAKE_CURRENT_LIST_DIR}/dev.cmake)
set(BLOCKWRIGHT_SANITIZE ON CACHE BOOL "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O1 -g -D_GLIBCXX_ASSERTIONS" CACHE STRING "")
