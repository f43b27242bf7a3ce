add_layer_tests(geometry
  SOURCES fixed_point_test.cpp point_test.cpp placement_test.cpp curve_test.cpp path_test.cpp box_test.cpp
          construct_test.cpp outline_test.cpp solve_test.cpp
          intersections_test.cpp path_parts_test.cpp offset_test.cpp fair_path_test.cpp
  LINKS blockwright::geometry)
