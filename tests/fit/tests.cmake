add_layer_tests(fit
  SOURCES fitting_test.cpp limits_test.cpp moves_test.cpp rows_test.cpp sides_test.cpp trade_test.cpp waist_test.cpp bust_test.cpp
          joint_test.cpp largest_test.cpp round_test.cpp shorter_shoulder_test.cpp watched_test.cpp wearing_test.cpp
  TOGETHER tried
  LINKS blockwright::fit blockwright::check blockwright_test_blocks)
target_include_directories(fit_tests PRIVATE $<TARGET_PROPERTY:blockwright_fit,INCLUDE_DIRECTORIES>)
