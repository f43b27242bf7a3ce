#pragma once

#include "blockwright/draft/draft.hpp"
#include "diagram.hpp"

#include <vector>

namespace blockwright_pictures {

/// Size of a picture, where the two halves stand on it, and the line of its headings, in mm.
inline constexpr double kWidth = 780.0;
inline constexpr double kHeight = 515.0;
inline constexpr blockwright::Point kFrontOrigin{90.0, 45.0};
inline constexpr blockwright::Point kBackOrigin{480.0, 45.0};
inline constexpr double kHeadingLine = 495.0;

/// A drafted block and what the pictures need to know of it.
struct Block {
  blockwright::DraftedBlock drafted;
  blockwright::DraftLog steps;
  [[nodiscard]] const blockwright::Piece& front() const { return drafted.pattern.piece("front"); }
  [[nodiscard]] const blockwright::Piece& back() const { return drafted.pattern.piece("back"); }
  /// A point of the draft log. Throws std::runtime_error if there is none of that name.
  [[nodiscard]] blockwright::Point step(const char* piece, const char* point) const;
  /// What closes the front's shoulder dart on its outer part, and the back's.
  [[nodiscard]] blockwright::Placement close_front() const;
  [[nodiscard]] blockwright::Placement close_back() const;
};

blockwright::Placement at_origin(blockwright::Point origin);
const blockwright::Path& edge_of(const blockwright::Piece& piece, const char* name);
/// The direction of the shoulder from the neck, as far as its dart.
blockwright::Vec down_shoulder(const blockwright::Piece& piece);

/// Headings over both halves.
void name_halves(Diagram& d);
/// Centre line, neckline and a shoulder, as they stood before.
void draw_upper_frame(Diagram& d, const blockwright::Piece& piece,
                      const std::vector<blockwright::Point>& shoulder, const char* centre);

}  // namespace blockwright_pictures
