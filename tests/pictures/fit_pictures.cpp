// Draws the pictures of docs/fitting.md: how folds are read, and each row of the fitting catalogue
// on a block of the example wardrobe.
//
//   fit_pictures WARDROBE FOLDER
//
// reads the client files of the folder WARDROBE and writes folds.svg, and for each row what is seen
// (seen-01.svg ...) and what is done (fit-01.svg ...), into FOLDER. It uses the library as any
// program could: read a client, fill in, draft, apply a row; then it draws the pieces before and
// after.
#include "blockwright/measure/correction_table.hpp"
#include "darts/wardrobe.hpp"
#include "fits/pictures.hpp"

#include <fstream>
#include <iostream>
#include <stdexcept>
#include <string>

namespace {

using namespace blockwright_pictures;

std::string file_of(const std::string& kind, int row) {
  return kind + (row < 10 ? "-0" : "-") + std::to_string(row) + ".svg";
}

void write_seen(const std::string& folder) {
  for (const blockwright::FittingRow& row : blockwright::fitting_catalogue()) {
    seen_picture(row).write("seen: " + std::string(row.seen),
                            folder + '/' + file_of("seen", row.number()));
  }
}

void write_all(const std::string& wardrobe, const std::string& folder) {
  for (const auto& pictures : {upper_pictures(), middle_pictures(), lower_pictures()}) {
    for (const FitPicture& picture : pictures) {
      Diagram diagram(kFitWidth, kFitHeight);
      draw_fit(diagram, picture, person_of(wardrobe, picture.person).block);
      diagram.write(
          std::string(blockwright::fitting_row(blockwright::CorrectionRow{picture.row}).name),
          folder + '/' + file_of("fit", picture.row));
    }
  }
}

void write_folds(const std::string& folder) {
  Diagram diagram(kFoldsWidth, kFoldsHeight);
  draw_folds(diagram);
  diagram.write("how folds are read", folder + "/folds.svg");
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "call: fit_pictures WARDROBE FOLDER\n";
    return 2;
  }
  try {
    write_folds(argv[2]);
    write_seen(argv[2]);
    write_all(argv[1], argv[2]);
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 1;
  }
  return 0;
}
