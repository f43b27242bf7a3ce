add_layer(geometry
  HEADERS point.hpp curve.hpp path.hpp box.hpp solve.hpp intersections.hpp offset.hpp fair_path.hpp
  SOURCES point.cpp curve.cpp path.cpp box.cpp outline.cpp nearest.cpp
          intersections.cpp offset.cpp path_parts.cpp arc_length.cpp fair_path.cpp
  USES base)
# Nobody reads errno after a square root; without it, arc lengths take two thirds of the time.
target_compile_options(blockwright_geometry PRIVATE -fno-math-errno)
