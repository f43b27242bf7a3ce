add_layer_tests(cli
  SOURCES program_test.cpp bad_input_test.cpp ../support/run_tool.cpp
  LINKS blockwright::base nlohmann_json::nlohmann_json)
add_dependencies(cli_tests blockwright)
