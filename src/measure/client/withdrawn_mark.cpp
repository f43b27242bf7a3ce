#include "withdrawn_mark.hpp"

#include "blockwright/base/error.hpp"

namespace blockwright {
namespace {

constexpr std::string_view kKey = "withdrawn";
const char* const kTrue = "true";

}  // namespace

WithdrawnMark::WithdrawnMark(const JsonEdit& edit, const JsonValue& correction)
    : edit_(edit), correction_(correction), mark_(edit.document().member(correction, kKey)) {}

std::string WithdrawnMark::withdrawn() const {
  if (mark_ == nullptr) return edit_.with_member(correction_, kKey, JsonPart{.scalar = kTrue});
  const bool like_ours =
      is_last() && edit_.bytes(end_before(), mark_->begin) == ours_before_value();
  return edit_.with_bytes(mark_->begin, mark_->end, like_ours ? " true" : kTrue);
}

std::string WithdrawnMark::active() const {
  require(mark_ != nullptr, "an active correction is made active");
  if (written() == ours()) return edit_.with_bytes(end_before(), mark_->end, "");
  const bool spaced = is_last() && written() == ours_before_value() + " true";
  return edit_.with_bytes(mark_->begin - (spaced ? 1 : 0), mark_->end, "false");
}

bool WithdrawnMark::is_last() const {
  return &edit_.document().child(correction_, correction_.children.size() - 1) == mark_;
}

// The end of the member before the last.
std::size_t WithdrawnMark::end_before() const {
  return edit_.document().child(correction_, correction_.children.size() - 2).end;
}

// What stands between the member before and the mark's end, if the mark is the last.
std::string WithdrawnMark::written() const {
  return is_last() ? std::string(edit_.bytes(end_before(), mark_->end)) : std::string();
}

// What withdrawing would have put in behind the members before the last.
std::string WithdrawnMark::ours() const {
  return edit_.member_text(correction_, correction_.children.size() - 1, kKey,
                           JsonPart{.scalar = kTrue});
}

std::string WithdrawnMark::ours_before_value() const {
  const std::string text = ours();
  return text.substr(0, text.size() - std::string_view(kTrue).size());
}

}  // namespace blockwright
