add_layer(layout
  HEADERS sheet.hpp versions.hpp print_plan.hpp change_page.hpp cut_line.hpp tape_sheet.hpp
  SOURCES sheet.cpp paper.cpp cut_line.cpp allowances.cpp drawing.cpp notch_marks.cpp dress.cpp
          button_marks.cpp lay_out.cpp
          pages/tiling.cpp pages/page_borders.cpp pages/test_squares.cpp
          pages/tile_page.cpp pages/miniature.cpp pages/notes_text.cpp pages/map_page.cpp
          pages/print_plan.cpp pages/one_page.cpp
          picture/laid_under.cpp picture/piece_change.cpp
          picture/change_drawing.cpp picture/change_page.cpp
          picture/shown_pieces.cpp picture/seen_grid.cpp picture/seen_pages.cpp
          texts/free_space.cpp texts/text_placer.cpp texts/words.cpp
          texts/piece_texts.cpp texts/ink.cpp texts/text_flow.cpp
          form/form_head.cpp form/form_group.cpp form/form_points.cpp
          form/tape_sheet.cpp
  USES base text geometry figure pattern block
  LINKS PkgConfig::POLYCLIPPING)
