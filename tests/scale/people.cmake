# The generated people are clients that can be drafted.
file(REMOVE_RECURSE ${WORK})
execute_process(COMMAND ${WRITE_PEOPLE} 3 ${WORK} COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${BLOCKWRIGHT} batch ${WORK} --out ${WORK}/out --write json
  OUTPUT_VARIABLE said COMMAND_ERROR_IS_FATAL ANY)
if(NOT said MATCHES "3 clients")
  message(FATAL_ERROR "Three people were written; batch says:\n${said}")
endif()
