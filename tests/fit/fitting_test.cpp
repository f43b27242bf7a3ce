#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "fit/fit_people.hpp"
#include "halves.hpp"
#include "line_sums.hpp"
#include "rows.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <set>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

RowAmount row_on(int number, double by, BodySide side = BodySide::Both, int sign = 1) {
  return {numbered(number), sign, by, AmountAs::Length, side, ""};
}

std::string refusal_code(const std::vector<RowAmount>& rows) {
  return outcome(usual_block(), rows).refusal.code;
}

bool warns_of(const FittedPattern& fitted, const std::string& code, int row) {
  return std::any_of(fitted.remarks.begin(), fitted.remarks.end(), [&](const Problem& p) {
    return p.code == code && is_said_of(p.where, numbered(row));
  });
}

bool warns_in(const Problems& problems, const std::string& code) {
  return std::ranges::count(problems, code, &Problem::code) > 0;
}

/// Whether several corrections are said to pull on a line of that name.
bool adds_up(const FittedPattern& fitted, const std::string& line) {
  return std::any_of(fitted.remarks.begin(), fitted.remarks.end(), [&](const Problem& p) {
    return p.code == "fit.same_line" && p.where.find(line) != std::string::npos;
  });
}

Path in_mirror(const Path& path) { return reversed(placed(path, Placement::mirror())); }

}  // namespace

TEST_CASE("The catalogue holds rows with sound numbers") {
  std::set<int> numbers;
  for (const FittingRow& one : fitting_catalogue()) {
    INFO(one.number());
    numbers.insert(one.number());
    CHECK(one.stage >= 1);
    CHECK(one.stage <= 8);
    CHECK(one.amount.least <= one.amount.usual);
    CHECK(one.amount.usual <= one.amount.most);
    CHECK_FALSE(one.name.empty());
    CHECK_FALSE(one.seen.empty());
    CHECK_FALSE(one.source.empty());
    for (const CorrectionRow voided : one.voids) {
      CHECK(number_of(voided) >= 1);
      CHECK(number_of(voided) <= static_cast<int>(kCorrectionCount));
      CHECK(voided != one.row);
    }
    if (one.doubts) CHECK(one.doubts->per_mm != 0.0);
    CHECK_FALSE(stage_name(one.stage).empty());
  }
  CHECK(numbers.size() == 50);
  CHECK(*numbers.begin() == 1);
  CHECK(*numbers.rbegin() == 50);
}

TEST_CASE("All words of corrections can be applied") {
  for (const CorrectionWords& words : correction_words()) {
    INFO(words.action << " " << words.place);
    CHECK(fitting_row(words.row).row == words.row);
    for (const AmountAs as : words.readings) {
      const Correction correction{std::string(words.action),
                                  std::string(words.place),
                                  Length::mm(2.0),
                                  as,
                                  words.one_sided ? BodySide::Right : BodySide::Both,
                                  "",
                                  false};
      const FittedPattern fitted = apply_corrections(usual_block(), {correction});
      CHECK(std::abs(fitted.effects.front().by) >= 1.0);
      CHECK((fitted.effects.front().by > 0.0) == (words.sign > 0));
    }
  }
}

TEST_CASE("Withdrawn corrections are left out, and effects name what is left") {
  std::vector<Correction> list = {
      {"lower", "underarm", Length::mm(6.0), AmountAs::Length, BodySide::Both, "", true},
      {"lower", "front_neck", Length::mm(6.0), AmountAs::Length, BodySide::Both, "", false},
      {"lower", "front_neck", Length::mm(4.0), AmountAs::Length, BodySide::Both, "", false}};
  const FittedPattern fitted = apply_corrections(usual_block(), list);
  REQUIRE(fitted.effects.size() == 1);
  CHECK(fitted.effects.front().by == 10.0);  // added before anything is moved
  CHECK(fitted.effects.front().corrections == std::vector<std::size_t>{1, 2});
}

