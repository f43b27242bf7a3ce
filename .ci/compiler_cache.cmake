# Included by the cache scripts beside it: Ninja, and ccache where it is installed.
set(CMAKE_GENERATOR Ninja CACHE INTERNAL "")
find_program(BLOCKWRIGHT_CCACHE ccache)
if(BLOCKWRIGHT_CCACHE)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${BLOCKWRIGHT_CCACHE} CACHE STRING "")
endif()
