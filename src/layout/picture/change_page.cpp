#include "blockwright/layout/change_page.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "change_drawing.hpp"
#include "form_parts.hpp"
#include "shown_pieces.hpp"
#include "text_flow.hpp"
#include "words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace blockwright {
namespace {

// Round scales that a ruler or a head can undo.
constexpr std::array kReductions = {1.0, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, kMostReduced};
constexpr double kRollProportion = 1.4142;  // of an A4: height over width

// In mm.
constexpr double kPageTitle = 6.0, kPageSubtitle = 3.6, kScaleText = 4.2;
constexpr double kHeadRoom = 21.0;
constexpr double kChangeHeading = 3.8, kChangeBody = 3.2;
constexpr double kLegendText = 3.0, kLegendRoom = 6.0;
constexpr double kSeenWords = 2.7, kSeenStep = 1.25 * kSeenWords, kSeenGap = 4.0;
constexpr std::size_t kMostSeenLines = 5, kFewestSeenLines = 2;  // under a figure
constexpr std::size_t kSeenColumns = 2;
constexpr double kLeastWordsWide = 60.0;           // beside figures
constexpr double kUnderWords = kLeastArrow + 2.0;  // between the words and the pieces
constexpr double kRimOfWords = 1.0;
constexpr double kCellGap = 10.0, kCellRim = 1.0;
constexpr double kMostMoreBetween = 36.0;  // two amounts side by side
constexpr double kNameText = 4.2, kTogetherText = 2.8, kCaptionRoom = kLeastArrow + 17.0;
constexpr double kCellOfSpace = 1.0;
// Words take at most this share of the page; they are set smaller before some are left out.
constexpr double kMostWords = 0.45;
constexpr std::array kChangeScales = {1.0, 0.9, 0.8};

std::vector<Paragraph> paragraphs_of(const std::vector<ChangeWords>& words) {
  std::vector<Paragraph> all;
  all.reserve(words.size());
  for (const ChangeWords& line : words) {
    all.push_back(line.heading ? Paragraph{line.text, kChangeHeading, 2.5, true}
                               : Paragraph{line.text, kChangeBody, 0.6, false});
  }
  return all;
}

/// How pieces stand at one scale: in rows, each on one waist level; the halves of one in one row.
struct Rows {
  double reduction = 0.0;
  std::size_t in_row = 0;  ///< pieces, both halves of one counted as one
};

/// The rows of a drawing: where each begins in the list.
struct Row {
  std::size_t from = 0, to = 0;
  double bottom = 0.0, top = 0.0;  ///< of its pieces
  double width = 0.0;              ///< of its pieces, in true size
};

std::vector<Row> rows_of(const std::vector<ShownChange>& shown, std::size_t in_row) {
  const std::vector<std::size_t> begins = begins_of_pieces(shown);
  const std::size_t count = begins.size() - 1;
  std::vector<Row> rows;
  for (std::size_t first = 0; first < count; first += in_row) {
    Row row{begins[first], begins[std::min(first + in_row, count)]};
    Box upright;
    for (std::size_t i = row.from; i < row.to; ++i) {
      row.width += shown[i].box.width();
      upright.include(Box{0.0, shown[i].box.bottom, 0.0, shown[i].box.top});
    }
    row.bottom = upright.bottom;
    row.top = upright.top;
    rows.push_back(row);
  }
  return rows;
}

bool fits(const std::vector<Row>& rows, double reduction, const Box& room) {
  double high = 0.0;
  for (const Row& row : rows) {
    const auto gaps = static_cast<double>(row.to - row.from - 1);
    if (row.width / reduction + gaps * kCellGap + 2.0 * kCellRim > room.width()) return false;
    high += (row.top - row.bottom) / reduction + kCaptionRoom + kCellRim;
  }
  return high <= room.height();
}

std::optional<Rows> rows_that_fit(const std::vector<ShownChange>& shown, const Box& room) {
  const std::size_t count = begins_of_pieces(shown).size() - 1;
  for (const double reduction : kReductions) {
    for (const std::size_t in_row : {count, (count + 1) / 2}) {
      if (in_row > 0 && fits(rows_of(shown, in_row), reduction, room))
        return Rows{reduction, in_row};
    }
  }
  return std::nullopt;
}

/// Between what stands in a row, and at its ends, in mm.
struct RowGaps {
  double between_pieces, at_ends;

