// write_people COUNT FOLDER: that many client files of people generated from the survey's
// covariance (support/people.hpp), the same ones every time.
#include "support/client_text.hpp"
#include "support/people.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iostream>

int main(int count, char** words) {
  using namespace blockwright;
  constexpr unsigned kSeed = 10000;
  if (count != 3) {
    std::cerr << "write_people COUNT FOLDER\n";
    return 2;
  }
  const std::filesystem::path folder = words[2];
  std::filesystem::create_directories(folder);
  int number = 0;
  for (const Session& session : survey_people(std::stoi(words[1]), kSeed)) {
    ++number;
    std::ofstream file(folder / fmt::format("person-{:05}.json", number));
    file << client_text(session, number);
    if (!file.flush()) {
      std::cerr << "write_people: cannot write into " << folder << '\n';
      return 1;
    }
  }
  return 0;
}
