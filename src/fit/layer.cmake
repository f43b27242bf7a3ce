add_layer(fit
  HEADERS redrawing.hpp moves.hpp apply.hpp wearing_ease.hpp
  SOURCES redrawing.cpp redrawing_curves.cpp moves.cpp closed_shoulder.cpp
          parts.cpp waist_fit.cpp half_piece.cpp halves.cpp hollows.cpp limits.cpp line_sums.cpp
          together.cpp apply.cpp order.cpp wearing_ease.cpp
          rows/row_moves.cpp rows/rows_neck.cpp rows/rows_shoulder.cpp rows/rows_armhole.cpp
          rows/rows_bust.cpp rows/rows_back.cpp rows/rows_lengths.cpp rows/rows_waist.cpp
  USES base geometry measure pattern block dart
  LINKS fmt::fmt)
