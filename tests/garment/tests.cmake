add_layer_tests(garment
  SOURCES allowances_test.cpp opening_test.cpp button_stand_test.cpp binding_test.cpp straps_test.cpp
          facing_test.cpp front_facing_test.cpp in_one_facing_test.cpp cut_garment_test.cpp cloth_test.cpp
  LINKS blockwright::garment blockwright::layout blockwright_test_blocks)
