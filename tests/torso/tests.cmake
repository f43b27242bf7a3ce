# A drafted block on simulated bodies, and the tool that scores one on all of them (torso/main.cpp).
# Always optimised, as it calculates for minutes. Not registered: run toile_on_body by hand.
add_library(blockwright_torso STATIC torso/torso.cpp torso/tape.cpp torso/triangulate.cpp
  torso/cloth.cpp torso/relax.cpp torso/readings.cpp torso/files.cpp)
target_include_directories(blockwright_torso PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(blockwright_torso
  PRIVATE blockwright_flags fmt::fmt nlohmann_json::nlohmann_json
  PUBLIC blockwright::draft Eigen3::Eigen)
target_compile_options(blockwright_torso PRIVATE $<$<CONFIG:Release>:-O2>)
add_executable(toile_on_body torso/main.cpp)
target_link_libraries(toile_on_body PRIVATE blockwright_flags blockwright_torso fmt::fmt)
add_layer_tests(torso SOURCES torso_test.cpp LINKS blockwright_torso blockwright::dart)
