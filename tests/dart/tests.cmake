add_layer_tests(dart
  SOURCES pivot_test.cpp worked_numbers_test.cpp truing_test.cpp cone_test.cpp
          split_test.cpp one_dart_test.cpp folded_test.cpp hem_test.cpp drawn_neckline_test.cpp drawn_armhole_test.cpp top_edge_test.cpp panels_test.cpp
          smooth_panels_test.cpp fullness_test.cpp
  LINKS blockwright::dart blockwright_test_blocks)
