#include "darts/wardrobe.hpp"

#include "blockwright/draft/draft.hpp"
#include "blockwright/measure/client.hpp"

#include <fstream>
#include <stdexcept>

namespace blockwright_pictures {

using namespace blockwright;

Person person_of(const std::string& folder, const std::string& name) {
  const std::string file = folder + '/' + name + ".json";
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file);
  const Client client = read_client(in, file);
  const Body body = fill_in(session_of(client, "", file));
  const double bust = body[MeasurementName::BustGirth].number();
  return {draft_block(body, Ease::of(client)).pattern,
          bust - body[MeasurementName::UnderbustGirth].number(),
          {bust, body[MeasurementName::WaistGirth].number()}};
}

Pattern after(const Person& person, const std::vector<StyleStep>& steps) {
  return apply_style(person.block, {"", steps}, person.cup).pattern;
}

}  // namespace blockwright_pictures
