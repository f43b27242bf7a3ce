add_layer_tests(text
  SOURCES json_document_test.cpp units_test.cpp
  LINKS blockwright::text)
