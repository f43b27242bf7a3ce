add_layer_tests(style
  SOURCES read_style_test.cpp apply_style_test.cpp bust_dart_test.cpp sides_test.cpp centre_seam_test.cpp
  LINKS blockwright::style blockwright::fit blockwright_test_blocks nlohmann_json::nlohmann_json)
target_include_directories(style_tests PRIVATE ${PROJECT_SOURCE_DIR}/src/style)
