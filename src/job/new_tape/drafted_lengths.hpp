#pragma once

#include "blockwright/draft/draft.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// The lengths of the block of a session before any correction, in `before`. Throws Error where the
/// session cannot be drafted.
std::vector<MovedLength> drafted_lengths(const Session& session, const Ease& ease);

/// mm; 0 where there is no such length.
double length_named(const std::vector<MovedLength>& lengths, std::string_view name);

/// The length of the block that is a girth or a width of the body; nothing of another measurement.
std::optional<std::string_view> girth_on_paper(MeasurementName name);

/// The lengths that show on paper how much of a correction is there, with how far each goes for one
/// of the measurement that it doubts: that of the measurement itself, and, unless that is a girth
/// or a width, what the fitter watched.
std::vector<LengthMoved> lengths_that_show(const DoubtedMeasurement& doubts,
                                           const RowAmount& amount);
/// Those, and all else that the fitter watched: what is no longer there where it is left out.
std::vector<LengthMoved> lengths_moved(const DoubtedMeasurement& doubts, const RowAmount& amount);

/// How the block goes along from session to session; each is drafted once.
class DraftedChanges {
 public:
  explicit DraftedChanges(const Ease& ease) : ease_(ease) {}

  /// By how much each of the lengths has changed, in terms of the measurement; none where one of
  /// the sessions cannot be drafted.
  std::vector<double> changes(const std::vector<LengthMoved>& lengths, const Session& was,
                              const Session& is);

 private:
  const std::vector<MovedLength>& of(const Session& session);

  Ease ease_;
  std::map<std::string, std::vector<MovedLength>> drafted_;  ///< by date; empty: cannot be drafted
};

/// By how much all have changed; 0 where they go different ways. Requires: at least one.
double common_change(const std::vector<double>& changes);

}  // namespace blockwright
