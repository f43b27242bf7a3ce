add_layer(style
  HEADERS style.hpp
  SOURCES steps.cpp read_style.cpp apply_style.cpp
  USES base text geometry pattern block dart
  LINKS fmt::fmt)
