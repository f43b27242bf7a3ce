# Configures ROOT as a stranger does who has the program's packages and not those of its tests.
#   cmake -D ROOT=<checkout> -D WORK=<scratch folder> -D COMPILER=<c++> -D GENERATOR=<name>
#         -P tests/consumer/plain_configure.cmake
cmake_minimum_required(VERSION 3.25)

# Sets CODE, and TEXT with all that was said in one line; the folder keeps earlier options.
function(configure)
  execute_process(COMMAND ${CMAKE_COMMAND} -S ${ROOT} -B ${WORK} -G ${GENERATOR}
                  -D CMAKE_CXX_COMPILER=${COMPILER} -D BLOCKWRIGHT_HARDENING=OFF ${ARGN}
                  RESULT_VARIABLE code OUTPUT_VARIABLE text ERROR_VARIABLE text)
  string(REGEX REPLACE "[ \n]+" " " text "${text}")
  set(CODE ${code} PARENT_SCOPE)
  set(TEXT "${text}" PARENT_SCOPE)
endfunction()

function(expect_done what)
  if(NOT CODE EQUAL 0)
    message(FATAL_ERROR "Configuring ${what} fails:\n${TEXT}")
  endif()
endfunction()

function(expect_refused what)
  if(CODE EQUAL 0)
    message(FATAL_ERROR "Configuring ${what} is not refused:\n${TEXT}")
  endif()
endfunction()

function(expect_said)
  foreach(words IN LISTS ARGN)
    string(FIND "${TEXT}" "${words}" at)
    if(at EQUAL -1)
      message(FATAL_ERROR "Configuring does not say '${words}':\n${TEXT}")
    endif()
  endforeach()
endfunction()

function(expect_targets)
  execute_process(COMMAND ${CMAKE_COMMAND} --build ${WORK} --target help
                  OUTPUT_VARIABLE targets COMMAND_ERROR_IS_FATAL ANY)
  foreach(name IN LISTS ARGN)
    if(NOT targets MATCHES "[\n ]${name}[:\n]")
      message(FATAL_ERROR "${name} cannot be built:\n${targets}")
    endif()
  endforeach()
endfunction()

file(REMOVE_RECURSE ${WORK})
configure(-D CMAKE_DISABLE_FIND_PACKAGE_Catch2=TRUE -D CMAKE_DISABLE_FIND_PACKAGE_GEOS=TRUE)
expect_done("without Catch2 and GEOS")
expect_said("left out" ".ci/install test" "base: Catch2 not found" "layout: Catch2, GEOS not found")
expect_targets(blockwright replay_draft)

configure(-D CMAKE_DISABLE_FIND_PACKAGE_Catch2=FALSE -D mutool_FOUND=OFF)
expect_done("without GEOS and mutool")
expect_said("left out" "reference: GEOS not found" "write: mutool not found")
expect_targets(blockwright base_tests cli_tests)

configure(-D BLOCKWRIGHT_TESTS=ON)
expect_refused("all tests without GEOS")
expect_said("cannot be built" "reference: GEOS not found" ".ci/install test" "BLOCKWRIGHT_TESTS=AUTO")

configure(-D BLOCKWRIGHT_TESTS=AUTO -D BLOCKWRIGHT_SURVEY=${WORK}/none.csv)
expect_refused("with a survey table that is not there")
expect_said("there is no file ${WORK}/none.csv")
