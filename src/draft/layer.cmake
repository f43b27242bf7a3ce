add_layer(draft
  HEADERS draft.hpp bands.hpp
  SOURCES draft.cpp targets.cpp neck_shoulder.cpp waist.cpp settlement.cpp armholes.cpp blocks.cpp steps.cpp bands.cpp band_ways.cpp
  USES base geometry measure pattern block)
