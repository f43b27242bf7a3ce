add_layer_tests(text
  SOURCES input_line_test.cpp json_document_test.cpp json_reason_test.cpp typeface_test.cpp units_test.cpp
  LINKS blockwright::text)
