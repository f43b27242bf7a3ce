#include "block_pass.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/geometry/solve.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// The value in doubt is sought between these shares of what the correction's rule asks for. Ours.
constexpr double kNearest = 0.5;
constexpr double kFarthest = 1.5;

/// A whole length of a block by the name that an effect gives it; nothing for those that are not
/// edges or whole edges.
std::optional<double> length_named(const Pattern& pattern, const std::string& name) {
  if (const KindEdge* edge = kind_edge(piece_of(pattern, kBodiceFront), name)) {
    const double whole = edge->part == BlockEdge::Armhole ? 1.0 : 2.0;
    return whole * half_length(pattern, edge->part);
  }
  for (const NamedLength& length : measured_edges(pattern)) {
    if (length.name == name) return length.mm;
  }
  return std::nullopt;
}

bool has_both_halves(const Pattern& pattern) {
  return std::all_of(pattern.pieces.begin(), pattern.pieces.end(),
                     [](const Piece& p) { return p.kind != nullptr && p.name == p.kind->name; });
}

/// The length that the correction moved most and that can be measured on any block.
const MovedLength* telling_length(const BlockRun& run, const Effect& effect) {
  const MovedLength* most = nullptr;
  for (const MovedLength& moved : effect.moved) {
    if (!length_named(run.block.pattern, moved.name)) continue;
    if (most == nullptr || std::abs(moved.change()) > std::abs(most->change())) most = &moved;
  }
  return most;
}

double drafted_length(const BlockRun& run, MeasurementName name, Measure value,
                      const std::string& length) {
  Session session = run.session;
  session.tape[name] = Readings{{value}};
  const DraftedBlock block = draft_block(fill_in(session), Ease::of(run.client));
  return length_named(block.pattern, length).value_or(0.0);
}

}  // namespace

std::optional<Doubt> doubt_of(const BlockRun& run, const Effect& effect) {
  const FittingRow& row = fitting_row(effect.row);
  if (!row.doubts || !run.body.has(row.doubts->name)) return std::nullopt;
  const Measure taped = run.body[row.doubts->name];
  const Measure asked = row.doubts->change(Length::mm(effect.by));
  Doubt doubt{row.doubts->name, taped, taped + asked, true};
  const MovedLength* length = telling_length(run, effect);
  if (length == nullptr || asked.number() == 0.0 || !has_both_halves(run.block.pattern))
    return doubt;
  const double wanted = length->change();
  const double now = *length_named(run.block.pattern, length->name);
  const auto off = [&](double value) {
    return drafted_length(run, doubt.name, measure_of(doubt.name, value), length->name) - now -
           wanted;
  };
  const double low = (taped + kNearest * asked).number();
  const double high = (taped + kFarthest * asked).number();
  const auto can_be = [&](double value) {
    return info(doubt.name).allows(measure_of(doubt.name, value));
  };
  if (!can_be(low) || !can_be(high)) return doubt;
  if ((off(low) > 0.0) == (off(high) > 0.0)) return doubt;
  doubt.would_do = measure_of(doubt.name, solve_between(off, {low, high}, 0.05));
  doubt.roughly = false;
  return doubt;
}

}  // namespace blockwright
