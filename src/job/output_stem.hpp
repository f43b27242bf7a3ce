#pragma once

#include "blockwright/job/job.hpp"

#include <string>

namespace blockwright {

/// What the names of a client's output begin with, folder and all: "out/ondine-marsh",
/// "out/ondine-marsh-pivot", "out/ondine-marsh-side-dart-bodice".
std::string output_stem(const Job& job);

/// The same with the job's cut: "out/ondine-marsh-toile".
std::string cut_stem(const Job& job);

}  // namespace blockwright
