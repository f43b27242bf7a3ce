add_layer_tests(fit
  SOURCES moves_test.cpp rows_test.cpp
  LINKS blockwright::fit blockwright_test_blocks)
