#pragma once

#include "blockwright/check/check.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/report/report.hpp"
#include "blockwright/style/style.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// All that one run knows of one client.
struct BlockRun {
  std::string file;  ///< the client file
  Client client;
  Session session;
  Body body;
  DraftedBlock block;
  CheckReport checks;
  std::vector<NumberedCorrection> corrections;  ///< applied, in the order of the file
  FittedPattern fitted;                         ///< the block with them; without any, the block
  std::string garment = "bodice block";         ///< what is made
  Pattern made;                                 ///< after the style's steps; for a draft the block
  std::vector<StepDone> steps;                  ///< what was done to the block
  Pattern printed;                              ///< `made` with its darts trued
  std::vector<BlendedEdge> blended;
  Problems problems;  ///< of all passes, errors first
  Unit unit = Unit::Cm;
};

}  // namespace blockwright
