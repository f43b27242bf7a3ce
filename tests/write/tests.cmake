add_layer_tests(write
  SOURCES svg_test.cpp pattern_json_test.cpp pdf_document_test.cpp pdf_text_test.cpp
          pdf_layers_test.cpp pdf_true_size_test.cpp same_bytes_test.cpp nasty_names_test.cpp
          drawings.cpp pdf_reading.cpp
  LINKS blockwright::write blockwright_test_tools nlohmann_json::nlohmann_json)
