add_layer(text
  HEADERS refuse.hpp utf8.hpp odd_character.hpp plain_text.hpp nearest.hpp inch_text.hpp
    json_document.hpp json_members.hpp json_writing.hpp json_edit.hpp
  SOURCES refuse.cpp utf8.cpp odd_character.cpp plain_text.cpp nearest.cpp inch_text.cpp calendar.cpp
    json_tokens.cpp json_builder.cpp json_document.cpp json_reason.cpp json_words.cpp
    separator_reason.cpp text_reason.cpp json_members.cpp json_writing.cpp json_edit.cpp
  USES base
  LINKS fmt::fmt nlohmann_json::nlohmann_json)
