#pragma once

#include "blockwright/geometry/point.hpp"

namespace blockwright::body {

// Points of the body in mm: y above the floor; x from the centre to her left in front and back
// view, and to the front in side view. Heights are the means of the 1988 survey (stature 1629, nape
// 1408, side neck 1396, front neck and shoulder 1331, armpit 1233, bust 1175, waist 1056, hip 839),
// as are shoulder length and bust point width. Half widths are those of ellipses with the survey's
// girths and a depth of three quarters; the rest is drawn by eye.
inline constexpr double kStature = 1629.0;
inline constexpr double kBustLevel = 1175.0;
inline constexpr double kUnderbustLevel = 1107.0;
inline constexpr double kArmpitLevel = 1228.0;
inline constexpr double kWaistLevel = 1056.0;
inline constexpr double kHipLevel = 840.0;
/// Half way between shoulder point and armpit.
inline constexpr double kAcrossLevel = 1280.0;

inline constexpr Point kNape{0.0, 1408.0};
inline constexpr Point kSideNeck{59.0, 1396.0};
inline constexpr Point kFrontNeck{0.0, 1330.0};
/// The end of the shoulder bone, before the outline bends down to the arm.
inline constexpr Point kShoulder{184.0, 1335.0};
inline constexpr Point kUnderarm{147.0, kArmpitLevel};
inline constexpr Point kBustPoint{90.0, kBustLevel};
inline constexpr Point kWaistSide{127.0, kWaistLevel};
inline constexpr Point kWaistCentre{0.0, kWaistLevel};
inline constexpr Point kHipSide{173.0, kHipLevel};

// In side view.
inline constexpr Point kSideCrown{-8.0, kStature};
inline constexpr Point kSideShoulder{-10.0, 1333.0};
inline constexpr Point kSideUnderarm{-6.0, kArmpitLevel};
inline constexpr Point kSideWaist{-6.0, kWaistLevel};

/// The same point on her right.
constexpr Point right(Point p) { return {-p.x, p.y}; }

}  // namespace blockwright::body
