add_layer_tests(dart
  SOURCES pivot_test.cpp
  LINKS blockwright::dart blockwright_test_blocks)
