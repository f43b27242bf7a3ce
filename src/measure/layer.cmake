add_layer(measure
  HEADERS measurement_name.hpp fitting.hpp correction_table.hpp client.hpp client_edit.hpp body.hpp body_spread.hpp
          settled_tape.hpp likely_slips.hpp tape_session.hpp tape_changes.hpp symptom_search.hpp typed_correction.hpp
  SOURCES measure_text.cpp correction_table.cpp survey.cpp regression.cpp body.cpp body_spread.cpp judge.cpp
          judge_neck.cpp tape_error.cpp network.cpp settled_tape.cpp slips.cpp range_hint.cpp likely_slips.cpp
          slip_words.cpp typed_readings.cpp typed_amount.cpp typed_correction.cpp tape_session.cpp tape_changes.cpp
          client/tape_value.cpp client/sure_value.cpp client/client_file.cpp client/amount_value.cpp
          client/correction_value.cpp client/fitting_value.cpp client/client.cpp
          client/client_parts.cpp client/client_edit.cpp
          symptoms/said_words.cpp symptoms/by_hand.cpp symptoms/vocabulary.cpp symptoms/terms.cpp symptoms/wishes.cpp
          symptoms/clauses.cpp symptoms/understood.cpp symptoms/symptoms_upper.cpp symptoms/symptoms_lower.cpp
          symptoms/symptom_rank.cpp symptoms/symptom_search.cpp
  USES base text
  LINKS fmt::fmt)
