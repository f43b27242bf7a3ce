#include "blockwright/garment/allowances.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/dart/top_edge.hpp"
#include "faced.hpp"
#include "named_edges.hpp"
#include "refusal.hpp"
#include "straps.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace blockwright {
namespace {

constexpr const char* kAllowanceCode = "garment.allowance";

void require_sewable(const std::string& key, const EdgeAllowance& one) {
  const double width = one.width;
  if (width == 0.0 || (width >= kLeastEdgeAllowance && width <= kMostEdgeAllowance)) return;
  refuse({kAllowanceCode, key, shown(one.edge),
          "an allowance of " + Length::mm(width) + " cannot be sewn",
          "write " + Length::mm(kLeastEdgeAllowance) + " to " + Length::mm(kMostEdgeAllowance) +
              ", or 0 where you add it on the cloth"});
}

void require_sewable(const Allowances& asked) {
  const std::array<EdgeAllowance, 5> classes = {{{"seams", asked.seams},
                                                 {"shoulder", asked.shoulder},
                                                 {"centre", asked.centre},
                                                 {"hem", asked.hem},
                                                 {"enclosed", asked.enclosed}}};
  for (const EdgeAllowance& one : classes) require_sewable(one.edge, one);
  for (const EdgeAllowance& one : asked.edges) require_sewable("edges", one);
}

// A seam of a garment by the part of the block that it joins.
EdgeFinish seam_finish(const Piece& piece, const Edge& edge, const Allowances& allowances) {
  const KindEdge* part = kind_edge(piece, edge.name);
  if (part == nullptr && piece.kind != nullptr) return {Finish::PanelSeam, allowances.seams};
  if (is_part(piece, edge.name, BlockEdge::Shoulder)) return {Finish::Seam, allowances.shoulder};
  if (is_part(piece, edge.name, BlockEdge::Centre)) return {Finish::Seam, allowances.centre};
  return {Finish::Seam, allowances.seams};
}

EdgeFinish usual_finish(const Piece& piece, const Edge& edge, const Allowances& allowances) {
  if (is_strap(piece)) return strap_finish(edge, allowances);
  if (edge.name == kStrapEnd) return {Finish::Seam, kStrapSewnIn};
  switch (edge.role) {
    case EdgeRole::Fold:
      return {Finish::Fold, 0.0};
    case EdgeRole::Hem:
      return {Finish::Turned, allowances.hem};
    case EdgeRole::FreeEdge:
      return {Finish::Enclosed, allowances.enclosed};
    case EdgeRole::Opening:
      return {Finish::Seam, allowances.centre};
    case EdgeRole::Seam:
      break;
  }
  return seam_finish(piece, edge, allowances);
}

// Steps before this one have said it.
bool is_said(const Edge& edge) {
  return edge.finish.how == Finish::Bound || edge.finish.how == Finish::FoldedBack;
}

// Without an allowance there is nothing to turn or shut in.
EdgeFinish raw_if_bare(EdgeFinish finish) {
  const bool folded = finish.how == Finish::Turned || finish.how == Finish::Enclosed;
  if (folded && finish.allowance == 0.0) finish.how = Finish::Raw;
  return finish;
}

void set_one(Pattern& pattern, const EdgeAllowance& one) {
  const std::vector<EdgeOf> found = edges_named(pattern, one.edge);
  const std::string where = shown(one.edge);
  if (one.edge.find('.') == std::string::npos || found.empty()) {
    refuse({kAllowanceCode, "edges", where, "there is no such edge",
            "write one of " + all_edge_names(pattern)});
  }
  for (const EdgeOf& at : found) {
    Edge& edge = edge_at(pattern, at);
    if (edge.role == EdgeRole::Fold) {
      refuse({kAllowanceCode, "edges", where, "it lies on the fold of the cloth",
              "leave it out: a fold has no allowance"});
    }
    if (edge.finish.how == Finish::Bound) {
      refuse({kAllowanceCode, "edges", where, "it is bound, and a bound edge has no allowance",
              "leave it out here, or take it out of the binding"});
    }
    edge.finish.allowance = one.width;
  }
}

void warn_of_unequal_mates(const Pattern& pattern, Problems& remarks) {
  for (const Seam& seam : pattern.seams) {
    if (seam.a.empty() || seam.b.empty()) continue;
    const Edge &a = edge_at(pattern, seam.a.front()), &b = edge_at(pattern, seam.b.front());
    const double difference = a.finish.allowance - b.finish.allowance;
    if (difference == 0.0) continue;
    remarks.push_back({Severity::Warning, "garment.mates", name_of(seam.a.front()),
                       "its allowance is " + Length::mm(a.finish.allowance) + ", that of " +
                           name_of(seam.b.front()) + " " + Length::mm(b.finish.allowance) +
                           ": laid edge to edge the stitch lines do not meet",
                       "pin line on line, or give both the same allowance"});
  }
}

}  // namespace

MovedDarts with_allowances(const Pattern& pattern, const Allowances& allowances) {
  require_sewable(allowances);
  MovedDarts finished{pattern, {}};
  for (Piece& piece : finished.pattern.pieces) {
    for (Edge& edge : piece.edges) {
      if (is_said(edge)) continue;
      const bool faced = facing_of(pattern, {piece.name, edge.name}) != nullptr;
      edge.finish = faced ? EdgeFinish{Finish::Enclosed, allowances.enclosed}
                          : usual_finish(piece, edge, allowances);
    }
  }
  for (const EdgeAllowance& one : allowances.edges) set_one(finished.pattern, one);
  follow_garment(finished.pattern);
  for (const EdgeAllowance& one : allowances.edges) {
    const bool on_facing = facing_named(pattern, one.edge.substr(0, one.edge.find('.'))) != nullptr;
    if (on_facing) set_one(finished.pattern, one);
  }
  for (Piece& piece : finished.pattern.pieces) {
    for (Edge& edge : piece.edges) edge.finish = raw_if_bare(edge.finish);
  }
  warn_of_unequal_mates(finished.pattern, finished.remarks);
  return finished;
}

bool is_finished(const Pattern& pattern) {
  const auto by_allowances = [](const Edge& edge) {
    return edge.finish.how != Finish::NotSaid && !is_said(edge);
  };
  return std::ranges::any_of(pattern.pieces, [&](const Piece& piece) {
    return std::ranges::any_of(piece.edges, by_allowances);
  });
}

}  // namespace blockwright
