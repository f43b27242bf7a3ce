/// toile_on_body: how well a drafted block fits, judged on simulated bodies.
///
/// For each torso of a fixed table: the torso is measured with a tape, a block is drafted from the
/// tape, its half front and half back are sewn together, laid round the torso and left to settle,
/// and what a fitter would correct is read off. It is an instrument to tune the rules of the draft
/// with and to compare versions, not a picture of a person.
///
/// What it is not:
/// - The bodies are plain shapes of our own with surveyed proportions. They have no arms: what the
///   armhole does where the arm leaves the body is not judged, only that it lies on the trunk
///   above the armpit. Both halves are alike; the body neither yields nor moves nor breathes.
/// - The cloth is a coarse sheet, 14 mm a triangle, with one stiffness along both threads and none
///   of a seam's. It cannot show folds narrower than two triangles; they appear as cloth that is
///   pushed together. A dart's intake is cut away, not folded under.
/// - There is no friction, so cloth slides until it balances. On a body it would stay where the
///   fitter puts it within a few mm; lengths may come out a few mm generous.
/// - Thresholds and the eases that count as right are ours (readings.cpp). Compare scores of
///   versions on the same torsos; a score alone means little.
#include "blockwright/draft/draft.hpp"
#include "torso/files.hpp"
#include "torso/readings.hpp"
#include "torso/tape.hpp"

#include <fmt/format.h>

#include <cstdlib>
#include <iostream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>

namespace blockwright::torso {
namespace {

constexpr std::string_view kUsage =
    "toile_on_body [--only NAME] [--half tuned|kept] [--patterns DIR] [--obj DIR] [--words]\n"
    "              [--spacing MM] [--ease KEY=MM,...]\n"
    "toile_on_body --clients DIR\n"
    "\n"
    "Tries a block on each torso. Without --patterns the block is drafted by the library that\n"
    "this program is linked with.\n"
    "  --only NAME       one torso, t01 ...\n"
    "  --half WHICH      those to tune by, or those kept for the check\n"
    "  --ease KEY=MM,... ease on the whole measurement in place of the default, without "
    "--patterns\n"
    "  --clients DIR     writes a client file for each torso and stops\n"
    "  --patterns DIR    reads NAME-pattern.json, as `blockwright draft --write json` wrote them\n"
    "  --obj DIR         writes cloth and body to look at\n"
    "  --words           the corrections in words, under each torso\n"
    "  --tape            the tape's readings, under each torso\n"
    "  --spacing MM      of the cloth's points, 14\n"
    "  --stretch N --pushed N --shear N --bending N   of the cloth: relax.hpp\n";

using Options = std::map<std::string, std::string>;

Options options_of(int count, char** words) {
  Options options;
  for (int i = 1; i < count; ++i) {
    const std::string word = words[i];
    if (word == "--words" || word == "--tape" || word == "--help") {
      options[word] = "yes";
    } else if (i + 1 < count && kUsage.find(word + " ") != std::string_view::npos) {
      options[word] = words[++i];
    } else {
      throw std::runtime_error("what is " + word + "? See --help.");
    }
  }
  return options;
}

double number_of(const Options& options, const std::string& name, double otherwise) {
  return options.contains(name) ? std::stod(options.at(name)) : otherwise;
}

bool is_asked_for(const TorsoForm& form, const Options& options) {
  if (options.contains("--only") && options.at("--only") != form.name) return false;
  return !options.contains("--half") || (options.at("--half") == "kept") == form.kept;
}

Ease ease_of(const Options& options) {
  Ease ease = Ease::of_toile();
  std::istringstream words(options.contains("--ease") ? options.at("--ease") : "");
  for (std::string word; std::getline(words, word, ',');) {
    const std::size_t sign = word.find('=');
    const auto name = measurement_named(word.substr(0, sign));
    if (!name || sign == std::string::npos) throw std::runtime_error("no measurement: " + word);
    ease.set(*name, measure_of(*name, std::stod(word.substr(sign + 1))));
  }
  return ease;
}

Pattern pattern_for(const std::string& name, const Session& session, const Options& options) {
  if (!options.contains("--patterns")) {
    return draft_block(fill_in(session), ease_of(options)).pattern;
  }
  return read_pattern(std::filesystem::path(options.at("--patterns")) / (name + "-pattern.json"));
}

void print_head() {
  fmt::print("torso bust  cup slope back half ");
  for (const ReadingInfo& row : reading_table()) fmt::print("{:>5}", row.head);
  fmt::print(" excess spread\nthresholds, mm                  ");
  for (const ReadingInfo& row : reading_table()) fmt::print("{:5.0f}", row.threshold);
  fmt::print("\n");
}

void print_row(const TorsoForm& form, const TriedOn& tried) {
  fmt::print("{:5} {:4.0f} {:4.0f} {:5.0f} {:4.0f} {:5}", form.name, form.bust, form.cup,
             form.slope, form.back_curve, form.kept ? "kept" : "tuned");
  for (const double mm : tried.readings.mm) fmt::print("{:5.0f}", mm);
  fmt::print(" {:6.1f} {:6.1f}\n", excess(tried.readings), tried.spread);
}

void print_words(const FitReadings& readings) {
  for (const ReadingInfo& row : reading_table()) {
    if (excess(readings, row.name) == 0.0) continue;
    fmt::print("      {} {:.0f} mm\n", readings[row.name] > 0.0 ? row.positive : row.negative,
               std::abs(readings[row.name]));
  }
}

void print_tape(const Session& session) {
  for (const MeasurementInfo& row : kMeasurements) {
    if (session.tape[row.name])
      fmt::print("      {:24} {:.1f}\n", row.key, taped(session, row.name));
  }
}

/// Means over some torsos.
struct Means {
  int count = 0;
  double score = 0.0, spread = 0.0, score_spread = 0.0;
  std::array<double, kReadingCount> readings{}, over{};

