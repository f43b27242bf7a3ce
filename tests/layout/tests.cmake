add_layer_tests(layout
  SOURCES paper_test.cpp cut_line_test.cpp corner_cut_test.cpp text_measure_test.cpp free_space_test.cpp
          lay_out_test.cpp tile_test.cpp one_page_test.cpp page_parts_test.cpp tape_sheet_test.cpp change_page_test.cpp geos_area.cpp sheet_reading.cpp
  LINKS blockwright::layout PkgConfig::HARFBUZZ GEOS::geos_c)
# Text measuring and free space are the layer's own, but worth testing by themselves.
target_include_directories(layout_tests PRIVATE $<TARGET_PROPERTY:blockwright_layout,INCLUDE_DIRECTORIES>)
