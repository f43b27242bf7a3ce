add_layer(dart
  HEADERS opened.hpp pivot.hpp one_dart.hpp folded.hpp hem.hpp drawn_neckline.hpp drawn_armhole.hpp top_edge.hpp truing.hpp panels.hpp fullness.hpp centre_seam.hpp
  SOURCES opened.cpp turning.cpp words.cpp reach.cpp aim.cpp moving.cpp pivot.cpp groups.cpp
          split.cpp one_dart.cpp folded.cpp drawn_edges.cpp hem.cpp drawn_neckline.cpp drawn_armhole.cpp top/top_line.cpp
          top/closed_top.cpp top/drawn_top.cpp top/straps.cpp top/top_edge.cpp blending.cpp
          truing.cpp grain.cpp smooth_seam.cpp seam_course.cpp panels.cpp fullness.cpp centre_seam.cpp
  USES base geometry pattern block)