  /// Requires: it is not the last.
  [[nodiscard]] double behind(const std::vector<ShownChange>& shown, std::size_t i) const {
    return shown[i].whole == shown[i + 1].whole ? kCellGap : between_pieces;
  }
};

/// What the page has to spare goes where arrows come from: to both ends of a row and, twice as
/// much, between pieces, whose outer sides face each other there.
RowGaps gaps_of(const std::vector<ShownChange>& shown, const Row& row, double width_left) {
  std::size_t pieces = 1;
  for (std::size_t i = row.from; i + 1 < row.to; ++i) {
    if (shown[i].whole != shown[i + 1].whole) ++pieces;
  }
  const auto gaps = static_cast<double>(row.to - row.from - 1);
  const double spare = std::max(width_left - gaps * kCellGap, 0.0);
  const auto count = static_cast<double>(pieces);
  const double more = std::min(spare / count, kMostMoreBetween);
  return {kCellGap + more, 0.5 * (spare - (count - 1.0) * more)};
}

/// The paper as it is named, or its other edge up.
enum class PaperLies { AsNamed, Turned };

/// One page in the making, from the top down.
class ChangePageDrawing {
 public:
  ChangePageDrawing(const ChangePage& page, const PrintOptions& options, TextFonts& fonts,
                    PaperLies lies)
      : page_(page), options_(options), fonts_(fonts), drawing_(sheet_, fonts) {
    sheet_.width = options.paper.width.mm();
    sheet_.height =
        options.paper.is_roll() ? kRollProportion * sheet_.width : options.paper.height.mm();
    turned_ = lies == PaperLies::Turned;
    if (turned_) std::swap(sheet_.width, sheet_.height);
    const double margin = options.margin.mm();
    rest_ = {margin, margin + kLegendRoom, sheet_.width - margin, sheet_.height - margin};
    head_right_ = rest_.right;
  }

  DrawnChange draw() && {
    const Box head = rest_;
    rest_.top -= kHeadRoom;
    draw_above();
    const auto [shown, left_out] = shown_pieces(page_);
    const auto rows = rows_that_fit(shown, rest_);
    if (!rows) refuse();
    draw_head(head, rows->reduction);
    draw_legend(left_out);
    draw_pieces(shown, *rows);
    Page page;
    page.label = "changes";
    page.width = sheet_.width;
    page.height = sheet_.height;
    page.furniture = std::move(sheet_);
    return {{page_.title, {}, {std::move(page)}}, rows->reduction};
  }

 private:
  [[noreturn]] void refuse() const {
    throw UsageError({Severity::Error, "paper.too_small", "--paper",
                      "on '" + options_.paper.name +
                          "' the pieces would be drawn smaller than 1:" + trimmed(kMostReduced, 0),
                      "choose a4, letter or a larger paper, upright"});
  }

  void line(const std::string& text, Point at, double height) {
    drawing_.text(shortened(fonts_, text, height, head_right_ - at.x), at, height,
                  TextAnchor::Start);
  }

  void draw_head(const Box& head, double reduction) {
    line(page_.title, {head.left, head.top - kPageTitle}, kPageTitle);
    line(page_.subtitle, {head.left, head.top - kPageTitle - 5.6}, kPageSubtitle);
    const std::string scale = "1:" + trimmed(reduction, 1) + ", to look at, not for cutting";
    line(scale, {head.left, head.top - kPageTitle - 11.6}, kScaleText);
  }

  void draw_legend(const std::vector<std::string>& left_out) {
    std::string legend =
        "Grey: " + page_.before_is + ".  Black: " + page_.now_is + ", heavy where it moved.";
    if (!left_out.empty()) legend += "  Unchanged and not drawn: " + listed(left_out) + ".";
    line(legend, {rest_.left, options_.margin.mm() + 1.0}, kLegendText);
  }

  /// Figures on the right, words beside them; on a turned page figures beside the head, too.
  void draw_above() {
    Box words = {rest_.left, rest_.top - kMostWords * rest_.height(), rest_.right, rest_.top};
    const double beside_head = turned_ ? kHeadRoom : 0.0;
    Box frame = {words.left, words.bottom, words.right, words.top + beside_head};
    const double figures = draw_seen(frame) - beside_head;
    words.right = frame.right;
    if (turned_) head_right_ = frame.right;
    const double said = draw_words(words);
    rest_.top -= std::max(figures, said) + kUnderWords;
  }

