// The page that `fit` draws, and how it is written.
#include "blockwright/job/job.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <fstream>
#include <regex>
#include <sstream>

namespace fit_picture_test {

using namespace blockwright;
using Json = nlohmann::json;

namespace {

std::string client_text(const std::string& name) {
  std::ifstream in(BLOCKWRIGHT_SOURCE_DIR "/examples/wardrobe/" + name + ".json");
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

using Texts = std::map<std::string, std::string>;
Texts her_file() { return {{"her/ondine.json", client_text("ondine-marsh")}}; }

FitJob job_of(std::vector<std::string> add) {
  FitJob job;
  job.client = "her/ondine.json";
  job.add = std::move(add);
  if (!job.add.empty()) {
    job.date = "2026-03-21";
    job.toile = 1;
  }
  job.report = ReportKind::Json;
  return job;
}

JobResult done(const FitJob& job, MemoryFiles& files) {
  JobResult result = run_fit(job, files);
  for (const Problem& problem : result.problems) UNSCOPED_INFO(to_text(problem));
  REQUIRE(result.exit_code == 0);
  return result;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
}

bool is_heavy(const std::string& svg, const std::string& edge) {
  return std::regex_search(svg, std::regex("class=\"moved-edge\"[^>]*><title>" + edge + "<"));
}

using Names = std::vector<std::string>;

/// All that a pattern's first group finds.
Names all_of(const std::string& svg, const std::string& pattern) {
  const std::regex sought(pattern);
  Names found;
  for (std::sregex_iterator at(svg.begin(), svg.end(), sought), end; at != end; ++at) {
    found.push_back((*at)[1]);
  }
  return found;
}

/// What each arrow is at. Each is a shaft and a head.
Names arrows_in(const std::string& svg) {
  const Names strokes = all_of(svg, "class=\"arrow\"[^>]*><title>([^<]*)<");
  Names arrows;
  for (std::size_t i = 0; i < strokes.size(); i += 2) arrows.push_back(strokes[i]);
  return arrows;
}

Names amounts_in(const std::string& svg) {
  return all_of(svg, ">((?:no. [0-9]+: )?[0-9][0-9./ ]* (?:cm|in))<");
}

const std::string kPicture = "her/ondine-fit.svg";

/// Takes sets into one folder only, as a disk does, and none into a closed one.
class FoldersOfFiles : public MemoryFiles {
 public:
  using MemoryFiles::MemoryFiles;
  std::string closed;
  std::vector<std::size_t> sets;

  void write_all(const std::vector<NewFile>& set) override {
    const auto folder = [](const std::string& path) { return path.substr(0, path.rfind('/')); };
    for (const NewFile& file : set) {
      CHECK(folder(file.path) == folder(set.front().path));
      if (folder(file.path) != closed) continue;
      throw FileError({Severity::Error, "file.write", file.path, "the folder is closed", ""});
    }
    sets.push_back(set.size());
    MemoryFiles::write_all(set);
  }
};

}  // namespace

TEST_CASE(
    "Where something is added a picture lies beside the client file, and the report lists it") {
  MemoryFiles files(her_file());
  FitJob job = job_of({"lower front_neck 1.0"});
  job.seen = {"folds round the throat"};
  const JobResult result = done(job, files);
  const std::vector<std::string> written = {"her/ondine.json", "her/ondine.json.bak", kPicture};
  CHECK(result.files == written);
  CHECK(Json::parse(result.output)["files"] == written);
  const std::string& svg = files.files.at(kPicture);
  for (const char* words :
       {">Ondine Marsh<", "1. lower front neck 1.0 cm", "seen: folds round", "not for cutting",
        ">1.0 cm<", "laid together at the underarm", ">unchanged<", ">seen: the front neck presses",
        "class=\"seen-fault\"", "class=\"moved-edge\"", "class=\"before\""}) {
    INFO(words);
    CHECK(has(svg, words));
  }
  for (const char* words : {"cut 1", "on the fold", "grain", "notch", "cut-line"}) {
    INFO(words);
    CHECK_FALSE(has(svg, words));
  }
}

TEST_CASE("Nothing is drawn where nothing is added, unless it is asked for") {
  MemoryFiles files(her_file());
  done(job_of({"lower front_neck 1.0", "lower underarm 0.6"}), files);
  files.files.erase(kPicture);
  FitJob show = job_of({});
  CHECK(done(show, files).files.empty());
  FitJob undo = job_of({});
  undo.undo = {1};
  CHECK(done(undo, files).files.size() == 2);
  CHECK(files.files.count(kPicture) == 0);
  // Asked for without a change it is of all that is active.
  show.write = {OutputKind::Svg, OutputKind::Pdf};
  CHECK(done(show, files).files == std::vector<std::string>{kPicture, "her/ondine-fit.pdf"});
  const std::string& svg = files.files.at(kPicture);
  CHECK(has(svg, ">All corrections<"));
  CHECK(has(svg, "2. lower underarm"));
  CHECK_FALSE(has(svg, "1. lower front neck"));
  CHECK(has(files.files.at("her/ondine-fit.pdf"), "%PDF"));
}

TEST_CASE("The picture shows what the run changed, and not what was there before it") {
  MemoryFiles files(her_file());
  done(job_of({"lower front_neck 1.0"}), files);
  CHECK(is_heavy(files.files.at(kPicture), "neckline"));
  done(job_of({"lower front_hem 1.0"}), files);
  const std::string added = files.files.at(kPicture);
  CHECK(has(added, "2. lower front hem 1.0 cm"));
  CHECK_FALSE(has(added, "1. lower front neck"));
  CHECK_FALSE(is_heavy(added, "neckline"));
  CHECK(is_heavy(added, "waist"));
  FitJob undo = job_of({});
  undo.undo = {1};
  undo.write = {OutputKind::Svg};
  done(undo, files);
  const std::string withdrawn = files.files.at(kPicture);
  CHECK(has(withdrawn, "withdrawn:  1. lower front neck"));
  CHECK(is_heavy(withdrawn, "neckline"));
  CHECK_FALSE(is_heavy(withdrawn, "waist"));
}

TEST_CASE("Several corrections are one picture of their sum, with the list beside it") {
  MemoryFiles files(her_file());
  done(job_of({"lower front_neck 1.0", "lower underarm 0.6", "shorten shoulder 0.6"}), files);
  const std::string& svg = files.files.at(kPicture);
  for (const char* words : {"1. lower front neck", "2. lower underarm", "3. shorten shoulder",
                            ">for 2, seen: ", ">for 3, seen: ", ">no. 1: 1.0 cm<",
                            ">no. 2: 0.6 cm<", ">no. 3: 0.6 cm<"}) {
    INFO(words);
    CHECK(has(svg, words));
  }
}

// Two voided judgements are one line; a girth that nobody can wear goes before what is only much.
TEST_CASE("Of many warnings the page has the gravest first, and what to judge again in one line") {
  MemoryFiles files(her_file());
  FitJob job = job_of({"take_in waist 4.0", "lower underarm 1.0", "lower front_neck 1.0",
                       "take_up shoulders 1.0", "take_in centre_back 1.0"});
  job.as = {AmountAs::WholeGirth, AmountAs::Length, AmountAs::Length, AmountAs::Length,
            AmountAs::PerHalf};
  done(job, files);
  const std::string& svg = files.files.at(kPicture);
  CHECK(count_of(svg, "[fit.void]") == 1);
  CHECK(has(svg, "[fit.below_body]"));
  CHECK(svg.find("[fit.below_body]") < svg.find("[fit.limit]"));
  CHECK(svg.find("[fit.limit]") < svg.find("[fit.void]"));
}

TEST_CASE("Ten corrections: each with number, amount and figure, on two pages, nothing left out") {
  MemoryFiles files(her_file());
  const std::vector<std::string> ten = {
      "lower front_neck 1 cm",       "lower underarm 1 cm",
      "take_in waist 1 cm per_half", "take_in centre_back 1 cm per_half",
      "take_up shoulders 0.5 cm",    "narrow bust_points 0.6 cm per_half",
      "lower shoulder_point 0.6 cm", "shorten shoulder 0.6 cm",
      "narrow side_neck 0.4 cm",     "lower front_hem 0.8 cm"};
  FitJob job = job_of(ten);
  done(job, files);
  const std::string& svg = files.files.at(kPicture);
  CHECK(has(svg, ", page 1 of 2"));
  CHECK(has(svg, ", page 2 of 2"));
  CHECK_FALSE(has(svg, "see the report"));
  CHECK(count_of(svg, ">seen: ") == 10);
  for (std::size_t i = 0; i < ten.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    const TypedCorrection typed = correction_typed(ten[i]);
    const std::string words = number + ". " + name_text(typed.action + " " + typed.place);
    INFO(words);
    CHECK(has(svg, ">no. " + number + ": " + typed.amount + "<"));
    CHECK(count_of(svg, ">" + words) + count_of(svg, "> " + words) >= 2);  // listed, and drawn
  }
}

TEST_CASE("A fault that two corrections mend is drawn once, with both numbers") {
  MemoryFiles files(her_file());
  done(job_of({"lower underarm 0.6", "lower front_neck 0.5", "lower underarm 0.4"}), files);
  const std::string& svg = files.files.at(kPicture);
  CHECK(count_of(svg, ">for 1 and 3, ") == 1);
  CHECK(count_of(svg, ">for ") == 2);
}

TEST_CASE("An amount that several places share says how far each moves") {
  MemoryFiles files(her_file());
  FitJob job = job_of({"let_out side 1.5"});
  job.as = {AmountAs::PerHalf};
  done(job, files);
  const std::string& svg = files.files.at(kPicture);
  CHECK(count_of(svg, ">here 0.8 cm<") == 2);  // 0.75 of 1.5 at the front, as much at the back
  files = MemoryFiles(her_file());
  done(job_of({"lower front_neck 1.0"}), files);
  CHECK_FALSE(has(files.files.at(kPicture), ">here "));
}

// Common practice, no source: a bodice hangs from neck and shoulders; over a fuller bust its hem
// drops on paper.
TEST_CASE("A fuller or smaller bust is laid together at the neck, and its hem shows as moved") {
  for (const char* add : {"fuller bust 1.0", "smaller bust 1.0"}) {
    MemoryFiles files({{"her/ondine.json", client_text("nadezhda-vetrova")}});
    FitJob job = job_of({add});
    job.as = {AmountAs::PerHalf};
    done(job, files);
    CAPTURE(add);
    CHECK(has(files.files.at(kPicture), "laid together at the neck"));
    CHECK(is_heavy(files.files.at(kPicture), "waist"));
    CHECK_FALSE(is_heavy(files.files.at(kPicture), "neckline"));
  }
}

// What lies still beside it would make the half that moved so much smaller.
TEST_CASE("A correction of one side draws her half, and says that the other is unchanged") {
  MemoryFiles files(her_file());
  FitJob job = job_of({"lower one_shoulder 1.0"});
  job.side = {BodySide::Right};
  done(job, files);
  const std::string& svg = files.files.at(kPicture);
  for (const char* words : {">Front right<", ">Back right<",
                            "Unchanged and not drawn: Front left and Back left.", "1:3, to look"}) {
    CHECK(has(svg, words));
  }
  for (const char* words : {">Front left<", ">Back left<", ">unchanged<"}) {
    CHECK_FALSE(has(svg, words));
  }
  CHECK(count_of(svg, "class=\"arrow\"") == 4);  // shaft and head on each right half
}

TEST_CASE("What was pinned at the front neck edge is shown on that edge") {
  const auto arrows = [](const std::string& words) {
    MemoryFiles files(her_file());
    done(job_of({words}), files);
    return arrows_in(files.files.at(kPicture));
  };
  CHECK(arrows("take_in front_neck_edge 0.8 per_half") == Names{"neck edge"});
  // Where the neckline goes on as it did, its end has moved.
  CHECK(arrows("forward shoulder_seam 1.0") != Names{"neck edge"});
}

TEST_CASE("A back whose bust line alone went up is not told as unchanged") {
  MemoryFiles files(her_file());
  done(job_of({"raise bust_point 1.0"}), files);
  const std::string& svg = files.files.at(kPicture);
  CHECK(has(svg, ">unchanged but for the bust line<"));
  CHECK_FALSE(has(svg, ">unchanged<"));
}

TEST_CASE("A client file and her picture are one set; elsewhere the picture is written first") {
  FoldersOfFiles files(her_file());
  done(job_of({"lower front_neck 1.0"}), files);
  CHECK(files.sets == std::vector<std::size_t>{3});
  files.sets.clear();
  FitJob elsewhere = job_of({"lower underarm 0.6"});
  elsewhere.out = "pictures";
  CHECK(done(elsewhere, files).files.back() == "pictures/ondine-fit.svg");
  CHECK(files.sets == std::vector<std::size_t>{1, 2});
}

TEST_CASE("Where a picture cannot be written nothing is, and it is said of which file") {
  for (const std::string closed : {"her", "pictures"}) {
    FoldersOfFiles files(her_file());
    files.closed = closed;
    FitJob job = job_of({"lower front_neck 1.0"});
    if (closed == "pictures") job.out = closed;
    const JobResult result = run_fit(job, files);
    CHECK(result.exit_code == 1);
    REQUIRE_FALSE(result.problems.empty());
    CHECK(has(result.problems.front().where, closed + "/"));
    CHECK(files.files == her_file());
  }
}

TEST_CASE("A paper that is none is refused before the client file is touched") {
  MemoryFiles files(her_file());
  FitJob job = job_of({"lower front_neck 1.0"});
  job.paper = "a44";
  CHECK(run_fit(job, files).exit_code == 2);
  CHECK(files.files == her_file());
}

TEST_CASE("The same fitting gives the same picture") {
  MemoryFiles one(her_file()), two(her_file());
  done(job_of({"lower underarm 1.0"}), one);
  done(job_of({"lower underarm 1.0"}), two);
  CHECK(one.files == two.files);
}

// Two corrections of one point are one arrow, with both amounts at it.
TEST_CASE("Amounts at one place share its arrow") {
  MemoryFiles files(her_file());
  done(job_of({"lower front_neck 0.6", "lower front_neck 0.4"}), files);
  CHECK(arrows_in(files.files.at(kPicture)) == Names{"front_neck_point"});
  CHECK(amounts_in(files.files.at(kPicture)) == Names{"no. 1: 0.6 cm", "no. 2: 0.4 cm"});
}

TEST_CASE("A new dart is no move, and bowed legs are a change") {
  MemoryFiles files(her_file());
  FitJob hollow = job_of({"take_in under_bust 0.8"});
  hollow.as = {AmountAs::PerHalf};
  done(hollow, files);
  CHECK(is_heavy(files.files.at(kPicture), "waist_dart_inner_leg"));
  CHECK(amounts_in(files.files.at(kPicture)) == Names{"0.8 cm"});
  MemoryFiles others(her_file());
  done(job_of({"lengthen below_nape 0.8"}), others);
  CHECK(arrows_in(others.files.at(kPicture)) == Names{"nape"});
}

// The number is the one that she pinned, never what the edge moved by at the arrow; the arrow is at
// the length that she watches (measure/correction_table.hpp).
TEST_CASE("An amount is shown as it was given, at the place that it is measured at") {
  struct Shown {
    std::string add;
    AmountAs as;
    std::string amount;
    Names places;
  };
  for (const Shown& shown : std::vector<Shown>{
           {"lower shoulder_point 0.6",
            AmountAs::Length,
            "0.6 cm",
            {"shoulder_point", "shoulder_point"}},
           {"let_out side_at_bust 1 cm", AmountAs::PerHalf, "1 cm", {"bust_line", "bust_line"}},
           {"let_out side_at_bust 5/8 in", AmountAs::PerHalf, "5/8 in", {"bust_line", "bust_line"}},
           {"take_in side 0.5", AmountAs::PerSeam, "0.5 cm", {"bust_line", "bust_line"}},
           {"take_in waist 2 cm",
            AmountAs::WholeGirth,
            "2 cm",
            {"side_waist_point", "side_waist_point"}},
           {"take_up shoulders 1.0",
            AmountAs::Length,
            "1.0 cm",
            {"shoulder seam", "shoulder seam"}},
           {"widen across_back 0.6", AmountAs::PerHalf, "0.6 cm", {"across_back_point"}},
           {"lower front_hem 1 cm", AmountAs::Length, "1 cm", {"centre_waist"}}}) {
    MemoryFiles files(her_file());
    FitJob job = job_of({shown.add});
    job.as = {shown.as};
    done(job, files);
    const std::string& svg = files.files.at(kPicture);
    CAPTURE(shown.add);
    CHECK(arrows_in(svg) == shown.places);
    CHECK(amounts_in(svg) == Names(shown.places.size(), shown.amount));
    CHECK(has(svg, ">per half<") == (shown.as == AmountAs::PerHalf));
  }
}

TEST_CASE("Lines that hardly move are not heavy") {
  struct Moved {
    std::string add;
    AmountAs as;
    std::string heavy, thin;
  };
  for (const Moved& moved :
       std::vector<Moved>{{"lower shoulder_point 0.6", AmountAs::Length, "shoulder", "neckline"},
                          {"let_out side_at_bust 1.0", AmountAs::PerHalf, "side", "waist"},
                          {"take_in side 0.5", AmountAs::PerSeam, "side", "waist"},
                          {"take_in centre_back 1.5", AmountAs::PerHalf, "centre_back", "waist"}}) {
    MemoryFiles files(her_file());
    FitJob job = job_of({moved.add});
    job.as = {moved.as};
    done(job, files);
    CAPTURE(moved.add);
    CHECK(is_heavy(files.files.at(kPicture), moved.heavy));
    CHECK_FALSE(is_heavy(files.files.at(kPicture), moved.thin));
  }
}

TEST_CASE("What the run warns of in a correction is on the page in the same words") {
  MemoryFiles files(her_file());
  FitJob job = job_of({"take_in centre_back 1.5"});
  job.as = {AmountAs::PerHalf};
  job.paper = "a1";  // in one line
  job.report = ReportKind::Text;
  const JobResult result = done(job, files);
  const std::string warning =
      "warning [fit.limit] take in centre back: it changes waist girth by 3 cm";
  CHECK(has(result.output, warning));
  CHECK(has(files.files.at(kPicture), warning));
}

TEST_CASE("Bust line and points are drawn lightly, old and new where they moved") {
  MemoryFiles files(her_file());
  done(job_of({"lower front_neck 1.0"}), files);
  const std::string still = files.files.at(kPicture);
  CHECK(count_of(still, ">bust line<") == 2);
  for (const char* name : {"bust_line", "bust_point", "blade_point"}) {
    CHECK(std::regex_search(still, std::regex("class=\"level\"[^>]*><title>" + std::string(name))));
  }
  CHECK_FALSE(has(still, "class=\"level-before\""));
  MemoryFiles others(her_file());
  done(job_of({"raise bust_point 1.0"}), others);
  const std::string& moved = others.files.at(kPicture);
  CHECK(std::regex_search(moved, std::regex("class=\"level-before\"[^>]*><title>bust_point")));
  CHECK(std::regex_search(moved, std::regex("class=\"level-before\"[^>]*><title>bust_line")));
}

TEST_CASE("A bust dart that the printed pieces divide is drawn divided, old and new alike") {
  // The side seam of the front above the dart and below it, that of the back, and the dart.
  const auto is_divided = [](const std::string& svg) {
    return count_of(svg, "<title>side</title>") > 2;
  };
  MemoryFiles files(her_file());
  done(job_of({"lower front_neck 1.0"}), files);
  const std::string& svg = files.files.at(kPicture);
  CHECK(is_divided(svg));
  CHECK_FALSE(is_heavy(svg, "side"));
  CHECK_FALSE(is_heavy(svg, "shoulder"));
  CHECK_FALSE(has(svg, "The bust dart is drawn"));
  MemoryFiles narrow({{"her/ondine.json", client_text("pippa-quill")}});
  done(job_of({"lower front_neck 1.0"}), narrow);
  CHECK_FALSE(is_divided(narrow.files.at(kPicture)));
  // Of one side: the pieces were one before.
  MemoryFiles one_side(her_file());
  FitJob job = job_of({"lower one_shoulder 1.0"});
  job.side = {BodySide::Right};
  done(job, one_side);
  CHECK(has(one_side.files.at(kPicture), "The bust dart is drawn here as one"));
}

}  // namespace fit_picture_test
