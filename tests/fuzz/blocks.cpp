#include "blocks.hpp"

#include "blockwright/check/check.hpp"
#include "must.hpp"
#include "support/blocks.hpp"
#include "support/people.hpp"

namespace blockwright_fuzz {

using namespace blockwright;

namespace {

constexpr int kPeople = 12;

// Some of them have measurements that contradict each other; their blocks are not used.
std::vector<Session> people_of_many_shapes() {
  std::vector<Session> people = survey_people(kPeople, 31);
  for (const double bust : {740.0, 980.0, 1300.0}) people.push_back(bust_only(bust));
  return people;
}

std::vector<Pattern> sound_blocks() {
  std::vector<Pattern> blocks;
  for (const Session& session : people_of_many_shapes()) {
    const CheckedBlock checked = checked_block(session);
    if (errors_of(checked.report).empty()) blocks.push_back(checked.block.pattern);
  }
  must(blocks.size() > kPeople / 2, "most people have a block");
  return blocks;
}

}  // namespace

const std::vector<Pattern>& ready_blocks() {
  static const std::vector<Pattern> blocks = sound_blocks();
  return blocks;
}

void must_be_whole(const Pattern& pattern, const char* when) {
  for (const Piece& piece : pattern.pieces) {
    if (const auto problem = find_problem(piece)) must(false, when, to_text(*problem));
  }
}

void must_pass_checks(const Pattern& pattern, const char* when) {
  for (const Problem& problem : check_pattern(pattern)) {
    must(problem.severity != Severity::Error, when, to_text(problem));
  }
}

void must_have_whole_darts(const Pattern& pattern, const char* when) {
  for (const Piece& piece : pattern.pieces) {
    if (const auto cut = find_cut_dart(piece)) must(false, when, cut->edge + " cuts " + cut->dart);
  }
}

}  // namespace blockwright_fuzz