TEST_CASE("What cannot be is refused, naming row and amount") {
  CHECK(refusal_code({row_on(static_cast<int>(kCorrectionCount) + 1, 5)}) == "fit.unknown");
  CHECK(refusal_code({row_on(1, -5)}) == "fit.amount");
  CHECK(refusal_code({row_on(1, std::nan(""))}) == "fit.amount");
  CHECK(refusal_code({row_on(46, 8)}) == "fit.side_missing");
  CHECK(refusal_code({row_on(17, 20, BodySide::Both, -1)}) == "fit.negative_dart");
  CHECK(refusal_code({row_on(36, 5, BodySide::Both, -1)}) == "fit.negative_dart");
  CHECK(refusal_code({row_on(28, 60)}) != "");
  CHECK(refusal_code({row_on(32, 30)}) == "fit.limit");
  CHECK(refusal_code({row_on(44, 85)}) == "fit.limit");
  CHECK(refusal_code({row_on(26, 130, BodySide::Both, -1)}) != "");
  const Problem refused = outcome(usual_block(), {row_on(17, 20, BodySide::Both, -1)}).refusal;
  CHECK(refused.where == "let out back shoulder dart");
  CHECK_FALSE(refused.hint.empty());
  CHECK_THROWS_AS(apply_corrections(usual_block(), {{"lift", "knee", Length::mm(5.0),
                                                     AmountAs::Length, BodySide::Both, "", false}}),
                  InputError);
}

TEST_CASE("A refusal carries the measurements that are to be taken again, and names them once") {
  const auto keys = [](const RowAmount& amount) {
    return outcome(usual_block(), {amount}).refusal.measurements;
  };
  using Keys = std::vector<std::string>;
  CHECK(keys(row_on(44, 200)) == Keys{"waist_girth"});  // the move's own cure
  CHECK(keys(row_on(28, 60)) == Keys{"bust_girth"});    // what the row calls into doubt
  CHECK(keys(row_on(17, 20, BodySide::Both, -1)).empty());
  const Problem waist = outcome(usual_block(), {row_on(44, 200)}).refusal;
  CHECK(waist.hint.plain().find("again") == waist.hint.plain().rfind("again"));
}

TEST_CASE("Each row has its moves; a part without one of its rows is found") {
  for (const FittingRow& one : fitting_catalogue()) CHECK(moves_of(one.row).row == one.row);
  CHECK(are_all_moves_of(RowPart::Neck, kNeckMoves));
  CHECK_FALSE(are_all_moves_of(RowPart::Neck, kNeckMoves.subspan(1)));
  CHECK_FALSE(are_all_moves_of(RowPart::Back, kNeckMoves));
}

TEST_CASE("A correction of one side unfolds the pieces that differ, and the other half stays") {
  for (const FittingRow& one : fitting_catalogue()) {
    for (const BodySide side : {BodySide::Left, BodySide::Right}) {
      RowAmount asked = usual(one, 1);
      asked.side = side;
      const Outcome got = outcome(usual_block(), {asked});
      if (!got.fitted) continue;
      INFO(one.number());
      const std::string here = side == BodySide::Left ? "_left" : "_right";
      const std::string there = side == BodySide::Left ? "_right" : "_left";
      for (const Piece& piece : got.fitted->pattern.pieces) {
        CHECK_FALSE(find_problem(piece));
        const bool other = piece.name.find(there) != std::string::npos;
        if (!other) continue;
        CHECK(piece.cut_on == CutOn::One);
        const std::string whole = piece.name.substr(0, piece.name.find('_'));
        for (const Edge& edge : piece.edges) {
          const Path& was = usual_block().piece(whole).edge(edge.name).path;
          const bool mirrored = piece.name == "front_right" || piece.name == "back_left";
          CHECK(edge.path == (mirrored ? in_mirror(was) : was));
        }
        CHECK(got.fitted->pattern.piece(whole + here).cut_on == CutOn::One);
      }
      for (const Seam& seam : got.fitted->pattern.seams) {
        const double gap =
            sewn_length(got.fitted->pattern, seam.a) - sewn_length(got.fitted->pattern, seam.b);
        // Both sides must meet at the centre; where a row moves it on one side, that is told.
        CHECK((std::abs(gap - seam.ease_in) < 1.0 || warns(*got.fitted, "fit.seam")));
        CHECK((seam.name == "centre_front" || std::abs(gap - seam.ease_in) < 1.0));
      }
    }
  }
}

