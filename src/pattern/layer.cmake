add_layer(pattern
  HEADERS piece.hpp pattern.hpp dart_position.hpp
  SOURCES piece.cpp pattern.cpp dart_position.cpp
  USES base geometry)
