#include "blockwright/layout/change_page.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "change_drawing.hpp"
#include "page_size.hpp"
#include "seen_grid.hpp"
#include "seen_pages.hpp"
#include "shown_pieces.hpp"
#include "words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>
#include <utility>

namespace blockwright {
namespace {

// Round scales that a ruler or a head can undo.
constexpr std::array kReductions = {1.0, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, kMostReduced};

// In mm.
constexpr double kPageTitle = 6.0, kPageSubtitle = 3.6, kScaleText = 4.2;
constexpr double kHeadRoom = 21.0;
constexpr double kChangeHeading = 3.8, kChangeBody = 3.2;
constexpr double kLegendText = 3.0, kLegendRoom = 6.0;
constexpr double kLeastWordsWide = 60.0;           // beside figures
constexpr double kUnderWords = kLeastArrow + 2.0;  // between the words and the pieces
constexpr double kRimOfWords = 1.0;
constexpr double kCellGap = 10.0, kCellRim = 1.0;
constexpr double kMostMoreBetween = 36.0;  // two amounts side by side
constexpr double kNameText = 4.2, kTogetherText = 2.8, kCaptionRoom = kLeastArrow + 17.0;
constexpr double kCellOfSpace = 1.0;
// Words take at most this share of the page; they are set smaller before some go to the next.
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

/// The page of the pieces, and what had no room on it.
struct PiecesPage {
  Page page;
  double reduction = 1.0;
  bool has_figures = true;     ///< all of them
  std::size_t words_left = 0;  ///< the last lines

  [[nodiscard]] bool is_whole() const { return has_figures && words_left == 0; }
};

/// One page in the making, from the top down.
class ChangePageDrawing {
 public:
  ChangePageDrawing(const ChangePage& page, const PrintOptions& options, TextFonts& fonts,
                    PaperLies lies)
      : page_(page), options_(options), fonts_(fonts), drawing_(sheet_, fonts) {
    const PageSize size = upright(options.paper);
    sheet_.width = size.width;
    sheet_.height = size.height;
    turned_ = lies == PaperLies::Turned;
    if (turned_) std::swap(sheet_.width, sheet_.height);
    const double margin = options.margin.mm();
    rest_ = {margin, margin + kLegendRoom, sheet_.width - margin, sheet_.height - margin};
    head_right_ = rest_.right;
  }

  PiecesPage draw() && {
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
    return {std::move(page), rows->reduction, has_figures_, words_left_};
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
    const double figures = draw_seen_at_right(frame) - beside_head;
    words.right = frame.right;
    if (turned_) head_right_ = frame.right;
    const double said = draw_words(words);
    rest_.top -= std::max(figures, said) + kUnderWords;
  }

  /// Takes their columns off the frame; gives the height used.
  double draw_seen_at_right(Box& frame) {
    if (page_.seen.empty()) return 0.0;
    const auto grid = seen_at_right(page_.seen, frame, kLeastWordsWide, fonts_);
    has_figures_ = grid.has_value();
    if (!grid) return 0.0;
    const double left = frame.right - width_of(*grid);
    draw_seen(drawing_, page_.seen, *grid, {left, frame.top});
    frame.right = left - kGutter;
    return height_of(row_heights(page_.seen, *grid, fonts_));
  }

  /// As large as they fit, and as many; gives the height used.
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
        drawing.text("goes on on page 2", {frame.left, frame.bottom + 0.5 * kChangeBody},
                     kChangeBody, TextAnchor::Start);
      }
      words_left_ = flow.left();
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
  bool has_figures_ = true;
  std::size_t words_left_ = 0;
  double head_right_ = 0.0;
};

ChangePage without_figures(ChangePage page) {
  page.seen.clear();
  return page;
}

/// On the paper as it is named; turned where that has no room for all, or the pieces would be small
/// and are larger so.
PiecesPage drawn_larger(const ChangePage& page, const PrintOptions& options, TextFonts& fonts) {
  PiecesPage named = ChangePageDrawing(page, options, fonts, PaperLies::AsNamed).draw();
  const bool is_small = named.reduction > kMostReducedByFigures;
  if (options.paper.is_roll() || (!is_small && named.is_whole())) return named;
  try {
    PiecesPage turned = ChangePageDrawing(page, options, fonts, PaperLies::Turned).draw();
    if (turned.is_whole() != named.is_whole()) return turned.is_whole() ? turned : named;
    return turned.reduction < named.reduction ? turned : named;
  } catch (const UsageError&) {
    return named;
  }
}

/// Nothing where not all has room, or the figures make the pieces small.
std::optional<PiecesPage> on_one_page(const ChangePage& page, const PrintOptions& options,
                                      TextFonts& fonts) {
  if (page.seen.size() > kMostSeenOnPage) return std::nullopt;
  PiecesPage one = drawn_larger(page, options, fonts);
  if (!one.is_whole()) return std::nullopt;
  const bool is_small = !page.seen.empty() && one.reduction > kMostReducedByFigures;
  if (!is_small) return one;
  const PiecesPage bare = drawn_larger(without_figures(page), options, fonts);
  return bare.reduction > kMostReducedByFigures ? std::optional(std::move(one)) : std::nullopt;
}

std::vector<Paragraph> last_of(std::vector<Paragraph> words, std::size_t count) {
  words.erase(words.begin(), words.end() - static_cast<std::ptrdiff_t>(count));
  return words;
}

/// The pieces on the first page; on those behind it the words that it has no room for, and the
/// figures.
DrawnChange on_several_pages(const ChangePage& page, const PrintOptions& options,
                             TextFonts& fonts) {
  ChangePage first = without_figures(page);
  const PiecesPage pieces = drawn_larger(first, options, fonts);
  const std::vector<Paragraph> rest = last_of(paragraphs_of(page.words), pieces.words_left);
  PageHeads heads{page.title, page.subtitle};
  heads.of = 1 + seen_pages(rest, page.seen, heads, options, fonts).size();
  first.subtitle = numbered_page(page.subtitle, 1, heads.of);
  if (!page.seen.empty()) first.subtitle += "; what was seen: page 2";
  PiecesPage one = drawn_larger(first, options, fonts);
  DrawnChange drawn{{page.title, {}, {std::move(one.page)}}, one.reduction};
  std::ranges::move(seen_pages(rest, page.seen, heads, options, fonts),
                    std::back_inserter(drawn.plan.pages));
  return drawn;
}

}  // namespace

DrawnChange change_page(const ChangePage& page, const PrintOptions& options, TextFonts& fonts) {
  if (auto one = on_one_page(page, options, fonts)) {
    return {{page.title, {}, {std::move(one->page)}}, one->reduction};
  }
  return on_several_pages(page, options, fonts);
}

}  // namespace blockwright
