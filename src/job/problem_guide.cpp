#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"

#include <array>
#include <string>

namespace blockwright {
namespace {

struct Guide {
  std::string_view code;
  std::string_view cause;
  std::string_view cure;
};

/// Kept in step with docs/problems.md and with the codes in the sources by a test.
constexpr std::array kGuides = {
    Guide{"batch.collision",
          "Two client files of a folder would give output of the same name, capitals aside: names "
          "are made safe and cut at 80 letters.",
          "Rename one of the two files; nothing was written for the later one."},
    Guide{"batch.empty", "The folder has no client files.",
          "Client files end in .json; name the folder that holds them, or take its subfolders "
          "with --subfolders."},
    Guide{"check.angle",
          "A corner that should be square, or a joined seam that should be smooth, is not.",
          "This is a fault of the program: do not cut, and report it with the client file."},
    Guide{"check.armhole",
          "The armhole would be shorter than the armscye plus 20 mm or longer than it plus 90 mm, "
          "or reach down to within 20 mm of the waist, or the back underarm would lie above the "
          "across-back point, whatever the draft tries: armscye girth, side length, the lengths "
          "over bust and back and the shoulder slope contradict each other.",
          "Take these measurements again with a waist tape tied on; the armscye runs over the "
          "shoulder point and through the armpit with the arm hanging."},
    Guide{"check.curve", "A neckline or an armhole bends back where it should run on.",
          "This is a fault of the program: do not cut, and report it with the client file."},
    Guide{
        "check.dart",
        "An edge, mostly the armhole, would run across a dart: upper chest, across front, armscye "
        "and the girths at the bust contradict each other.",
        "Take these measurements again, and look at the eases; underbust girth stays below bust "
        "girth."},
    Guide{"check.level", "The bust lines of front and back do not meet at the side seam.",
          "This is a fault of the program: do not cut, and report it with the client file."},
    Guide{"check.measure_back",
          "A measurement, taken again on the finished pieces, does not come back within 0.1 mm.",
          "This is a fault of the program: do not cut, and report it with the client file."},
    Guide{"check.seam",
          "Two edges that are sewn together differ in length, or notches do not meet.",
          "This is a fault of the program: do not cut, and report it with the client file."},
    Guide{"client.amount",
          "How the amount of a correction was read is not said, or is nothing that this correction "
          "has.",
          "Write \"as\": length, tuck_depth, per_seam, per_half or whole_girth; the message lists "
          "those that make sense and what each means."},
    Guide{"client.correction",
          "A correction is not in words that the program knows, does two things at once, or there "
          "is none of the number asked for.",
          "The message names the nearest words; docs/formats.md lists all."},
    Guide{"client.date", "The date of a session or a fitting is not a calendar date.",
          "Write the date as year-month-day, for example 2026-03-14."},
    Guide{
        "client.duplicate",
        "A key stands twice in one object, or two sessions, or two fittings of one toile, share a "
        "date.",
        "Keep one of the two, or give the second its own date."},
    Guide{"client.format", "The file does not say that it is a client file.",
          "Write \"format\": \"blockwright-client-1\" as its first key."},
    Guide{"client.key", "A key is not one that a client file knows; often a slip of the pen.",
          "The message names the nearest key; docs/formats.md lists all."},
    Guide{"client.missing", "Something that a client file must have is not there.",
          "The message names it. A session needs at least the bust girth."},
    Guide{"client.order", "Fittings do not stand in the order in which they were made.",
          "Put them in the order of their toiles and dates, or correct the number or the date."},
    Guide{"client.range",
          "A value lies outside what bodies measure or corrections change: a slipped decimal, "
          "inches in a cm file, or a reading of another place.",
          "The message gives the limits; read the tape again or mend the unit."},
    Guide{"client.session", "There is no session of the date asked for.",
          "The message lists the dates that there are."},
    Guide{"client.size", "The file is too large or nested too deeply to be a client file.",
          "Check that it is the right file."},
    Guide{"client.syntax", "The file is not JSON.",
          "Mend it at the line and column named: often a comma or a quote is missing."},
    Guide{"client.text", "A text is empty, too long, or holds characters that no name has.",
          "Write the name in plain letters of any script."},
    Guide{"client.type",
          "A value is of the wrong kind, a text where a number should be, for example.",
          "The message says what is expected; docs/formats.md shows examples."},
    Guide{"client.unit", "The unit is not cm or in.",
          "Write \"unit\": \"cm\" or \"unit\": \"in\"."},
    Guide{"dart.apart",
          "Two darts were to be merged that have two apexes and are not neighbours on one edge.",
          "Merge darts of one apex, or neighbours; the back's upper and waist darts stay two, "
          "as the blade and the waist are two points."},
    Guide{"dart.beside",
          "A dart opens close beside another dart of the same edge that turns about another "
          "point.",
          "Set it further off, or choose another edge; two points so near each other show on "
          "the body."},
    Guide{"dart.blocked",
          "The straight way from a dart's apex to its new place is barred by another dart or by "
          "the outline, or the piece would not hold together after the move.",
          "Use the place that the message names as the nearest, move the barring dart first, or "
          "move a part of the dart."},
    Guide{"dart.ease",
          "A dart was to become ease, but its mouth is wider than cloth can hide: 8 mm on a "
          "seam, 13 mm along an armhole.",
          "Gather it, or move most of it elsewhere first and ease the rest."},
    Guide{"dart.fold",
          "The centre front was a fold and a dart now opens on it, or it is straight again. A "
          "fold can only lie on a straight line.",
          "Cut as the message says; the grain keeps to the lower part of the centre front."},
    Guide{"dart.fullness", "A length of an edge is gathered or eased in place of a dart.",
          "Draw it up between its two notches to the length named."},
    Guide{"dart.narrow", "A dart is less than 6 mm wide at its mouth, which is hard to sew.",
          "Turn it into ease, or merge it with another."},
    Guide{"dart.panel",
          "How a seam cut a piece into panels: where the two edges differ and by how much. As "
          "an error: the seam has no dart, both its ends lie on one edge, or a panel's name is "
          "taken.",
          "Ease the longer edge in between the outer notches. For an error, name a dart at one "
          "end, or other names."},
    Guide{
        "dart.part",
        "A part or angle was asked for that the dart has not got, or that would make or leave a "
        "dart of next to nothing; or a dart under 1 mm wide was to be gathered or eased; or the "
        "shares of a split do not add up to 1.",
        "A part is more than 0 and at most 1; an angle at most the whole dart's. Where "
        "under 0.01 degrees would be left, move the whole dart; what is under 1 mm wide, leave or "
        "merge with the dart beside it."},
    Guide{"dart.place",
          "A place on an edge is not a number, off the edge, or within 5 mm of its corners; an "
          "amount of a step is out of its range; or a flare would open an edge that is sewn to "
          "another.",
          "The message names the limits and, where there is one, the nearest place. Gather what "
          "opens in a seam."},
    Guide{"dart.unknown", "There is no such piece, dart or place.",
          "The message lists those that there are; name the piece, a dot and the dart or place, "
          "such as front.shoulder."},
    Guide{"dart.wide",
          "A dart is wider than one dart should be at its place, or on a short leg more than 16 "
          "degrees; over 35 degrees it is refused.",
          "Split it in two, move a part elsewhere, or make a princess seam of it."},
    Guide{"draft.contradiction",
          "The measurements contradict each other, or the eases are so large, that no bodice drawn "
          "from them passes the checks. The measurements named are the likeliest slips.",
          "Take them again with a waist tape tied on, and look at the eases in the client file. If "
          "they stay, report the client file."},
    Guide{"draft.limited",
          "Measurements contradict each other so far that a bound of the draft was met; the "
          "measurement named does not come back in full.",
          "Take the measurements named again. If they stay, trust them, cut the toile and look at "
          "that place first."},
    Guide{"draft.limits",
          "A measurement or an ease is beyond what a body or a block can have. Client files are "
          "refused earlier; this is told to programs that draft by themselves.",
          "Correct the measurement named; look at its unit."},
    Guide{"explain.unknown", "There is no such problem code.",
          "The message lists the nearest codes."},
    Guide{"file.busy", "Another run is writing into the folder.",
          "Wait until it ends and run again, or choose another folder with --out."},
    Guide{"file.read", "A file cannot be read.", "Check its name, its folder and your rights."},
    Guide{"file.write", "A file cannot be written; the older file, if any, is untouched.",
          "Check the folder, the free space and your rights, then run again."},
    Guide{"fit.amount",
          "The amount of a correction is not more than 0, not a number, or more than the piece "
          "can take.",
          "Read the pins again; a large amount is better measured again and drafted anew."},
    Guide{"fit.chain",
          "Corrections that together have another cause than each alone, or one that calls for "
          "its partner: a shoulder slope without the underarm, a neck edge and an armhole that "
          "both gape.",
          "The message names the row to look at; try the toile again before both are believed."},
    Guide{"fit.close", "An edge would come nearer than 4 cm to the bust point.",
          "Correct by less, or lead the line elsewhere."},
    Guide{
        "fit.crossing",
        "After the correction the outline of a piece, or two of its darts, would cross, or an edge "
        "would cut a dart.",
        "Correct by less; look whether two corrections ask for the same thing."},
    Guide{"fit.curve", "A neckline or an armhole is no longer fair after the corrections.",
          "Look at the line on the paper and draw it fair by hand, or take the correction in "
          "two steps."},
    Guide{"fit.explained",
          "A newer tape session already has what a correction asked for: its measurement moved "
          "since by about as much. Both are applied, so that the change may be made twice.",
          "Withdraw the correction, or write \"new_tape\": \"keep\" beside it if the next toile "
          "shows the same again."},
    Guide{"fit.limit",
          "A correction is larger than is usual, than a measurement may be off before it is "
          "taken again (2.5 cm on a girth, 1.3 cm on a length, 4 degrees of slope), or than "
          "darts and seams can carry; or front and back could no longer be sewn together.",
          "Take the measurement that the message names again, and draft anew; or correct by "
          "less."},
    Guide{"fit.negative_dart", "A dart would be closed by more than it is wide.",
          "Correct by less, or let the rest out at the seam."},
    Guide{"fit.place",
          "The block has no such dart or seam, its edge is used up, or there is no room for the "
          "dart that the correction opens.",
          "`blockwright draft` lists the darts that there are; correct at the seam instead."},
    Guide{"fit.same_line",
          "Several corrections pull on one line or dart; they were added up before the limits "
          "were tested.",
          "See on the next toile whether all of them were needed."},
    Guide{
        "fit.seam",
        "After corrections of one side, right and left no longer meet where the centre joins them.",
        "Correct both sides alike, or join neckline and waist across the centre by hand."},
    Guide{"fit.side",
          "A row for one side of the body was given for both, or a side that it cannot have.",
          "Say left or right, as she has it."},
    Guide{"fit.sides",
          "A correction for one side unfolded a piece: right and left are cut singly, and the "
          "front has a seam at the centre.",
          "Cut each piece once, with the cloth open, right side up."},
    Guide{"fit.strap", "A shoulder would be shorter than 2.5 cm.",
          "Correct by less; a strap is a matter of the style, not of the block."},
    Guide{"fit.unknown", "There is no such row or pair of words in the fitting catalogue.",
          "docs/fitting.md lists the words of every correction."},
    Guide{"fit.void",
          "One correction makes void what was judged for another: it was seen on a toile that "
          "is no longer the same.",
          "Sew the next toile and judge the later one again."},
    Guide{"job.format", "The file does not say that it is a job file.",
          "Write \"format\": \"blockwright-job-1\"."},
    Guide{"job.key", "A key of the job file is not an option of the command, or stands twice.",
          "The message lists the keys, or names the one to keep once."},
    Guide{"job.syntax", "The job file is not JSON.", "Mend it at the place named."},
    Guide{"job.type", "A value in the job file is of the wrong kind.",
          "See docs/formats.md or `blockwright schema job`."},
    Guide{"job.value", "An option has a value that is not known or out of range.",
          "The message lists what can be used."},
    Guide{"measure.doubtful",
          "A measurement lies more than 3 residual standard deviations from what the others lead "
          "to expect: about one woman in two hundred has such a body, a slipped tape is likelier.",
          "Take it again before you cut."},
    Guide{"measure.order", "Two measurements stand in an order that no surveyed body shows.",
          "Take both again."},
    Guide{"measure.retake",
          "A measurement lies more than 4.5 residual standard deviations from what the others lead "
          "to expect; no woman of the survey is so far off.",
          "Take it again; the draft will not fit if it is a slip."},
    Guide{"measure.spread", "Repeated readings of one measurement differ too much.",
          "Take it again; the middle reading was used."},
    Guide{"paper.too_small", "The paper cannot carry what should be printed on it.",
          "Choose a larger paper, a roll, or tiled pages."},
    Guide{"paper.unknown", "The paper's name is not known.",
          "Use a4, a3, a2, a1, a0, letter, legal, tabloid, roll:WIDTH or WIDTHxHEIGHT in mm."},
    Guide{"pattern.broken",
          "A piece is open, crosses itself, or its parts do not lie on its edges.",
          "Do not cut. If the tape is right, report it with the client file."},
    Guide{"program.bug", "The program broke one of its own rules.",
          "Please report it with the files that led to it."},
    Guide{"schema.unknown", "There is no schema of that name.",
          "Use client, job, pattern or report."},
    Guide{"style.format", "The file does not say that it is a style file.",
          "Write \"format\": \"blockwright-style-1\" as its first key."},
    Guide{"style.key",
          "A key or step is not one that a style file knows, stands twice, or is missing.",
          "The message names the keys that are known; docs/darts.md shows each step."},
    Guide{"style.syntax", "The style file is not JSON, is too large, or is nested too deeply.",
          "Mend it at the place named: often a comma or a quote is missing."},
    Guide{"style.type", "A value of a style file is of the wrong kind.",
          "Names and places are texts in quotes, amounts are numbers; see docs/formats.md."},
    Guide{"style.value", "A word of a style file is not one of those that fit there.",
          "The message lists them."},
};

/// Codes of the same family, for a code that is not known.
std::string near(std::string_view code) {
  const std::string family(code.substr(0, code.find('.')));
  std::string same, all;
  for (const Guide& guide : kGuides) {
    std::string& list = guide.code.substr(0, guide.code.find('.')) == family ? same : all;
    list += (list.empty() ? "" : ", ") + std::string(guide.code);
  }
  return same.empty() ? all : same;
}

}  // namespace

std::string explanation_of(std::string_view code) {
  for (const Guide& guide : kGuides) {
    if (guide.code != code) continue;
    return std::string(code) + "\n  cause: " + std::string(guide.cause) +
           "\n  cure:  " + std::string(guide.cure) + "\n";
  }
  throw UsageError({Severity::Error, "explain.unknown", std::string(code),
                    "there is no such problem code", "known are: " + near(code)});
}

}  // namespace blockwright
