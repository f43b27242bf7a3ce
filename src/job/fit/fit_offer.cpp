// What is offered to her: no correction of a dart that her block has not got.
#include "block_pass.hpp"
#include "blockwright/job/fit_words.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "blockwright/text/units.hpp"

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

/// A place of corrections that is a dart, or needs one; of no piece: one of either will do.
struct DartOfPlace {
  std::string_view place;
  std::string_view dart;   ///< in words
  std::string_view piece;  ///< the beginning of its name
  std::string_view name;
};
constexpr std::array kDartsOfPlaces{
    DartOfPlace{"front_shoulder_dart", "front shoulder dart", "front", "shoulder"},
    DartOfPlace{"back_shoulder_dart", "back shoulder dart", "back", "shoulder"},
    DartOfPlace{"front_waist_dart", "front waist dart", "front", "waist"},
    DartOfPlace{"under_bust", "front waist dart", "front", "waist"},
    DartOfPlace{"back_waist_dart", "back waist dart", "back", "waist"},
    DartOfPlace{"waist_darts", "waist darts", "", "waist"}};

bool has_dart(const Pattern& block, const DartOfPlace& of) {
  return std::ranges::any_of(block.pieces, [&](const Piece& piece) {
    return piece.name.starts_with(of.piece) &&
           std::ranges::any_of(piece.darts,
                               [&](const Dart& dart) { return dart.name.starts_with(of.name); });
  });
}

}  // namespace

std::vector<std::string_view> places_lacking(const FitJob& job, FileStore& files) {
  std::vector<std::string_view> lacking;
  try {
    const BlockRun run = fitted_block(block_source(files.read(job.client), job, job.session));
    if (has_errors(run.problems)) return lacking;
    for (const DartOfPlace& of : kDartsOfPlaces) {
      if (!has_dart(run.fitted.pattern, of)) lacking.push_back(of.place);
    }
  } catch (const Error&) {
    // What is wrong with the file is said where it is used; all is offered meanwhile.
  }
  return lacking;
}

FitAnswers for_her_block(FitAnswers answers, const std::vector<std::string_view>& lacking) {
  std::erase_if(answers.best, [&](const FitAnswer& answer) {
    const auto* const of =
        std::ranges::find(kDartsOfPlaces, answer.correction->place, &DartOfPlace::place);
    const bool lacks = std::ranges::count(lacking, answer.correction->place) > 0;
    if (!lacks || of == kDartsOfPlaces.end()) return false;
    const std::string dart(of->dart);
    if (std::ranges::count(answers.left_out, dart) == 0) answers.left_out.push_back(dart);
    return true;
  });
  return answers;
}

std::string left_out_text(const FitAnswers& answers) {
  std::string darts;
  for (const std::string& dart : answers.left_out) darts += (darts.empty() ? "" : ", ") + dart;
  return darts.empty() ? "" : "Left out, for her block has none: " + darts + ".\n";
}

}  // namespace blockwright
