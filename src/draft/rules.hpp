#pragma once

#include "blockwright/base/angle.hpp"

#include <cstddef>

/// The numbers that settle a draft: shares, bounds and levels that no tape gives, each with its
/// source. The shapes of the lines have theirs in blockwright/block. Lengths in mm, on the half
/// body unless said otherwise. Words of docs/sources.md: "ours" is our own number.
namespace blockwright::rules {

// --- neck ------------------------------------------------------------------------------------
/// Neck width, of the whole neck base girth: where it is looked for. Ours; the sixth of the neck
/// girth (seen: Baldt 1916) and the fifth of later drafts (from memory) lie well inside.
inline constexpr double kLeastNeckWidth = 0.10;
inline constexpr double kMostNeckWidth = 0.27;
/// Front neck depth, of the whole neck base girth: 0.9 to 1.9 of the width that such a neck gets (a
/// shallow neck is wide). Ours, from drafting the survey's women; docs/decisions/004.
inline constexpr double kLeastNeckDepth = 0.18;
inline constexpr double kMostNeckDepth = 0.289;
/// Half the neck girth over the width, near enough for the height of the side neck point before the
/// width is known. Ours.
inline constexpr double kHalfNeckPerWidth = 2.8;

// --- shoulder --------------------------------------------------------------------------------
/// Finished slope, mean of front and back: slopes of the 1988 survey (12 to 40 degrees, computed)
/// less their ease. Ours; docs/decisions/003.
inline constexpr Angle kLeastSlope = Angle::degrees(8.0);
inline constexpr Angle kMostSlope = Angle::degrees(36.0);
/// How much a stitched dart lifts a shoulder at most, where the slope of its inner half is looked
/// for. Ours.
inline constexpr Angle kMostStitchedLift = Angle::degrees(20.0);
/// Where one slope is taken for both shoulders, the front slopes this much more than it and the
/// back this much less. Common practice, the number is ours.
inline constexpr Angle kFrontSlopesMore = Angle::degrees(2.0);

// --- levels ----------------------------------------------------------------------------------
/// Across back and across front are taped at the middle of the armhole: this share of the scye
/// depth above the armpit. Computed, from the shoulder point's height in the 1988 survey.
inline constexpr double kAcrossLevel = 0.4;
/// ... and always between these shares of the way from the armpit to the shoulder point. Ours.
inline constexpr double kLeastAcrossLevel = 0.35;
inline constexpr double kMostAcrossLevel = 0.60;

// --- settlement ------------------------------------------------------------------------------
/// How far each gives way for the same worth (standard deviations of half widths, in mm, and of the
/// bust dart). A taped width is off by 5 mm on the half, an estimated one by 8; what is marked sure
/// does not move. Ours, from trials on simulated torsos and from drafting the survey's women.
inline constexpr double kTapedGives = 5.0;
inline constexpr double kEstimatedGives = 8.0;
inline constexpr double kSureGives = 0.01;
inline constexpr double kUpperChestGives = 9.0;
inline constexpr double kWidthGives = 7.0;
inline constexpr double kTakeInGives = 7.0;
inline constexpr Angle kBustDartGives = Angle::degrees(2.5);
/// The armhole's usual width: this share of the arm's girth and a little air. Ours, from the same
/// trials.
inline constexpr double kWidthPerArm = 0.33;
inline constexpr double kWidthBesideArm = 12.0;
/// The arm that goes through it: across, of its girth (a circle has 0.318). Narrower than this the
/// armhole never becomes; it gives way by next to nothing. Ours.
inline constexpr double kLeastWidthPerArm = 0.31;
inline constexpr double kLeastWidthGives = 0.5;
/// The usual bust dart: at bust 90 cm and cup (bust less underbust) 13.7 cm, and more for each cm
/// of either. Ours, from the best dart on 22 simulated torsos.
inline constexpr Angle kUsualBustDart = Angle::degrees(19.0);
inline constexpr double kUsualBust = 900.0;
inline constexpr double kDartDegreesPerCup = 0.08;  // per mm
inline constexpr double kDartDegreesPerBust = 0.012;
/// The across-back point lies at least kLeastAcrossInside (block/armhole.hpp) inside the shoulder
/// point, and at most this far, lest the back armhole hook. Ours.
inline constexpr double kMostAcrossBackInside = 30.0;
/// Over an armhole that is wider on its piece than this, both across points may come nearer, by so
/// much for each mm, and out to as far beyond their shoulder points: a full arm hangs over its
/// shoulder, and a wide armhole has room to bend. Ours, from drafting 4,800 people of bust 84 to
/// 140 cm: with 0.3 over 35 mm the back's least radius came under 12 mm on 12 of them.
inline constexpr double kNarrowArmhole = 42.0;
inline constexpr double kNearerPerWidth = 0.25;
inline constexpr double kMostAcrossBackOutside = 7.5;
inline constexpr double kMostAcrossFrontOutside = 10.0;
/// The half front is at most this much wider than the half back between the arms: arms reach
/// forward. Ours.
inline constexpr double kMostFrontOverBack = 5.0;
/// Most that both side seams together are taken in at the underarm, and how far each may bend for
/// it at the bust line: more shows as a corner. Ours.
inline constexpr double kMostTakeIn = 80.0;
inline constexpr Angle kMostSideBend = Angle::degrees(15.0);

// --- bust ------------------------------------------------------------------------------------
/// Shortest bust point to waist that can carry a dart. Ours.
inline constexpr double kLeastUnderBust = 40.0;
/// Share of the bust on the half front: a quarter of the girth plus this, plus a part of the cup,
/// within bounds. Ours, from trials on simulated torsos of survey proportions.
inline constexpr double kFrontShareBase = 10.0;
inline constexpr double kFrontSharePerCup = 0.3;
inline constexpr double kFrontShareCupZero = 120.0;
inline constexpr double kLeastFrontShare = 3.0;
inline constexpr double kMostFrontShare = 35.0;
/// Bounds of the bust dart: less is a tuck, more no dart can take. Ours.
inline constexpr Angle kLeastBustDart = Angle::degrees(3.0);
inline constexpr Angle kMostBustDart = Angle::degrees(40.0);

// --- armhole ---------------------------------------------------------------------------------
/// The across-front point stays this far above the underarm point when it turns with the dart: the
/// armhole must turn by 120 degrees there, and no fair curve does so within 30 mm at a radius of 12
/// (computed). The number is ours.
inline constexpr double kLeastAcrossOverUnderarm = 40.0;
/// How fast the front armhole rises from the underarm at most: more bends it too sharply under the
/// across point. Ours.
inline constexpr Angle kMostUnderarmRise = Angle::degrees(6.0);
/// ... over so much of the underarm. Ours.
inline constexpr double kRisesAlong = 100.0;
/// The back's part of the armhole width, so that the side seam falls under the arm. Ours.
inline constexpr double kLeastBackArmhole = 0.42;
inline constexpr double kMostBackArmhole = 0.52;
/// ... and within that so that the across-back point lies this far inside the straight line from
/// underarm to shoulder point, of that line: the back armhole's hollow then is 0.13 to 0.28 of it.
/// Ours.
inline constexpr double kLeastAcrossInsideChord = 0.112;
inline constexpr double kMostAcrossInsideChord = 0.232;
/// Underarm drop below the armpit: 5 to 25 mm (from memory and common practice), wider at the top
/// as the armscye girth decides.
inline constexpr double kLeastDrop = 5.0;
inline constexpr double kMostDrop = 40.0;
/// So far the underarm goes down for a wide bust dart that turns the across-front point down to it;
/// then the dart gives way. Ours.
inline constexpr double kDropForDart = 28.0;
/// The usual drop. A millimetre of armhole over or under what was asked for weighs as much as a
/// millimetre of drop over or under this. Ours.
inline constexpr double kUsualDrop = 20.0;
/// ... as long as the armhole is at most this much shorter or longer than asked for: at 35 mm of
/// ease 21 to 60 mm longer than the armscye. Ours.
inline constexpr double kArmholeShorter = 14.0;
inline constexpr double kArmholeLonger = 25.0;
/// How much wider than usual the armhole may become to be long enough. Ours.
inline constexpr double kMostWiderForLength = 120.0;
/// The underarm point stays this far above the bust line, so that the bust girth is whole. Ours.
inline constexpr double kUnderarmOverBustLine = 8.0;

// --- waist -----------------------------------------------------------------------------------
/// Slant of a side seam below the bust line: more widens and lowers the underarm. 25 to 30 mm an
/// edge is common practice, from memory; the angle is ours.
inline constexpr Angle kMostSideSlant = Angle::degrees(6.0);
/// Widest waist dart: a wider one makes a cone. What such darts and side seams of that slant cannot
/// take, on a short and full figure, goes to darts of up to the second width. Ours.
inline constexpr Angle kMostWaistDart = Angle::degrees(24.0);
inline constexpr Angle kWidestWaistDart = Angle::degrees(30.0);
/// A back waist dart wider than this becomes two, and these three. Common practice, the number is
/// ours.
inline constexpr double kMostBackDart = 35.0;
inline constexpr std::size_t kMostBackDarts = 3;
inline constexpr std::size_t kMostFrontDarts = 2;
/// How fast a further dart opens, of the intake that it is needed for, until all are equally wide:
/// so one dart becomes two without a jump. Ours.
inline constexpr double kFurtherDartOpens = 4.0;
/// Places of the back waist darts, of the waist edge from the centre back: under the blade. Common
/// practice, no source; the third is ours.
inline constexpr double kBackDartPlaces[kMostBackDarts][kMostBackDarts] = {
    {0.45, 0.66, 0.82}, {0.36, 0.66, 0.82}, {0.30, 0.55, 0.80}};
/// The second front waist dart: half way from the bust point to the side, a fifth shorter. Ours.
inline constexpr double kSecondFrontDart = 0.5;
inline constexpr double kSecondFrontDartLeg = 0.8;
/// The stitching of the back waist darts ends this far under the underarm line; that of the outer
/// ones a little lower. Common practice (2 to 4 cm under the armhole), no source; the numbers are
/// ours.
inline constexpr double kBackDartUnderUnderarm = 27.0;
inline constexpr double kOuterBackDartLower = 7.0;
/// ... and on a low bust no higher than this over the bust line, lest what is given back there
/// makes the back too wide under the arm. Ours.
inline constexpr double kBackDartOverBustLine = 30.0;
/// ... nor so high that more than this is given back there. Ours.
inline constexpr double kMostGivenBack = 15.0;

/// Accuracy of everything that is solved for, in mm: a hundred times below what is promised.
inline constexpr double kSolved = 1e-7;
/// ... within which a length that was solved for is met.
inline constexpr double kSolvedLength = 1e-5;
/// ... in radians.
inline constexpr double kSolvedAngle = 1e-11;

}  // namespace blockwright::rules
