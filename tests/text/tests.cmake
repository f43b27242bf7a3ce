add_layer_tests(text
  SOURCES units_test.cpp
  LINKS blockwright::text)
