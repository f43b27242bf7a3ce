// Any finite measurements and eases: beyond the limits of client files refused by name, within them
// drafted, whatever contradicts. A block that passes its checks is whole, and can be trued; where
// it is not whole then, its maker is told so as of a failed check.
#include "blocks.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/dart/truing.hpp"
#include "bytes.hpp"
#include "must.hpp"
#include "support/blocks.hpp"
#include "support/people.hpp"

#include <algorithm>
#include <cmath>

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

enum class Kind { Likely, Allowed, Wild };

Kind kind_of(Bytes& bytes) {
  constexpr std::array<Kind, 8> kinds = {Kind::Likely,  Kind::Likely,  Kind::Likely, Kind::Allowed,
                                         Kind::Allowed, Kind::Allowed, Kind::Likely, Kind::Wild};
  return bytes.one_of(kinds);
}

double value_of(Bytes& bytes, const MeasurementInfo& entry, double usual, Kind kind) {
  if (kind == Kind::Wild) return bytes.any_finite();
  if (kind == Kind::Allowed) return bytes.between(entry.least.number(), entry.most.number());
  return std::clamp(usual * bytes.between(0.75, 1.3), entry.least.number(), entry.most.number());
}

// Which names are taped is told by a byte each; likely values lie about those of a usual body.
Session session_of(Bytes& bytes, Kind kind) {
  static const Body usual = fill_in(bust_only(920.0));
  Session session{.date = "2026-03-14", .by = "", .tape = {}};
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const bool needed = entry.name == MeasurementName::BustGirth;
    if (!needed && !bytes.flag()) continue;
    const double middle =
        (usual.has(entry.name) ? usual[entry.name] : 0.5 * (entry.least + entry.most)).number();
    tape(session, entry.name, value_of(bytes, entry, middle, kind));
  }
  return session;
}

Ease ease_of(Bytes& bytes, Kind kind) {
  Ease ease = Ease::of_toile();
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (bytes.done()) break;
    if (bytes.below(4) != 0) continue;
    const double most = most_ease(entry.name).number();
    const double likely = kind == Kind::Likely ? 0.2 * most : most;
    const double by = kind == Kind::Wild ? bytes.any_finite() : bytes.between(-likely, likely);
    ease.set(entry.name, measure_of(entry.name, by));
  }
  return ease;
}

void must_be_sound(const CheckedBlock& checked) {
  if (has_errors(checked.report.problems)) return;
  must_be_whole(checked.block.pattern, "a block that passes its checks is whole");
  for (const NamedLength& length : checked.report.lengths) {
    must(std::isfinite(length.mm), "lengths are numbers", length.name);
  }
  for (const Piece& piece : checked.block.pattern.pieces) {
    if (find_problem_on_paper(piece)) return;
  }
  for (const NamedLength& length : measured_edges(true_darts(checked.block.pattern).pattern)) {
    must(std::isfinite(length.mm), "trued lengths are numbers", length.name);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, size);
  const Kind kind = kind_of(bytes);
  const Session session = session_of(bytes, kind);
  try {
    must_be_sound(checked_block(session, ease_of(bytes, kind)));
  } catch (const InputError& error) {
    must(kind == Kind::Wild, "within the limits nothing is refused", to_text(error.problem()));
    must_tell(error.problem(), "", "draft.range");
  }
  return 0;
}
