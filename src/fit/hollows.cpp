#include "hollows.hpp"

#include "blockwright/block/hollow.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// Hollows as shares of the straight line between the ends of the line. Ours: after the usual amount
// of any row 300 people have 0.16 to 0.64 in the front armhole, 0.10 to 0.29 in the back's, 0.08 to
// 0.17 in the front neckline and 0.03 to 0.23 in the back's. A front armhole looks deep on paper
// while the bust dart is open.
constexpr double kLeastFrontArmholeHollow = 0.14, kMostFrontArmholeHollow = 0.75;
constexpr double kLeastBackArmholeHollow = 0.09, kMostBackArmholeHollow = 0.30;
constexpr double kLeastFrontNeckHollow = 0.075, kMostFrontNeckHollow = 0.20;
constexpr double kLeastBackNeckHollow = 0.03, kMostBackNeckHollow = 0.25;
// A line that was as flat or as deep before, but for this, is not a correction's doing.
constexpr double kChanged = 0.002;

struct JudgedLine {
  Opened HalfBlock::*piece;
  BlockEdge edge;
  const char* ends;  ///< what the straight line joins
  double least, most;
  const char *if_flat, *if_deep;  ///< what to do besides a smaller amount
};

constexpr const char* kOfArmhole = "underarm to shoulder point";
constexpr const char* kOfFrontNeck = "side neck to front neck point";
constexpr const char* kOfBackNeck = "side neck point to nape";

constexpr JudgedLine kJudged[] = {
    {&HalfBlock::front, BlockEdge::Armhole, kOfArmhole, kLeastFrontArmholeHollow,
     kMostFrontArmholeHollow, "hollow it again (scoop front_armhole)",
     "fill it again (fill front_armhole)"},
    {&HalfBlock::back, BlockEdge::Armhole, kOfArmhole, kLeastBackArmholeHollow,
     kMostBackArmholeHollow, "hollow it again (scoop back_armhole)",
     "fill it again (fill back_armhole)"},
    {&HalfBlock::front, BlockEdge::Neckline, kOfFrontNeck, kLeastFrontNeckHollow,
     kMostFrontNeckHollow, "draw it rounder by hand before cutting",
     "draw it flatter by hand before cutting"},
    {&HalfBlock::back, BlockEdge::Neckline, kOfBackNeck, kLeastBackNeckHollow, kMostBackNeckHollow,
     "lower the nape a little (lower back_neck)", "raise the nape a little (raise back_neck)"}};

Hollow hollow_in(const HalfBlock& half, const JudgedLine& line) {
  return hollow_of((half.*line.piece).edges[index_of(line.edge)].stretches);
}

std::string name_of(const HalfBlock& half, const JudgedLine& line) {
  const Opened& open = half.*line.piece;
  return open.piece.name + " " + open.edges[index_of(line.edge)].name;
}

// The correction that did most of it.
std::string culprit(const std::vector<HollowChange>& corrections, std::size_t line, bool flat) {
  const auto worse = [&](const HollowChange& change) {
    return flat ? change.by[line] : -change.by[line];
  };
  return std::ranges::min_element(corrections, {}, worse)->correction;
}

Problem too_flat(const HalfBlock& half, const JudgedLine& line, const std::string& correction) {
  const Hollow hollow = hollow_in(half, line);
  const Length least = Length::mm(line.least * hollow.chord);
  return {.severity = Severity::Warning,
          .code = "fit.curve",
          .where = correction,
          .message = "the " + name_of(half, line) + " has become nearly straight: it lies " +
                     Length::mm(std::max(hollow.deep, 0.0)) + " inside the straight line from " +
                     line.ends + "; at least " + least + " is usual",
          .hint = std::string("give a smaller amount, or ") + line.if_flat,
          .limit = {.least = least}};
}

Problem too_deep(const HalfBlock& half, const JudgedLine& line, const std::string& correction) {
  const Hollow hollow = hollow_in(half, line);
  const Length most = Length::mm(line.most * hollow.chord);
  return {.severity = Severity::Warning,
          .code = "fit.curve",
          .where = correction,
          .message = "the " + name_of(half, line) + " has become very hollow: it lies " +
                     Length::mm(hollow.deep) + " inside the straight line from " + line.ends +
                     "; at most " + most + " is usual",
          .hint = std::string("give a smaller amount, or ") + line.if_deep,
          .limit = {.most = most}};
}

}  // namespace

HollowShares hollow_shares(const HalfBlock& half) {
  HollowShares shares{};
  std::ranges::transform(kJudged, shares.begin(),
                         [&](const JudgedLine& line) { return hollow_in(half, line).share(); });
  return shares;
}

Problems judge_hollows(const Redrawn& half, const std::vector<HollowChange>& corrections) {
  const HollowShares was = hollow_shares(half.before), is = hollow_shares(half.after);
  Problems problems;
  for (std::size_t i = 0; i < is.size() && !corrections.empty(); ++i) {
    const bool flat = is[i] < kJudged[i].least && is[i] < was[i] - kChanged;
    const bool deep = is[i] > kJudged[i].most && is[i] > was[i] + kChanged;
    if (!flat && !deep) continue;
    const auto told = flat ? too_flat : too_deep;
    problems.push_back(told(half.after, kJudged[i], culprit(corrections, i, flat)));
  }
  return problems;
}

}  // namespace blockwright
