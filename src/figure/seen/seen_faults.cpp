#include "seen_faults.hpp"

#include "blockwright/base/error.hpp"

#include <array>

namespace blockwright {
namespace {

using enum CorrectionRow;
using Kind = SeenMark::Kind;

constexpr auto kFront = TapeFigure::Front, kBack = TapeFigure::Back, kSide = TapeFigure::Side;

// Marks on both sides of her; those that end in 1 are there once.
constexpr SeenMark tight(Point a, Point b) { return {Kind::Crease, a, b}; }
constexpr SeenMark loose(Point a, Point b) { return {Kind::Fold, a, b}; }
constexpr SeenMark edge(Point a, Point b, double bow) { return {Kind::Edge, a, b, bow}; }
constexpr SeenMark arrow(Point a, Point b) { return {Kind::Arrow, a, b}; }
constexpr SeenMark once(SeenMark mark) {
  mark.sides = BodyLine::Sides::One;
  return mark;
}
constexpr SeenMark tight1(Point a, Point b) { return once(tight(a, b)); }
constexpr SeenMark loose1(Point a, Point b) { return once(loose(a, b)); }
constexpr SeenMark edge1(Point a, Point b, double bow) { return once(edge(a, b, bow)); }
constexpr SeenMark arrow1(Point a, Point b) { return once(arrow(a, b)); }

using Marks = ShortList<SeenMark, 8>;

/// A dart of the toile: where its stitching ends, and which way it points, by 1 mm.
struct DrawnDart {
  Point tip;
  Vec ahead;
};
constexpr DrawnDart kFrontWaist{{88, 1150}, {0.05, 1.0}}, kFrontShoulder{{95, 1202}, {-0.16, -1.0}},
    kBackWaist{{74, 1190}, {0.02, 1.0}}, kBackShoulder{{98, 1290}, {-0.25, -1.0}};

constexpr Point off(const DrawnDart& dart, double ahead, double aside) {
  const auto [x, y] = dart.ahead;
  return {dart.tip.x + ahead * x - aside * y, dart.tip.y + ahead * y + aside * x};
}
/// The cloth pokes beyond the point.
constexpr Marks pucker(const DrawnDart& d) {
  return {tight(off(d, 4, 0), off(d, 26, 0)), tight(off(d, 3, 5), off(d, 20, 16)),
          tight(off(d, 3, -5), off(d, 20, -16))};
}
/// It stands out short of where the body does.
constexpr Marks dimple(const DrawnDart& d) { return {loose(off(d, 14, -22), off(d, 14, 22))}; }
constexpr Marks slack_round(const DrawnDart& d) {
  return {loose(off(d, -62, 24), off(d, -6, 12)), loose(off(d, -62, -24), off(d, -6, -12))};
}
constexpr Marks strain_round(const DrawnDart& d) {
  return {tight(off(d, -14, -26), off(d, -14, 26)), tight(off(d, -30, -32), off(d, -30, 32)),
          tight(off(d, -46, -28), off(d, -46, 28))};
}

// From common practice of reading folds (docs/fitting.md); the drawings are ours.
// clang-format off
constexpr std::array kFaults = std::to_array<SeenFault>({
    // Neck.
    {FrontNeckLower, 1, kFront, {edge1({-50, 1376}, {50, 1376}, -28), tight({12, 1336}, {36, 1345}),
     tight({12, 1323}, {46, 1337})}},
    {FrontNeckHigher, 1, kFront, {edge({58, 1390}, {0, 1296}, 24),
     arrow1({0, 1326}, {0, 1294})}},
    {NeckWider, 1, kFront, {tight1({0, 1326}, {0, 1302}), tight({26, 1336}, {36, 1314}),
     tight({46, 1358}, {66, 1342}), tight({62, 1386}, {86, 1368}),
     arrow({104, 1022}, {104, 1050})}},
    {NeckNarrower, 1, kFront, {edge1({-76, 1385}, {76, 1385}, -92),
     edge1({-76, 1385}, {76, 1385}, -78)}},
    {FrontNeckEdgeTakenIn, 1, kFront, {loose({34, 1342}, {78, 1216}),
     edge({10, 1330}, {52, 1374}, -15)}},
    {BackNeckEdgeTakenIn, 1, kSide, {edge1({-96, 1414}, {-106, 1322}, 5),
     edge1({-14, 1396}, {-96, 1414}, -4)}},
    {BackNeckLower, 1, kBack, {loose1({-46, 1382}, {46, 1382}), loose1({-38, 1367}, {38, 1367})}},
    {BackNeckLower, -1, kBack, {edge1({-58, 1394}, {58, 1394}, -38), arrow1({0, 1402}, {0, 1362})}},
    {SideNeckWider, 1, kFront, {tight({60, 1388}, {88, 1376}), tight({56, 1374}, {80, 1360})}},
    {SideNeckWider, -1, kFront, {edge({90, 1376}, {16, 1330}, 16), arrow({62, 1400}, {88, 1388})}},
    // Shoulder.
    {ShoulderShorter, 1, kFront, {edge({212, 1316}, {150, 1226}, 12),
     arrow({112, 1384}, {160, 1358})}},
    {ShoulderLonger, 1, kFront, {edge({146, 1352}, {147, 1228}, -22),
     arrow({182, 1350}, {152, 1364})}},
    {ShoulderPointHigher, 1, kFront, {tight({172, 1324}, {44, 1276}),
     tight({174, 1334}, {60, 1304}), edge({68, 1412}, {182, 1338}, 9),
     arrow({92, 1376}, {97, 1398})}},
    {ShoulderPointLower, 1, kFront, {loose({66, 1372}, {132, 1244}),
     loose({90, 1364}, {142, 1264})}},
    {ShoulderPointForward, 1, kSide, {edge1({-10, 1396}, {-38, 1338}, 0),
     tight1({-56, 1296}, {-88, 1302}), tight1({-56, 1276}, {-90, 1276})}},
    {ShoulderPointForward, -1, kSide, {edge1({-10, 1396}, {20, 1336}, 0),
     tight1({36, 1296}, {60, 1304}), tight1({36, 1276}, {68, 1280})}},
    {ShoulderSeamForward, 1, kSide, {edge1({-36, 1402}, {-38, 1336}, 0),
     arrow1({-12, 1366}, {-34, 1366})}},
    {ShoulderSeamForward, -1, kSide, {edge1({18, 1386}, {18, 1334}, 0),
     arrow1({-10, 1362}, {14, 1362})}},
    {FrontShoulderTakenUp, 1, kFront, {edge1({-126, 1160}, {126, 1160}, -28),
     arrow1({0, 1126}, {0, 1092}), loose({24, 1110}, {84, 1104})}},
    {FrontShoulderTakenUp, -1, kFront, {edge1({-126, 1166}, {126, 1166}, 28),
     arrow1({0, 1150}, {0, 1184}), tight({62, 1380}, {72, 1300}), tight({78, 1374}, {86, 1296})}},
    {BackShoulderTakenUp, 1, kBack, {edge1({-130, 1226}, {130, 1226}, -28),
     arrow1({0, 1190}, {0, 1156}), loose({22, 1176}, {84, 1170})}},
    {BackShoulderTakenUp, -1, kBack, {edge1({-130, 1226}, {130, 1226}, 28),
     arrow1({0, 1212}, {0, 1246}), tight({62, 1382}, {66, 1310}), tight({78, 1376}, {80, 1306})}},
    {BackShoulderDartWider, 1, kBack, {tight({70, 1262}, {34, 1280}), tight({66, 1246}, {26, 1246}),
     tight({100, 1262}, {138, 1280}), tight({104, 1246}, {142, 1246}),
     tight({86, 1234}, {86, 1204})}},
    {BackShoulderDartWider, -1, kBack, {loose({94, 1368}, {88, 1334}),
     loose({112, 1362}, {106, 1328}), loose({132, 1354}, {126, 1322})}},
    {UpperChestTakenIn, 1, kFront, {loose({24, 1296}, {124, 1292}),
     loose({28, 1274}, {128, 1268})}},
    // Armhole.
    {UnderarmLower, 1, kFront, {tight({140, 1222}, {112, 1206}), tight({146, 1220}, {130, 1188}),
     tight({148, 1240}, {122, 1236}), arrow({104, 1022}, {104, 1050})}},
    {UnderarmHigher, 1, kFront, {edge({160, 1284}, {140, 1190}, -14),
     loose({104, 1196}, {138, 1176}), loose({100, 1178}, {136, 1154})}},
    {FrontArmholeScooped, 1, kFront, {tight({158, 1290}, {130, 1292}),
     tight({153, 1270}, {122, 1264}), tight({150, 1250}, {122, 1236})}},
    {FrontArmholeScooped, -1, kFront, {edge({184, 1335}, {147, 1228}, -28),
     arrow({160, 1284}, {130, 1284})}},
    {BackArmholeFilled, 1, kBack, {tight({158, 1292}, {112, 1272}), tight({153, 1270}, {112, 1250}),
     tight({150, 1248}, {114, 1230})}},
    {BackArmholeFilled, -1, kBack, {edge({184, 1335}, {147, 1228}, 10),
     loose({150, 1312}, {138, 1240})}},
    {FrontArmholeEdgeTakenIn, 1, kFront, {loose({150, 1264}, {104, 1194}),
     edge({166, 1296}, {147, 1232}, 12)}},
    {BackArmholeEdgeTakenIn, 1, kBack, {loose({150, 1266}, {100, 1246}),
     edge({166, 1296}, {147, 1232}, 12)}},
    {ArmholeLarger, 1, kFront, {tight({176, 1328}, {156, 1318}), tight({158, 1292}, {132, 1290}),
     tight({151, 1258}, {124, 1250}), tight({146, 1226}, {126, 1206})}},
    {ArmholeLarger, -1, kFront, {edge({184, 1335}, {140, 1196}, -34),
     edge({184, 1335}, {140, 1196}, -20)}},
    // Bust.
    {BustPointHigher, 1, kFront, {edge1({-122, 1142}, {122, 1142}, 0),
     arrow({90, 1175}, {90, 1146})}},
    {BustPointHigher, -1, kFront, {edge1({-130, 1208}, {130, 1208}, 0),
     arrow({90, 1175}, {90, 1204})}},
    {FullerBust, 1, kFront, {tight({98, 1184}, {126, 1204}), tight({102, 1174}, {134, 1172}),
     tight({92, 1164}, {98, 1132}), tight({80, 1168}, {52, 1144}), tight({80, 1182}, {52, 1202}),
     arrow1({0, 1030}, {0, 1072})}},
    {SmallerBust, 1, kFront, {loose({56, 1166}, {124, 1166}), loose({58, 1144}, {120, 1144}),
     loose({62, 1122}, {114, 1122})}},
    {DartShorter, 1, kFront, pucker(kFrontShoulder), "front_shoulder_dart"},
    {DartShorter, -1, kFront, dimple(kFrontShoulder), "front_shoulder_dart"},
    {DartShorter, 1, kBack, pucker(kBackShoulder), "back_shoulder_dart"},
    {DartShorter, -1, kBack, dimple(kBackShoulder), "back_shoulder_dart"},
    {DartShorter, 1, kBack, pucker(kBackWaist), "back_waist_dart"},
    {DartShorter, -1, kBack, dimple(kBackWaist), "back_waist_dart"},
    {DartShorter, 1, kFront, pucker(kFrontWaist)},
    {DartShorter, -1, kFront, dimple(kFrontWaist)},
    {FrontShoulderDartWider, 1, kFront, slack_round(kFrontShoulder)},
    {FrontShoulderDartWider, -1, kFront, strain_round(kFrontShoulder)},
    {BustPointsApart, 1, kFront, {edge({36, 1056}, {46, 1160}, 0), edge({60, 1056}, {46, 1160}, 0),
     tight({46, 1166}, {46, 1190}), tight({40, 1165}, {30, 1184}),
     edge({82, 1176}, {102, 1176}, 10), edge({82, 1176}, {102, 1176}, -10),
     arrow({54, 1176}, {78, 1176})}},
    {BustPointsApart, -1, kFront, {edge({106, 1056}, {128, 1160}, 0),
     edge({128, 1056}, {128, 1160}, 0), tight({128, 1166}, {128, 1190}),
     tight({132, 1165}, {138, 1184}), edge({72, 1176}, {92, 1176}, 10),
     edge({72, 1176}, {92, 1176}, -10), arrow({122, 1176}, {98, 1176})}},
    {UnderBustTakenIn, 1, kFront, {loose({50, 1108}, {120, 1104}), loose({54, 1090}, {120, 1086})}},
    // Back.
    {AcrossBackWider, 1, kBack, {tight1({-66, 1284}, {66, 1284}), tight1({-70, 1264}, {70, 1264}),
     tight1({-66, 1244}, {66, 1244}), arrow({84, 1264}, {116, 1264})}},
    {AcrossBackNarrower, 1, kBack, {loose({144, 1300}, {136, 1204}),
     loose({128, 1304}, {120, 1202})}},
    {UpperBackLonger, 1, kBack, {tight({86, 1240}, {142, 1216}), tight({82, 1222}, {138, 1192}),
     arrow1({0, 1030}, {0, 1074})}},
    {BackLongerBelowNape, 1, kBack, {tight1({0, 1398}, {0, 1366}), tight({16, 1398}, {22, 1364}),
     tight({34, 1394}, {46, 1362})}},
    {UpperBackShorter, 1, kBack, {loose1({-68, 1270}, {68, 1270}), loose1({-72, 1248}, {72, 1248}),
     loose1({-68, 1226}, {68, 1226})}},
    {BackWaistShorter, 1, kBack, {loose1({-62, 1076}, {62, 1076}),
     loose1({-54, 1094}, {54, 1094})}},
    {BackWaistShorter, -1, kBack, {edge1({-127, 1058}, {127, 1058}, 24),
     arrow1({0, 1038}, {0, 1078}), tight({20, 1102}, {20, 1170})}},
    // Lengths.
    {LongerBelowBust, 1, kFront, {edge1({-127, 1086}, {127, 1086}, -4),
     arrow({96, 1054}, {96, 1082})}},
    {LongerBelowBust, -1, kFront, {edge1({-130, 1026}, {130, 1026}, -4),
     arrow({96, 1056}, {96, 1028}), loose({24, 1082}, {84, 1082})}},
    {LongerAboveBust, 1, kFront, {edge1({-130, 1206}, {130, 1206}, 0),
     arrow({60, 1176}, {60, 1203}), tight({142, 1224}, {114, 1216}),
     edge1({-50, 1376}, {50, 1376}, -26)}},
    {LongerAboveBust, -1, kFront, {edge1({-122, 1144}, {122, 1144}, 0),
     arrow({60, 1176}, {60, 1148}), loose({34, 1276}, {124, 1272}),
     edge({58, 1390}, {0, 1300}, 24)}},
    {FrontWaistLonger, 1, kFront, {edge1({-127, 1056}, {127, 1056}, 28),
     arrow1({0, 1040}, {0, 1080})}},
    {FrontWaistLonger, -1, kFront, {edge1({-127, 1056}, {127, 1056}, -28),
     arrow1({0, 1066}, {0, 1032})}},
    {SideSeamForward, 1, kSide, {edge1({-6, 1228}, {-44, 1056}, 0),
     arrow1({-8, 1044}, {-42, 1044})}},
    {SideSeamBack, 1, kSide, {edge1({-6, 1228}, {34, 1056}, 0), arrow1({-6, 1044}, {32, 1044})}},
    // Waist and centre seams.
    {WaistTakenIn, 1, kBack, slack_round(kBackWaist), "back_waist_dart"},
    {WaistTakenIn, -1, kBack, strain_round(kBackWaist), "back_waist_dart"},
    {WaistTakenIn, 1, kFront, slack_round(kFrontWaist), "front_waist_dart"},
    {WaistTakenIn, -1, kFront, strain_round(kFrontWaist), "front_waist_dart"},
    {WaistTakenIn, 1, kFront, {loose({30, 1060}, {34, 1118}), loose({60, 1060}, {64, 1120}),
     loose({114, 1062}, {120, 1118})}},
    {WaistTakenIn, -1, kFront, {tight1({-112, 1060}, {112, 1060}),
     tight1({-118, 1074}, {118, 1074}), tight1({-110, 1088}, {110, 1088})}},
    {CentreSeamTakenIn, 1, kFront, {loose({10, 1128}, {10, 1216})}, "centre_front"},
    {CentreSeamTakenIn, -1, kFront, {tight1({-60, 1186}, {60, 1186}),
     tight1({-62, 1172}, {62, 1172}), tight1({-58, 1158}, {58, 1158})}, "centre_front"},
    {CentreSeamTakenIn, 1, kBack, {loose({10, 1064}, {8, 1200})}},
    {CentreSeamTakenIn, -1, kBack, {tight1({-50, 1066}, {50, 1066}),
     tight1({-54, 1084}, {54, 1084}), tight1({-50, 1102}, {50, 1102})}},
    // One side of the body: her right.
    {OneShoulderLower, 1, kFront, {loose1({-66, 1372}, {-132, 1244}),
     loose1({-90, 1364}, {-142, 1264}), arrow1({-170, 1372}, {-170, 1346})}},
    {OneShoulderLower, -1, kFront, {tight1({-172, 1324}, {-44, 1276}),
     tight1({-174, 1334}, {-60, 1304})}},
    {OneBreastFuller, 1, kFront, {tight1({-98, 1184}, {-126, 1204}),
     tight1({-102, 1174}, {-134, 1172}), tight1({-92, 1164}, {-98, 1132}),
     tight1({-80, 1168}, {-52, 1144}), tight1({-80, 1182}, {-52, 1202})}},
    {OneBreastFuller, -1, kFront, {loose1({-56, 1166}, {-124, 1166}),
     loose1({-58, 1144}, {-120, 1144}), loose1({-62, 1122}, {-114, 1122})}},
    {OneSideOfWaistHigher, 1, kFront, {edge1({-128, 1080}, {127, 1056}, 0),
     loose1({-112, 1100}, {-52, 1094}), loose1({-114, 1116}, {-58, 1110})}},
    {OneSideOfWaistHigher, -1, kFront, {edge1({-130, 1030}, {127, 1056}, 0),
     tight1({-112, 1074}, {-112, 1130}), tight1({-94, 1070}, {-94, 1124})}},
    // Bust girth at the side seam.
    {BustLetOutAtSide, 1, kFront, {tight1({-124, 1190}, {124, 1190}),
     tight1({-128, 1175}, {128, 1175}), tight1({-122, 1160}, {122, 1160})}},
    {BustLetOutAtSide, -1, kFront, {loose({134, 1206}, {128, 1120}),
     loose({118, 1204}, {112, 1116})}},
    // Both shoulders.
    {ShouldersTakenUp, 1, kFront, {edge1({-122, 1144}, {122, 1144}, 0),
     arrow({90, 1176}, {90, 1148}), loose({42, 1330}, {132, 1326}), loose({36, 1306}, {136, 1302})}},
    {ShouldersTakenUp, -1, kFront, {edge1({-130, 1206}, {130, 1206}, 0),
     arrow({90, 1175}, {90, 1203}), tight({100, 1376}, {100, 1330}),
     tight({124, 1366}, {122, 1322})}},
});
// clang-format on

constexpr bool is_for(const SeenFault& fault, const SeenRow& seen) {
  return fault.row == seen.row && fault.sign == seen.sign &&
         (fault.place.empty() || fault.place == seen.place);
}

consteval bool every_fault_is_drawn() {
  for (const FittingRow& row : kCorrections) {
    for (const RowWords& words : row.words) {
      const SeenRow seen{row.row, words.sign, words.place};
      const auto* const found = std::find_if(kFaults.begin(), kFaults.end(),
                                             [&](const SeenFault& f) { return is_for(f, seen); });
      if (found == kFaults.end() || found->marks.empty()) return false;
    }
  }
  return true;
}
static_assert(every_fault_is_drawn(),
              "a row of the fitting catalogue, or its reverse, is not drawn");

}  // namespace

const SeenFault& fault_of(const SeenRow& seen) {
  const auto* const found = std::find_if(
      kFaults.begin(), kFaults.end(), [&](const SeenFault& fault) { return is_for(fault, seen); });
  require(found != kFaults.end(), "no such fault is drawn");
  return *found;
}

}  // namespace blockwright
