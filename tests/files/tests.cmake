add_layer_tests(files
  SOURCES disk_files_test.cpp file_faults_test.cpp flush_order_test.cpp folder_lock_test.cpp safe_name_test.cpp set_names_test.cpp stamp_test.cpp
  LINKS blockwright::files blockwright_test_tools)
target_include_directories(files_tests PRIVATE ${PROJECT_SOURCE_DIR}/src/files)
