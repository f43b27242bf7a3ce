#pragma once

#include "blockwright/measure/client.hpp"
#include "torso/torso.hpp"

#include <vector>

namespace blockwright::torso {

/// How a tape is held.
enum class TapeHeld {
  Freely,   ///< slides to where it is shortest
  InPlane,  ///< kept at one x: down the centre, or straight down from the bust point
};

/// Length of a tight tape over the body from one point to another, in mm: it spans hollows and lies
/// on what comes in its way.
double taut_length(const Torso& body, const Vec3& from, const Vec3& to,
                   TapeHeld held = TapeHeld::Freely);

/// Length of a tape round points, spanning hollows, mm.
double hull_girth(std::vector<Vec2> points);

/// Whole girths in mm. A level tape spans the hollows of its section.
double level_girth(const Torso& body, double z);
double neck_base_girth(const Torso& body);
/// Through shoulder point and armpit, in the plane of the armhole lines.
double armscye_girth(const Torso& body);

/// All measurements that a block is drafted from, taken on the torso to the tenth of a millimetre.
Session tape_session(const Torso& body);

/// The readings of one measurement.
double taped(const Session& session, MeasurementName name);

}  // namespace blockwright::torso
