add_layer_tests(draft
  SOURCES people_test.cpp people_at_bust_test.cpp extremes_test.cpp first_measurements_test.cpp continuity_test.cpp rules_test.cpp steps_test.cpp odd_neck_test.cpp bands_test.cpp whole_tape_test.cpp
  LINKS blockwright_test_blocks blockwright_text
  TOGETHER crowd)
target_include_directories(draft_tests PRIVATE $<TARGET_PROPERTY:blockwright_draft,INCLUDE_DIRECTORIES>)
