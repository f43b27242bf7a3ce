add_layer(draft
  HEADERS draft.hpp
  SOURCES draft.cpp limits.cpp targets.cpp neck_shoulder.cpp waist.cpp scye.cpp
          front_block.cpp back_block.cpp steps.cpp
  USES base geometry measure pattern block)