  void add(const TriedOn& tried) {
    ++count;
    score += excess(tried.readings);
    spread = std::max(spread, tried.spread);
    score_spread = std::max(score_spread, tried.excess_spread);
    for (std::size_t i = 0; i < kReadingCount; ++i) {
      readings[i] += tried.readings.mm[i];
      over[i] += excess(tried.readings, static_cast<ReadingName>(i));
    }
  }

  void print(const char* name) const {
    if (count == 0) return;
    fmt::print("{:32}", fmt::format("{}, {}: mean reading", name, count));
    for (const double sum : readings) fmt::print("{:5.0f}", sum / count);
    fmt::print("\n{:32}", "  mean excess");
    for (const double sum : over) fmt::print("{:5.1f}", sum / count);
    fmt::print(" {:6.1f} {:6.1f}\n", score / count, spread);
  }
};

void try_on_all(const Options& options) {
  Means tuned, kept;
  print_head();
  for (const TorsoForm& form : torso_forms()) {
    if (!is_asked_for(form, options)) continue;
    const Torso body(form);
    const Session session = tape_session(body);
    const Pattern pattern = pattern_for(form.name, session, options);
    const Cloth cloth = sewn_cloth(pattern, number_of(options, "--spacing", 14.0));
    ClothKind kind;
    kind.stretch = number_of(options, "--stretch", kind.stretch);
    kind.pushed = number_of(options, "--pushed", kind.pushed);
    kind.shear = number_of(options, "--shear", kind.shear);
    kind.bending = number_of(options, "--bending", kind.bending);
    const TriedOn tried = tried_on(cloth, body, kind);
    (form.kept ? kept : tuned).add(tried);
    print_row(form, tried);
    if (options.contains("--words")) print_words(tried.readings);
    if (options.contains("--tape")) print_tape(session);
    if (options.contains("--obj")) {
      const std::filesystem::path folder = options.at("--obj");
      write_cloth(folder / (form.name + "-cloth.obj"), cloth, tried.rest);
      write_body(folder / (form.name + "-body.obj"), body);
    }
    std::cout.flush();
  }
  tuned.print("tuned");
  kept.print("kept");
}

void run(const Options& options) {
  if (options.contains("--help")) {
    fmt::print("{}", kUsage);
  } else if (options.contains("--clients")) {
    for (const TorsoForm& form : torso_forms()) {
      const std::filesystem::path folder = options.at("--clients");
      write_client(folder / (form.name + ".json"), "Torso " + form.name, tape_session(Torso(form)));
    }
  } else {
    try_on_all(options);
  }
}

}  // namespace
}  // namespace blockwright::torso

int main(int count, char** words) {
  try {
    blockwright::torso::run(blockwright::torso::options_of(count, words));
    return EXIT_SUCCESS;
  } catch (const std::exception& error) {
    std::cerr << "toile_on_body: " << error.what() << "\n";
    return EXIT_FAILURE;
  }
}
