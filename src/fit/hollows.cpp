#include "hollows.hpp"

#include "blockwright/block/hollow.hpp"
#include "blockwright/block/neckline.hpp"

#include <algorithm>
#include <cmath>

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
// A front neckline less hollow than this is straight but for its hook, if it makes more than this
// share of its turn at its end. Ours: after usual amounts 300 people have up to 0.69.
constexpr double kStraight = 0.10;
constexpr double kMostHook = 0.70;
constexpr std::size_t kFrontNeckline = 2;  // in kJudged

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

// The correction that did most of it; `done` tells what each did.
template <class Done>
std::string culprit(const std::vector<HollowChange>& corrections, const Done& done) {
  return std::ranges::max_element(corrections, {},
                                  [&](const HollowChange& change) { return done(change.by); })
      ->correction;
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

// How deep the front neck is, and how long half of its line.
struct FrontNeck {
  double depth, line;
};

FrontNeck front_neck(const HalfBlock& half) {
  const Opened& front = half.front;
  return {corner_of(front, Corner::SideNeck).y - corner_of(front, Corner::CentreNeck).y,
          closed_length(front, BlockEdge::Neckline)};
}

Problem hooked(const Redrawn& half, const std::string& correction) {
  using enum MeasurementName;
  const FrontNeck was = front_neck(half.before), is = front_neck(half.after);
  const double changed = std::fmax(std::abs(is.depth - was.depth), std::abs(is.line - was.line));
  const Wording hint = "measure " + tape_words(FrontWaistLength) + " and " +
                       tape_words(SideNeckToWaist) + " again: one of them may be off by about " +
                       Length::mm(changed) + "; or draw it rounder by hand before cutting";
  return {
      .severity = Severity::Warning,
      .code = "fit.curve",
      .where = correction,
      .message = "the front neckline now runs nearly straight and turns at the front neck point",
      .hint = hint,
      .measurements = {std::string(info(FrontWaistLength).key),
                       std::string(info(SideNeckToWaist).key)}};
}

bool is_hooked(const Hollows& was, const Hollows& is) {
  return is.hook > kMostHook && is.shares[kFrontNeckline] < kStraight &&
         is.hook > was.hook + kChanged;
}

}  // namespace

Hollows Hollows::operator-(const Hollows& other) const {
  Hollows less = *this;
  for (std::size_t i = 0; i < shares.size(); ++i) less.shares[i] -= other.shares[i];
  less.hook -= other.hook;
  return less;
}

Hollows hollows_of(const HalfBlock& half) {
  Hollows hollows;
  std::ranges::transform(kJudged, hollows.shares.begin(),
                         [&](const JudgedLine& line) { return hollow_in(half, line).share(); });
  hollows.hook = turn_at_end(half.front.edges[index_of(BlockEdge::Neckline)].stretches.back());
  return hollows;
}

Problems judge_hollows(const Redrawn& half, const std::vector<HollowChange>& corrections) {
  const Hollows was = hollows_of(half.before), is = hollows_of(half.after);
  Problems problems;
  if (corrections.empty()) return problems;
  const bool hook = is_hooked(was, is);
  if (hook) {
    problems.push_back(
        hooked(half, culprit(corrections, [](const Hollows& by) { return by.hook; })));
  }
  for (std::size_t i = 0; i < is.shares.size(); ++i) {
    const double before = was.shares[i], now = is.shares[i];
    const bool flat = now < kJudged[i].least && now < before - kChanged;
    const bool deep = now > kJudged[i].most && now > before + kChanged;
    if (!flat && !deep) continue;
    if (flat && hook && i == kFrontNeckline) continue;
    const auto done = [&](const Hollows& by) { return flat ? -by.shares[i] : by.shares[i]; };
    const auto told = flat ? too_flat : too_deep;
    problems.push_back(told(half.after, kJudged[i], culprit(corrections, done)));
  }
  return problems;
}

}  // namespace blockwright
