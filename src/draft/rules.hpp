#pragma once

#include "blockwright/base/angle.hpp"

/// Every number of the draft that is not a measurement, in one place, each with its source.
/// Lengths in mm, on the half body unless said otherwise.
namespace blockwright::rules {

// --- neck ------------------------------------------------------------------------------------
/// Rise of the side neck point above the nape, of the neck width. Common practice, no source
/// (19-20 mm at a width of 65: Baldt 1916 has 3/4 in).
inline constexpr double kBackNeckRise = 0.3;
/// Neck width, of the whole neck base girth: search bounds. The sixth of the neck girth of Baldt
/// 1916 and the fifth of later drafts lie well inside.
inline constexpr double kLeastNeckWidth = 0.10;
inline constexpr double kMostNeckWidth = 0.27;
/// Front neck depth, of the whole neck base girth: 0.9 to 1.9 of the width that such a neck gets (a
/// shallow neck is wide). Our bounds, from drafting the 1988 survey.
inline constexpr double kLeastNeckDepth = 0.18;
inline constexpr double kMostNeckDepth = 0.289;
/// How far the neckline's handles reach to the corner of its end tangents: a quarter circle has
/// 0.5523; slightly fuller looks fair on the deeper than wide front. Our choice, by eye.
inline constexpr double kNecklineFullness = 0.60;
/// The front neckline keeps its corner at least this far from the centre front, of the width, so
/// that it turns one way only.
inline constexpr double kNeckCornerRoom = 0.30;

// --- shoulder --------------------------------------------------------------------------------
/// Finished slope, mean of front and back: real slopes of the 1988 survey (12-40) less their ease.
inline constexpr Angle kLeastSlope = Angle::degrees(8.0);
inline constexpr Angle kMostSlope = Angle::degrees(36.0);
/// Where one slope stands for both shoulders, the front slopes this much more than it and the back
/// this much less. Common practice, no source.
inline constexpr Angle kFrontSlopesMore = Angle::degrees(2.0);
/// Intake of the back shoulder dart. Common practice (half an inch), no source.
inline constexpr double kBackShoulderDart = 13.0;
/// The shoulder darts open half way along the shoulder. Common practice, no source.
inline constexpr double kShoulderDartPlace = 0.5;
/// Blade point: half of the half across back from the centre back, on the across-back line.
/// Common practice, no source.
inline constexpr double kBladePlace = 0.5;

// --- levels ----------------------------------------------------------------------------------
/// Across back and across front are taped at the middle of the armhole: this share of the scye
/// depth above the armpit. From the shoulder point's height in the 1988 survey.
inline constexpr double kAcrossLevel = 0.4;
/// ... and always between these shares of the way from the armpit to the shoulder point.
inline constexpr double kLeastAcrossLevel = 0.35;
inline constexpr double kMostAcrossLevel = 0.60;

/// The across points lie at most this far outside the shoulder points: the shoulder end stands
/// nearer the arm than the across-back line (Baldt 1916 has half an inch); a wider taped across
/// back or front contradicts shoulder length and slope.
inline constexpr double kMostAcrossBeyondShoulder = 0.0;

// --- bust ------------------------------------------------------------------------------------
/// The front waist line dips this far under the bust point.
inline constexpr double kFrontWaistDip = 5.0;
/// Shortest bust point to waist that can carry a dart. Our bound.
inline constexpr double kLeastUnderBust = 40.0;
/// Share of the bust on the half front: a quarter of the girth plus this, plus a part of the cup.
/// The constants are ours, from trials on simulated torsos of survey proportions.
inline constexpr double kFrontShareBase = 10.0;
inline constexpr double kFrontSharePerCup = 0.3;
inline constexpr double kFrontShareCupZero = 120.0;
inline constexpr double kLeastFrontShare = 3.0;
inline constexpr double kMostFrontShare = 35.0;
/// Bounds of the shoulder (bust) dart.
inline constexpr Angle kLeastBustDart = Angle::degrees(3.0);
inline constexpr Angle kMostBustDart = Angle::degrees(34.0);
/// Bust dart that the cup asks for, per mm of bust less underbust: the average woman's 137 mm asks
/// for 10 degrees. Where the upper chest alone would leave less, an estimated across front and then
/// the armhole width give way. Our rule; see docs/method.md.
inline constexpr double kCupDartDegreesPerMm = 0.075;
/// How far an estimated half across front gives way: the doubt of that estimate.
inline constexpr double kAcrossFrontGives = 12.0;

// --- armhole ---------------------------------------------------------------------------------
/// Armhole width, of the armhole length.
inline constexpr double kLeastArmholeWidth = 0.19;
inline constexpr double kMostArmholeWidth = 0.31;
/// The across-front point stays this far above the underarm point when it turns with the dart.
inline constexpr double kLeastScyeDepth = 35.0;
/// The back's part of the armhole width.
inline constexpr double kLeastBackScye = 0.42;
inline constexpr double kMostBackScye = 0.52;
/// How far the lower armhole's handles reach to the corner of its end tangents (a quarter ellipse
/// has 0.5523): the more, the shorter the way to the corner is against the other. Our choice, by
/// eye.
inline constexpr double kLeastScyeFullness = 0.42;
inline constexpr double kMostScyeFullness = 0.90;
/// The front armhole's heading at the across point turns with the bust dart by this share of it:
/// less than the whole keeps the lower armhole round under a large dart. By eye.
inline constexpr double kHeadingFollowsDart = 0.7;
/// The upper armhole bends at the across point at least this share of what it bends at the shoulder
/// (else the across point's heading leans), by eye.
inline constexpr double kUpperScyeEvenness = 0.35;
/// The heading leans at most this share of what the lower armhole has turned by then.
inline constexpr double kMostScyeLean = 0.8;
/// Shortest handle of an upper armhole, of its chord.
inline constexpr double kLeastHandle = 0.12;
/// Underarm drop below the armpit.
inline constexpr double kLeastDrop = 5.0;
inline constexpr double kMostDrop = 40.0;
/// Where the share of the bust is judged before the drop is known.
inline constexpr double kUsualDrop = 20.0;
/// The underarm point stays this far above the bust line, so that the bust girth is whole.
inline constexpr double kUnderarmOverBustLine = 8.0;

// --- waist -----------------------------------------------------------------------------------
/// How the half suppression is shared: side seam edges (each), front dart, back dart. Common
/// practice, no source (about 30 : 35 : 35).
inline constexpr double kSideShare = 0.15;
inline constexpr double kFrontDartShare = 0.35;
/// Slant of a side seam from underarm to waist.
inline constexpr double kMostSideSlant = 35.0;
/// Widest waist dart. What darts of this angle cannot take goes to the side seams.
inline constexpr Angle kMostWaistDart = Angle::degrees(24.0);
/// A back waist dart wider than this becomes two.
inline constexpr double kMostBackDart = 35.0;
/// Narrower than this a dart is not drawn; it lies below the pencil's width.
inline constexpr double kLeastDart = 0.5;
/// Where back waist darts stand, of the waist edge from the centre back: under the blade.
inline constexpr double kOneBackDart = 0.45;
inline constexpr double kFirstBackDart = 0.36;
inline constexpr double kSecondBackDart = 0.66;
/// Apex of the (first) back waist dart below the bust line, so that no back dart reaches above it.
inline constexpr double kBackDartLower = 5.0;
/// The outer of two back darts ends this much lower.
inline constexpr double kOuterBackDartLower = 20.0;

/// A waist without a dart bends over this width to meet the side seam square.
inline constexpr double kUndartedBend = 100.0;

/// Accuracy of everything that is solved for, in mm: a hundred times below what is promised.
inline constexpr double kSolved = 1e-7;

}  // namespace blockwright::rules
