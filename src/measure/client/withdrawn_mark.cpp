#include "withdrawn_mark.hpp"

#include "blockwright/base/error.hpp"

#include <optional>

namespace blockwright {
namespace {

constexpr std::string_view kKey = "withdrawn";
constexpr std::string_view kTrue = "true";

JsonPart true_part() { return {.scalar = std::string(kTrue)}; }

// What leads from the member before to the value of a mark that is the last member: as it is
// written, and as withdrawing writes it.
struct Lead {
  std::size_t begin = 0;
  std::string_view written;
  std::string ours;
};

std::optional<Lead> lead_to(const JsonValue& mark, const JsonEdit& edit,
                            const JsonValue& correction) {
  const std::size_t before = correction.children.size() - 1;
  if (&edit.document().child(correction, before) != &mark) return std::nullopt;
  const std::size_t begin = edit.document().child(correction, before - 1).end;
  std::string ours = edit.member_text(correction, before, kKey, true_part());
  ours.resize(ours.size() - kTrue.size());
  return Lead{begin, edit.bytes(begin, mark.begin), ours};
}

}  // namespace

std::string marked_withdrawn(const JsonEdit& edit, const JsonValue& correction) {
  const JsonValue* mark = edit.document().member(correction, kKey);
  if (mark == nullptr) return edit.with_member(correction, kKey, true_part());
  const auto lead = lead_to(*mark, edit, correction);
  const bool like_ours = lead && lead->written == lead->ours;
  return edit.with_bytes(mark->begin, mark->end, like_ours ? " true" : kTrue);
}

std::string marked_active(const JsonEdit& edit, const JsonValue& correction) {
  const JsonValue* mark = edit.document().member(correction, kKey);
  require(mark != nullptr, "an active correction is made active");
  const auto lead = lead_to(*mark, edit, correction);
  if (lead && lead->written == lead->ours) return edit.with_bytes(lead->begin, mark->end, "");
  const bool spaced = lead && lead->written == lead->ours + " ";
  return edit.with_bytes(mark->begin - (spaced ? 1 : 0), mark->end, "false");
}

}  // namespace blockwright
