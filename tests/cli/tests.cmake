add_layer_tests(cli
  SOURCES program_test.cpp hardening_test.cpp bad_input_test.cpp fit_prompt_test.cpp ../../src/cli/fit_prompt.cpp
          files_test.cpp killed_batch_test.cpp ../support/process.cpp ../support/run_tool.cpp
  LINKS blockwright::job nlohmann_json::nlohmann_json)
add_dependencies(cli_tests blockwright)
