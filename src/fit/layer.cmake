add_layer(fit
  HEADERS redrawing.hpp moves.hpp full_bust.hpp apply.hpp order.hpp
  SOURCES redrawing.cpp redrawing_curves.cpp moves.cpp full_bust.cpp closed_shoulder.cpp
          parts.cpp waist_fit.cpp row_moves.cpp rows_neck.cpp rows_shoulder.cpp rows_armhole.cpp
          rows_bust.cpp rows_back.cpp rows_lengths.cpp rows_waist.cpp half_measures.cpp half_piece.cpp
          halves.cpp limits.cpp together.cpp apply.cpp order.cpp
  USES base geometry measure pattern block dart
  LINKS fmt::fmt)
