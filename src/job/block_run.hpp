#pragma once

#include "blockwright/check/check.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/style/style.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A correction of a client file with its number there, counted from 1 over all fittings.
struct NumberedCorrection {
  std::size_t number = 0;
  std::string date;  ///< of the fitting
  int toile = 0;
  Correction correction;
};

/// All that one run knows of one client, for the reports and the paper.
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
  std::vector<std::string> files;  ///< written
  int pages = 0;                   ///< of the PDF
};

}  // namespace blockwright
