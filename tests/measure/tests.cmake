# People drawn from the survey's statistics, for the tests of every layer above measure.
add_library(blockwright_test_people STATIC ${CMAKE_CURRENT_SOURCE_DIR}/support/people.cpp)
target_include_directories(blockwright_test_people
  PUBLIC ${CMAKE_CURRENT_SOURCE_DIR}
  PRIVATE ${PROJECT_SOURCE_DIR}/src/measure)
target_link_libraries(blockwright_test_people
  PUBLIC blockwright_measure PRIVATE blockwright_flags)

add_layer_tests(measure
  SOURCES measurement_name_test.cpp client_test.cpp client_error_test.cpp client_schema_test.cpp
    correction_words_test.cpp fitting_test.cpp fitting_error_test.cpp client_edit_test.cpp
    body_test.cpp judge_test.cpp ease_test.cpp people_test.cpp
  LINKS blockwright_measure blockwright_test_people nlohmann_json::nlohmann_json)
