// Draws the pictures of docs/darts.md: dart moves on the blocks of the example wardrobe.
//
//   dart_pictures WARDROBE FOLDER
//
// reads the client files of the folder WARDROBE and writes darts-*.svg into FOLDER. It uses the
// library as any program could: read a client, fill in, draft, apply the steps of a style, true the
// darts; then it draws the pieces.
#include "darts/pictures.hpp"

#include <fstream>
#include <iostream>
#include <stdexcept>
#include <string>

namespace {

using namespace blockwright_pictures;

constexpr MovePicture kMoves[] = {
    {"darts-front-neck.svg", "The bust dart moved to the neck", "ondine-marsh", "front", "shoulder",
     "neck", "neck"},
    {"darts-front-shoulder.svg", "The front waist dart moved up into the shoulder dart",
     "eleni-lygerou", "front", "waist", "shoulder", "shoulder"},
    {"darts-front-armhole.svg", "The bust dart moved to the armhole", "tamsin-reed", "front",
     "shoulder", "armhole", "armhole"},
    {"darts-front-side.svg", "The bust dart moved to the side seam", "nadezhda-vetrova", "front",
     "shoulder", "side", "side"},
    {"darts-front-french.svg", "The bust dart moved low down the side seam", "tamsin-reed", "front",
     "shoulder", "french", "french"},
    {"darts-front-waist.svg", "The bust dart moved down into the waist dart", "pippa-quill",
     "front", "shoulder", "waist", "waist"},
    {"darts-front-centre-front.svg", "The bust dart moved to the centre front", "tamsin-reed",
     "front", "shoulder", "centre_front", "centre_front"},
    {"darts-divided.svg", "A wide bust dart divided in two", "bronislawa-slizewicz", "front",
     "shoulder", "side", "side", 0.45},
    {"darts-front-half.svg", "Half of the bust dart moved to the side seam", "ondine-marsh",
     "front", "shoulder", "side:6cm", "side", 0.5},
    {"darts-back-neck.svg", "The back shoulder dart moved to the neck", "odalys-fenn", "back",
     "shoulder", "neck", "neck"},
    {"darts-back-shoulder.svg", "The back shoulder dart moved along the shoulder", "pippa-quill",
     "back", "shoulder", "shoulder:0.25", "shoulder"},
    {"darts-back-armhole.svg", "The back shoulder dart moved to the armhole", "ondine-marsh",
     "back", "shoulder", "armhole", "armhole"},
    {"darts-back-waist.svg", "The back shoulder dart moved to the waist", "nadezhda-vetrova",
     "back", "shoulder", "waist", "waist"},
    {"darts-back-centre-back.svg", "The back shoulder dart moved to the centre back",
     "bronislawa-slizewicz", "back", "shoulder", "centre_back", "centre_back"},
};

struct Picture {
  const char* file;
  const char* title;
  void (*draw)(Diagram&, const std::string& wardrobe);
};

constexpr Picture kPictures[] = {
    {"darts-names.svg", "The parts of a dart", draw_names},
    {"darts-mouth-and-leg.svg", "One angle, two mouths", draw_mouth_and_leg},
    {"darts-merge.svg", "Two back waist darts made one", draw_merge},
    {"darts-split.svg", "One dart made three, fanned, and two, parallel", draw_split},
    {"darts-gathers-and-ease.svg", "A dart at the neck, gathers in its place, and ease",
     draw_gathers_and_ease},
    {"darts-spread.svg", "Slashed and spread, hinged and at both ends", draw_spread},
    {"darts-princess-shoulder.svg", "Panels from the shoulder", draw_princess_from_shoulder},
    {"darts-princess-armhole.svg", "Panels from the armhole", draw_princess_from_armhole},
    {"darts-yoke.svg", "A front yoke", draw_yoke},
    {"darts-necklines-curved.svg", "Round, scoop and boat necklines", draw_curved_necklines},
    {"darts-necklines-ruled.svg", "V, square and sweetheart necklines", draw_ruled_necklines},
    {"darts-tops-strapped.svg", "Straight, curved and sweetheart tops with straps",
     draw_strapped_tops},
    {"darts-tops-strapless.svg",
     "A sweetheart top without straps, its darts where the block has them and in one",
     draw_strapless_tops},
    {"darts-armholes.svg", "An armhole cut in, and one with a dart on it", draw_armholes},
    {"darts-peak.svg", "A dart folded, cut and unfolded", draw_peak},
    {"darts-blending.svg", "The seam across a closed dart", draw_blending},
};

void write_all(const std::string& wardrobe, const std::string& folder) {
  for (const MovePicture& move : kMoves) {
    Diagram diagram(kWidth, kHeight);
    draw_move(diagram, person_of(wardrobe, move.person), move);
    diagram.write(move.title, folder + '/' + move.file);
  }
  for (const Picture& picture : kPictures) {
    Diagram diagram(kWidth, kHeight);
    picture.draw(diagram, wardrobe);
    diagram.write(picture.title, folder + '/' + picture.file);
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "call: dart_pictures WARDROBE FOLDER\n";
    return 2;
  }
  try {
    write_all(argv[1], argv[2]);
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 1;
  }
  return 0;
}
