add_layer(figure
  HEADERS tape_figure.hpp seen_figure.hpp
  SOURCES outlines.cpp tapes.cpp figure_drawing.cpp
          seen/seen_faults.cpp seen/body_in_toile.cpp seen/seen_figure.cpp seen/seen_words.cpp
  USES base geometry measure)
