#include "drafted_lengths.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/measure/body.hpp"

#include <algorithm>
#include <iterator>

namespace blockwright {
namespace {

// A measurement that is measured on the block as on the body.
struct OnPaper {
  MeasurementName name;
  std::string_view length;
  /// A girth or width is the measure of it, wherever else the fitter looks; a length must show
  /// there too.
  bool alone;
};
constexpr OnPaper kOnPaper[] = {{MeasurementName::NeckBaseGirth, "neckline", true},
                                {MeasurementName::ArmscyeGirth, "armhole", true},
                                {MeasurementName::AcrossFront, "across_front", true},
                                {MeasurementName::AcrossBack, "across_back", true},
                                {MeasurementName::BustGirth, "bust_line", true},
                                {MeasurementName::WaistGirth, "waist", true},
                                {MeasurementName::SideLength, "front.side", false},
                                {MeasurementName::SideNeckToBustPoint, "neck_to_bust", false}};

/// Empty where it cannot be drafted.
std::vector<MovedLength> lengths_of(const Session& session, const Ease& ease) {
  if (!session.tape[MeasurementName::BustGirth]) return {};
  try {
    return drafted_lengths(session, ease);
  } catch (const Error&) {
    return {};
  }
}

}  // namespace

std::vector<MovedLength> drafted_lengths(const Session& session, const Ease& ease) {
  const DraftedBlock block = draft_block(fill_in(session), ease);
  return apply_corrections(block.pattern, std::vector<Correction>()).right_lengths;
}

double length_named(const std::vector<MovedLength>& lengths, std::string_view name) {
  const auto found = std::ranges::find(lengths, name, &MovedLength::name);
  return found == lengths.end() ? 0.0 : found->before;
}

std::optional<std::string_view> girth_on_paper(MeasurementName name) {
  const auto* const own = std::ranges::find(kOnPaper, name, &OnPaper::name);
  if (own == std::end(kOnPaper) || !own->alone) return std::nullopt;
  return own->length;
}

std::vector<LengthMoved> lengths_that_show(const DoubtedMeasurement& doubts,
                                           const RowAmount& amount) {
  if (const auto girth = girth_on_paper(doubts.name)) return {{*girth, 1.0}};
  return lengths_moved(doubts, amount);
}

std::vector<LengthMoved> lengths_moved(const DoubtedMeasurement& doubts, const RowAmount& amount) {
  std::vector<LengthMoved> lengths;
  const auto* const own = std::ranges::find(kOnPaper, doubts.name, &OnPaper::name);
  if (own != std::end(kOnPaper)) lengths.push_back({own->length, 1.0});
  for (const LengthMoved& watched : watched_at(amount.row, amount.place).lengths) {
    if (std::ranges::count(lengths, watched.name, &LengthMoved::name) > 0) continue;
    lengths.push_back({watched.name, watched.per_mm / doubts.per_mm});
  }
  return lengths;
}

std::vector<double> DraftedChanges::changes(const std::vector<LengthMoved>& lengths,
                                            const Session& was, const Session& is) {
  const std::vector<MovedLength>&before = of(was), &after = of(is);
  std::vector<double> all;
  if (before.empty() || after.empty()) return all;
  all.reserve(lengths.size());
  for (const auto& [name, per_one] : lengths) {
    all.push_back((length_named(after, name) - length_named(before, name)) / per_one);
  }
  return all;
}

const std::vector<MovedLength>& DraftedChanges::of(const Session& session) {
  const auto known = drafted_.find(session.date);
  if (known != drafted_.end()) return known->second;
  return drafted_.emplace(session.date, lengths_of(session, ease_)).first->second;
}

double common_change(const std::vector<double>& changes) {
  const auto [least, most] = std::ranges::minmax(changes);
  return std::max(least, 0.0) + std::min(most, 0.0);
}

}  // namespace blockwright
