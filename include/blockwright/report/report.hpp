#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/base/length.hpp"
#include "blockwright/base/wording.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/draft/bands.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/measure/body.hpp"
#include "blockwright/measure/fitting.hpp"
#include "blockwright/text/units.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// A correction of a client file with its number there, counted from 1 over all fittings.
struct NumberedCorrection {
  std::size_t number = 0;
  std::string date;  ///< of the fitting
  int toile = 0;
  Correction correction;
  /// What the file has as its amount, where a newer tape has changed it.
  std::optional<Length> before_new_tape = {};
};

/// A length before and after; what is new has no length before, what is gone none after.
struct LengthChange {
  std::string name;                             ///< "front.side", "waist"
  std::optional<Length> before, after;          ///< as sewn: darts closed, gathers drawn up
  std::optional<Length> cut_before, cut_after;  ///< of an edge: along its open darts
  std::optional<Length>
      predicted;         ///< the change that the rule of a correction leads one to expect
  bool roughly = false;  ///< the rule is right to about 30 %
};

/// A dart before and after; a new one has none before, a closed one none after.
struct DartChange {
  std::optional<DartMeasure> before, after;
};

/// What one correction or one step of a style did.
struct Change {
  Wording did;  ///< "lower front neck 1 cm"
  std::vector<LengthChange> lengths;
  std::vector<DartChange> darts;
  Problems remarks;
};

/// A girth of a garment that is worn with an ease of its own: what it is made up of, all round.
struct FinishedGirth {
  MeasurementName name;
  Length body;
  Length ease;         ///< the style's
  Length own_ease;     ///< what she wears more than others, by her file
  Length corrections;  ///< what they did to it
  Length finished;     ///< as measured on the pieces before the style's steps
};

/// The pieces at one point of the run, and how they came there from the stage before.
struct Stage {
  std::string name;  ///< "drafted", "fitted", "worn", "divided", "styled"
  std::vector<NamedLength> lengths;
  std::vector<DartMeasure> darts;
  std::vector<Change> moved;
};

/// The stage of these pieces, with nothing moved yet.
Stage stage_of(std::string name, const Pattern& pattern);
/// What differs between two versions of a pattern.
Change change_between(const Pattern& before, const Pattern& after);

/// What a garment takes and how it is made, in her unit, one line each.
struct Making {
  std::vector<std::string> to_cut;  ///< by material
  std::vector<std::string> to_buy;
  std::vector<std::string> to_sew;  ///< in order
};

/// What one run did and found.
struct Report {
  std::string client;   ///< her name
  std::string session;  ///< its date
  std::string garment;  ///< "bodice block", or the name of the style
  std::string cut;      ///< "toile", "card", "net" or "garment"
  Unit unit = Unit::Cm;
  Body body;
  std::vector<MeasureBack> measure_back;
  std::vector<NumberedCorrection> corrections;  ///< applied, in the order of the file
  std::vector<Stage> stages;                    ///< in running order; the last is on the paper
  std::vector<BlendedEdge> blended;             ///< across closed darts, before printing
  Problems problems;                            ///< errors first, in the person's unit
  std::vector<std::string> files;               ///< written
  std::optional<BlockBands> bands = {};         ///< where they were asked for
  Length toile_allowance = {};                  ///< that they ask for
  Length allowance = {};                        ///< that the toile has at its seams
  std::vector<FinishedGirth> finished = {};     ///< where the style has an ease of its own
  Making making = {};                           ///< where the pieces are cut as a garment
};

/// The report as tables a maker can read, in her unit. Numbers that are a sum add up as printed.
std::string report_text(const Report& report);
/// The report as JSON (docs/formats.md); numbers in mm and degrees, rounded to 0.0001.
std::string report_json(const Report& report);
/// The same for a client that could not be drafted: problems only.
std::string failure_json(const std::string& file, const Problems& problems);

/// How far the lines could be off, what to take again first, and what to leave at the seams.
std::string bands_text(const Report& report);

/// Which measurement to take first, and which after it.
std::string take_first_text(const std::vector<Retake>& retakes);

/// A JSON list of problems as every report has them: severity, code, where, message, hint.
std::string problems_json(const Problems& problems);
/// Far below what is drawn and far above what compilers differ by: to 0.0001, and never -0.
double rounded(double value);

/// "Ondine Marsh, bodice block, toile, 2026-03-14".
std::string title_of(const Report& report);

/// A measurement's key as words: "side neck to bust point".
std::string words_of(MeasurementName name);
/// A measurement's value with its unit: "92.5 cm", "22.5°".
std::string value_text(Measure value, Unit unit);
/// "3.25 cm": an amount of a correction, to 0.1 mm in cm, so that a sum adds up as it is read.
std::string amount_text(Length amount, Unit unit);
/// The amount as it was given, and below it how it was read unless it is a length: "1 cm", "per
/// half".
std::vector<std::string> amount_lines(const Correction& correction, Unit unit);
/// "lower front neck 1.0 cm", "take in side 1/2 in (per seam), left side".
std::string correction_text(const Correction& correction, Unit unit);
/// " 3. lower front neck 1.0 cm (2026-03-21, toile 1)".
std::string numbered_text(const NumberedCorrection& correction, Unit unit);
/// A place among the pieces as it is said, "front waist dart" of "front.waist dart"; any other,
/// such as that of a file, as it is.
std::string place_text(const std::string& where);
/// A problem as every list has it: "warning [fit.limit] neck wider: ...".
std::string problem_text(Problem problem);
/// Under the heading "What to look at"; empty without problems.
std::string problem_list(const Problems& problems);
/// Under the heading "Written", a line for each file; that nothing was written where there is none.
std::string written_text(const std::vector<std::string>& files);

/// The draft as numbered instructions for pencil, ruler and compass. `whose`: "Ondine Marsh,
/// 2026-03-14".
std::string draft_steps_text(const std::string& whose, Unit unit, const DraftLog& log);

/// Words for the paper, a line each.
std::vector<std::string> ease_lines(const Report& report);
/// Measurements that were not taped, with their doubt.
std::vector<std::string> estimated_lines(const Report& report);
/// "version 2, toile 1 of 2026-03-21"; empty without corrections.
std::string version_line(const Report& report);
/// The style's name, its steps, and what each of them asks of the sewer.
std::vector<std::string> made_lines(const Report& report);
/// What the checks warn of, and what holds for every toile.
std::vector<std::string> caution_lines(const Report& report);

}  // namespace blockwright
