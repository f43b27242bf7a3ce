add_layer(layout
  HEADERS sheet.hpp paper.hpp print_plan.hpp cut_line.hpp
  SOURCES sheet.cpp paper.cpp cut_line.cpp positive_union.cpp text_measure.cpp free_space.cpp
          marks.cpp drawing.cpp text_placer.cpp words.cpp notch_marks.cpp piece_texts.cpp dress.cpp
          lay_out.cpp ink.cpp tiling.cpp page_borders.cpp text_flow.cpp test_squares.cpp tile_page.cpp miniature.cpp
          notes_text.cpp map_page.cpp print_plan.cpp one_page.cpp
  USES base text geometry pattern block
  LINKS PkgConfig::POLYCLIPPING)
