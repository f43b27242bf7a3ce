add_layer(garment
  HEADERS allowances.hpp opening.hpp binding.hpp facing.hpp making.hpp cloth.hpp
  SOURCES allowances.cpp named_edges.cpp opening.cpp binding.cpp straps.cpp joined_outline.cpp
          facing_lines.cpp facing_piece.cpp facing_seams.cpp facing.cpp making.cpp button_row.cpp
          button_stand.cpp button_words.cpp cloth.cpp
  USES base geometry pattern block dart)
