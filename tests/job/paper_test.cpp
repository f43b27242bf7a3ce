// What the wardrobe prints: everybody's block in each cut and every style, on the papers that
// people have at home.
#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/geometry/path.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/style/style.hpp"
#include "layout/sheet_reading.hpp"
#include "support/blocks.hpp"
#include "support/sanitized.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

using namespace blockwright;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

std::vector<fs::path> json_files_in(const std::string& folder) {
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator(fs::path(BLOCKWRIGHT_SOURCE_DIR) / folder)) {
    if (entry.path().extension() == ".json") found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  REQUIRE(found.size() >= 8);
  return found;
}

struct Garment {
  std::string name;
  SheetNotes notes;
  Pattern pattern;
};

struct Wearer {
  std::string name;
  SheetNotes notes;
  Pattern block;
  double cup = 0.0;
};

std::vector<Wearer> wearers() {
  std::vector<Wearer> all;
  for (const fs::path& file : json_files_in("examples/wardrobe")) {
    std::ifstream in(file);
    const Client client = read_client(in, file.string());
    const CheckedBlock checked = checked_block(client.sessions.back(), Ease::of(client));
    SheetNotes notes;
    notes.client = client.name;
    notes.session = client.sessions.back().date;
    notes.estimated = {"scye depth 20.1 cm ± 1.1 cm", "stature 167 cm ± 6 cm"};
    all.push_back({file.stem().string(), notes, checked.block.pattern, cup_of(checked.body)});
  }
  return all;
}

/// The styles that she can wear, before their darts are trued.
std::vector<Garment> styles_of(const Wearer& wearer) {
  std::vector<Garment> garments;
  for (const fs::path& file : json_files_in("examples/styles")) {
    std::ifstream in(file);
    std::ostringstream text;
    text << in.rdbuf();
    try {
      const Style style = read_style(text.str(), file.string());
      garments.push_back({wearer.name + ", " + file.stem().string(), wearer.notes,
                          apply_style(wearer.block, style, wearer.cup).pattern});
    } catch (const InputError&) {
      // A dart too wide for one of the steps: nothing is printed.
    }
  }
  return garments;
}

/// The same with what it takes and how it is sewn among its notes.
Garment with_making(Garment garment) {
  const MakingOf making = making_of(garment.pattern);
  const auto words = [](const std::vector<Wording>& lines) {
    std::vector<std::string> all;
    for (const Wording& line : lines) all.push_back(worded(line, Unit::Cm));
    return all;
  };
  garment.notes.to_cut = words(making.to_cut);
  garment.notes.to_buy = words(making.to_buy);
  garment.notes.to_sew = words(making.to_sew);
  for (const EdgeWords& one : making.edges) {
    garment.notes.edge_notes.push_back(
        {one.edge.piece, one.edge.edge, worded(one.words, Unit::Cm)});
  }
  return garment;
}

/// A text with an underscore, or with the same word or two words twice on end; or "".
std::string clumsy_text(const Sheet& sheet) {
  for (const SheetText& text : sheet.texts) {
    std::istringstream in(text.text);
    std::vector<std::string> words(std::istream_iterator<std::string>(in), {});
    for (std::string& word : words) {
      if (word.find('_') != std::string::npos) return text.text;
      std::transform(word.begin(), word.end(), word.begin(),
                     [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    }
    for (std::size_t i = 1; i < words.size(); ++i) {
      const bool pair = i >= 3 && words[i] == words[i - 2] && words[i - 1] == words[i - 3];
      if (words[i] == words[i - 1] || pair) return text.text;
    }
  }
  return {};
}

void check_pages(const Garment& garment, CutStyle cut, const std::string& paper,
                 double large = 12000.0) {
  PrintOptions options;
  options.cut = cut;
  options.paper = paper_named(paper);
  TextFonts fonts;
  const PrintPlan plan =
      tile(lay_out(true_darts(garment.pattern).pattern, options, garment.notes), fonts);
  CHECK(clumsy_text(plan.sheet) == "");
  for (const Page& page : plan.pages) {
    INFO(garment.name << ", " << cut_style_name(cut) << ", " << paper << ", page " << page.label);
    const Box inside = {9.999, 9.999, page.width - 9.999, page.height - 9.999};
    const Box drawn = drawn_box(page.furniture);
    CHECK(drawn.left >= inside.left);
    CHECK(drawn.right <= inside.right);
    CHECK(drawn.bottom >= inside.bottom);
    CHECK(drawn.top <= inside.top);
    CHECK(clumsy_text(page.furniture) == "");
    if (!page.window) continue;
    CHECK(cut_text(plan.sheet, *page.window) == "");
    CHECK(unnamed_piece(plan, page) == "");
    CHECK(large_unnamed_part(plan, page, large) == "");
  }
}

/// The first stroke of a piece that has no length, by its edge or line; or "".
std::string stroke_without_length(const Piece& piece) {
  const auto has_none = [](const Path& path) {
    return std::any_of(path.curves().begin(), path.curves().end(), [](const Curve& curve) {
      return box_of(Path({curve})).width() + box_of(Path({curve})).height() < 1e-6;
    });
  };
  for (const Edge& edge : piece.edges) {
    if (has_none(edge.path)) return piece.name + "." + edge.name;
  }
  for (const BalanceLine& line : piece.balance_lines) {
    if (has_none(line.path)) return piece.name + "." + line.name;
  }
  return piece.grainline.a == piece.grainline.b ? piece.name + ".grain" : "";
}

std::string stroke_without_length(const Pattern& pattern) {
  for (const Piece& piece : pattern.pieces) {
    const std::string found = stroke_without_length(piece);
    if (!found.empty()) return found;
  }
  PrintOptions options;
  TextFonts fonts;
  for (const Stroke& stroke : sheet_of(lay_out(pattern, options, {}), fonts).strokes) {
    for (const Curve& curve : stroke.path.curves()) {
      if (length(curve) < 1e-6) return "drawn: " + stroke.piece + "." + stroke.name;
    }
  }
  return {};
}

bool is_panel(const Piece& piece) {
  return std::any_of(piece.edges.begin(), piece.edges.end(), [](const Edge& edge) {
    return edge.name.starts_with("princess") || edge.name.starts_with("yoke");
  });
}

/// All of them; two under the sanitizers.
std::vector<Wearer> some_wearers() {
  std::vector<Wearer> all = wearers();
  if (kSanitized) all.erase(all.begin() + 2, all.end());
  return all;
}

}  // namespace

TEST_CASE("On A4 and letter no text is cut or clumsy and every page names its pieces") {
  for (const Wearer& wearer : some_wearers()) {
    for (const std::string paper : {"a4", "letter"}) {
      for (const CutStyle cut : {CutStyle::Toile, CutStyle::Card, CutStyle::Net}) {
        check_pages({wearer.name, wearer.notes, wearer.block}, cut, paper);
      }
      for (const Garment& garment : styles_of(wearer)) {
        check_pages(garment, CutStyle::Toile, paper);
        if (is_finished(garment.pattern)) {
          check_pages(with_making(garment), CutStyle::Garment, paper);
        }
      }
    }
  }
}

TEST_CASE("A page that shows the facing that is cut on to a front names it") {
  const Style style = read_style(R"({"format": "blockwright-style-1", "name": "n", "steps": [
    {"neckline": {"shape": "v", "depth_share": 0.6}},
    {"opening": {"at": "centre_front", "with": "buttons"}},
    {"binding": {"runs": [["neckline"]]}},
    {"allowance": {}}]})",
                                 "n.json");
  int made = 0;
  for (const Wearer& wearer : wearers()) {
    Garment garment{wearer.name, wearer.notes, {}};
    try {
      garment.pattern = apply_style(wearer.block, style, wearer.cup).pattern;
    } catch (const InputError&) {
      continue;  // a V so low that it leaves no room for two buttons
    }
    // The facing is 6 cm wide: of what a small page shows of it there is less than elsewhere.
    for (const std::string paper : {"a4", "letter"}) {
      check_pages(with_making(garment), CutStyle::Garment, paper);
    }
    check_pages(with_making(garment), CutStyle::Garment, "150x150", 5000.0);
    ++made;
  }
  CHECK(made > 3);
}

