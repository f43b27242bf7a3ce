add_layer(figure
  HEADERS tape_figure.hpp
  SOURCES smooth.cpp outlines.cpp tapes.cpp figure_drawing.cpp
  USES base geometry measure)
