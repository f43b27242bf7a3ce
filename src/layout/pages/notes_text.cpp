#include "pages.hpp"
#include "words.hpp"

namespace blockwright {
namespace {

constexpr double kNotesTitle = 6.0;
constexpr double kSubtitle = 3.6;
constexpr double kHeading = 4.0;
constexpr double kNotesBody = 3.2;
constexpr double kBeforeHeading = 3.0;
constexpr double kBeforeBody = 0.6;

void add_section(std::vector<Paragraph>& text, const std::string& heading,
                 const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  text.push_back({heading, kHeading, kBeforeHeading, true});
  for (const std::string& line : lines) text.push_back({line, kNotesBody, kBeforeBody, false});
}

std::vector<std::string> piece_list(const Layout& layout) {
  std::vector<std::string> lines;
  for (const LaidPiece& laid : layout.pieces) {
    const Piece& piece = laid.piece;
    lines.push_back(title_of(piece.name) + ": " + cut_instruction(piece));
  }
  lines.push_back(title_of(allowance_text(layout)));
  return lines;
}

std::vector<std::string> titled(std::vector<std::string> lines) {
  for (std::string& line : lines) line = title_of(line);
  return lines;
}

std::vector<std::string> numbered(std::vector<std::string> lines) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    lines[i] = std::to_string(i + 1) + ". " + title_of(lines[i]);
  }
  return lines;
}

std::vector<std::string> joining_lines() {
  return {
      "Rows are A, B \u2026 from the top, columns 1, 2 \u2026 from the left; blank pages are left "
      "out.",
      "Where a page joins one above it or to its left, cut its edge off along the frame and lay "
      "it over that page: the half match marks on its edge meet their other halves and make "
      "diamonds."};
}

std::string heading_text(const SheetNotes& notes) { return notes.client; }

std::string subtitle_text(const Layout& layout) {
  const SheetNotes& notes = layout.notes;
  const std::string cut(cut_style_name(layout.options.cut));
  std::string text = title_of(notes.garment.empty() ? cut : notes.garment + ", " + cut);
  if (!notes.to_look_at.empty()) text = title_of(notes.to_look_at);
  text += ", session " + notes.session;
  if (!notes.version.empty()) text += ", blockwright " + notes.version;
  return text;
}

}  // namespace

std::string plan_title(const Layout& layout) {
  return heading_text(layout.notes) + ", " + subtitle_text(layout);
}

void draw_title(TextDrawing& drawing, const Box& frame, const Layout& layout,
                const std::string& more) {
  const auto line = [&](const std::string& text, double height, double down) {
    drawing.text(shortened(drawing.fonts(), text, height, frame.width()),
                 {frame.left, frame.top - down}, height, TextAnchor::Start);
  };
  line(heading_text(layout.notes), kNotesTitle, kNotesTitle);
  line(subtitle_text(layout) + more, kSubtitle, kNotesTitle + 6.0);
}

std::vector<Paragraph> note_paragraphs(const Layout& layout, NotesFor pages) {
  const SheetNotes& notes = layout.notes;
  std::vector<Paragraph> text;
  const bool to_cut = notes.to_look_at.empty();
  if (to_cut) {
    add_section(text, "Look at these before you cut", notes.cautions);
    add_section(text, "Pieces", piece_list(layout));
    if (layout.options.cut == CutStyle::Garment) {
      add_section(text, "To cut, by material", titled(notes.to_cut));
      add_section(text, "To buy", titled(notes.to_buy));
      add_section(text, "To sew, in this order", numbered(notes.to_sew));
    }
  }
  add_section(text, notes.fitted.empty() ? "Corrections" : title_of(notes.fitted),
              notes.corrections);
  if (to_cut) add_section(text, "Look at these first on this toile", notes.look_first);
  add_section(text, "Made from the block", notes.made);
  add_section(text, to_cut ? "The two versions" : "The lines", notes.versions);
  if (pages == NotesFor::JoinedPages) add_section(text, "Joining the pages", joining_lines());
  add_section(text, "Ease", notes.ease);
  add_section(text, "Estimated, not taped", notes.estimated);
  return text;
}

}  // namespace blockwright
