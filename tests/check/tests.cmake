add_layer_tests(check
  SOURCES checks_test.cpp
  LINKS blockwright_test_blocks)
