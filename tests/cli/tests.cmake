add_layer_tests(cli
  SOURCES program_test.cpp bad_input_test.cpp hostile_names_test.cpp fit_prompt_test.cpp
          tape_terminal_test.cpp options_test.cpp progress_bar_test.cpp
          files_test.cpp killed_batch_test.cpp pdf_module_test.cpp install_test.cpp
          fit_terminal_test.cpp tape_prompt_test.cpp terminal_test.cpp
  ALONE docs_test.cpp
  LINKS blockwright_program blockwright_test_tools nlohmann_json::nlohmann_json CLI11::CLI11)
target_include_directories(cli_tests PRIVATE $<TARGET_PROPERTY:blockwright_job,INCLUDE_DIRECTORIES>)
add_dependencies(cli_tests blockwright)
set_source_files_properties(${CMAKE_CURRENT_SOURCE_DIR}/cli/docs_test.cpp PROPERTIES
  COMPILE_DEFINITIONS BLOCKWRIGHT_FONT_FILE="${BLOCKWRIGHT_FONT}")
if(BLOCKWRIGHT_HARDENING AND NOT BLOCKWRIGHT_SANITIZE AND NOT BLOCKWRIGHT_FUZZ)
  target_sources(cli_tests PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/cli/hardening_test.cpp)
  set_source_files_properties(${CMAKE_CURRENT_SOURCE_DIR}/cli/hardening_test.cpp PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
endif()