TEST_CASE("No stroke of a style is without length") {
  for (const Wearer& wearer : wearers()) {
    for (const Garment& garment : styles_of(wearer)) {
      INFO(garment.name);
      CHECK(stroke_without_length(garment.pattern) == "");
      CHECK(stroke_without_length(true_darts(garment.pattern).pattern) == "");
    }
  }
}

TEST_CASE("No stroke is without length after a dart was moved to any edge, near its corners too") {
  int moved = 0;
  for (const Wearer& wearer : wearers()) {
    for (const Piece& piece : wearer.block.pieces) {
      for (const Dart& dart : piece.darts) {
        for (const Edge& edge : piece.edges) {
          for (const char* place : {"", ":5mm", ":0.25", ":0.5", ":0.98"}) {
            PivotMove move;
            move.dart = piece.name + "." + dart.name;
            move.to = piece.name + "." + edge.name + place;
            INFO(wearer.name << ": " << move.dart << " to " << move.to);
            try {
              const Pattern pattern = pivot(wearer.block, move, wearer.cup).pattern;
              CHECK(stroke_without_length(pattern) == "");
              ++moved;
            } catch (const InputError&) {
              // The way is barred, or the dart too wide there.
            }
          }
        }
      }
    }
  }
  CHECK(moved > 100);
}

TEST_CASE("The grainline of a panel keeps 15 mm off its edges") {
  int panels = 0;
  for (const Wearer& wearer : wearers()) {
    for (const Garment& garment : styles_of(wearer)) {
      for (const Piece& piece : true_darts(garment.pattern).pattern.pieces) {
        if (!is_panel(piece)) continue;
        INFO(garment.name << ": " << piece.name);
        ++panels;
        const Path grain({piece.grainline});
        CHECK(length(grain) >= 40.0);
        CHECK(contains(sewing_outline(piece), piece.grainline.a, 0.01));
        for (const Edge& edge : piece.edges) {
          INFO(edge.name);
          for (const Point p : flattened(edge.path, 0.01)) {
            CHECK(nearest(grain, p).distance >= 15.0);
          }
          CHECK(nearest(edge.path, piece.grainline.a).distance >= 15.0);
          CHECK(nearest(edge.path, piece.grainline.b).distance >= 15.0);
        }
      }
    }
  }
  CHECK(panels > 20);
}

TEST_CASE("The notches of a panel's seam name the other panel as their mate") {
  int notches = 0;
  for (const Wearer& wearer : wearers()) {
    for (const Garment& garment : styles_of(wearer)) {
      for (const Piece& piece : garment.pattern.pieces) {
        for (const Notch& notch : piece.notches) {
          if (notch.mate_piece.empty() || !is_panel(piece)) continue;
          INFO(garment.name << ": " << piece.name << "." << notch.name);
          ++notches;
          CHECK(notch.mate_piece != piece.name);
          const Piece& other = garment.pattern.piece(notch.mate_piece);
          CHECK(std::any_of(other.notches.begin(), other.notches.end(), [&](const Notch& mate) {
            return mate.mate_piece == piece.name && mate.mate_edge == notch.edge &&
                   mate.edge == notch.mate_edge && mate.name == notch.name;
          }));
        }
      }
    }
  }
  CHECK(notches > 100);
}
