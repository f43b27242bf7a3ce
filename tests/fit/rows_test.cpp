#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/fit/catalogue.hpp"
#include "support/blocks.hpp"
#include "support/people.hpp"
#include <catch2/catch.hpp>
#include <iostream>
#include <map>
#include <algorithm>
using namespace blockwright;
TEST_CASE("explore") {
  const auto people = survey_people(300, 1988);
  std::vector<Pattern> blocks;
  for (auto& p : people) blocks.push_back(checked_block(p).block.pattern);
  for (const FittingRow& row : fitting_catalogue()) for (int sign : {1, -1}) for (double by : {row.usual}) {
    std::map<std::string, int> codes; std::map<std::string, std::vector<double>> off; std::map<std::string,double> pred; std::map<std::string,std::string> ex;
    for (auto& b : blocks) {
      try {
        const auto f = apply_rows(b, {{row.number, sign, by, AmountAs::Length, row.stage == 8 ? BodySide::Left : BodySide::Both, ""}});
        for (auto& r : f.remarks) if (r.code!="fit.limit" && r.code!="fit.sides") { codes[r.code + " " + r.where]++; ex[r.code+" "+r.where]=r.message; }
        for (auto& m : f.effects[0].moved) if (m.predicted) { off[m.name].push_back(m.sample ? m.change()/ *m.predicted : m.change()- *m.predicted); pred[m.name]=m.sample; }
      } catch (const InputError& e) { codes["REFUSED " + e.problem().code]++; ex["REFUSED "+e.problem().code]=to_text(e.problem()); }
      catch (const std::exception& e) { codes[std::string("EXC ")+e.what()]++; }
    }
    std::cout << "row " << row.number << " sign " << sign << " by " << by << ": ";
    for (auto& [n, v] : off) { std::sort(v.begin(), v.end()); std::cout << n << (pred[n]?" ratio ":" off ") << fixed(v.front(),3) << ".." << fixed(v[v.size()/2],3) << ".." << fixed(v.back(),3) << " bad " << std::count_if(v.begin(), v.end(), [&](double x){ return pred[n] ? std::abs(x-1)>0.3 : std::abs(x)>0.5; }) << "; "; }
    std::cout << "\n";
    for (auto& [c, n] : codes) std::cout << "      " << n << " " << c << " | " << ex[c] << "\n";
  }
}
