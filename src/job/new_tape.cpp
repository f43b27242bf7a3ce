#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "new_tape_sums.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

using Corrections = std::vector<NumberedCorrection>;

/// To 0.1 mm in cm, so that a sum adds up as it is read.
std::string exact_text(Length length, Unit unit) {
  return unit == Unit::Cm ? trimmed(length.cm(), 2) + " cm" : length_text(length, unit);
}

std::string exact_text(Measure measure, Unit unit) {
  const Measure size = abs(measure);
  return size.is_angle() ? angle_text(size.angle()) : exact_text(size.length(), unit);
}

const NumberedCorrection& numbered(const Corrections& corrections, std::size_t number) {
  return *std::ranges::find(corrections, number, &NumberedCorrection::number);
}

/// What a file can say: an amount that would be written as 0 is dropped.
AfterNewTape settled_as(const TapeShare& share, const BlockSource& source,
                        const Corrections& corrections) {
  const Correction& correction = numbered(corrections, share.correction).correction;
  const Length remains =
      as_written_in_file(remaining_amount(share, correction), source.client.unit);
  if (remains == Length()) return {OnNewTape::Drop, {}};
  return {OnNewTape::Change, remains};
}

/// "5 (take in waist) is now 3.25 cm in place of 3 cm".
std::string share_words(const TapeShare& share, const BlockSource& source,
                        const Corrections& corrections) {
  const auto& [number, date, toile, correction, before] = numbered(corrections, share.correction);
  const Length remains = remaining_amount(share, correction);
  const std::string what =
      remains == Length()
          ? "is left out"
          : fmt::format("is now {} in place of {}", exact_text(remains, source.unit),
                        exact_text(correction.by, source.unit));
  return fmt::format("{} ({}) {}", number, name_text(correction.action + " " + correction.place),
                     what);
}

std::string list_of(const std::vector<std::string>& words) {
  if (words.size() == 1) return words.front();
  return fmt::format("{} and {}", fmt::join(words.begin(), words.end() - 1, ", "), words.back());
}

std::string numbers_of(const TapeSum& sum) {
  std::vector<std::string> numbers;
  for (const TapeShare& share : sum.shares) numbers.push_back(std::to_string(share.correction));
  return (numbers.size() == 1 ? "correction " : "corrections ") + list_of(numbers);
}

/// "asked for 6 cm less waist girth; the newer tape has 2.75 cm of it (76.25 cm on 2026-01-10, 73.5
/// cm on 2026-07-12), and 3.25 cm remains: 2 (take in waist) is left out and 5 ...".
std::string sum_words(const TapeSum& sum, const BlockSource& source,
                      const Corrections& corrections) {
  const auto text = [&](Measure measure) { return exact_text(measure, source.unit); };
  const Measure remains = sum.remains(), has = sum.asked() - remains;
  std::vector<std::string> shares;
  for (const TapeShare& share : sum.shares) {
    shares.push_back(share_words(share, source, corrections));
  }
  return fmt::format(
      "asked for {} {} {}; the newer tape has {} of it ({} on {}, {} on {}), and {} remains: {}",
      text(sum.asked()), sum.asked().number() < 0.0 ? "less" : "more", words_of(sum.name),
      text(has), text(sum.was), sum.since->date, text(sum.is), source.session.date,
      remains.number() == 0.0 ? "nothing" : text(remains), list_of(shares));
}

bool is_decided(const TapeSum& sum, const Corrections& corrections) {
  return std::ranges::all_of(sum.shares, [&](const TapeShare& share) {
    return is_decided(share, numbered(corrections, share.correction).correction);
  });
}

std::vector<TapeSum> undecided_sums(const BlockSource& source, const Corrections& corrections) {
  std::vector<TapeSum> sums = sums_of_new_tape(source, corrections);
  std::erase_if(sums, [&](const TapeSum& sum) { return is_decided(sum, corrections); });
  return sums;
}

ExplainedSum explained(const TapeSum& sum, const BlockSource& source,
                       const Corrections& corrections) {
  ExplainedSum explained{numbers_of(sum), sum_words(sum, source, corrections), {}};
  for (const TapeShare& share : sum.shares) {
    explained.settled.push_back(
        {static_cast<int>(share.correction), settled_as(share, source, corrections)});
  }
  return explained;
}

std::vector<ExplainedSum> explained_in(const BlockSource& source) {
  const Corrections corrections = active_corrections(source.client, source.before_toile);
  std::vector<ExplainedSum> all;
  for (const TapeSum& sum : undecided_sums(source, corrections)) {
    all.push_back(explained(sum, source, corrections));
  }
  return all;
}

}  // namespace

Problems told_by_new_tape(const BlockSource& source) {
  const Corrections corrections = active_corrections(source.client, source.before_toile);
  Problems problems;
  for (const TapeSum& sum : undecided_sums(source, corrections)) {
    problems.push_back({.severity = Severity::Warning,
                        .code = "fit.explained",
                        .where = numbers_of(sum),
                        .message = sum_words(sum, source, corrections),
                        .hint = "sew a toile; where it shows the same again, write \"new_tape\": "
                                "\"keep\" next to the correction. At a terminal `draft` and `fit "
                                "--ask` ask, and write the answer",
                        .measurements = {std::string(info(sum.name).key)}});
  }
  return problems;
}

std::vector<ExplainedSum> explained_sums(const Job& job, FileStore& files) {
  try {
    return explained_in(block_source(job, files));
  } catch (const Error&) {
    return {};
  }
}

void decide_explained(const std::string& client, const std::vector<ExplainedDecision>& decisions,
                      FileStore& files) {
  if (decisions.empty()) return;
  const std::string before = files.read(client);
  std::string text = before;
  for (const auto& [number, answer] : decisions) {
    text = with_new_tape({text, client}, static_cast<std::size_t>(number), answer);
  }
  in_its_place([&] { files.write_all({{client + ".bak", before}, {client, text}}); });
}

}  // namespace blockwright