TEST_CASE("One breast fuller: two fronts, equal at the centre, the back as it was") {
  const FittedPattern fitted = apply_rows(usual_block(), {row_on(47, 6, BodySide::Left)});
  std::set<std::string> names;
  for (const Piece& piece : fitted.pattern.pieces) names.insert(piece.name);
  CHECK(names == std::set<std::string>{"front_right", "front_left", "back"});
  CHECK(sewn(fitted.pattern, "front_left", "centre_front") ==
        Approx(sewn(fitted.pattern, "front_right", "centre_front")).margin(0.1));
  CHECK(fitted.pattern.piece("front_left").landmark("bust_point").x > 0.0);
  CHECK(warns(fitted, "fit.unfolded"));
  CHECK(fitted.pattern.piece("front_left").edge("centre_front").role == EdgeRole::Seam);
}

TEST_CASE("On a girth a correction of one side counts half of what both sides do") {
  // 8 mm off one half of the waist, and 8 mm off each: 24 mm.
  const FittedPattern fitted =
      apply_rows(usual_block(), {row_on(44, 8, BodySide::Right), row_on(44, 8)});
  const auto said = std::ranges::find(fitted.remarks, "fit.same_line", &Problem::code);
  REQUIRE(said != fitted.remarks.end());
  CHECK_THAT(said->message.plain(), Catch::Contains("together about 24 mm less"));
}

TEST_CASE("A correction is named by the words it can be typed in, which no other correction has") {
  std::set<std::string> names;
  for (const CorrectionWords& words : correction_words()) {
    const FittingRow& row = fitting_row(words.row);
    const std::string name = shown_words(words.action, words.place);
    INFO(name);
    CHECK(names.insert(name).second);
    const TypedCorrection typed = correction_typed(name + " 1");
    CHECK(find_correction_words(typed.action, typed.place) == &words);
    const BodySide side = side_of(row);
    const std::string sided = side == BodySide::Left ? name + ", left" : name;
    const std::string place(words.place);
    const double much = 1.3 * row.amount.most.mm();
    const Outcome got =
        outcome(usual_block(), {{words.row, words.sign, much, AmountAs::Length, side, place}});
    CHECK((got.fitted ? got.fitted->remarks.front() : got.refusal).where == sided);
  }
  CHECK(names.size() == correction_words().size());
}

TEST_CASE("A sum that goes the other way has its own words") {
  const Problems other = apply_rows(usual_block(), {row(19, 4), row(20, 24)}).remarks;
  CHECK(other.front().where == "raise underarm");
}

TEST_CASE("What several corrections do to a waist together is held to the limit of one, once") {
  const auto said = [](const std::vector<RowAmount>& rows) {
    std::vector<std::string> lines;
    for (const Problem& problem : apply_rows(usual_block(), rows).remarks) {
      const bool limit = problem.code == "fit.limit" && !problem.measurements.empty();
      if (limit || (problem.code == "fit.same_line" && problem.where == "waist")) {
        lines.push_back(problem.code + " " + problem.where);
      }
    }
    return lines;
  };
  const RowAmount at_side = row(49, 6, "side", -1);  // 12 mm of the waist, and the bust with it
  using Lines = std::vector<std::string>;
  CHECK(said({row(44, 6), at_side}) == Lines{"fit.same_line waist"});  // 24 mm
  CHECK(said({row(44, 7.5), at_side}) == Lines{"fit.limit waist"});    // 27 mm
  // Each by itself is over it: said once, of both.
  CHECK(said({row(44, 14), row(44, 14, "side_at_waist")}) == Lines{"fit.limit waist"});
  // Opposite ones leave the waist as it was.
  CHECK(said({row(44, 6), row(49, 6, "side", 1)}) == Lines{"fit.same_line waist"});
}

