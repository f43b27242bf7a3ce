// What the fitter watches moves by what she pinned: the watched lengths of the table of
// corrections, on 300 people. Within 0.5 mm: less than a tape or a pin can show. Ours.
#include "fit/fit_people.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>

using namespace blockwright;
using namespace blockwright_tests;

TEST_CASE("tryout", "[.]") {
  for (const CorrectionWords& words : correction_words()) {
    const FittingRow& entry = fitting_row(words.row);
    const RowAmount asked{words.row, words.sign, entry.amount.usual.mm(), AmountAs::Length, side_of(entry), std::string(words.place)};
    std::map<std::string, std::vector<double>> off;
    std::map<std::string,int> refused;
    for (const Pattern& block : each_block()) {
      const Outcome got = outcome(block, {asked});
      if (!got.fitted) { ++refused[got.refusal.code]; continue; }
      for (const auto& m : got.fitted->effects.front().moved) {
        if (m.predicted && !m.sample) off[m.name].push_back(m.change() - *m.predicted);
        if (m.name == "bust_line" && !m.predicted) off["(bust_line)"].push_back(m.change());
        if (m.name == "across_front" && !m.predicted) off["(across_front)"].push_back(m.change());
        if (m.name == "armhole" && !m.predicted) off["(armhole)"].push_back(m.change());
      }
    }
    std::printf("%d %s %s:", entry.number(), std::string(words.action).c_str(), std::string(words.place).c_str());
    for (auto& [c, n] : refused) std::printf(" REFUSED %s %d", c.c_str(), n);
    std::printf("\n");
    for (auto& [name, values] : off) {
      std::vector<double> a;
      for (double v : values) a.push_back(std::abs(v));
      std::sort(a.begin(), a.end());
      bool w = false;
      for (const LengthMoved& l : watched_at(words.row, words.place).lengths) w |= l.name == name;
      const auto beyond = std::count_if(a.begin(), a.end(), [](double v){return v > 0.5;});
      std::printf("   %s %-22s n %zu median %.3f max %.3f beyond %ld\n", w ? "W" : " ", name.c_str(), a.size(), name[0]=='('?median_of(values):a[a.size()/2], a.back(), static_cast<long>(beyond));
    }
  }
}
