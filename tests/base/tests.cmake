add_layer_tests(base
  SOURCES few_test.cpp length_test.cpp measure_test.cpp number_text_test.cpp printable_test.cpp problem_test.cpp
          wording_test.cpp
  LINKS blockwright::base)