  /// The largest figure's width and height.
  [[nodiscard]] Vec seen_size() const {
    Vec size;
    for (const SeenOnPage& seen : page_.seen) {
      size.x = std::max(size.x, seen.figure.width);
      size.y = std::max(size.y, seen.figure.height);
    }
    return size;
  }

  /// In at most so many lines; what is cut off shows as an ellipsis.
  std::vector<std::string> seen_lines(const SeenOnPage& seen, double wide, std::size_t most) {
    std::vector<std::string> lines = wrapped(fonts_, seen.words, kSeenWords, wide);
    if (lines.size() <= most) return lines;
    lines[most - 1] = shortened(fonts_, lines[most - 1] + " " + lines[most], kSeenWords, wide);
    lines.resize(most);
    return lines;
  }

  /// Under each figure, as high as the longest words are.
  double seen_words_room(double wide, std::size_t lines) {
    std::size_t most = 0;
    for (const auto& figure : page_.seen) {
      most = std::max(most, seen_lines(figure, wide, lines).size());
    }
    return (static_cast<double>(most) + 0.4) * kSeenStep;
  }

  /// How the figures stand: in rows of so many, each with its words under it.
  struct SeenGrid {
    double across = 0.0, step = 0.0;
    std::size_t columns = 0, count = 0;
    std::size_t lines = 0;  ///< of words, at most
  };

  /// As many as leave room for words; their own words in fewer lines where that makes room for
  /// more.
  SeenGrid seen_grid(const Box& frame) {
    const auto [wide, high] = seen_size();
    const auto room = [](double whole, double each) {
      return whole < each ? std::size_t{0} : static_cast<std::size_t>(whole / each);
    };
    const std::size_t wanted = page_.seen.size();
    SeenGrid best;
    for (std::size_t lines = kMostSeenLines; lines >= kFewestSeenLines; --lines) {
      SeenGrid grid{wide + kSeenGap, high + seen_words_room(wide, lines) + kSeenGap, 0, 0, lines};
      grid.columns =
          std::min({wanted, kSeenColumns, room(frame.width() - kLeastWordsWide, grid.across)});
      grid.count = std::min(wanted, grid.columns * room(frame.height() + kSeenGap, grid.step));
      if (grid.count > best.count) best = grid;
    }
    return best;
  }

  /// Takes their columns off the frame; gives the height used.
  double draw_seen(Box& frame) {
    const auto [across, step, columns, count, lines] = seen_grid(frame);
    if (count == 0) return 0.0;
    const double left = frame.right - static_cast<double>(columns) * across + kSeenGap;
    const double high = seen_size().y;
    for (std::size_t i = 0; i < count; ++i) {
      const std::size_t above = i / columns;
      const auto column = static_cast<double>(i % columns), row = static_cast<double>(above);
      draw_one_seen(page_.seen[i], {left + column * across, frame.top - row * step - high}, lines);
    }
    frame.right = left - kGutter;
    const std::size_t rows = (count + columns - 1) / columns;
    return static_cast<double>(rows) * step - kSeenGap;
  }

  void draw_one_seen(const SeenOnPage& seen, Point lower_left, std::size_t lines) {
    const double wide = seen_size().x;
    draw_figure_lines(drawing_, seen.figure, lower_left - Point{});
    double y = lower_left.y;
    for (const std::string& words : seen_lines(seen, wide, lines)) {
      y -= kSeenStep;
      drawing_.text(words, {lower_left.x + 0.5 * wide, y}, kSeenWords, TextAnchor::Middle);
    }
  }

  /// As large as they fit; gives the height used.
  double draw_words(const Box& frame) {
    for (const double scale : kChangeScales) {
      Sheet tried;
      TextDrawing drawing(tried, fonts_);
      TextFlow flow(paragraphs_of(page_.words), scale, Paragraphs::StayWhole);
      const bool last = scale == kChangeScales.back();
      Box room = frame;
      if (last) room.bottom += 2.0 * kChangeBody;
      const double high = flow.pour(drawing, room);
      if (!flow.done() && !last) continue;
      if (!flow.done()) {
        drawing.text("\u2026 and " + std::to_string(flow.left()) + " more: see the report",
                     {frame.left, frame.bottom + 0.5 * kChangeBody}, kChangeBody,
                     TextAnchor::Start);
      }
      add(sheet_, tried);
      return flow.done() ? high : frame.height();
    }
    return 0.0;
  }

