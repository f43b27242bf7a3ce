add_layer(pattern
  HEADERS piece.hpp pattern.hpp dart_position.hpp sides.hpp
  SOURCES piece.cpp pattern.cpp dart_position.cpp sides.cpp
  USES base geometry)
