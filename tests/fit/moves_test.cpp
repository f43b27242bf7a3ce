#include "blockwright/fit/apply.hpp"
#include "blockwright/base/error.hpp"
#include "support/blocks.hpp"
#include "support/people.hpp"
#include <catch2/catch.hpp>
#include <iostream>
using namespace blockwright;
TEST_CASE("dbg"){
  auto people = survey_people(40, 7);
  int i = 0;
  for (auto& p : people) {
    Pattern b = checked_block(p).block.pattern;
    const Piece& f = b.piece("front");
    auto get=[&](int row,int sign,double by,const char* n){ try { auto r = apply_rows(b, {{row,sign,by,AmountAs::Length,BodySide::Both,""}}); for (auto& m : r.effects[0].moved) if (m.name==n) return m.change(); return 0.0;} catch (const InputError& e) { return 999.0;} catch (const std::exception& e) { return 888.0; } };
    bool wd=false; for (auto& d : f.darts) wd |= d.name=="waist";
    Point ac=f.landmark("across_front_point"), up=f.landmark("underarm_point"), bp=f.landmark("bust_point");
    std::cout << i++ << " wd " << wd << " theta " << f.dart("shoulder").angle().degrees() << " ac-up " << ac.x-up.x << "," << ac.y-up.y << " bp-up " << bp.x-up.x << "," << bp.y-up.y << " | 19: f " << get(19,1,10,"front.armhole") << " b " << get(19,1,10,"back.armhole") << " | 23: " << get(23,1,6,"front.armhole") << " | 27-20 " << get(28,1,20,"front.armhole") << "\n";
    auto c=f.edge("armhole").path.curves(); auto q=std::get<CubicCurve>(c[0]); if(i<6||i==13) std::cout << "   " << q.p0.x<<","<<q.p0.y<<" "<<q.p1.x<<","<<q.p1.y<<" "<<q.p2.x<<","<<q.p2.y<<" "<<q.p3.x<<","<<q.p3.y<<"\n";
  }
}
