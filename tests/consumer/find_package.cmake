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
run("Configuring the consumer" ${CMAKE_COMMAND}
    -S ${CMAKE_CURRENT_LIST_DIR}/project -B ${WORK}/build -G ${GENERATOR}
    -D CMAKE_BUILD_TYPE=Debug -D CMAKE_CXX_COMPILER=${COMPILER} -D CMAKE_CXX_FLAGS=${FLAGS}
    -D CMAKE_PREFIX_PATH=${WORK}/prefix -D CMAKE_FIND_USE_PACKAGE_REGISTRY=OFF)
run("Building the consumer" ${CMAKE_COMMAND} --build ${WORK}/build)

run("The consumer" ${WORK}/build/consumer)
set(EXPECTED "${VERSION} front 140.00 back 140.00\n")
if(NOT OUTPUT STREQUAL EXPECTED)
  message(FATAL_ERROR "The consumer printed '${OUTPUT}' instead of '${EXPECTED}'.")
endif()
run("The installed program" ${WORK}/prefix/bin/blockwright --version)
if(NOT OUTPUT MATCHES "${VERSION}")
  message(FATAL_ERROR "The installed program says '${OUTPUT}' to --version, not ${VERSION}.")
endif()
