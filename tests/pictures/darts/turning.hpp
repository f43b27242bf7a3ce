#pragma once

#include "blockwright/pattern/piece.hpp"

#include <string>

namespace blockwright_pictures {

/// What turns when a dart of a piece is moved.
struct TurningPart {
  blockwright::Path outline;     ///< closed, as it lies before the move
  blockwright::Point place;      ///< where the new dart opens, before the move
  blockwright::Point closed_at;  ///< where the dart closes: the end of its leg that stays
  blockwright::Angle by;
  blockwright::Point apex;
  [[nodiscard]] blockwright::Path turned() const;
};

/// The part between the dart that closes and the place of the one that opens, without the centre
/// waist. Requires: `closed` is a dart of `before`, `opened` one of `after`, of the same apex.
TurningPart turning_part(const blockwright::Piece& before, const blockwright::Piece& after,
                         const std::string& closed, const std::string& opened);

}  // namespace blockwright_pictures
