// Draws the pictures of docs/method.md: the block of one client as it grows, step by step.
//
//   method_pictures CLIENT.json FOLDER
//
// writes method-1-neck.svg to method-6-joined.svg into FOLDER. It uses the library as any program
// could: read a client, fill in, draft; then it draws the points of the draft log and the edges of
// the pieces. Labels are placed for the demo client of the example wardrobe.
#include "blockwright/measure/client.hpp"
#include "method/pictures.hpp"

#include <fstream>
#include <iostream>
#include <stdexcept>
#include <string>

namespace {

using namespace blockwright;
using namespace blockwright_pictures;

struct Picture {
  const char* file;
  const char* title;
  void (*draw)(Diagram&, const Block&);
};

constexpr Picture kPictures[] = {
    {"method-1-neck.svg", "Centre lines, bust point and necklines", draw_necks},
    {"method-2-shoulders.svg", "Shoulders and the back shoulder dart", draw_shoulders},
    {"method-3-waist.svg", "Bust line, waist and waist darts", draw_waists},
    {"method-4-bust-dart.svg", "The bust dart, closed and opened", draw_bust_dart},
    {"method-5-armholes.svg", "Side seams and armholes", draw_armholes},
    {"method-6-joined.svg", "The joined seams", draw_joined_seams},
};

Block block_of(const std::string& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file);
  const Client client = read_client(in, file);
  const Body body = fill_in(session_of(client, "", file));
  const Ease ease = Ease::of(client);
  return {draft_block(body, ease), draft_steps(body, ease)};
}

void write(const Picture& picture, const Block& block, const std::string& folder) {
  Diagram diagram(kWidth, kHeight);
  diagram.place(at_origin(kFrontOrigin));
  picture.draw(diagram, block);
  diagram.write(picture.title, folder + '/' + picture.file);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "call: method_pictures CLIENT.json FOLDER\n";
    return 2;
  }
  try {
    const Block block = block_of(argv[1]);
    for (const Picture& picture : kPictures) write(picture, block, argv[2]);
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 1;
  }
  return 0;
}
