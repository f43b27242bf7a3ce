add_layer_tests(pattern
  SOURCES piece_test.cpp pattern_test.cpp
  LINKS blockwright::pattern)
