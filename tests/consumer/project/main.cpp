// Uses the installed library as a stranger would: drafts a block from two measurements and prints
// the length of each shoulder seam, darts closed.
#include "blockwright/base/number_text.hpp"
#include "blockwright/base/version.hpp"
#include "blockwright/draft/draft.hpp"

#include <iostream>
#include <sstream>

int main() {
  std::istringstream file(R"({
    "format": "blockwright-client-1",
    "name": "Wilhelmina Crake",
    "unit": "cm",
    "sessions": [
      { "date": "2026-03-17", "tape": { "bust_girth": 96, "shoulder_length": 14 } }
    ]
  })");
  const blockwright::Client client = blockwright::read_client(file, "wilhelmina-crake.json");
  const blockwright::Body body = blockwright::fill_in(client.sessions.front());
  const blockwright::DraftedBlock block =
      blockwright::draft_block(body, blockwright::Ease::of(client));
  std::cout << blockwright::version();
  for (const blockwright::Piece& piece : block.pattern.pieces) {
    const double shoulder = blockwright::sewn_length(piece, piece.edge("shoulder"));
    std::cout << ' ' << piece.name << ' ' << blockwright::fixed(shoulder, 2);
  }
  std::cout << '\n';
}
