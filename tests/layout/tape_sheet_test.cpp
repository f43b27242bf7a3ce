#include "blockwright/layout/tape_sheet.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/measure/tape_session.hpp"
#include "sheet_reading.hpp"
#include "support/each.hpp"
#include "support/sanitized.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

PrintOptions printed_on(const std::string& paper) {
  PrintOptions options;
  options.paper = paper_named(paper);
  return options;
}

TapeSheet form_for(const std::string& client, const std::string& last) {
  TapeSheet form{.client = client,
                 .units = {"Write centimetres, for example 74.5",
                           "Write inches, to the eighth, for example 29 3/8"},
                 .cautions = {"The tape lies level and snug, not tight."},
                 .foot = "Type it in with: blockwright tape CLIENT."};
  for (const TapeFigure figure : {TapeFigure::Front, TapeFigure::Back}) {
    for (const BodyPoint& point : points_of(figure, {})) {
      form.points.push_back({std::string(point.name), "where it is found, in a sentence or two"});
    }
  }
  for (const TapeFigure figure : kTapeFigures) {
    TapeSheetGroup group{figure, {}};
    for (const MeasurementName name : tapes_on(figure)) {
      const int number = tape_number(name);
      group.rows.push_back({number, std::string(info(name).key), std::string(info(name).how), last,
                            info(name).kind == MeasurementKind::Angle,
                            number <= static_cast<int>(kFirstMeasurements)});
    }
    form.groups.push_back(std::move(group));
  }
  return form;
}

std::size_t count_named(const PrintPlan& plan, const std::string& name) {
  std::size_t count = 0;
  for (const Page& page : plan.pages) count += strokes_named(page.furniture, name).size();
  return count;
}

std::string text_on_form(const PrintPlan& plan) {
  std::string text;
  for (const Page& page : plan.pages) text += blockwright_tests::all_text(page.furniture);
  return text;
}

}  // namespace

// Paper sizes: ISO 216 and ANSI/ASME Y14.1 (from memory).
TEST_CASE("On every paper the form stands free of itself and of the paper's edge") {
  for (const std::string& paper :
       each(kSanitized
                ? std::vector<std::string>{"letter", "210x260"}
                : std::vector<std::string>{"a4", "letter", "legal", "a3", "roll:914", "210x260"})) {
    for (const TapeSheet& form :
         {form_for("", ""), form_for("Ondine Marsh", "92.5 cm on 2026-03-14"),
          form_for(std::string(100, 'W'), "106 15/16 in on 2026-03-14")}) {
      TextFonts fonts;
      const PrintPlan plan = tape_sheet(form, printed_on(paper), fonts);
      for (const Page& page : plan.pages) {
        CAPTURE(page.label);
        CHECK(text_in_the_way(page.furniture) == "");
        const Box ink = drawn_box(page.furniture);
        CHECK(ink.left >= 10.0);
        CHECK(ink.bottom >= 10.0);
        CHECK(ink.right <= page.width - 10.0);
        CHECK(ink.top <= page.height - 10.0);
        CHECK(page.furniture.width == page.width);
      }
    }
  }
}

TEST_CASE("A form has three boxes for each measurement, and rings the numbers of the first eight") {
  TextFonts fonts;
  const std::string last = "92.5 cm on 2026-03-14";
  CHECK(tape_sheet(form_for("", last), printed_on("letter"), fonts).pages.size() == 3);
  const PrintPlan plan = tape_sheet(form_for("", ""), printed_on("a4"), fonts);
  CHECK(plan.pages.size() == 3);
  CHECK(count_named(plan, "reading") == 3 * kMeasurementCount);
  CHECK(count_named(plan, "point") == form_for("", "").points.size());
  CHECK(count_named(plan, "Name") == 3);  // at the head, and at the foot of the other pages
  CHECK(count_named(plan, "early") == kFirstMeasurements);
  CHECK(count_named(plan, "tick box") == 4);
  const std::string text = text_on_form(plan);
  for (const MeasurementInfo& entry : each(measurement_catalogue())) {
    CHECK(text.find(std::string(entry.key) + "\n") != std::string::npos);
  }
}

TEST_CASE("What is known is on the form, the last value under the boxes of each measurement") {
  TextFonts fonts;
  TapeSheet form = form_for("Ondine Marsh", "92.5 cm on 2026-03-14");
  form.date = "2026-11-29";
  form.by = "R.";
  form.units = {"Write centimetres, for example 74.5"};
  const PrintPlan plan = tape_sheet(form, printed_on("letter"), fonts);
  CHECK(plan.title == "Tape session, Ondine Marsh");
  CHECK(count_named(plan, "tick box") == 2);
  const std::string text = text_on_form(plan);
  for (const char* part :
       {"Ondine Marsh\n", "2026-11-29\n", "R.\n", "Write centimetres, for example 74.5\n",
        "Page 1 of ", "92.5 cm on 2026-03-14\n"}) {
    CAPTURE(part);
    CHECK(text.find(part) != std::string::npos);
  }
}

TEST_CASE("A long name is shortened, what to do with the form is not") {
  TextFonts fonts;
  const PrintPlan plan = tape_sheet(form_for(std::string(100, 'W'), ""), printed_on("a4"), fonts);
  CHECK(text_on_form(plan).find("Type it in with: blockwright tape CLIENT.\n") !=
        std::string::npos);
}

TEST_CASE("A paper that does not take the form is refused with the size that is needed") {
  for (const std::string& paper :
       each(std::vector<std::string>{"150x400", "210x120", "roll:200"})) {
    TextFonts fonts;
    try {
      (void)tape_sheet(form_for("", ""), printed_on(paper), fonts);
      FAIL("it was taken");
    } catch (const UsageError& error) {
      CHECK(error.problem().code == "paper.too_small");
      CHECK(error.problem().message.plain().find("the form needs 209 x ") != std::string::npos);
    }
  }
}