TEST_CASE("A line that moves by less than 2 mm goes along and is not pulled on", "[kLeastPull]") {
  const auto pulled = [](double by) {
    const auto moves = [&](double mm) {
      Effect effect;
      effect.row = numbered(44);
      effect.by = mm;
      effect.moved = {{"waist", 800.0, 800.0 - mm, {}, false}};
      return effect;
    };
    return warns_in(judge_together({moves(10.0), moves(by)}, 120.0), "fit.same_line");
  };
  CHECK(pulled(1.01 * kLeastPull));
  CHECK_FALSE(pulled(0.99 * kLeastPull));
}

TEST_CASE("Chains, voids, limits and sums are told") {
  const Pattern& block = usual_block();
  CHECK(warns_of(apply_rows(block, {row_on(5, 4), row_on(23, 4)}), "fit.chain", 5));
  CHECK(warns_of(apply_rows(block, {row_on(12, 4), row_on(20, 4)}), "fit.chain", 12));
  CHECK(warns_of(apply_rows(block, {row_on(42, 4), row_on(35, 4)}), "fit.chain", 42));
  CHECK(warns_of(apply_rows(block, {row_on(9, 14, BodySide::Left)}), "fit.chain", 9));
  CHECK_FALSE(warns(apply_rows(block, {row_on(9, 6, BodySide::Left)}), "fit.chain"));
  CHECK(adds_up(apply_rows(block, {row_on(35, 6), row_on(38, 6)}), "centre_back"));
  CHECK(adds_up(apply_rows(block, {row_on(17, 3), row_on(35, 6)}), "shoulder dart"));
  CHECK(adds_up(apply_rows(block, {row_on(50, 6), row_on(38, 6)}), "centre_back"));
  CHECK(adds_up(apply_rows(block, {row_on(50, 6), row_on(19, 6)}), "front.side"));
  CHECK_FALSE(warns(apply_rows(block, {row_on(35, 6)}), "fit.same_line"));
  // 15 mm on the half are 30 mm of the bust girth: more than 25. The shoulder: 13 mm, or 4 degrees.
  CHECK(warns_of(apply_rows(block, {row_on(27, 15)}), "fit.limit", 27));
  CHECK_FALSE(warns_of(apply_rows(block, {row_on(27, 12)}), "fit.limit", 27));
  CHECK(warns_of(apply_rows(block, {row_on(12, 12)}), "fit.limit", 12));
  CHECK_FALSE(warns_of(apply_rows(block, {row_on(12, 6)}), "fit.limit", 12));
  // Two of 9 mm are one of 18.
  const FittedPattern twice = apply_rows(block, {row_on(9, 9), row_on(9, 9)});
  REQUIRE(warns_of(twice, "fit.limit", 9));
  CHECK_THAT(twice.remarks.front().message.plain(), Catch::Contains(" by 18 mm; over 13 mm"));
}

TEST_CASE("A shoulder so much too long or too short is warned of once, with its other cause") {
  for (const int number : {9, 10}) {
    const Problems remarks = apply_rows(usual_block(), {row_on(number, 14)}).remarks;
    const auto is_of_it = [&](const Problem& p) { return is_said_of(p.where, numbered(number)); };
    REQUIRE(std::ranges::count_if(remarks, is_of_it) == 1);
    const Problem& problem = *std::ranges::find_if(remarks, is_of_it);
    CHECK(problem.code == "fit.limit");
    CHECK_THAT(problem.message.plain(), Catch::Contains("across front and across back"));
    CHECK_THAT(problem.hint.plain(), Catch::Contains("take shoulder length, across front"));
  }
}

