add_layer(block
  HEADERS kinds.hpp dart_position.hpp drafted_piece.hpp corners.hpp neckline.hpp
          armhole.hpp hollow.hpp shoulder.hpp waist_edge.hpp balance_lines.hpp reshape.hpp
          wearing_ease.hpp
  SOURCES kinds.cpp kind_of_piece.cpp dart_position.cpp drafted_piece.cpp corners.cpp neckline.cpp
          armhole.cpp hollow.cpp waist_edge.cpp balance_lines.cpp reshape.cpp
  USES base geometry pattern)
