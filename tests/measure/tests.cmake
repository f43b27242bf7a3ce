add_layer_tests(measure
  SOURCES measurement_name_test.cpp client_test.cpp client_error_test.cpp schema_tables.cpp
    correction_words_test.cpp symptom_search_test.cpp typed_correction_test.cpp fitting_test.cpp fitting_error_test.cpp client_edit_test.cpp
    body_test.cpp body_spread_test.cpp larger_bodies_test.cpp limits_test.cpp judge_test.cpp tape_session_test.cpp ease_test.cpp people_test.cpp
    estimates_test.cpp network_test.cpp settled_tape_test.cpp likely_slips_test.cpp range_hint_test.cpp tape_changes_test.cpp
  ALONE client_schema_test.cpp
  LINKS blockwright_measure blockwright_test_people nlohmann_json::nlohmann_json)
target_include_directories(measure_tests PRIVATE $<TARGET_PROPERTY:blockwright_measure,INCLUDE_DIRECTORIES>)
