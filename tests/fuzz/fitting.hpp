#pragma once

#include "blockwright/measure/fitting.hpp"
#include "bytes.hpp"

#include <string>
#include <vector>

namespace blockwright_fuzz {

/// What a fitter may have asked for: `most` corrections at most, fewer where the bytes end.
std::vector<blockwright::Correction> some_corrections(Bytes& bytes, std::size_t most);

/// For a finding.
std::string words_of(const std::vector<blockwright::Correction>& list);

}  // namespace blockwright_fuzz
