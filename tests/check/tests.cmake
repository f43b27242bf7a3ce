add_layer_tests(check
  SOURCES checks_test.cpp
  LINKS blockwright_test_blocks)
target_include_directories(check_tests PRIVATE ${PROJECT_SOURCE_DIR}/src/check)
