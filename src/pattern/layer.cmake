add_layer(pattern
  HEADERS finish.hpp piece.hpp pattern.hpp edge_band.hpp
  SOURCES piece.cpp pattern.cpp sides.cpp
  USES base geometry)
