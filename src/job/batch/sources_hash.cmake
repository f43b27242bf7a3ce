# Writes to OUT what the program knows of its own sources: one hash over all files of src and include
# in SOURCE, by their names there and their contents. Neither path, clock nor build folder enters.
#   cmake -D SOURCE=<project> -D OUT=<header> -P sources_hash.cmake
file(GLOB_RECURSE files LIST_DIRECTORIES false RELATIVE ${SOURCE} ${SOURCE}/src/* ${SOURCE}/include/*)
list(SORT files)
set(listed "")
foreach(name IN LISTS files)
  file(SHA256 ${SOURCE}/${name} hash)
  string(APPEND listed "${hash} ${name}\n")
endforeach()
string(SHA256 hash "${listed}")
configure_file(${CMAKE_CURRENT_LIST_DIR}/generated_sources_hash.hpp.in ${OUT} @ONLY)
