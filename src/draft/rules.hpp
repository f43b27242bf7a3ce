#pragma once

#include "blockwright/base/angle.hpp"

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
/// The across points lie at most this far outside the shoulder points; a wider taped across back or
/// front contradicts shoulder length and slope. Ours (seen: Baldt 1916 has the shoulder end half an
/// inch nearer the arm than the across-back line).
inline constexpr double kMostAcrossBeyondShoulder = 0.0;

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
/// Bounds of the bust dart at the shoulder: narrower it is a tuck, wider it should be two. Ours.
inline constexpr Angle kLeastBustDart = Angle::degrees(3.0);
inline constexpr Angle kMostBustDart = Angle::degrees(34.0);
/// Bust dart that the cup asks for, per mm of bust less underbust: 10 degrees for the average
/// woman's 137 mm. Where the upper chest alone would leave less, an estimated across front and then
/// the armhole width give way. Ours; docs/decisions/002.
inline constexpr double kCupDartDegreesPerMm = 0.075;
/// How far an estimated half across front gives way: what the estimate may well be off by. Ours;
/// docs/decisions/002.
inline constexpr double kAcrossFrontGives = 12.0;

// --- armhole ---------------------------------------------------------------------------------
/// Armhole width, of the armhole length. Ours, from drafting the survey's women and from tapes;
/// docs/decisions/001.
inline constexpr double kLeastArmholeWidth = 0.19;
inline constexpr double kMostArmholeWidth = 0.31;
/// The across-front point stays this far above the underarm point when it turns with the dart; else
/// nothing is left to draw an armhole in. Ours.
inline constexpr double kLeastAcrossOverUnderarm = 35.0;
/// The back's part of the armhole width, so that the side seam falls under the arm. Ours.
inline constexpr double kLeastBackArmhole = 0.42;
inline constexpr double kMostBackArmhole = 0.52;
/// Underarm drop below the armpit. Ours: 5 to 25 mm (from memory and common practice), wider at the
/// top as the armscye girth decides.
inline constexpr double kLeastDrop = 5.0;
inline constexpr double kMostDrop = 40.0;
/// The drop at which the share of the bust is judged before the drop is known. Ours, within the
/// same 5 to 25 mm.
inline constexpr double kUsualDrop = 20.0;
/// The underarm point stays this far above the bust line, so that the bust girth is whole. Ours.
inline constexpr double kUnderarmOverBustLine = 8.0;

// --- waist -----------------------------------------------------------------------------------
/// Slant of a side seam from underarm to waist. Common practice: 25 to 30 mm an edge below the bust
/// line, from memory; from the underarm it is ours.
inline constexpr double kMostSideSlant = 35.0;
/// Widest waist dart: a wider one makes a cone. What such darts cannot take goes to the side seams.
/// Ours.
inline constexpr Angle kMostWaistDart = Angle::degrees(24.0);
/// A back waist dart wider than this becomes two. Common practice, the number is ours.
inline constexpr double kMostBackDart = 35.0;
/// Places of the back waist darts, of the waist edge from the centre back: under the blade. Common
/// practice, no source.
inline constexpr double kOneBackDart = 0.45;
inline constexpr double kFirstBackDart = 0.36;
inline constexpr double kSecondBackDart = 0.66;
/// Apex of the (first) back waist dart below the bust line, so that no back dart reaches above it.
/// Ours.
inline constexpr double kBackDartLower = 5.0;
/// The outer of two back darts ends this much lower. Ours.
inline constexpr double kOuterBackDartLower = 20.0;

/// Accuracy of everything that is solved for, in mm: a hundred times below what is promised.
inline constexpr double kSolved = 1e-7;

}  // namespace blockwright::rules
