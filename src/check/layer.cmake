add_layer(check
  HEADERS check.hpp
  SOURCES check.cpp back_measures.cpp measure_back.cpp shape_checks.cpp
  USES base geometry measure pattern block)