  void draw_pieces(const std::vector<ShownChange>& shown, const Rows& rows) {
    // Arrows and amounts may stand over the pieces, up to the words.
    const Box room{rest_.left, rest_.bottom, rest_.right, rest_.top + kUnderWords - kRimOfWords};
    FreeSpace space(room, kCellOfSpace);
    const double scale = 1.0 / rows.reduction;
    std::vector<Reduction> places;
    double top = rest_.top;
    for (const Row& row : rows_of(shown, rows.in_row)) {
      const RowGaps gaps = gaps_of(shown, row, rest_.width() - scale * row.width);
      double left = rest_.left + gaps.at_ends;
      for (std::size_t i = row.from; i < row.to; ++i) {
        const Box& box = shown[i].box;
        const Reduction reduce{scale, {box.left, row.top}, {left, top}};
        draw_lines(drawing_, shown[i], reduce, space);
        draw_caption(shown[i], {left, reduce(Point{0.0, row.bottom}).y},
                     scale * box.width() + 0.5 * kCellGap, space);
        places.push_back(reduce);
        left += scale * box.width() + (i + 1 < row.to ? gaps.behind(shown, i) : 0.0);
      }
      top -= scale * (row.top - row.bottom) + kCaptionRoom + kCellRim;
    }
    std::vector<std::vector<DrawnArrow>> arrows;
    for (std::size_t i = 0; i < shown.size(); ++i) {
      arrows.push_back(draw_arrows(drawing_, shown[i], places[i], room, space));
    }
    for (std::size_t i = 0; i < shown.size(); ++i) {
      std::vector<Path> others;
      for (std::size_t j = 0; j < shown.size(); ++j) {
        if (j != i) others.push_back(places[j](shown[j].outline));
      }
      write_amounts(drawing_, arrows[i], places[i](shown[i].outline), others, space);
    }
    for (std::size_t i = 0; i < shown.size(); ++i) {
      name_levels(drawing_, shown[i], places[i], space);
    }
  }

  void draw_caption(const ShownChange& shown, Point upper_left, double wide, FreeSpace& space) {
    double y = upper_left.y - kLeastArrow - kNameText;
    const auto set = [&](const std::string& words, double height) {
      SheetText text = drawing_.measured(shortened(fonts_, words, height, wide), height);
      text.at = {upper_left.x, y};
      space.take(
          Box{text.at.x, y - text.room.below, text.at.x + text.room.width, y + text.room.above});
      drawing_.add(std::move(text));
    };
    set(shown.name, kNameText);
    for (const std::string& words : wrapped(fonts_, shown.together, kTogetherText, wide)) {
      y -= 1.3 * kTogetherText;
      if (y < upper_left.y - kCaptionRoom) break;
      set(words, kTogetherText);
    }
  }

  const ChangePage& page_;
  const PrintOptions& options_;
  TextFonts& fonts_;
  Sheet sheet_;
  TextDrawing drawing_;
  Box rest_;  // what is free of the page
  bool turned_ = false;
  double head_right_ = 0.0;
};

/// The page with its first figures; of the others the words alone.
ChangePage with_figures(const ChangePage& page, std::size_t count) {
  ChangePage fewer = page;
  for (std::size_t i = count; i < page.seen.size(); ++i) {
    fewer.words.push_back({page.seen[i].words});
  }
  fewer.seen.resize(count);
  return fewer;
}

/// On the paper as it is named; turned where the pieces would be small and are larger so.
DrawnChange drawn_larger(const ChangePage& page, const PrintOptions& options, TextFonts& fonts) {
  DrawnChange named = ChangePageDrawing(page, options, fonts, PaperLies::AsNamed).draw();
  if (options.paper.is_roll() || named.reduction <= kMostReducedByFigures) return named;
  try {
    DrawnChange turned = ChangePageDrawing(page, options, fonts, PaperLies::Turned).draw();
    return turned.reduction < named.reduction ? turned : named;
  } catch (const UsageError&) {
    return named;
  }
}

}  // namespace

DrawnChange change_page(const ChangePage& page, const PrintOptions& options, TextFonts& fonts) {
  const std::size_t most = std::min(page.seen.size(), kMostSeenOnPage);
  const auto drawn_with = [&](std::size_t figures) {
    return drawn_larger(with_figures(page, figures), options, fonts);
  };
  DrawnChange all = drawn_with(most);
  if (all.reduction <= kMostReducedByFigures) return all;
  for (std::size_t figures = most; figures-- > 0;) {
    DrawnChange fewer = drawn_with(figures);
    if (fewer.reduction <= kMostReducedByFigures) return fewer;
  }
  return all;
}

}  // namespace blockwright
