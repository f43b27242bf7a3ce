add_layer_tests(job
  SOURCES
    block_pass_test.cpp most_taken_test.cpp batch_test.cpp batch_styles_test.cpp cloth_lines_test.cpp
    work_in_order_test.cpp read_job_test.cpp
    output_key_test.cpp doubt_test.cpp story_test.cpp
    adapt_test.cpp bands_test.cpp new_tape_sums_test.cpp makers_list_test.cpp
    fit_hints_test.cpp laid_together_test.cpp explain_test.cpp formats_test.cpp
    paper_test.cpp fitting_doc_test.cpp worn_test.cpp garment_test.cpp
    ../layout/sheet_reading.cpp tape_sheet_test.cpp
    divided_dart_test.cpp fit_picture_test.cpp fit_test.cpp fit_words_test.cpp hostile_texts_test.cpp
    inches_test.cpp run_job_test.cpp schemas_test.cpp security_doc_test.cpp tape_check_test.cpp
    tape_doc_test.cpp wardrobe_test.cpp
  LINKS blockwright::job blockwright_test_blocks blockwright_test_tools nlohmann_json::nlohmann_json)
target_include_directories(job_tests PRIVATE $<TARGET_PROPERTY:blockwright_job,INCLUDE_DIRECTORIES>)
add_test(NAME job.sources_hash
  COMMAND ${CMAKE_COMMAND} -D SCRIPT=${PROJECT_SOURCE_DIR}/src/job/batch/sources_hash.cmake
          -D WORK=${CMAKE_CURRENT_BINARY_DIR}/sources_hash
          -P ${CMAKE_CURRENT_LIST_DIR}/sources_hash.cmake)
