#pragma once

#include "blockwright/fit/redrawing.hpp"

#include <functional>
#include <optional>

namespace blockwright {

/// Small readings of a half piece that several rows share.

const Curve& stroke_of(const Opened& open, StrokeSpot spot);
double length_of(const Opened& open, StrokeSpot spot);
Point corner_of(const Opened& open, Corner corner);
/// Where the armhole's two strokes meet.
Point across_of(const Opened& open);
/// Unit vector up the side seam.
Vec up_the_side(const Opened& open);
/// Unit vector down the shoulder at the side neck point, and at the shoulder point.
Vec shoulder_at_neck(const Opened& open);
Vec shoulder_at_tip(const Opened& open);
/// The first waist dart from the centre.
std::optional<DartSpot> waist_dart(const Opened& open);
/// All darts on the waist.
std::vector<DartSpot> waist_darts(const Opened& open);
double closed_length(const Opened& open, BlockEdge edge);
/// mm from the side waist point to the side notch.
double side_notch(const Opened& open);
/// x of the centre edge at a height.
double centre_at(const Opened& open, double y);

/// A wedge turned `times` as far as its width at the fold says, by `turned`, so that the edge comes
/// out as long as wanted: a fold that lies askew to its edge takes more or less of it.
double times_for(const std::function<Opened(double)>& turned, BlockEdge edge, double length);

}  // namespace blockwright
