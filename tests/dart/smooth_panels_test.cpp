#include "blockwright/base/error.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "dart/dart_measures.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <iostream>
#include <map>

using namespace blockwright;
using namespace blockwright_tests;

namespace {
struct Stat { std::vector<double> v; };
std::map<std::string, std::vector<double>> stats;
void put(const std::string& k, double x) { stats[k].push_back(x); }
void dump() {
  for (auto& [k, v] : stats) {
    std::sort(v.begin(), v.end());
    auto q = [&](double f) { return v[static_cast<std::size_t>(f * static_cast<double>(v.size() - 1))]; };
    std::cout << k << " n " << v.size() << " min " << q(0) << " 5% " << q(.05) << " med " << q(.5) << " 95% " << q(.95) << " max " << q(1) << "\n";
  }
}
double width_at(const Piece& piece, double y) {
  std::vector<double> xs;
  for (const LineCrossing& hit : intersections(sewing_outline(piece), {0.0, y}, {1.0, 0.0})) {
    xs.push_back(hit.point.x);
  }
  std::sort(xs.begin(), xs.end());
  double width = 0.0;
  for (std::size_t i = 0; i + 1 < xs.size(); i += 2) width += xs[i + 1] - xs[i];
  return width;
}
}
TEST_CASE("probe smooth panels") {
  int made = 0;
  for (const Session& session : each_person(300, 81)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const std::string piece : {"front", "back"}) {
      for (const std::string from : {"shoulder", "armhole"}) {
        const std::string key = piece + " " + from + " ";
        try {
          Pattern ready = block;
          if (from == "armhole") ready = pivot(block, {piece + ".shoulder", piece + ".armhole", 1.0, std::nullopt, std::nullopt}).pattern;
          const Panels p = cut_into_panels(ready, {piece + "." + from, piece + ".waist", "", ""});
          if (errors_of(p.pattern) != "") std::cout << key << errors_of(p.pattern) << "\n";
          const Piece& c = p.pattern.piece(p.walk.centre_panel);
          const Piece& s = p.pattern.piece(p.walk.side_panel);
          const Path ce = c.edge("princess").path, se = s.edge("princess").path;
          put(key + "radius c", std::min(1000.0, least_radius(ce)));
          put(key + "radius s", std::min(1000.0, least_radius(se)));
          put(key + "infl c", inflections({ce}));
          put(key + "infl s", inflections({se}));
          put(key + "ease", p.walk.ease);
          put(key + "bulge", p.walk.bulge);
          put(key + "darts", static_cast<double>(c.darts.size() + s.darts.size()));
          put(key + "area", closed_area(c) + closed_area(s) - closed_area(ready.piece(piece)));
          double kink = 0;
          for (const Path& e : {ce, se}) for (std::size_t i = 0; i + 1 < e.curves().size(); ++i)
            kink = std::max(kink, std::abs(turn_between(tangent_at(e.curves()[i], 1.0), tangent_at(e.curves()[i + 1], 0.0)).degrees()));
          put(key + "kink", kink);
          const Piece& whole = ready.piece(piece);
          const Point bust = whole.landmark(piece == "front" ? "bust_point" : "blade_point");
          const double low = whole.landmark("side_waist_point").y + 12.0;
          const double high = from == "shoulder" ? std::min(whole.landmark("shoulder_point").y, whole.dart("shoulder").legs[0].y) - 5.0 : bust.y - 15;
          double theta = 0;
          for (const Dart& d : whole.darts) theta += d.angle().degrees();
          put(key + "theta", theta);
          double worst = 0, best = 0, wy = 0, by = 0;
          for (double y = low; y < high; y += 5.0) {
            const double off = width_at(c, y) + width_at(s, y) - width_at(whole, y);
            if (off > worst) { worst = off; wy = y - bust.y; }
            if (off < best) { best = off; by = y - bust.y; }
          }
          put(key + "wider", worst);
          put(key + "wider at", wy);
          if ( least_radius(se) < 19.5 || least_radius(ce) < 19.5) {
            for (const Dart& d : whole.darts) std::cout << "D " << d.name << " " << d.angle().degrees() << " at " << d.apex.x - bust.x << " " << d.apex.y - bust.y << " leg " << d.leg() << "\n";
            for (const Path& e : {ce, se}) for (const Curve& cv : e.curves()) std::cout << "C at " << start_of(cv).x - bust.x << " " << start_of(cv).y - bust.y << "\n";
            std::cout << "E " << key << p.walk.ease << "\n";
            for (const Curve& cv : ce.curves()) std::cout << "C c " << length(cv) << " r " << least_radius(Path({cv})) << " turn " << turn_between(tangent_at(cv, 0), tangent_at(cv, 1)).degrees() << "\n";
for (const Curve& cv : se.curves()) std::cout << "C " << length(cv) << " r " << least_radius(Path({cv})) << " turn " << turn_between(tangent_at(cv, 0), tangent_at(cv, 1)).degrees() << "\n";
            for (double y = low; y < high; y += 5.0) std::cout << "P " << y - bust.y << " " << width_at(c, y) + width_at(s, y) - width_at(whole, y) << "\n";
          }

          put(key + "narrower", best);
          if (best < -.5 || worst > .5) std::cout << "W " << key << theta << " " << best << " at " << by << ", " << worst << " at " << wy << "\n";
          ++made;
        } catch (const InputError& e) {
          std::cout << key << e.what() << "\n";
        }
      }
    }
  }
  dump();
  std::cout << made << "\n";
}
