add_layer(style
  HEADERS style.hpp
  SOURCES fields.cpp read_style.cpp sided_steps.cpp apply_style.cpp style_schema.cpp
  USES base text geometry pattern block dart
  LINKS fmt::fmt nlohmann_json::nlohmann_json)
