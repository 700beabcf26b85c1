// SPDX-License-Identifier: Apache-2.0
// Long because every form of house stands beside its figures by hand.
// The shell as planes and layers: figures by hand, identities of closed solids, and what is refused.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <optional>

#include "models/properties/constants.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/house_shape.hpp"

namespace noonhouse {
namespace {

using small_scenario::kText;
using small_scenario::with;

constexpr double kTiny = 1e-12;         ///< rounding of figures of a few metres
constexpr double kHairOfMetres = 1e-8;  ///< the section is cut a billionth of a stretch beside its corners

HouseSpec house(HouseForm form, double width_m, double eaves_m, double ridge_m, int arch_parts = 3) {
  HouseSpec out;
  out.form = form;
  out.length_m = 6.0;
  out.width_m = width_m;
  out.eaves_m = eaves_m;
  out.ridge_m = ridge_m;
  out.faces_rad = kPi;
  out.layers = 4;
  out.arch_parts = arch_parts;
  out.bays = {{"west", {0.6}}, {"east", {0.4}}};
  return out;
}

/// Gable of the sides 1.5, 0.8, 1.7; lean-to of 2.4, 1.0, 2.6; hoops on the ground and on walls; a box.
std::array<HouseSpec, 5> one_of_each() {
  return {house(HouseForm::gable, 3.0, 2.0, 2.8), house(HouseForm::lean_to, 2.4, 1.5, 2.5),
          house(HouseForm::hoop, 6.0, 0.0, 3.0), house(HouseForm::hoop, 4.0, 1.0, 2.2),
          house(HouseForm::flat_roof, 3.0, 2.4, 2.4)};
}

const Facet& facet(const HouseShape& shape, int bay, WallSide side, double height_m = 0.0) {
  const int index = shape.facet_index(bay, side, height_m);
  NOON_ASSERT(index >= 0);
  return shape.facets[static_cast<std::size_t>(index)];
}

/// Of a closed line, by the surveyor's formula.
double polygon_area(const std::vector<ShapeCorner>& corners) {
  double twice = 0.0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const ShapeCorner &a = corners[i], &b = corners[(i + 1) % corners.size()];
    twice += a.y_m * b.z_m - b.y_m * a.z_m;
  }
  return 0.5 * std::abs(twice);
}

double roof_area(const HouseShape& shape) {
  double sum = 0.0;
  for (const Facet& f : shape.facets)
    if (f.roof()) sum += f.area_m2;
  return sum;
}

void expect_faces(const Facet& f, double azimuth_deg) {
  EXPECT_NEAR(std::sin(f.azimuth_rad - azimuth_deg * kPi / 180.0), 0.0, kTiny) << f.name;
  EXPECT_GT(std::cos(f.azimuth_rad - azimuth_deg * kPi / 180.0), 0.0) << f.name;
}

TEST(HouseShape, GableHasTheAreasAndSlopesOfItsTriangle) {
  // 1.5 m across, 0.8 m up: slope length 1.7 m, slope atan(0.8 / 1.5). West bay 3.6 m long. Section 6 + 1.2 = 7.2 m2.
  const HouseShape shape = shape_of(one_of_each()[0]);
  ASSERT_EQ(shape.facets.size(), 2U * 4U + 2U);
  EXPECT_DOUBLE_EQ(shape.top_m, 2.8);
  EXPECT_DOUBLE_EQ(shape.plan_area_m2(), 18.0);
  EXPECT_NEAR(facet(shape, 0, WallSide::roof_front).area_m2, 6.12, kTiny);
  EXPECT_NEAR(facet(shape, 1, WallSide::roof_back).area_m2, 4.08, kTiny);
  EXPECT_NEAR(facet(shape, 0, WallSide::front).area_m2, 7.2, kTiny);
  EXPECT_NEAR(facet(shape, 0, WallSide::first_end).area_m2, 7.2, kHairOfMetres);
  EXPECT_NEAR(facet(shape, 0, WallSide::roof_front).slope_rad, std::atan2(0.8, 1.5), kTiny);
  EXPECT_NEAR(facet(shape, 0, WallSide::roof_back).slope_rad, std::atan2(0.8, 1.5), kTiny);
  EXPECT_NEAR(facet(shape, 0, WallSide::back).slope_rad, kPi / 2.0, kTiny);
  EXPECT_DOUBLE_EQ(facet(shape, 0, WallSide::roof_front).bottom_m, 2.0);
  EXPECT_DOUBLE_EQ(facet(shape, 0, WallSide::roof_front).top_m, 2.8);
}

TEST(HouseShape, AzimuthsGoClockwiseFromTheFront) {
  // The front looks south, so its clockwise neighbour, the first end, looks west.
  for (const HouseSpec& spec : one_of_each()) {
    const HouseShape shape = shape_of(spec);
    expect_faces(facet(shape, 0, WallSide::first_end), 270.0);
    expect_faces(facet(shape, 1, WallSide::last_end), 90.0);
    for (const Facet& f : shape.facets) {
      if (f.side == WallSide::front || (f.side == WallSide::roof_front && f.slope_rad > 0.0)) expect_faces(f, 180.0);
      if (f.side == WallSide::back || f.side == WallSide::roof_back) expect_faces(f, 0.0);
    }
  }
}

TEST(HouseShape, LeanToHasOneRoofThatLooksToTheFront) {
  // 2.4 m across, 1 m up: slope length 2.6 m. Section (1.5 + 2.5) / 2 x 2.4 = 4.8 m2.
  const HouseShape shape = shape_of(one_of_each()[1]);
  EXPECT_EQ(shape.facet_index(0, WallSide::roof_back), -1);
  const Facet& roof = facet(shape, 0, WallSide::roof_front);
  EXPECT_NEAR(roof.area_m2, 2.6 * 3.6, kTiny);
  EXPECT_NEAR(roof.slope_rad, std::atan2(1.0, 2.4), kTiny);
  EXPECT_NEAR(facet(shape, 0, WallSide::front).area_m2, 1.5 * 3.6, kTiny);
  EXPECT_NEAR(facet(shape, 0, WallSide::back).area_m2, 2.5 * 3.6, kTiny);
  EXPECT_NEAR(facet(shape, 1, WallSide::last_end).area_m2, 4.8, kHairOfMetres);
  EXPECT_NEAR(shape.bays[0].volume_m3 + shape.bays[1].volume_m3, 4.8 * 6.0, 6.0 * kHairOfMetres);
}

TEST(HouseShape, FlatRoofIsABox) {
  const HouseShape shape = shape_of(one_of_each()[4]);
  const Facet& roof = facet(shape, 0, WallSide::roof_front);
  EXPECT_EQ(shape.facet_index(0, WallSide::roof_back), -1);
  EXPECT_DOUBLE_EQ(roof.slope_rad, 0.0);
  EXPECT_NEAR(roof.area_m2, 3.0 * 3.6, kTiny);
  EXPECT_DOUBLE_EQ(roof.bottom_m, roof.top_m);
  for (const LayerShape& layer : shape.bays[0].layers) {
    EXPECT_NEAR(layer.volume_m3, 3.0 * 3.6 * 0.6, kHairOfMetres);
    EXPECT_NEAR(layer.top_area_m2, 3.0 * 3.6, kHairOfMetres);
  }
}

TEST(HouseShape, HoopIsAnInscribedPolygon) {
  // 2 n chords of a half circle of radius 3 m: each is 2 r sin(pi / 4n) long; the section is 2 n triangles of
  // r^2 sin(pi / 2n) / 2.
  for (const int n : {1, 2, 3, 12}) {
    const HouseShape shape = shape_of(house(HouseForm::hoop, 6.0, 0.0, 3.0, n));
    const double chord = 6.0 * std::sin(kPi / (4 * n));
    EXPECT_NEAR(roof_area(shape), 2 * n * chord * 6.0, 1e-10);
    EXPECT_NEAR(facet(shape, 0, WallSide::first_end).area_m2, n * 9.0 * std::sin(kPi / (2 * n)), 10 * kHairOfMetres);
    EXPECT_EQ(shape.facet_index(0, WallSide::front), -1) << "a hoop on the ground has no walls";
    for (const Facet& f : shape.facets)
      if (f.roof()) {
        EXPECT_NEAR(f.area_m2, chord * shape.bays[static_cast<std::size_t>(f.bay)].length_m, 1e-10) << f.name;
      }
  }
}

TEST(HouseShape, HoopTendsToTheHalfCylinderWithTheSquareOfItsParts) {
  // sin(x) / x = 1 - x^2 / 6 + ...: twice as many parts leave a quarter of the defect, up to terms of x^2 / 20.
  const double round = kPi * 3.0 * 6.0;
  double before = round - roof_area(shape_of(house(HouseForm::hoop, 6.0, 0.0, 3.0, 2)));
  for (const int n : {4, 8, 16, 32}) {
    const double defect = round - roof_area(shape_of(house(HouseForm::hoop, 6.0, 0.0, 3.0, n)));
    const double x = kPi / (4 * n);
    EXPECT_GT(defect, 0.0) << "chords are shorter than the arch";
    EXPECT_NEAR(before / defect, 4.0, 4.0 * x * x);
    before = defect;
  }
  EXPECT_LT(before / round, 1.1e-4);  // x^2 / 6 at 32 parts
}

TEST(HouseShape, FacetsAndFloorClose) {
  // Of every closed solid the areas times outward normals add up to nothing.
  for (HouseSpec spec : one_of_each())
    for (const double faces_deg : {0.0, 30.0, 180.0, 275.0}) {
      spec.faces_rad = faces_deg * kPi / 180.0;
      const HouseShape shape = shape_of(spec);
      std::array<double, 3> sum{0.0, 0.0, -shape.length_m * shape.width_m};
      for (const Facet& f : shape.facets) {
        sum[0] += f.area_m2 * std::sin(f.slope_rad) * std::sin(f.azimuth_rad);
        sum[1] += f.area_m2 * std::sin(f.slope_rad) * std::cos(f.azimuth_rad);
        sum[2] += f.area_m2 * std::cos(f.slope_rad);
      }
      for (const double component : sum) EXPECT_NEAR(component, 0.0, 10 * kHairOfMetres);
    }
}

TEST(HouseShape, LayersFillTheBayAndShareItsSection) {
  for (const HouseSpec& spec : one_of_each()) {
    const HouseShape shape = shape_of(spec);
    const double section = polygon_area(shape.profile);
    for (const BayShape& bay : shape.bays) {
      ASSERT_EQ(bay.layers.size(), 4U);
      double volume = 0.0, across = 0.0;
      for (const LayerShape& layer : bay.layers) {
        volume += layer.volume_m3;
        across += layer.section_area_m2;
        EXPECT_NEAR(layer.top_m - layer.bottom_m, shape.top_m / 4.0, kTiny);
      }
      EXPECT_NEAR(across, section, 10 * kHairOfMetres);
      EXPECT_NEAR(volume, section * bay.length_m, 100 * kHairOfMetres);
      EXPECT_NEAR(bay.volume_m3, volume, 1e-10);
      EXPECT_NEAR(bay.floor_m2, bay.length_m * shape.width_m, kTiny);
    }
    EXPECT_NEAR(facet(shape, 0, WallSide::first_end).area_m2, section, 10 * kHairOfMetres);
  }
}

TEST(HouseShape, GableLayersByHand) {
  // Layers of 0.7 m. The top one is a triangle 3 x 0.7 / 0.8 = 2.625 m wide at 2.1 m: 0.91875 m2. The one below it has
  // 0.6 m of 3 m and 0.1 m of (3 + 2.625) / 2: 2.08125 m2.
  const HouseShape shape = shape_of(one_of_each()[0]);
  const auto& layers = shape.bays[0].layers;
  EXPECT_NEAR(layers[0].section_area_m2, 2.1, kHairOfMetres);
  EXPECT_NEAR(layers[1].section_area_m2, 2.1, kHairOfMetres);
  EXPECT_NEAR(layers[2].section_area_m2, 2.08125, kHairOfMetres);
  EXPECT_NEAR(layers[3].section_area_m2, 0.91875, kHairOfMetres);
  EXPECT_NEAR(layers[2].top_area_m2, 2.625 * 3.6, kHairOfMetres);
  EXPECT_NEAR(layers[3].top_area_m2, 0.0, kHairOfMetres);
  EXPECT_EQ(shape.layer_at(0.0), 0);
  EXPECT_EQ(shape.layer_at(0.75), 1);
  EXPECT_EQ(shape.layer_at(2.2), 3);
  EXPECT_EQ(shape.layer_at(99.0), 3);
}

TEST(HouseShape, FacetsOfAnArchAreFoundByHeight) {
  // Radius 3 m, three parts a half: corners at 0, 1.5, 2.598 and 3 m.
  const HouseShape shape = shape_of(one_of_each()[2]);
  for (const WallSide side : {WallSide::roof_front, WallSide::roof_back}) {
    EXPECT_NEAR(facet(shape, 0, side, 1.0).top_m, 1.5, kTiny);
    EXPECT_NEAR(facet(shape, 0, side, 2.0).bottom_m, 1.5, kTiny);
    EXPECT_NEAR(facet(shape, 0, side, 2.0).top_m, 3.0 * std::sin(kPi / 3.0), kTiny);
    EXPECT_NEAR(facet(shape, 0, side, 2.9).top_m, 3.0, kTiny);
    EXPECT_NEAR(facet(shape, 0, side, 1.0).slope_rad, 75.0 * kPi / 180.0, kTiny);
    EXPECT_NEAR(facet(shape, 0, side, 2.0).slope_rad, 45.0 * kPi / 180.0, kTiny);
    EXPECT_NEAR(facet(shape, 0, side, 2.9).slope_rad, 15.0 * kPi / 180.0, kTiny);
    const HouseShape::Side whole = shape.side_of(0, side);
    EXPECT_NEAR(whole.area_m2, 3 * 6.0 * std::sin(kPi / 12.0) * 3.6, 1e-10);
    EXPECT_DOUBLE_EQ(whole.bottom_m, 0.0);
    EXPECT_DOUBLE_EQ(whole.top_m, 3.0);
  }
  EXPECT_EQ(shape.facet_index(0, WallSide::last_end), -1);
  EXPECT_EQ(shape.facet_index(1, WallSide::first_end), -1);
  EXPECT_EQ(facet(shape, 1, WallSide::roof_back, 2.0).bay, 1);
}

TEST(HouseShape, ReachesAcrossAsFarAsItsProfile) {
  // Hoop: at the corner of 1.5 m the half width is 3 cos 30 deg; at 0.75 m halfway along the chord from 3 m.
  const HouseShape hoop = shape_of(one_of_each()[2]);
  const double corner = 3.0 * std::cos(kPi / 6.0);
  EXPECT_NEAR(hoop.width_at(1.5), 2.0 * corner, kTiny);
  EXPECT_NEAR(hoop.across_at(0.75).front_m, 0.5 * (3.0 + corner), kTiny);
  EXPECT_NEAR(hoop.width_at(3.0), 0.0, kTiny);
  EXPECT_NEAR(hoop.width_at(3.5), 0.0, kTiny);
  // Lean-to: at 2 m, halfway up its roof, only the back half is left.
  const HouseShape lean_to = shape_of(one_of_each()[1]);
  EXPECT_NEAR(lean_to.across_at(2.0).front_m, 0.0, kTiny);
  EXPECT_NEAR(lean_to.across_at(2.0).back_m, -1.2, kTiny);
}

BenchSpec bench(const char* bay, double length_m, double width_m, std::optional<double> from_first_end_m = {},
                std::optional<double> from_front_m = {}) {
  BenchSpec out;
  out.bay = bay;
  out.height_m = 0.8;
  out.length_m = length_m;
  out.width_m = width_m;
  out.from_first_end_m = from_first_end_m;
  out.from_front_m = from_front_m;
  return out;
}

void expect_stands(const BenchShape& b, double x_low, double x_high, double y_low, double y_high) {
  EXPECT_NEAR(b.x_low_m, x_low, kTiny);
  EXPECT_NEAR(b.x_high_m, x_high, kTiny);
  EXPECT_NEAR(b.y_low_m, y_low, kTiny);
  EXPECT_NEAR(b.y_high_m, y_high, kTiny);
  EXPECT_DOUBLE_EQ(b.z_m, 0.8);
}

TEST(BenchShapes, StandInTheMiddleOfTheirBayUnlessTold) {
  // House 6 m x 3 m; the west bay runs from x = 3 m to -0.6 m, the east bay from there to -3 m.
  const HouseShape shape = shape_of(one_of_each()[0]);
  const auto stand = bench_shapes({{"a", bench("west", 3.0, 0.9)}, {"b", bench("east", 2.0, 1.0, 0.1, 0.2)}}, shape);
  expect_stands(stand[0], -0.3, 2.7, -0.45, 0.45);
  expect_stands(stand[1], -2.7, -0.7, 0.3, 1.3);
  EXPECT_FALSE(stand[0].overlaps(stand[1]));
}

TEST(BenchShapes, SpreadEvenlyFromFrontToBackInTheirOrder) {
  // 0.9 m and 0.6 m across 3 m leave three gaps of 0.5 m; the bench with a place of its own takes no part.
  const HouseShape shape = shape_of(one_of_each()[0]);
  const auto stand = bench_shapes({{"front", bench("west", 3.0, 0.9)},
                                   {"own", bench("west", 1.0, 0.3, 0.0, 0.0)},
                                   {"back", bench("west", 2.0, 0.6)}},
                                  shape);
  expect_stands(stand[0], -0.3, 2.7, 0.1, 1.0);
  expect_stands(stand[1], 2.0, 3.0, 1.2, 1.5);
  expect_stands(stand[2], 0.2, 2.2, -1.0, -0.4);
}

TEST(BenchShapes, TouchingIsNotOverlapping) {
  const BenchShape a{0.0, 1.0, 0.0, 1.0, 0.8};
  EXPECT_TRUE(a.overlaps({0.9, 2.0, 0.9, 2.0, 0.8}));
  EXPECT_FALSE(a.overlaps({1.0, 2.0, 0.0, 1.0, 0.8}));
  EXPECT_FALSE(a.overlaps({0.5, 2.0, 1.0, 2.0, 0.8}));
}

struct Refused {
  ErrorKind kind = ErrorKind::usage;
  std::string message;
};

Refused refusal(const std::string& text) {
  try {
    small_scenario::read(text);
  } catch (const UserError& error) {
    return {error.kind(), error.what()};
  }
  return {ErrorKind::usage, "nothing was refused"};
}

void expect_refused(const std::string& text, ErrorKind kind, const std::string& says) {
  const Refused refused = refusal(text);
  EXPECT_EQ(refused.kind, kind) << refused.message;
  EXPECT_TRUE(refused.message.starts_with("small.yaml:")) << refused.message;
  // The first line says it all; the place in the text follows.
  EXPECT_LT(refused.message.find(says), refused.message.find('\n')) << refused.message;
}

std::string without_vent(std::string text) {
  const std::size_t from = text.find("openings:"), to = text.find("mist_lines:");
  text.erase(from, to - from);
  text = with(text, "drives: [ridge vent, high mist]", "drives: [high mist]");
  return with(text, "in_service: [ridge vent, high mist, heat watch]", "in_service: [high mist, heat watch]");
}

TEST(HouseShapeRefuses, AFlatRoofWithARidge) {
  expect_refused(with(without_vent(kText), "  ridge: 2.8 m", "  form: flat roof\n  ridge: 2.8 m"),
                 ErrorKind::does_not_fit, "a flat roof has one height");
  EXPECT_EQ(refusal(with(with(without_vent(kText), "  ridge: 2.8 m", "  form: flat roof\n  ridge: 2.5 m"), "eaves: 2 m",
                         "eaves: 2.5 m"))
                .message,
            "nothing was refused");
}

TEST(HouseShapeRefuses, ABenchThroughAHoopsCover) {
  // At 0.8 m the chord from (1.5, 0) to (1.5 cos 30 deg, 1.4 m) is 1.5 - 0.8 / 1.4 x 0.201 = 1.385 m out.
  const std::string hoop =
      with(with(without_vent(kText), "eaves: 2 m", "eaves: 0 m"), "  ridge: 2.8 m", "  form: hoop\n  ridge: 2.8 m");
  EXPECT_EQ(refusal(with(hoop, "width: 90 cm", "width: 2.77 m")).message, "nothing was refused");
  expect_refused(with(hoop, "width: 90 cm", "width: 2.78 m"), ErrorKind::outside_house, "through the cover");
  expect_refused(with(hoop, "width: 90 cm", "width: 90 cm\n    from_front: 10 cm"), ErrorKind::outside_house,
                 "through the cover");
}

TEST(HouseShapeRefuses, TwoBenchesOnOneSpot) {
  const std::string two =
      "width: 90 cm\n    from_front: 1 m\n  other bench:\n    bay: west\n    height: 82 cm\n    length: 1 m\n"
      "    width: 50 cm\n    from_front: 1.8 m";
  expect_refused(with(kText, "width: 90 cm", two), ErrorKind::does_not_fit, "stands where the long bench stands");
  EXPECT_EQ(refusal(with(kText, "width: 90 cm", with(two, "from_front: 1.8 m", "from_front: 1.9 m"))).message,
            "nothing was refused")
      << "edge to edge";
  EXPECT_EQ(refusal(with(kText, "width: 90 cm", with(two, "82 cm", "1.4 m"))).message, "nothing was refused")
      << "a shelf over the bench";
}

TEST(HouseShapeRefuses, TwoClothsOnTheRoof) {
  const std::string two = "shades:\n  green net: {}\n  white net:\n    over: OVER\nbenches:";
  expect_refused(with(kText, "benches:", with(two, "OVER", "roof")), ErrorKind::does_not_fit,
                 "the green net; one cloth on each part");
  expect_refused(with(kText, "benches:", with(two, "OVER", "all")), ErrorKind::does_not_fit,
                 "the green net; one cloth on each part");
  EXPECT_EQ(refusal(with(kText, "benches:", with(two, "OVER", "walls"))).message, "nothing was refused");
}

}  // namespace
}  // namespace noonhouse
