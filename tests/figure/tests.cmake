add_layer_tests(figure
  SOURCES seen_figure_test.cpp tape_figure_test.cpp
  LINKS blockwright::figure blockwright::text)
target_include_directories(figure_tests PRIVATE $<TARGET_PROPERTY:blockwright_figure,INCLUDE_DIRECTORIES>)
