#pragma once

#include "blockwright/check/check.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/draft/bands.hpp"
#include "blockwright/draft/draft.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/fit/wearing_ease.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/report/fitting_report.hpp"
#include "blockwright/report/report.hpp"
#include "blockwright/style/style.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// Which block is asked for.
struct BlockSource {
  std::string file;  ///< the client file
  Client client;
  Session session;
  int before_toile = 0;  ///< only with the corrections of the toiles before it; 0: all
  Unit unit = Unit::Cm;
};

/// All that one run knows of one client.
struct BlockRun : BlockSource {
  Body body;
  DraftedBlock block;
  CheckReport checks;
  std::optional<BlockBands> bands;              ///< of the block, where they were asked for
  std::vector<NumberedCorrection> corrections;  ///< applied, in the order of the file
  FittedPattern fitted;                         ///< the block with them; without any, the block
  std::string garment = "bodice block";         ///< what is made
  std::optional<WearingEase> ease;              ///< that the style is worn with, if it says so
  WornBlock worn;                               ///< the fitted block with it; or as it is
  Pattern divided;                              ///< that, a wide bust dart made two
  std::vector<StepDone> division;               ///< how, if it was
  Pattern made;                                 ///< after the style's steps; for a draft the block
  std::vector<StepDone> steps;                  ///< what the style did to the block
  Pattern printed;                              ///< `made` with its darts trued
  std::vector<BlendedEdge> blended;
  Problems problems;  ///< of all passes, errors first
};

/// Appends problems to problems.
void add(Problems& problems, const Problems& more);
/// Without those whose limit is passed by less than a tape shows in that unit: "1 in, over 1 in"
/// says nothing.
Problems without_unseen(Problems problems, Unit unit);
/// Errors before warnings before notes, else in the order found.
void errors_first(Problems& problems);

/// A taped set that no rule could reconcile shows as faults of the pieces. The maker needs to know
/// what to take again: puts a "draft.contradiction" first that names the measurements that were
/// judged doubtful and those that a bound changed.
void name_contradictions(BlockRun& run);

/// Bust girth less underbust girth, mm.
double cup_of(const Body& body);

/// What is broken of a block's pieces as they will be printed, their darts trued: far
/// contradictions may show there alone.
Problems faults_on_paper(const Pattern& block);

/// A client read from the text of her file; without her name where the job wants none. Throws
/// InputError.
Client client_in(const std::string& text, const ClientJob& job);

/// All corrections, numbered from 1 over all fittings of the file.
std::vector<NumberedCorrection> numbered_corrections(const Client& client);
/// Those that are not withdrawn. With a
/// toile, only those of the toiles before it: what that toile was cut from.
std::vector<NumberedCorrection> active_corrections(const Client& client, int before_toile = 0);

/// The session that a job asks for by its date. Where the date is of a job file, a refusal begins
/// with its place there; of a list, `item` is its number. Throws InputError.
struct WantedSession {
  std::string date;  ///< empty: the last
  std::size_t item = 0;
};
const Session& session_in(const Client& client, const ClientJob& job, const WantedSession& wanted);

/// The block of a client read from the text of her file, as taped on a date or, without one, last.
/// Throws InputError.
BlockSource block_source(const std::string& text, const ClientJob& job, const std::string& session);
/// That of a job, before its toile.
BlockSource block_source(const Job& job, FileStore& files);

/// Warns of corrections that a newer tape session has some of, with the sum that is made of them
/// (new_tape_sums.hpp), until the file says what becomes of them (code "fit.explained").
Problems told_by_new_tape(const BlockSource& source);
/// Warns of a bust line, waist or neckline that the corrections have made smaller than the body
/// (code "fit.below_body").
Problems less_than_the_body(const BlockRun& run);

/// The fitted block with the ease that a style is worn with; the fitted block where it says none.
/// What a person wears more or less than others, and what corrections did, comes on top. Throws
/// InputError with the place in the style's file first.
void wear(BlockRun& run, const Style& style);
/// The ease in words, and what came of it; empty where the style says none.
Wording worn_words(const BlockRun& run);
std::vector<FinishedGirth> finished_girths(const BlockRun& run);

/// What is said of a drafted block: the tape, the checks, and the pieces as they will be printed.
void judge_draft(BlockRun& run);
/// ... and of the block with its corrections: their remarks, and what must hold of any pieces.
void judge_corrected(BlockRun& run);
/// The last step before printing: trues the darts of `made`. Pieces that are not whole are neither
/// trued nor printed, and the trued ones are checked like any others.
void true_for_paper(BlockRun& run);

/// The passes up to a checked block, in running order: fill in, draft, check.
BlockRun drafted_block(BlockSource source);

/// The passes up to a checked and fitted block, in running order: fill in, draft, check, correct.
BlockRun fitted_block(BlockSource source);

/// The run as its report has it: drafted; with corrections, fitted; its wide bust dart divided;
/// with steps of a style, styled.
Report report_of(const BlockRun& run, CutStyle cut);
/// What is said beside edges of a garment.
std::vector<EdgeNote> edge_notes_of(const BlockRun& run);

/// The words on the paper: who, which session, which ease, what was estimated, the cautions.
SheetNotes notes_of(const Report& report);

/// What a correction did, or several that were added up.
Change change_of(const BlockRun& run, const Effect& effect);

/// The measurement that an applied correction calls into doubt, and the value that would have made
/// it unnecessary, found by drafting anew; nothing where its row names no measurement, where it is
/// of one side alone, and where the tape was taken again since. Requires:
/// effect is one of run.fitted.effects. Cost: about ten drafts.
std::optional<Doubt> doubt_of(const BlockRun& run, const Effect& effect);

/// The corrections in the order of work.
FittingReport fitting_report_of(const BlockRun& run);

}  // namespace blockwright
