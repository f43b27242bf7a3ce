add_layer(garment
  HEADERS allowances.hpp opening.hpp binding.hpp making.hpp
  SOURCES allowances.cpp named_edges.cpp opening.cpp binding.cpp straps.cpp making.cpp
  USES base geometry pattern block dart)
