# A test that fails within a loop says for whom: refuses loops in the tests of ROOT over generated people,
# their blocks or random numbers that do not go through support/each.hpp, and messages that are gone
# before anything is checked.
#   cmake -D ROOT=<checkout> -P tests/layers/named_cases.cmake
cmake_minimum_required(VERSION 3.25)
set(FAULTS "")

function(refuse file pattern cure)
  if(text MATCHES "${pattern}")
    string(APPEND FAULTS "  ${file}: ${CMAKE_MATCH_0}: ${cure}\n")
    set(FAULTS "${FAULTS}" PARENT_SCOPE)
  endif()
endfunction()

file(GLOB files RELATIVE "${ROOT}" "${ROOT}/tests/*/*_test.cpp")
foreach(file IN LISTS files)
  file(READ "${ROOT}/${file}" text)
  refuse(${file} "[)][ \n]*(INFO|CAPTURE)[(]" "such a message ends with its own statement")
  refuse(${file} "for [(][^;{]*: survey_people[(]" "write each_person(count, seed)")
  refuse(${file} "for [(][^{]*[: ]blocks[(][)]" "write each_block()")
  refuse(${file} "Random [a-z_]+[({]" "write each_random(count, seed)")
endforeach()
list(LENGTH files count)
if(count LESS 40)
  message(FATAL_ERROR "Only ${count} files read under ${ROOT}: nothing was really checked.")
elseif(FAULTS)
  message(FATAL_ERROR "Loops that do not say which case failed:\n${FAULTS}")
endif()
message(STATUS "The loops of ${count} test files name their cases.")
