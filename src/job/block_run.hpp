#pragma once

#include "blockwright/check/check.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/measure/client.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// All that one run knows of one client, for the reports and the paper.
struct BlockRun {
  std::string file;  ///< the client file
  Client client;
  Session session;
  Body body;
  DraftedBlock block;
  CheckReport checks;
  Problems problems;  ///< of all passes, errors first
  Unit unit = Unit::Cm;
  std::vector<std::string> files;  ///< written
};

}  // namespace blockwright
