add_layer_tests(block
  SOURCES curves_test.cpp darts_doc_test.cpp kinds_test.cpp reshape_test.cpp new_kind_test.cpp
  LINKS blockwright::fit blockwright::write blockwright_test_blocks)