TEST_CASE(
    "A correction of one side voids what was judged on that side and on both, not the other") {
  const auto voided = [](BodySide first, BodySide second) {
    // A lower shoulder voids what was judged of the underarm.
    const char* place = first == BodySide::Both ? "shoulder_point" : "one_shoulder";
    const auto order = order_corrections(
        {{"lower", place, Length::mm(4.0), AmountAs::Length, first, "", false},
         {"lower", "underarm", Length::mm(4.0), AmountAs::Length, second, "", false}});
    return std::ranges::any_of(order, [](const OrderedCorrection& one) {
      return one.correction == 0 && one.voids == std::vector<std::size_t>{1};
    });
  };
  using enum BodySide;
  CHECK(voided(Left, Left));
  CHECK(voided(Left, Both));
  CHECK(voided(Both, Right));
  CHECK(voided(Both, Both));
  CHECK_FALSE(voided(Left, Right));
  CHECK_FALSE(voided(Right, Left));
}

TEST_CASE("Corrections are put in the fitter's order, and say what they make void") {
  const std::vector<Correction> list = {
      {"lower", "underarm", Length::mm(6.0), AmountAs::Length, BodySide::Both, "", false},
      {"take_in", "waist", Length::mm(10.0), AmountAs::PerHalf, BodySide::Both, "", false},
      {"lower", "shoulder_point", Length::mm(6.0), AmountAs::Length, BodySide::Both, "", false},
      {"lengthen", "below_bust", Length::mm(6.0), AmountAs::Length, BodySide::Both, "", false},
      {"raise", "front_neck", Length::mm(6.0), AmountAs::Length, BodySide::Both, "", true}};
  const auto order = order_corrections(list);
  REQUIRE(order.size() == 4);
  CHECK(order[0].correction == 3);  // lengths and balance
  CHECK(order[1].correction == 2);  // shoulder
  CHECK(order[2].correction == 1);  // widths
  CHECK(order[3].correction == 0);  // armhole
  CHECK(order[0].voids == std::vector<std::size_t>{1});
  CHECK(order[1].voids == std::vector<std::size_t>{0});
  CHECK(order[2].voids.empty());
}

TEST_CASE("Amounts beyond any piece are refused, however they add up") {
  const double most = std::numeric_limits<double>::max();
  for (const CorrectionWords& words : correction_words()) {
    for (const double by : {1e4, 1e16, 1e20, most}) {
      if (kSanitized && by > 1e4 && by < most) continue;
      INFO(words.action << " " << words.place << " " << by);
      const BodySide side = words.one_sided ? BodySide::Right : BodySide::Both;
      const RowAmount amount{
          words.row, words.sign, by, words.readings.front(), side, std::string(words.place)};
      CHECK(refusal_code({amount}) == "fit.amount");
      CHECK(refusal_code({amount, amount}) == "fit.amount");
    }
  }
  // Plus and minus of more than there are numbers.
  CHECK(refusal_code({row_on(7, most), row_on(7, most), row_on(7, most, BodySide::Both, -1)}) ==
        "fit.amount");
}

TEST_CASE("Amounts up to the largest of a client file are applied whole or refused by name") {
  for (const CorrectionWords& words : correction_words()) {
    for (const double by : {20.0, 40.0, 60.0, 80.0, 100.0}) {
      INFO(words.action << " " << words.place << " " << by);
      const BodySide side = words.one_sided ? BodySide::Right : BodySide::Both;
      const Outcome got = outcome(usual_block(), {{words.row, words.sign, by, words.readings.back(),
                                                   side, std::string(words.place)}});
      if (!got.fitted) {
        CHECK(got.refusal.code.substr(0, 4) == "fit.");
        continue;
      }
      for (const Piece& piece : got.fitted->pattern.pieces) CHECK_FALSE(find_problem(piece));
      for (const Piece& piece : true_darts(got.fitted->pattern).pattern.pieces) {
        CHECK_FALSE(find_problem(piece));
      }
    }
  }
}

TEST_CASE("No neck dart is opened where the nape has come down to the blade point") {
  const auto lowered_by = [](double by) {
    return outcome(usual_block(), {row_on(16, by), row_on(50, by), row_on(36, 0.4)}).refusal;
  };
  CHECK(lowered_by(10).code.empty());
  const Problem refused = lowered_by(55);
  CHECK(refused.code == "fit.place");
  CHECK_THAT(refused.message.plain(), Catch::Contains("a neck dart has no room"));
}
