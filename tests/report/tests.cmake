add_layer_tests(report
  SOURCES report_text_test.cpp comparison_test.cpp
  LINKS blockwright::report nlohmann_json::nlohmann_json)
