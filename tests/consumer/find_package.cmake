# Installs BUILD into WORK, builds tests/consumer/project against it alone, and runs the result.
cmake_minimum_required(VERSION 3.25)

function(run what)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE code OUTPUT_VARIABLE text ERROR_VARIABLE text)
  if(NOT code EQUAL 0)
    message(FATAL_ERROR "${what} failed (${code}):\n${text}")
  endif()
  set(OUTPUT "${text}" PARENT_SCOPE)
endfunction()

file(REMOVE_RECURSE ${WORK})
run("Installing" ${CMAKE_COMMAND} --install ${BUILD} --prefix ${WORK}/prefix)
set(CONFIGURE ${CMAKE_COMMAND} -S ${CMAKE_CURRENT_LIST_DIR}/project -G ${GENERATOR}
    -D CMAKE_BUILD_TYPE=Debug -D CMAKE_CXX_COMPILER=${COMPILER} -D CMAKE_CXX_FLAGS=${FLAGS}
    -D CMAKE_PREFIX_PATH=${WORK}/prefix -D CMAKE_FIND_USE_PACKAGE_REGISTRY=OFF)
string(REGEX MATCH "^[0-9]+[.][0-9]+" MINOR ${VERSION})
run("Configuring the consumer" ${CONFIGURE} -B ${WORK}/build -D WANTED=${MINOR})
run("Building the consumer" ${CMAKE_COMMAND} --build ${WORK}/build)

execute_process(COMMAND ${CONFIGURE} -B ${WORK}/refused -D WANTED=9.0
                RESULT_VARIABLE code OUTPUT_QUIET ERROR_VARIABLE text)
if(code EQUAL 0 OR NOT text MATCHES "version: ${VERSION}")
  message(FATAL_ERROR "Version 9.0 is not refused, or the one that is here not named:\n${text}")
endif()

run("The consumer" ${WORK}/build/consumer)
set(EXPECTED "${VERSION} front 140.00 back 140.00\n")
if(NOT OUTPUT STREQUAL EXPECTED)
  message(FATAL_ERROR "The consumer printed '${OUTPUT}' instead of '${EXPECTED}'.")
endif()
run("The installed program" ${WORK}/prefix/bin/blockwright --version)
if(NOT OUTPUT MATCHES "${VERSION}")
  message(FATAL_ERROR "The installed program says '${OUTPUT}' to --version, not ${VERSION}.")
endif()
file(READ ${WORK}/prefix/share/doc/blockwright/LICENSE.md licence)
if(NOT licence MATCHES "MIT License")
  message(FATAL_ERROR "What is installed as LICENSE.md is not the licence.")
endif()
