// Draws the pictures of docs/first-bodice.md that are drawn for it alone.
//
//   first_pictures WARDROBE FOLDER
//
// reads a client file of the folder WARDROBE and writes first-*.svg into FOLDER.
#include "darts/wardrobe.hpp"
#include "first/pictures.hpp"

#include <iostream>
#include <stdexcept>
#include <string>

namespace {

using namespace blockwright_pictures;

void write_all(const std::string& wardrobe, const std::string& folder) {
  Diagram pages(kFirstWidth, kPagesHeight), mark(kFirstWidth, kMarkHeight);
  draw_pages(pages, person_of(wardrobe, "ondine-marsh").block);
  pages.write("Test squares, pages and how they are joined", folder + "/first-pages.svg");
  draw_mark(mark);
  mark.write("A fault seen, and marked on the cloth", folder + "/first-mark.svg");
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "call: first_pictures WARDROBE FOLDER\n";
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
