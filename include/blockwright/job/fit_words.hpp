#pragma once

#include "blockwright/job/job.hpp"
#include "blockwright/measure/symptom_search.hpp"
#include "blockwright/measure/typed_correction.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A correction that answers what was seen, as a person reads it.
struct FitAnswer {
  const CorrectionWords* correction = nullptr;
  std::string words;               ///< "lower front_neck": what --add takes
  std::string_view cure;           ///< in one line
  std::string_view seen;           ///< what the catalogue says of the fault
  std::string usual;               ///< "0.6 cm (0.3 to 1.5)", in her unit
  BodySide side = BodySide::Both;  ///< that she named with what it answers
};

/// The answers to what was seen, the likeliest first.
struct FitAnswers {
  std::vector<FitAnswer> best;
  std::vector<std::string> not_understood;  ///< words, as typed
  BodySide side = BodySide::Both;           ///< the one side that was named, wherever
  bool is_whole = false;                    ///< a part of the body and what is seen there
  bool is_nowhere = false;                  ///< what is seen, and not where: "too long"
  SaidOf set_aside = SaidOf::Fault;         ///< what else she spoke of
  std::vector<std::string> left_out = {};   ///< darts that her block has not got, "waist darts"
};
FitAnswers answers_to(std::string_view seen, Unit unit);

/// The places of corrections, "waist_darts", that are darts which the client's block has not got;
/// none where it cannot be drafted.
std::vector<std::string_view> places_lacking(const FitJob& job, FileStore& files);
/// The answers without those; what is left out is named. Her own words for one are still
/// understood, and refused with the reason.
FitAnswers for_her_block(FitAnswers answers, const std::vector<std::string_view>& lacking);
/// "Left out, for her block has none: waist darts."; may be empty.
std::string left_out_text(const FitAnswers& answers);

/// The parts of the body: "neck", "shoulder" ...
std::vector<std::string_view> part_names();
/// All corrections at a part of the body; empty if that names none.
std::vector<FitAnswer> answers_at(std::string_view part, Unit unit);

/// Answers in lines for a terminal, each with its cure and its usual amount.
std::string answers_text(const std::vector<FitAnswer>& answers);
/// What to say where nothing was found, or not all is of the bodice or understood; may be empty.
std::string not_found_text(const FitAnswers& answers);

/// What a correction would do, without a letter written.
struct FitPreview {
  /// Those that it brings, with their places in words; with an error it cannot be done.
  Problems problems;
  std::string does;  ///< "bust 99.0 cm, stays; waist 76.0 -> 74.0 cm ..."; empty with an error
  /// What has to be asked for again: "amount", "as", "side", "date", "toile", or
  /// "fitting": both of these; empty: something else.
  std::string at_fault;
};
/// Requires: the job adds one correction.
FitPreview preview_fit(const FitJob& job, FileStore& files);

/// The unit of a client file. Throws as reading it.
Unit unit_of_client(const std::string& path, FileStore& files);
/// A fitting by its date and the number of its toile, as far as they are known: empty, none.
struct FittingName {
  std::string date = {};
  std::optional<int> toile = {};
};
/// The fitting of a client file that is meant where so much of its name is given. What is missing
/// is that of the newest fitting; but it stays open where a tape session came after that fitting,
/// and where the file has no fitting of that toile: then only the fitter knows. Throws as reading
/// it.
FittingName meant_fitting(const std::string& path, const FittingName& given, FileStore& files);
/// The number of a toile that is sewn after all of a client file: 1 without any.
int next_toile_number(const std::string& path, FileStore& files);
/// Why no fitting can have that date: it is none, or it is before the first tape session.
std::optional<Problem> fault_of_date(const std::string& path, const std::string& date,
                                     FileStore& files);

/// Why an amount of that correction cannot be counted so, with the lines to type instead; nothing
/// if it can.
std::optional<Problem> fault_of_way(const CorrectionWords& words, const std::string& amount,
                                    AmountAs as);

/// Why a client file cannot keep these words for what was seen, in a sentence; empty if it can.
std::string why_not_kept(std::string_view seen);

/// Refuses what no answer at the prompt would mend: a folder that cannot be written, and what is
/// said of the fitting. Throws FileError, UsageError and InputError.
void judge_before_asking(const FitJob& job, FileStore& files);

}  // namespace blockwright
