#include "outlines.hpp"

#include "body_points.hpp"

namespace blockwright {
namespace {

using namespace body;

using BodyLines = std::vector<BodyLine>;
constexpr Vec kDown{0.0, -1.0}, kRight{1.0, 0.0}, kLeft{-1.0, 0.0};
constexpr auto kOne = BodyLine::Sides::One;
constexpr auto kBody = FigureInk::Body, kDetail = FigureInk::Detail, kGuide = FigureInk::Guide;

BodyLine level(const Stretch& across, double height) {
  return {kGuide, {{across.from, height}, {across.to, height}}, {}, kOne};
}

/// Front and back are seen in the same outline.
BodyLines trunk() {
  return {
      {kBody,
       {{52, 1447},
        {51, 1424},
        kSideNeck,
        {90, 1374},
        kShoulder,
        {205, 1325},
        {219, 1305},
        {226, 1272},
        {228, 1220},
        {233, 1160},
        {252, 1020},
        {266, 930},
        {275, 820}},
       {kDown, {}}},
      {kBody, {kUnderarm, {165, 1130}, {192, 1000}, {217, 905}, {232, 820}}},
      {kBody,
       {kUnderarm,
        {145, 1170},
        {133, 1105},
        kWaistSide,
        {134, 1000},
        {158, 920},
        kHipSide,
        {171, 770},
        {162, 680}},
       {{-0.02, -1.0}, {}}},
      {kBody, {{0, 764}, {3, 720}, {8, 680}}},
  };
}

const BodyLine kBreast{
    kDetail, {{136, 1165}, {121, 1132}, {88, 1117}, {56, 1124}}, {{-0.15, -1.0}, {}}};

BodyLines joined(BodyLines lines, const BodyLines& more) {
  lines.insert(lines.end(), more.begin(), more.end());
  return lines;
}

BodyLines front() {
  return joined(
      trunk(),
      {{kBody,
        {{0, kStature}, {46, 1614}, {71, 1556}, {68, 1500}, {51, 1448}, {27, 1421}, {0, 1414}},
        {kRight, kLeft}},
       {kDetail, {{0, 1604}, {42, 1586}, {62, 1545}, {68, 1500}}, {{1.0, -0.05}, {}}},
       {kDetail, {{15, 1333}, {58, 1347}, {112, 1353}}},
       kBreast,
       {kDetail, {kShoulder, {161, 1285}, kUnderarm}}});
}

BodyLines front_with_waist() {
  return joined(front(), {level({-kWaistSide.x, kWaistSide.x}, kWaistLevel)});
}

BodyLines back() {
  return joined(
      trunk(),
      {{kBody, {{0, kStature}, {46, 1614}, {71, 1556}, {68, 1500}, {52, 1447}}, {kRight, {}}},
       {kDetail, {{52, 1447}, {28, 1438}, {0, 1435}}, {{}, kLeft}},
       {kDetail, {{56, 1262}, {66, 1210}, {96, 1188}}, {kDown, {}}},
       {kDetail, {{10, 756}, {58, 739}, {106, 754}}},
       {kDetail, {{0, 885}, {0, 764}}, {}, kOne},
       {kDetail, {kShoulder, {163, 1285}, kUnderarm}},
       level({0.0, 34.0}, kNape.y),
       level({-kUnderarm.x, kUnderarm.x}, kArmpitLevel),
       level({-kWaistSide.x, kWaistSide.x}, kWaistLevel)});
}

/// The arm is left out; its root is drawn.
BodyLines side() {
  return {
      {kBody,
       {kSideCrown,
        {50, 1613},
        {84, 1566},
        {89, 1524},
        {105, 1493},
        {97, 1483},
        {98, 1452},
        {88, 1426},
        {66, 1416},
        {46, 1413}},
       {kRight, {-1.0, 0.05}},
       kOne},
      {kBody,
       {{46, 1413},
        {40, 1372},
        {52, 1326},
        {98, 1238},
        {129, 1182},
        {121, 1140},
        {97, 1112},
        {90, kWaistLevel},
        {103, 950},
        {99, 840},
        {93, 700},
        {76, 540},
        {58, 420},
        {46, 280},
        {35, 150},
        {44, 92},
        {100, 52},
        {142, 28},
        {138, 4}},
       {{-0.25, -1.0}, {}},
       kOne},
      {kBody,
       {kSideCrown,  {-68, 1606},  {-98, 1545}, {-86, 1480},        {-62, 1436}, {-64, 1404},
        {-95, 1330}, {-108, 1250}, {-92, 1140}, {-75, kWaistLevel}, {-96, 975},  {-132, 890},
        {-138, 840}, {-118, 775},  {-94, 720},  {-80, 620},         {-58, 480},  {-68, 400},
        {-80, 320},  {-66, 220},   {-46, 120},  {-50, 70},          {-64, 35},   {-58, 4}},
       {kLeft, {}},
       kOne},
      {kBody, {{-58, 4}, {138, 4}}, {}, kOne},
      {kDetail, {{36, 1618}, {26, 1560}, {-14, 1520}, {-44, 1496}, {-62, 1436}}, {}, kOne},
      {kDetail, {{-97, 1556}, {-126, 1580}, {-148, 1556}, {-132, 1527}, {-97, 1530}}, {}, kOne},
      {kDetail,
       {kSideShoulder, {34, 1285}, kSideUnderarm, {-52, 1285}, kSideShoulder},
       {kRight, kRight},
       kOne},
      level({-250.0, kSideCrown.x}, kStature),
      level({-250.0, 150.0}, 0.0),
      level({-75.0, 90.0}, kWaistLevel),
      level({-138.0, 99.0}, kHipLevel),
  };
}

/// Her left shoulder and arm from in front.
BodyLines arm() {
  BodyLines lines = {
      {kBody,
       {{52, 1462},
        {51, 1424},
        kSideNeck,
        {90, 1374},
        kShoulder,
        {205, 1325},
        {219, 1305},
        {226, 1272},
        {228, 1220},
        {233, 1160},
        {247, 1050}},
       {kDown, {}}},
      {kBody, {{-52, 1462}, {-51, 1424}, right(kSideNeck), {-90, 1374}}, {kDown, {}}},
      {kBody, {kUnderarm, {165, 1130}, {182, 1050}}},
      {kBody, {kUnderarm, {145, 1170}, {133, 1105}, {128, 1050}}, {{-0.02, -1.0}, {}}},
      kBreast,
  };
  for (BodyLine& line : lines) line.sides = kOne;
  lines.push_back(level({kSideNeck.x, 190.0}, kSideNeck.y));
  return lines;
}

}  // namespace

const std::vector<BodyLine>& outline_of(TapeFigure figure) {
  static const std::array<BodyLines, kTapeFigures.size()> all = {front(), back(),
                                                                 front_with_waist(), side(), arm()};
  return all[static_cast<std::size_t>(figure)];
}

Box frame_of(TapeFigure figure) {
  if (figure == TapeFigure::Side) return {-265.0, -12.0, 165.0, 1645.0};
  if (figure == TapeFigure::Arm) return {-105.0, 1040.0, 265.0, 1475.0};
  return {-290.0, 668.0, 290.0, 1642.0};
}

}  // namespace blockwright
