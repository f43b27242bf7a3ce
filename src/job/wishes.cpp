#include "wishes.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"

#include <charconv>
#include <cmath>

namespace blockwright {
namespace {

[[noreturn]] void refuse_word(const char* key, const std::string& value, const char* allowed) {
  refuse_option(key, "'" + value + "' is not known", std::string("use ") + allowed);
}

CutStyle cut_named(const std::string& name) {
  if (name == "toile") return CutStyle::Toile;
  if (name == "card") return CutStyle::Card;
  if (name == "net") return CutStyle::Net;
  refuse_word("cut", name, "toile, card or net");
}

std::optional<Unit> unit_named(const std::string& name) {
  if (name.empty()) return std::nullopt;
  if (name == "cm") return Unit::Cm;
  if (name == "in") return Unit::Inch;
  refuse_word("unit", name, "cm or in");
}

void wish(Wishes& w, const std::string& kind) {
  if (kind == "svg") {
    w.svg = true;
  } else if (kind == "pdf") {
    w.pdf = true;
  } else if (kind == "json") {
    w.json = true;
  } else {
    refuse_word("write", kind, "svg, pdf, json, or several with commas between");
  }
}

Length in_range(const char* key, double value, double least, double most) {
  if (value >= least && value <= most) return Length::mm(value);
  const std::string found = std::isfinite(value) ? trimmed(value, 3) + " mm" : "no number";
  const std::string allowed = "a number of mm from " + std::to_string(static_cast<int>(least)) +
                              " to " + std::to_string(static_cast<int>(most));
  refuse_option(key, found + " is out of range", "use " + allowed);
}

/// "front.waist:2" is two equal darts; without a number it is two as well.
SplitMove split_named(const std::string& words) {
  const std::size_t colon = words.find(':');
  SplitMove move;
  move.dart = words.substr(0, colon);
  if (colon == std::string::npos) return move;
  const std::string count = words.substr(colon + 1);
  int darts = 0;
  const auto [end, error] = std::from_chars(count.data(), count.data() + count.size(), darts);
  if (error != std::errc() || end != count.data() + count.size() || darts < 2 || darts > 6) {
    refuse_option("split", "'" + words + "' does not say into how many darts",
                  "write for example front.waist:2; 2 to 6 darts");
  }
  move.shares.assign(static_cast<std::size_t>(darts), 1.0 / darts);
  return move;
}

void require_pairs(const Job& job) {
  if (job.dart.empty() && job.split.empty()) {
    refuse_option("dart", "no dart was named to move",
                  "name one with --dart and its new place with --to, or one to --split");
  }
  if (job.dart.size() != job.to.size()) {
    refuse_option("to",
                  std::to_string(job.dart.size()) + " darts and " + std::to_string(job.to.size()) +
                      " places were named",
                  "give each --dart its --to");
  }
  if (!job.part.empty() && job.part.size() != job.dart.size()) {
    refuse_option("part",
                  std::to_string(job.dart.size()) + " darts and " +
                      std::to_string(job.part.size()) + " parts were named",
                  "give each --dart its --part, or none of them");
  }
  if (!job.angle.empty() && (job.angle.size() != job.dart.size() || !job.part.empty())) {
    refuse_option("angle",
                  std::to_string(job.dart.size()) + " darts, " + std::to_string(job.angle.size()) +
                      " angles and " + std::to_string(job.part.size()) + " parts were named",
                  "give each --dart its --angle or each its --part, not both");
  }
}

}  // namespace

void refuse_option(const std::string& key, const std::string& message, const std::string& hint) {
  throw UsageError({Severity::Error, "job.value", "--" + key, message, hint, {}, {key}});
}

Wishes wishes_of(const Job& job) {
  Wishes w;
  w.print.cut = cut_named(job.cut);
  w.print.paper = paper_named(job.paper);
  if (job.allowance) w.print.allowance = in_range("allowance", *job.allowance, 0.0, 60.0);
  w.print.margin = in_range("margin", job.margin, 7.0, 40.0);
  w.print.overlap = in_range("overlap", job.overlap, 0.0, 40.0);
  if (job.write.empty()) refuse_word("write", "", "svg, pdf, json, or several with commas between");
  for (const std::string& kind : job.write) wish(w, kind);
  w.unit = unit_named(job.unit);
  if (job.toile < 0) {
    refuse_option("toile", std::to_string(job.toile) + " is no toile's number",
                  "use 1, 2 ..., or 0 for all corrections");
  }
  if (job.report != "text" && job.report != "json")
    refuse_word("report", job.report, "text or json");
  w.report_json = job.report == "json";
  return w;
}

Style style_of_moves(const Job& job) {
  require_pairs(job);
  Style style;
  style.name = "bodice block, darts moved";
  for (std::size_t i = 0; i < job.dart.size(); ++i) {
    PivotMove move{job.dart[i], job.to[i], 1.0, std::nullopt, std::nullopt};
    if (!job.part.empty()) move.part = job.part[i];
    if (!job.angle.empty()) move.angle = Angle::degrees(job.angle[i]);
    move.hold_back = job.hold_back;
    style.steps.emplace_back(move);
  }
  for (const std::string& words : job.split) style.steps.emplace_back(split_named(words));
  return style;
}

}  // namespace blockwright
