#include "output_stem.hpp"

#include "blockwright/files/safe_name.hpp"

namespace blockwright {

std::string output_stem(const Job& job) {
  const std::string client = job.stem.empty() ? safe_stem(job.client) : job.stem;
  std::string stem = joined_path(job.out, client);
  if (job.command == Command::Pivot) stem += "-pivot";
  if (job.command == Command::Adapt) stem += "-" + safe_stem(job.style);
  return stem;
}

std::string cut_stem(const Job& job) {
  return output_stem(job) + "-" + std::string(cut_style_name(job.cut));
}

}  // namespace blockwright
