add_library(blockwright_test_blocks STATIC ${CMAKE_CURRENT_SOURCE_DIR}/support/blocks.cpp)
target_include_directories(blockwright_test_blocks PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(blockwright_test_blocks PRIVATE blockwright_flags
                      PUBLIC blockwright::draft blockwright::check blockwright_test_people)
add_layer_tests(draft
  SOURCES people_test.cpp extremes_test.cpp continuity_test.cpp rules_test.cpp steps_test.cpp
  LINKS blockwright_test_blocks)
