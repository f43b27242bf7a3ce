// Corrections and amounts as they are typed. An inch is 25.4 mm exactly (international inch, 1959).
#include "blockwright/measure/typed_correction.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

namespace blockwright {
namespace {

double mm_of(const std::string& typed, Unit file) {
  const auto amount = amount_typed(typed);
  REQUIRE(amount);
  return amount->length(file).mm();
}

TEST_CASE("What is no amount keeps the unit behind it") {
  CHECK(correction_typed("lower underarm 1.5.2 cm").amount == "1.5.2 cm");
  CHECK(correction_typed("lower underarm 1.5.2 cm").odd.empty());
  CHECK(correction_typed("narrow side_neck 1.5.2 in all").amount == "1.5.2");
}

TEST_CASE("An amount is read with a point, a comma or a fraction, with and without its unit") {
  for (const char* typed :
       each({"1.5", "1,5", " 1.5 cm", "1,5cm", "15 mm", "15mm", "1.5 Centimetres"})) {
    CHECK(mm_of(typed, Unit::Cm) == Approx(15.0).margin(1e-12));
  }
  for (const char* typed : each({"5/8", "5/8 in", "5/8in", "5/8\"", "5/8 inches", "⅝", "0.625"})) {
    CHECK(mm_of(typed, Unit::Inch) == Approx(15.875).margin(1e-12));
  }
  for (const char* typed : each({"1 1/2", "1-1/2", "1½", "1.5 in", "1 1/2\""})) {
    CHECK(mm_of(typed, Unit::Inch) == Approx(38.1).margin(1e-12));
  }
  CHECK(mm_of("1 cm", Unit::Inch) == Approx(10.0));
  CHECK(mm_of("5/8 cm", Unit::Inch) == Approx(6.25));
  CHECK(mm_of("-1", Unit::Cm) == Approx(-10.0));
}

TEST_CASE("What is no amount is none") {
  for (const char* typed :
       each({"", "cm", "one", "1/3", "1.2.3", "1 2", "1 cm 2", "5/8/2", "1e5", "nan", "."})) {
    CHECK_FALSE(amount_typed(typed).has_value());
  }
}

TEST_CASE("The unit that is given with an amount wins over the file's, and is kept with it") {
  const auto in_file = [](const char* typed, Unit file) {
    return amount_for_file(*amount_typed(typed), file);
  };
  CHECK(in_file("1,5", Unit::Cm) == "1.5");
  CHECK(in_file("1.5 cm", Unit::Cm) == "1.5");
  CHECK(in_file("1.5 cm", Unit::Inch) == "1.5 cm");
  CHECK(in_file("8 mm", Unit::Cm) == "8 mm");
  CHECK(in_file("5/8", Unit::Inch) == "5/8");
  CHECK(in_file("5/8 in", Unit::Inch) == "5/8");
  CHECK(in_file("5/8 in", Unit::Cm) == "5/8 in");
  CHECK(in_file("1½ in", Unit::Cm) == "1 1/2 in");
  CHECK(in_file("1/2 cm", Unit::Cm) == "1/2 cm");
  CHECK(in_file("1/2", Unit::Cm).empty());  // of a cm or of an inch?
}

TEST_CASE("A row is understood by its own name, as warnings have it, and never as its reverse") {
  int rows = 0;
  for (const CorrectionWords& words : correction_words()) {
    const std::string name(row_name(words.row, words.sign));
    INFO(name);
    const TypedCorrection typed = correction_typed(name + " 1 cm");
    const CorrectionWords* found = find_correction_words(typed.action, typed.place);
    REQUIRE(found != nullptr);
    // Some rows are the reverse of another: "neck wider" is the row and the reverse of "narrower".
    CHECK(row_name(found->row, found->sign) == name);
    CHECK(typed.amount == "1 cm");
    ++rows;
  }
  CHECK(rows > 80);
  // Without an amount it is what is seen.
  CHECK(find_correction_words(correction_typed("shoulder shorter").action, "shorter") == nullptr);
  const TypedCorrection sided = correction_typed("One shoulder lower 5/8 in left");
  CHECK(sided.action == "lower");
  CHECK(sided.place == "one_shoulder");
  CHECK(sided.side == BodySide::Left);
}

TEST_CASE("Both sides of a neck together are said as they are typed") {
  const auto said = [](const char* action, const char* place) {
    return way_text(*find_correction_words(action, place), AmountAs::WholeGirth);
  };
  CHECK(said("narrow", "side_neck") == "in all");
  CHECK(said("take_in", "waist") == "whole girth");
}

TEST_CASE("Behind an amount \"in all\" is both sides together and \"each side\" is one") {
  const struct {
    const char *typed, *amount;
    AmountAs as;
  } all[] = {{"narrow side_neck 3 cm in all", "3 cm", AmountAs::WholeGirth},
             {"narrow side neck 3 in all", "3", AmountAs::WholeGirth},
             {"narrow side_neck by 1 1/4 in in all", "1 1/4 in", AmountAs::WholeGirth},
             {"narrow side_neck 1.5 each side", "1.5", AmountAs::Length},
             {"take in waist 4 cm in all", "4 cm", AmountAs::WholeGirth}};
  for (const auto& [typed, amount, as] : all) {
    INFO(typed);
    const TypedCorrection read = correction_typed(typed);
    CHECK(read.amount == amount);
    CHECK(read.as == as);
    CHECK(read.odd.empty());
  }
  CHECK(correction_typed("let out side 1 in per half").amount == "1 in");
}

TEST_CASE("How an amount was counted is read from everyday words, as the row counts") {
  const struct {
    const char* typed;
    AmountAs as;
  } all[] = {{"take_in waist 2 cm each side", AmountAs::PerHalf},
             {"take_in waist 2 cm on each side", AmountAs::PerHalf},
             {"take_in waist 2 cm a side", AmountAs::PerHalf},
             {"take_in waist 2 cm on each half", AmountAs::PerHalf},
             {"take_in waist 2 cm altogether", AmountAs::WholeGirth},
             {"take_in waist 2 cm, altogether", AmountAs::WholeGirth},
             {"take_in waist 2 cm all round", AmountAs::WholeGirth},
             {"take_in waist 2 cm all the way round", AmountAs::WholeGirth},
             {"take_in waist 2 in total", AmountAs::WholeGirth},
             {"take_in waist 2 cm in total", AmountAs::WholeGirth},
             {"take_in waist 2 cm on the tape", AmountAs::WholeGirth},
             {"take_in side 1 cm off each piece", AmountAs::PerSeam},
             {"take_in side 1 cm on each layer", AmountAs::PerSeam},
             {"take_in side 1 cm deep", AmountAs::TuckDepth},
             {"lower underarm 1 cm each side", AmountAs::Length},
             {"narrow side_neck 1.5 on each side", AmountAs::Length},
             {"take_up shoulders 1 cm each side", AmountAs::Length},
             {"fuller one_breast 1 cm each side", AmountAs::PerHalf}};
  for (const auto& [typed, as] : all) {
    INFO(typed);
    const TypedCorrection read = correction_typed(typed);
    REQUIRE(amount_typed(read.amount));
    CHECK_FALSE(read.amount.ends_with("in"));
    CHECK(read.as == as);
    CHECK(read.odd.empty());
    CHECK_FALSE(read.side);
  }
  CHECK(correction_typed("take_in waist 2 in in total").amount == "2 in");
  CHECK(correction_typed("take_in waist 1 cm each side left").side == BodySide::Left);
}

TEST_CASE("The sides of a neck are each moved by the amount unless both together are said") {
  const CorrectionWords* words = find_correction_words("narrow", "side_neck");
  REQUIRE(words != nullptr);
  CHECK_FALSE(words->must_say);
  CHECK(words->readings == std::vector{AmountAs::Length, AmountAs::WholeGirth});
}

TEST_CASE("A correction is read from words, with underscores or spaces") {
  for (const char* typed : each({"take_in waist 5/8 in per_half", "take in waist 5/8 in per half",
                                 "Take in the waist by 5/8 in, per half"})) {
    std::string words = typed;
    std::erase(words, ',');
    const TypedCorrection correction = correction_typed(words);
    CHECK(correction.action == "take_in");
    CHECK(correction.place == "waist");
    CHECK(correction.amount == "5/8 in");
    CHECK(correction.as == AmountAs::PerHalf);
    CHECK(correction.odd.empty());
  }
  const TypedCorrection sided = correction_typed("raise one side waist 1,5 left side");
  CHECK(sided.place == "one_side_waist");
  CHECK(sided.amount == "1,5");
  CHECK(sided.side == BodySide::Left);
  CHECK(sided.odd.empty());
  CHECK(correction_typed("narrow bust point 1").place == "bust_points");
  CHECK(correction_typed("forward shoulder_seam 1 1/2 in").amount == "1 1/2 in");
}

TEST_CASE("Every correction of the table is read as itself, with every way of reading it") {
  for (const CorrectionWords& words : each(correction_words())) {
    for (const AmountAs as : words.readings) {
      for (const char joint : {'_', ' '}) {
        std::string typed = std::string(words.action) + " " + std::string(words.place) +
                            " 1.5 cm " + std::string(amount_way(as).word);
        std::ranges::replace(typed, '_', joint);
        INFO(typed);
        const TypedCorrection correction = correction_typed(typed);
        CHECK(correction.action == words.action);
        CHECK(correction.place == words.place);
        CHECK(correction.amount == "1.5 cm");
        CHECK(correction.as == as);
        CHECK(correction.odd.empty());
      }
    }
  }
}

TEST_CASE("Words in another order, or with others between, have a nearest correction") {
  const auto nearest = [](const char* typed) {
    const CorrectionWords* words = nearest_correction(typed);
    return words == nullptr ? "" : std::string(words->action) + " " + std::string(words->place);
  };
  CHECK(nearest("take in side seams 1 per seam") == "take_in side");
  CHECK(nearest("front neck lower 0.6") == "lower front_neck");
  CHECK(nearest("Waist in 1") == "take_in waist");
  CHECK(nearest("lower moon 1").empty());  // one word alone names nothing
  CHECK(nearest("").empty());
  for (const CorrectionWords& words : each(correction_words())) {
    const std::string typed = std::string(words.place) + " " + std::string(words.action);
    INFO(typed);
    CHECK(nearest_correction(typed) == &words);
  }
}

TEST_CASE("What is not understood behind an amount is named") {
  CHECK(correction_typed("lower front_neck 1 cm roughly").odd == "roughly");
  CHECK(correction_typed("lower front_neck 1 2").odd == "2");
  CHECK(correction_typed("lower front_neck").amount.empty());
  CHECK(correction_typed("").action.empty());
}

}  // namespace
}  // namespace blockwright
