#pragma once

#include "darts/sketch.hpp"
#include "darts/wardrobe.hpp"

#include <string>

namespace blockwright_pictures {

/// Size of a picture in the diagram's units, and its three columns.
inline constexpr double kWidth = 780.0;
inline constexpr double kHeight = 430.0;
inline constexpr double kColumn = 260.0;
/// Room for a piece in a column, and where its lower left corner stands.
inline constexpr double kRoomWide = 215.0, kRoomHigh = 325.0;
inline constexpr double kLeft = 30.0, kBottom = 65.0;
inline constexpr double kHeadingLine = 410.0;
inline constexpr double kCaptionLine = 38.0;

/// A sketch in a column (0, 1, 2) whose room holds `box`, and the column's words.
Sketch in_column(Diagram& d, int column, const blockwright::Box& box);
void head(Diagram& d, int column, const std::string& heading, const std::string& caption);

/// "18.4°" and "8.3 cm".
std::string degrees(blockwright::Angle angle);
std::string cm(double mm);

/// One move of one dart: before, after and overlay.
struct MovePicture {
  const char* file;
  const char* title;
  const char* person;
  const char* piece;
  const char* dart;
  const char* to;
  const char* opened;  ///< name of the dart that takes the angle up
  double part = 1.0;
};
void draw_move(Diagram& d, const Person& person, const MovePicture& move);

void draw_names(Diagram& d, const std::string& wardrobe);
void draw_mouth_and_leg(Diagram& d, const std::string& wardrobe);
void draw_merge(Diagram& d, const std::string& wardrobe);
void draw_split(Diagram& d, const std::string& wardrobe);
void draw_gathers_and_ease(Diagram& d, const std::string& wardrobe);
void draw_spread(Diagram& d, const std::string& wardrobe);
void draw_princess_from_shoulder(Diagram& d, const std::string& wardrobe);
void draw_princess_from_armhole(Diagram& d, const std::string& wardrobe);
void draw_yoke(Diagram& d, const std::string& wardrobe);
void draw_armholes(Diagram& d, const std::string& wardrobe);
void draw_curved_necklines(Diagram& d, const std::string& wardrobe);
void draw_ruled_necklines(Diagram& d, const std::string& wardrobe);
void draw_strapped_tops(Diagram& d, const std::string& wardrobe);
void draw_strapless_tops(Diagram& d, const std::string& wardrobe);
void draw_peak(Diagram& d, const std::string& wardrobe);
void draw_blending(Diagram& d, const std::string& wardrobe);

}  // namespace blockwright_pictures
