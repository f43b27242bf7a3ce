add_layer(style
  HEADERS style.hpp bust_dart.hpp
  SOURCES steps.cpp read_style.cpp read_wearing_ease.cpp apply_style.cpp side_places.cpp bust_dart.cpp
  USES base text geometry pattern block dart garment
  LINKS fmt::fmt)
