add_layer_tests(reference
  SOURCES geos_test.cpp dart_vectors_test.cpp
  LINKS blockwright::pattern GEOS::geos_c)
