#include "form_parts.hpp"
#include "text_flow.hpp"

#include <algorithm>

namespace blockwright {
namespace {

constexpr double kFormTitle = 6.0;
constexpr double kLabel = 3.2;
constexpr double kLabelGap = 2.0;     // between a label and its line
constexpr double kFieldGap = 6.0;     // between two fields
constexpr double kFieldStep = 9.0;    // from line to line
constexpr double kWritingStep = 6.0;  // where nothing is written
constexpr double kTickBox = 3.2;
constexpr double kCautionText = 2.9;
constexpr double kUnderLine = 0.9;  // from the line to what is written on it
constexpr double kFootText = 2.6;
constexpr double kFootName = 52.0;  // the line to write her name on

/// A word and a line to write on, or what is known written there.
struct FormField {
  std::string label, value;
  double left = 0.0, right = 0.0;
};

void draw_field(TextDrawing& drawing, const FormField& field, double y) {
  SheetText label = drawing.measured(field.label, kLabel);
  label.at = {field.left, y};
  const double line = field.left + label.room.width + kLabelGap;
  drawing.add(std::move(label));
  drawing.line(SheetLayer::Marks, LineRole::Frame, field.label,
               Path::through({{line, y - kUnderLine}, {field.right, y - kUnderLine}}));
  if (field.value.empty()) return;
  const std::string value =
      shortened(drawing.fonts(), field.value, kLabel, field.right - line - 2.0);
  drawing.text(value, {line + 1.0, y}, kLabel, TextAnchor::Start);
}

/// Gives where it ends.
double draw_words(TextDrawing& drawing, const std::string& words, Point at) {
  SheetText text = drawing.measured(words, kLabel);
  text.at = at;
  const double end = at.x + text.room.width;
  drawing.add(std::move(text));
  return end;
}

/// Words with a box before each, from `at` to the right.
void draw_ticks(TextDrawing& drawing, const std::vector<std::string>& words, Point at) {
  for (const std::string& word : words) {
    drawing.closed(SheetLayer::Marks, LineRole::Frame, "tick box",
                   rectangle(square_at({at.x, at.y - 0.4}, kTickBox)));
    at.x = draw_words(drawing, word, {at.x + kTickBox + kLabelGap, at.y}) + kFieldGap;
  }
}

/// One unit is said, of several one is ticked.
void draw_units(TextDrawing& drawing, const std::vector<std::string>& units, double y) {
  if (units.size() > 1) {
    draw_ticks(drawing, units, {0.0, y});
  } else if (!units.empty()) {
    draw_words(drawing, units.front(), {0.0, y});
  }
}

void draw_side(TextDrawing& drawing, double y) {
  const std::string words = "A helper takes the tape; one side, always the same:";
  draw_ticks(drawing, {"left", "right"}, {draw_words(drawing, words, {0.0, y}) + kFieldGap, y});
}

double draw_cautions(TextDrawing& drawing, const std::vector<std::string>& cautions, double top) {
  std::vector<Paragraph> text;
  text.reserve(cautions.size());
  for (const std::string& line : cautions) text.push_back({line, kCautionText, 0.7});
  TextFlow flow(text, 1.0);
  return flow.pour(drawing, {0.0, top - 200.0, kFormWidth, top});
}

std::string foot_text(TextDrawing& drawing, const FormFoot& foot, double width) {
  if (foot.client.empty()) return foot.page + ". " + foot.what;
  const SheetText others = drawing.measured(foot.page + ", . " + foot.what, kFootText);
  const double room = std::max(width - others.room.width - 1.0, 0.0);
  return foot.page + ", " + shortened(drawing.fonts(), foot.client, kFootText, room) + ". " +
         foot.what;
}

}  // namespace

FormPart form_head(const TapeSheet& form, TextFonts& fonts) {
  FormPart part;
  TextDrawing drawing(part.drawing, fonts);
  double y = -kFormTitle;
  drawing.text("Tape session", {0.0, y}, kFormTitle, TextAnchor::Start);
  y -= kFieldStep + 1.0;
  draw_field(drawing, {"Name", form.client, 0.0, 88.0}, y);
  draw_field(drawing, {"Date", form.date, 88.0 + kFieldGap, 130.0}, y);
  draw_field(drawing, {"Taken by", form.by, 130.0 + kFieldGap, kFormWidth}, y);
  y -= kFieldStep;
  draw_units(drawing, form.units, y);
  y -= kWritingStep;
  draw_side(drawing, y);
  y -= 4.0;
  y -= draw_cautions(drawing, form.cautions, y);
  part.height = -y;
  return part;
}

FormPart form_foot(const FormFoot& foot, TextFonts& fonts) {
  FormPart part;
  TextDrawing drawing(part.drawing, fonts);
  const double width = foot.to_write ? kFormWidth - kFootName - kFieldGap : kFormWidth;
  const std::string text = foot_text(drawing, foot, width);
  SheetText line = drawing.measured(shortened(fonts, text, kFootText, width), kFootText);
  line.at = {0.0, line.room.below + 0.3};
  part.height = line.at.y + line.room.above;
  if (foot.to_write) {
    draw_field(drawing, {"Name", "", kFormWidth - kFootName, kFormWidth}, line.at.y + 0.6);
  }
  drawing.add(std::move(line));
  return part;
}

}  // namespace blockwright
