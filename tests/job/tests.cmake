add_layer_tests(job
  SOURCES problem_guide_test.cpp schemas_test.cpp
  LINKS blockwright::job nlohmann_json::nlohmann_json)
