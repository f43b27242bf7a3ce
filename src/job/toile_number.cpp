#include "toile_number.hpp"

#include "option_words.hpp"

#include <algorithm>

namespace blockwright {

void judge_toile(int toile, const Client& client, const std::string& place) {
  int last = 0;
  for (const Fitting& fitting : client.fittings) last = std::max(last, fitting.toile);
  if (toile <= last + 1) return;
  const std::string none = last == 0   ? "the file has no fitting yet"
                           : last == 1 ? "the file has toile 1 alone"
                                       : "the last toile of the file is " + std::to_string(last);
  refuse_option(place, "there is no toile " + std::to_string(toile) + ": " + none,
                "give " + std::string(last == 0 ? "" : "1 to ") + std::to_string(last + 1) +
                    ", the toile that is sewn next; or 0, with all corrections");
}

}  // namespace blockwright
