add_layer(measure
  HEADERS adjustment.hpp measurement_name.hpp fitting.hpp correction_table.hpp client.hpp client_edit.hpp body.hpp ease.hpp
  SOURCES measurement_name.cpp measure_text.cpp slip.cpp tape_value.cpp client_file.cpp
    correction_table.cpp correction_words.cpp fitting.cpp amount_value.cpp correction_value.cpp fitting_value.cpp
    client.cpp session.cpp
    withdrawn_mark.cpp added_parts.cpp client_edit.cpp
    survey.cpp regression.cpp orderings.cpp body.cpp judge.cpp ease.cpp
  USES base text
  LINKS fmt::fmt)
