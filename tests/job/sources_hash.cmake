# The hash over the program's sources: the same for two copies in different folders, another one
# once a byte of a source, or a source's name, differs.
#   cmake -D SCRIPT=src/job/batch/sources_hash.cmake -D WORK=<scratch> -P sources_hash.cmake
function(hash_of folder result)
  execute_process(COMMAND ${CMAKE_COMMAND} -D SOURCE=${folder} -D OUT=${WORK}/hash.hpp -P ${SCRIPT}
                  COMMAND_ERROR_IS_FATAL ANY)
  file(READ ${WORK}/hash.hpp text)
  set(${result} "${text}" PARENT_SCOPE)
endfunction()

file(REMOVE_RECURSE ${WORK})
foreach(copy IN ITEMS one elsewhere/two)
  file(WRITE ${WORK}/${copy}/src/draft/rules.hpp "constexpr double kRise = 0.46;\n")
  file(WRITE ${WORK}/${copy}/include/draft.hpp "void draft();\n")
endforeach()
hash_of(${WORK}/one first)
hash_of(${WORK}/elsewhere/two second)
if(NOT first STREQUAL second OR NOT first MATCHES "\"[0-9a-f]+\"")
  message(FATAL_ERROR "The hash depends on the folder: ${first} ${second}")
endif()
file(WRITE ${WORK}/one/src/draft/rules.hpp "constexpr double kRise = 0.45;\n")
hash_of(${WORK}/one other_rule)
file(RENAME ${WORK}/elsewhere/two/include/draft.hpp ${WORK}/elsewhere/two/include/drafts.hpp)
hash_of(${WORK}/elsewhere/two other_name)
if(other_rule STREQUAL first OR other_name STREQUAL first)
  message(FATAL_ERROR "The hash does not see that a source differs.")
endif()
