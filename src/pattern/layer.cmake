add_layer(pattern
  HEADERS piece.hpp pattern.hpp
  SOURCES piece.cpp pattern.cpp
  USES base geometry)
