#include "tape_error.hpp"

#include "blockwright/measure/body.hpp"

namespace blockwright {

Measure tape_sd(MeasurementName name) { return kTapeErrors[static_cast<std::size_t>(name)].sd; }

}  // namespace blockwright
