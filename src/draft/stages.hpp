#pragma once

#include "blockwright/block/waist_edge.hpp"
#include "blockwright/draft/draft.hpp"
#include "settlement.hpp"

#include <optional>

namespace blockwright {

/// The stages of a draft, in their order, and what each hands to the next.

/// Keeps the account of what a draft changed of what was asked for.
class Ledger {
 public:
  /// Notes that `name` was changed by `by` on the whole measurement, where that is more than
  /// rounding. A measurement that met two bounds has two entries.
  void adjust(MeasurementName name, Measure by, const Wording& why);
  [[nodiscard]] const Adjustments& adjustments() const { return adjustments_; }

 private:
  Adjustments adjustments_;
};

/// What the half pieces must measure: body plus ease, in mm on the half body, angles as Angle.
struct Targets {
  double neck = 0.0;          ///< half the neck base girth: back plus front neckline
  double back_length = 0.0;   ///< nape to waist
  double front_length = 0.0;  ///< front neck point to waist
  double neck_to_bust = 0.0;  ///< side neck point to bust point
  double under_bust = 0.0;    ///< bust point to waist
  double bust_point_x = 0.0;  ///< half the bust point width
  double shoulder = 0.0;      ///< shoulder length
  std::optional<double> front_slant, back_slant;
  Angle slope;  ///< finished shoulder slope where no slant closes it
  bool slope_is_taped = false;
  Wish across_back, across_front, upper_chest;  ///< settled together
  Angle usual_bust_dart;                        ///< of such a bust and cup
  double arm = 0.0;                             ///< upper arm girth, the whole arm, without ease
  double bust = 0.0;
  double waist = 0.0;
  double armhole = 0.0;      ///< front plus back armhole: not halved, one arm
  double side_length = 0.0;  ///< armpit to waist on the body, before the underarm drop
  double scye_depth = 0.0;   ///< nape to armpit level on the body
  double cup = 0.0;          ///< bust less underbust on the whole body, without ease
  std::optional<double> front_bust;
  double front_hold_back = 0.0;  ///< how far the shoulder darts' stitching ends short of the apex
  double back_hold_back = 0.0;
  bool over_bust_gives_way = false;  ///< to an odd neck, rather than the front length
};

/// Body plus ease. Lengths that contradict each other so far that no bodice could be drawn are
/// brought within bounds here.
Targets targets_for(const Body& body, const Ease& ease, Ledger& ledger);

/// What the drawing of one line needs of lines that are drawn after it, and what only trying finds.
/// The draft assumes it, draws everything with it, sees what comes out and what is missed by how
/// much, and draws again, until nothing changes.
struct Assumed {
  Angle bust_dart;
  double across_back = 0.0;  ///< half
  double front_bust = 0.0;   ///< the front's part of the bust line
  double underarm = 0.0;     ///< the underarm line over the bust line
  double front_width = 0.0;  ///< the front's part of the armhole's width
  double back_width = 0.0;
  double back_side_waist = 0.0;  ///< the back's side waist point over the level of the waist
  double neck_width = 0.0;
  Angle front_slope, back_slope;                 ///< of the shoulders' inner halves
  double front_intake = 0.0, back_intake = 0.0;  ///< of all waist darts of a piece
  double side_run = 0.0;  ///< of each side edge, bust line to waist, where there are no waist darts
  double drop = 0.0;      ///< underarm point below the armpit, along the side seam
  double least_further_dart = kLeastMouth;  ///< a further waist dart is at least so wide; no guess
};

/// The upper lines of one piece.
struct UpperLines {
  Point centre_neck;  ///< front neck point or nape
  Point side_neck;
  Angle slope;  ///< of the shoulder's inner half, between side neck point and dart
  Point shoulder_point;
  Point sewn_shoulder_point;  ///< its dart closed as it is stitched
  CubicCurve neckline;        ///< side neck point to centre
};

/// The upper frame of both pieces, in each piece's own frame: necklines, bust point and shoulders.
/// On the front the shoulder dart is still closed; on the back it is open.
struct NeckAndShoulder {
  double neck_width = 0.0;
  UpperLines front, back;
  Point bust_point;
  Point blade_point;     ///< on the across-back line
  Point dart_inner_leg;  ///< back shoulder dart, leg end nearer the neck
  Point dart_outer_leg;
};

/// The front neck depth that the two front lengths ask for, where it is no neck's.
std::optional<OddNeck> odd_neck(const Targets& targets);
/// ... and there one of them gives way.
void bring_neck_within_bounds(Targets& targets, Ledger& ledger);

/// Draws side neck points, bust point, shoulders and necklines.
NeckAndShoulder neck_and_shoulder(const Targets& targets, const Assumed& assumed);
void guess_neck_and_shoulder(const Targets& targets, Assumed& assumed);
/// Brings neck width and slopes nearer to what the neck base girth and the slants (or the slope)
/// ask for, each shoulder with its dart closed as it is stitched.
void correct_neck_and_shoulder(const Targets& targets, const NeckAndShoulder& drawn,
                               Assumed& assumed);
void account_for_shoulders(const Targets& targets, const NeckAndShoulder& upper, Ledger& ledger);

/// The height over which across front and across back are measured: a share of the scye depth above
/// the armpit, kept well between armpit and shoulder point.
double across_level(const Targets& targets, double armpit, Point shoulder_point);

/// How the difference between bust line and waist is shared out, in mm on the half body.
struct Suppression {
  double front_bust = 0.0;  ///< the front's part of the bust line
  double back_bust = 0.0;
  double side_run = 0.0;     ///< each side edge, bust line to waist; negative flares out
  double front_waist = 0.0;  ///< the front's part of the waist, sewn
  double back_waist = 0.0;
};

/// Both waist edges, with the bust line's height over either side waist point.
struct Waists {
  Suppression suppression;
  WaistEdge front;
  WaistEdge back;
  double bust_line = 0.0;
};

/// Shares out the bust between front and back.
double front_share_of_bust(const Targets& targets);

/// Shares out the suppression for a given front part of the bust and draws both waist edges: on the
/// front a dart under the bust point and a second where one would be too wide, on the back one to
/// three under the blade, whose stitching ends a little under the underarm line. Both sides have
/// the same slant. A waist that is no smaller than the bust has no darts; its side seams flare.
Waists waists(const Targets& targets, const Assumed& assumed, Point bust_point);
void guess_waists(const Targets& targets, Assumed& assumed);
/// Brings intakes or flare nearer to those that make the sewn waist right. The bust line is, with
/// the darts closed.
void correct_waists(const Targets& targets, const Waists& drawn, Assumed& assumed);

/// A side seam: straight below the bust line and above it, where it may turn in.
struct SideSeam {
  Point waist, bust, underarm;
  Vec upper;  ///< unit, from the bust line to the underarm point
};

/// Side seams, bust dart and armholes, each in its piece's frame; the front with its darts open.
struct Armholes {
  double drop = 0.0;  ///< underarm point below the armpit, along the side seam
  Settled settled;
  double back_width = 0.0;    ///< the back's part of the armhole's width
  Point across_front_closed;  ///< across-front point with the shoulder dart closed
  Point across_front;         ///< ... open
  Point across_back;
  SideSeam front_side, back_side;
  Point front_shoulder_point;  ///< shoulder dart open
  Path front;                  ///< underarm point to shoulder point
  Path back;
};

/// Settles the widths between the arms and draws side seams and armholes.
Armholes armholes(const Targets& targets, const NeckAndShoulder& upper, const Waists& waists,
                  const Assumed& assumed);

void guess_armholes(const Targets& targets, Assumed& assumed);

/// A whole drawing, stage by stage.
struct Drawn {
  NeckAndShoulder upper;
  Waists waists;
  Armholes lower;
};

/// Brings bust dart, drop and widths nearer to what the settlement and the armhole's length ask
/// for, within the bounds of rules.hpp.
void correct_armholes(const Targets& targets, const Drawn& drawn, Assumed& assumed);
/// What the settlement moved, and what gave way (docs/method.md).
void account_for_armholes(const Targets& targets, const Drawn& drawn, Ledger& ledger);

/// The half front and the half back from their settled frame: edges, darts, balance lines, notches.
/// `cup` is the bust girth less the underbust girth, in mm: it sets how far the stitching of a dart
/// stops short of the apex.
Piece front_block(const Drawn& drawn, double cup);
Piece back_block(const Drawn& drawn, double cup);

/// The draft told point by point, in the order of drawing.
DraftLog steps(const Targets& targets, const Drawn& drawn, const Pattern& block);

}  // namespace blockwright
