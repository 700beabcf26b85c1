// SPDX-License-Identifier: Apache-2.0
// Long because every form, cover, cloth and obstacle is sent through one account.
// Where one instant's light ends up in a whole house: nothing is lost, nothing is made, and shadows fall where they
// fall by hand.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>
#include <numeric>
#include <string>
#include <vector>

#include "models/envelope/cover_material.hpp"
#include "models/properties/sun.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/sunlight_account.hpp"

namespace noonhouse {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

/// A house of 6 m x 3 m that looks south, two bays, a slatted and a closed bench with plants on and under them.
/// FORM, COVER, SHADES and OBSTACLES are filled in.
constexpr const char* kLightHouse = R"(title: Light
run:
  start: 2025-03-20
  length: 1 d
site:
  latitude: 35 deg
  longitude: 0 deg
  altitude: 0 m
  utc_offset: "+00:00"
  deep_soil: 12 degC
weather:
  kind: invented heatwave
  peak_day: 1
OBSTACLES
house:
  length: 6 m
  width: 3 m
FORM
  bays:
    west:
      share: 60 %
    east:
      share: 40 %
  cover:
COVER
SHADES
benches:
  slats:
    bay: west
    height: 80 cm
    length: 3 m
    width: 90 cm
    lets_through: 30 %
  table:
    bay: east
    height: 70 cm
    length: 2 m
    width: 90 cm
plant_kinds:
  fern:
    leaf_area_index: 2
    tissue: 1.5 kg/m2
    harm_above: 36 degC
    lethal_above: 42 degC
    harm_below: 4 degC
    lethal_below: 0 degC
plants:
  on slats:
    kind: fern
    place: slats
    area: 2 m2
  under slats:
    kind: fern
    place: slats
    under: true
    area: 1 m2
  on table:
    kind: fern
    place: table
    area: 1.8 m2
tank:
  capacity: 300 L
  starts_with: 250 L
  low_mark: 20 L
  restart_mark: 40 L
power:
  panel_area: 1 m2
  battery: 600 Wh
)";

constexpr const char* kGable = "  eaves: 2 m\n  ridge: 2.8 m";
constexpr const char* kForms[] = {kGable, "  form: lean-to\n  eaves: 1.8 m\n  ridge: 2.6 m",
                                  "  form: hoop\n  eaves: 0 m\n  ridge: 2.2 m",
                                  "  form: flat roof\n  eaves: 2.2 m\n  ridge: 2.2 m"};
const std::string kGlass = "    roof: {}";
const std::string kCovers[] = {
    kGlass,
    "    roof:\n      material: opal twin-wall polycarbonate 10 mm\n    walls:\n      material: clear glass 4 mm\n"
    "      dirt: 20 %",
    "    roof:\n      material: polyethylene film\n      whitewash_passes: 50 %\n      whitewash_reflects: 40 %\n"
    "      wet_with_drops: 50 %\n    walls:\n      material: polyethylene film\n      frame: 3 %",
    "    roof: {}\n    parts:\n      back:\n        side: back wall\n        opaque_reflects: 70 %\n"
    "      half a front:\n        side: front wall\n        bays: [east]\n        opaque_reflects: 35 %",
};
const std::string kShades[] = {
    "", "shades:\n  net:\n    hangs: outside\n    over: all",
    "shades:\n  screen:\n    hangs: inside\n    over: roof\n  wall net:\n    hangs: outside\n    over: walls"};
const std::string kObstacles[] = {
    "",
    "obstacles:\n  barn:\n    kind: block\n    east: -6 m\n    north: -3 m\n    faces: 60 deg\n    length: 8 m\n"
    "    height: 4 m\n  tree:\n    kind: tree crown\n    east: 3 m\n    north: -5 m\n    width: 4 m\n    height: 6 m"};

PlanScenario plan_of(const std::string& form, const std::string& cover = kGlass, const std::string& shades = "",
                     const std::string& obstacles = "") {
  std::string text = kLightHouse;
  const auto put = [&text](const std::string& mark, const std::string& value) {
    text.replace(text.find(mark), mark.size(), value);
  };
  put("OBSTACLES", obstacles);
  put("FORM", form);
  put("COVER", cover);
  put("SHADES", shades);
  return read_scenario_text(text, "light.yaml").plans.front();
}

struct Sun {
  double azimuth_deg = 180.0, elevation_deg = 45.0;
};

/// Sunlight with this much beam and even sky light.
SkyLight light_of(const Sun& sun, double beam_w_m2, double sky_w_m2) {
  return {beam_w_m2, sky_w_m2, beam_w_m2 * std::sin(sun.elevation_deg * kDegree) + sky_w_m2};
}

/// A house under suns; the geometry may be that of another with the same form, benches and obstacles.
class Lit {
 public:
  explicit Lit(const PlanScenario& plan)
      : spec(plan.spec),
        shape(shape_of(spec.house)),
        row(sun_row(spec, shape)),
        account(spec, shape, row),
        suns(std::make_shared<SunlitHouse>(spec, shape)) {}
  Lit(const PlanScenario& plan, const Lit& same_geometry) : Lit(plan) { suns = same_geometry.suns; }

  const SunlitHouse::Instant& instant(const Sun& sun, int day = 100) {
    suns->add(sun.azimuth_deg * kDegree, sun.elevation_deg * kDegree, day);
    return suns->instants().back();
  }
  std::size_t states() const { return row.cloths + 1; }

  ScenarioSpec spec;
  HouseShape shape;
  SunRow row;
  SunlightAccount account;
  std::shared_ptr<SunlitHouse> suns;
};

void expect_closes(const SunlightAccount::Totals& t, const std::vector<double>& row, const SunRow& places,
                   const std::string& where) {
  const double hair = 1e-9 * t.came_w;
  EXPECT_GT(t.came_w, 0.0) << where;
  EXPECT_NEAR(t.came_w, t.taken_up_w + t.sent_back_w + t.let_out_w, hair) << where;
  const auto watts = row.begin() + static_cast<std::ptrdiff_t>(places.light(0));
  EXPECT_NEAR(std::accumulate(row.begin(), watts, 0.0), t.taken_up_w, hair) << where;
  EXPECT_GE(*std::min_element(row.begin(), row.end()), 0.0) << where;
  EXPECT_GE(std::min(t.sent_back_w, t.let_out_w), 0.0) << where;
}

TEST(SunlightAccount, ClosesForEveryHouseCoverClothAndObstacle) {
  const Sun suns[] = {{180.0, 60.0}, {110.0, 8.0}, {300.0, 20.0}, {0.0, 15.0}, {225.0, 1.0}};
  for (const char* form : kForms)
    for (const std::string& obstacles : kObstacles) {
      Lit first(plan_of(form, kGlass, "", obstacles));
      for (const Sun& sun : suns) first.instant(sun);
      for (const std::string& cover : kCovers)
        for (const std::string& shades : kShades) {
          Lit house(plan_of(form, cover, shades, obstacles), first);
          std::vector<double> row(house.row.size());
          for (std::size_t i = 0; i < std::size(suns); ++i)
            for (std::size_t state = 0; state < house.states(); ++state)
              for (const double beam : {0.0, 700.0}) {
                const auto totals =
                    house.account.write(light_of(suns[i], beam, 90.0), house.suns->instants()[i], state, row.data());
                expect_closes(totals, row, house.row,
                              fmt::format("{}{}{}{} sun {} state {}", form, cover, shades, obstacles, i, state));
              }
        }
    }
}

TEST(SunlightAccount, WhatComesIsWhatThePlanesMeet) {
  // Without obstacles: the beam meets B A cos(incidence) on every facet in front of it; the sky gives each plane
  // (1 + cos s) / 2 of its light and the ground (1 - cos s) / 2 of what it sends [Liu & Jordan 1963]. The latter shares
  // are found by rays, to 1 %.
  for (const char* form : kForms) {
    Lit house(plan_of(form));
    std::vector<double> row(house.row.size());
    for (const Sun& sun : {Sun{180.0, 60.0}, Sun{110.0, 8.0}, Sun{340.0, 30.0}}) {
      SunPosition position;
      position.azimuth_rad = sun.azimuth_deg * kDegree;
      position.elevation_rad = sun.elevation_deg * kDegree;
      const SkyLight light = light_of(sun, 700.0, 90.0), beam_only{700.0, 0.0, 0.0};
      double beam_w = 0.0, diffuse_w = 0.0;
      for (const Facet& f : house.shape.facets) {
        beam_w += 700.0 * f.area_m2 * std::max(0.0, incidence_cosine(position, f.slope_rad, f.azimuth_rad));
        const double up = 0.5 * (1.0 + std::cos(f.slope_rad));
        diffuse_w += f.area_m2 * (90.0 * up + house.spec.site.albedo * light.global_w_m2 * (1.0 - up));
      }
      const auto& now = house.instant(sun);
      EXPECT_NEAR(house.account.write(beam_only, now, 0, row.data()).came_w, beam_w, 1e-6 * beam_w) << form;
      EXPECT_NEAR(house.account.write(light, now, 0, row.data()).came_w, beam_w + diffuse_w, 0.01 * diffuse_w) << form;
    }
  }
}

TEST(SunlightAccount, NoPlaceGetsMoreInADayThanTheOpenGround) {
  // Rays see the sun and each piece of sky through one facet, which lets less than all of it through; what walls and
  // the other places reflect to a place is less than the cover takes. (At an instant a low sun on a white back wall may
  // give more; over the day the cover wins.)
  const double latitude = 35.0 * kDegree;
  for (const char* form : kForms)
    for (const double declination_deg : {-23.4, 23.4}) {
      Lit first(plan_of(form));
      std::vector<SkyLight> lights;
      double open_ground = 0.0;
      for (int hour = -7; hour <= 7; ++hour) {
        const SunPosition sun =
            sun_position_from_hour_angle(declination_deg * kDegree, latitude, hour * 15.0 * kDegree);
        if (sun.elevation_rad < kDegree) continue;
        const Sun at{sun.azimuth_rad / kDegree, sun.elevation_rad / kDegree};
        first.instant(at);
        lights.push_back(light_of(at, 700.0, 90.0));
        open_ground += lights.back().global_w_m2;
      }
      ASSERT_GE(lights.size(), 9U);
      for (const std::string& cover : kCovers) {
        Lit house(plan_of(form, cover), first);
        std::vector<double> row(house.row.size()), day(house.row.places, 0.0);
        for (std::size_t i = 0; i < lights.size(); ++i) {
          house.account.write(lights[i], house.suns->instants()[i], 0, row.data());
          for (std::size_t p = 0; p < day.size(); ++p) day[p] += row[house.row.light(p)];
        }
        ASSERT_EQ(day.size(), 6U) << "on and under two benches, and two floors";
        for (std::size_t p = 0; p < day.size(); ++p) {
          EXPECT_LT(day[p], open_ground) << form << cover << " place " << p;
          EXPECT_GT(day[p], 0.0);
        }
        // The high sun of summer leaves the shade beneath the slats; the low sun of winter throws it on the wall
        // behind, so that there the floor beneath them is as bright.
        if (declination_deg > 0.0) {
          EXPECT_LT(day[1], day[0]) << form << cover;
        }
      }
    }
}

TEST(SunlightAccount, LightOnAPlaceIsWhatComesStraightAndTheRest) {
  Lit house(plan_of(kGable));
  std::vector<double> row(house.row.size());
  for (const Sun& sun : {Sun{180.0, 60.0}, Sun{110.0, 8.0}, Sun{300.0, 20.0}})
    for (const double beam : {0.0, 700.0}) {
      house.account.write(light_of(sun, beam, 90.0), house.instant(sun), 0, row.data());
      for (std::size_t p = 0; p < house.row.places; ++p) {
        const double all = row[house.row.light(p)], direct = row[house.row.direct(p)], soft = row[house.row.soft(p)];
        EXPECT_NEAR(direct + soft, all, 1e-12 * all) << p;
        EXPECT_GT(soft, 0.0) << p;
        EXPECT_LE(direct, beam * std::sin(sun.elevation_deg * kDegree)) << p;
        if (beam == 0.0) {
          EXPECT_EQ(direct, 0.0) << p;
        }
      }
    }
  // The high sun falls on the open slats and on the table, by what glass lets through; nothing straight gets beneath
  // the closed table but by its sides, which at noon from the south is from the front.
  house.account.write(light_of({180.0, 60.0}, 700.0, 90.0), house.instant({180.0, 60.0}), 0, row.data());
  const double level = 700.0 * std::sin(60.0 * kDegree);
  const std::size_t on_slats = 0, on_table = 2, under_table = 3;
  EXPECT_GT(row[house.row.direct(on_slats)], 0.6 * level);
  EXPECT_GT(row[house.row.direct(on_table)], 0.6 * level);
  EXPECT_LT(row[house.row.direct(under_table)], 0.8 * row[house.row.direct(on_table)]);
}

// Leaf area 2 catches 1 - exp(-0.7 x 2) = 0.7534 of what falls on the ground its group covers, and takes up its
// absorptance of it; the beam meets the sunlit side alone, the rest is shared (1 + exp(-1.4)) / 2 = 0.6233 to it.
TEST(SunlightAccount, PlantsTakeTheirLightWithBothSidesAndThePotsTheRest) {
  Lit house(plan_of(kGable));
  const std::size_t place_of_group[] = {0, 1, 2};
  const double covered_m2[] = {2.0, 1.0, 1.8};
  std::vector<double> row(house.row.size());
  const Sun sun{180.0, 60.0};
  for (const double beam : {0.0, 700.0}) {
    house.account.write(light_of(sun, beam, 90.0), house.instant(sun), 0, row.data());
    for (std::size_t g = 0; g < house.row.groups; ++g) {
      const double light = row[house.row.light(place_of_group[g])], soft = row[house.row.soft(place_of_group[g])];
      // Two streams in leaves that take up a, index 2, by hand: they take 1 - R - T, of it a (1 - exp(-1.4)) where they
      // meet it first; the rest goes by area, of which 0.4619 lies in the shade; the pots get T.
      const double a = house.spec.plant_kinds.front().value.absorptance, root = std::sqrt(a);
      const double r = (1.0 - root) / (1.0 + root), q = std::exp(-1.4 * root), d = 1.0 - r * r * q * q;
      const double passes = (1.0 - r * r) * q / d, all = 1.0 - r * (1.0 - q * q) / d - passes, first = a * 0.7534;
      const double hair = 2e-4 * covered_m2[g] * light;
      EXPECT_NEAR(row[house.row.sunlit(g)] + row[house.row.shaded(g)], all * covered_m2[g] * light, hair) << g;
      EXPECT_NEAR(row[house.row.shaded(g)],
                  covered_m2[g] * (first * soft * (1.0 - 0.6233) + (all - first) * 0.4619 * light), hair)
          << g;
      const double pots = house.spec.plants[g].value.pot_absorptance * covered_m2[g] * passes;
      EXPECT_NEAR(row[house.row.pots(g)], pots * light, 5e-4 * pots * light) << g;
    }
  }
}

TEST(SunlightAccount, AClothHalvesWhatGetsInAsItsTransmittanceSays) {
  // Over all of the cover, letting t = 50 % through straight and reflecting r = 10 %. Entering light: cloth and cover
  // of reflectance R in series give t T / (1 - r R), between t T and t T / (1 - r). Of what the places send out (at
  // most 0.4 of what they meet, their absorptance being 0.6 at least) the bare cover sends R < 0.25 back in; a cloth
  // over it R + r T^2 / (1 - r R) < R + 0.1; a cloth beneath it r + R t^2 / (1 - r R) > r + 0.25 R, less than R by
  // 0.75 R - r < 0.09. So what the places take up falls to between 0.5 (1 - 0.4 x 0.09) = 0.482 beneath, 0.5 outside,
  // and 0.5 / 0.9 / (1 - 0.4 x 0.1) = 0.579 of what it was.
  for (const char* hangs : {"outside", "inside"})
    for (const char* form : kForms) {
      Lit house(plan_of(form, kGlass,
                        "shades:\n  net:\n    hangs: " + std::string(hangs) +
                            "\n    over: all\n    transmits: 50 %\n    absorbs: 40 %\n    straight: 50 %"));
      for (const Sun& sun : {Sun{180.0, 60.0}, Sun{120.0, 15.0}})
        for (const double beam : {0.0, 700.0}) {
          std::vector<double> away(house.row.size()), drawn(away);
          const auto& now = house.instant(sun);
          house.account.write(light_of(sun, beam, 90.0), now, 0, away.data());
          house.account.write(light_of(sun, beam, 90.0), now, 1, drawn.data());
          const auto inside = [&house](const std::vector<double>& row) {
            return std::accumulate(row.begin() + static_cast<std::ptrdiff_t>(house.row.floor(0)),
                                   row.begin() + static_cast<std::ptrdiff_t>(house.row.light(0)), 0.0);
          };
          EXPECT_GT(inside(drawn) / inside(away), house.spec.shades[0].value.hangs == ShadeSide::outside ? 0.5 : 0.482)
              << form << hangs << beam;
          EXPECT_LT(inside(drawn) / inside(away), 0.579) << form << hangs << beam;
          EXPECT_EQ(away[house.row.cloth(0)], 0.0);
          EXPECT_GT(drawn[house.row.cloth(0)], 0.0);
        }
    }
}

/// Light through a piece that no point inside sees the sun through is shared out as scattered light: of a beam that
/// grazes the back roof or an end by two degrees or less, below a hundredth of all.
constexpr double kGrazing = 0.01;

/// What gets in straight from the sun through roof and walls, and what of it the top of the table takes [W].
struct Straight {
  double roof_w = 0.0, walls_w = 0.0, arrives_w = 0.0, table_w = 0.0;
};
Straight straight_light(Lit& house, const Sun& sun) {
  const auto& now = house.instant(sun);
  const auto lit = house.account.light_up(light_of(sun, 700.0, 90.0), now, 0);
  Straight out;
  for (std::size_t f = 0; f < house.shape.facets.size(); ++f)
    (house.shape.facets[f].roof() ? out.roof_w : out.walls_w) +=
        lit.house.beam_w[f] * lit.beams[f].transmittance * (1.0 - lit.beams[f].scatters);
  out.arrives_w = std::accumulate(lit.house.beam_arriving_w.begin(), lit.house.beam_arriving_w.end(), 0.0);
  out.table_w = lit.house.beam_arriving_w[static_cast<std::size_t>(now.geometry->scene.shelf_top(1))];
  return out;
}

TEST(SunlightAccount, AnOpaqueRoofLetsTheSunInByTheWallsOnly) {
  // Table 0.7 m high, its front edge 1.05 m behind the front wall, whose top is at 2 m. Sun from the south: above
  // atan(1.3 / 1.05) = 51 deg the shade of the roof's edge covers the table, below atan(1.3 / 1.95) = 33.7 deg nothing
  // of it.
  Lit house(plan_of(kGable, "    roof:\n      opaque_reflects: 35 %"));
  for (const double elevation : {10.0, 30.0, 55.0, 80.0}) {
    const Straight s = straight_light(house, {180.0, elevation});
    EXPECT_EQ(s.roof_w, 0.0) << elevation;
    EXPECT_GT(s.walls_w, 0.0) << elevation;
    EXPECT_NEAR(s.arrives_w, s.walls_w, kGrazing * s.walls_w) << elevation;
    if (elevation > 51.1) {
      EXPECT_EQ(s.table_w, 0.0) << elevation;
    } else {
      EXPECT_GT(s.table_w, 0.0) << elevation;
    }
  }
}

TEST(SunlightAccount, OpaqueWallsLetTheSunInByTheRoofOnly) {
  // The other way about: the shade of the front wall covers the table below 33.7 deg and nothing of it above 51 deg.
  Lit house(plan_of(kGable, "    walls:\n      opaque_reflects: 35 %"));
  for (const double elevation : {10.0, 30.0, 55.0, 80.0}) {
    const Straight s = straight_light(house, {180.0, elevation});
    EXPECT_EQ(s.walls_w, 0.0) << elevation;
    EXPECT_GT(s.roof_w, 0.0) << elevation;
    EXPECT_NEAR(s.arrives_w, s.roof_w, kGrazing * s.roof_w) << elevation;
    if (elevation < 33.6) {
      EXPECT_EQ(s.table_w, 0.0) << elevation;
    } else {
      EXPECT_GT(s.table_w, 0.0) << elevation;
    }
  }
  // All of the table lit: the share of the beam that roof glass lets through, on 2 m x 0.9 m level.
  const Straight high = straight_light(house, {180.0, 60.0});
  const double level_w = 700.0 * std::sin(60.0 * kDegree) * 1.8;
  EXPECT_LT(high.table_w, 0.88 * level_w) << "no more than clean glass";
  EXPECT_GT(high.table_w, 0.70 * level_w) << "less 4 % of dirt and 10 % of frame";
}

TEST(SunlightAccount, OpaqueMaterialsOfTheLibraryStopTheSun) {
  for (const CoverMaterial& material : cover_materials()) {
    if (material.sheets > 0) continue;
    Lit house(plan_of(kGable, "    roof:\n      material: " + std::string(material.name)));
    EXPECT_EQ(straight_light(house, {180.0, 60.0}).roof_w, 0.0) << material.name;
  }
}

TEST(SunlightAccount, ABareCrownPassesMoreThanOneInLeaf) {
  // A crown so large that all of the house stands in its shade: the same sun meets the house with 60 % of its beam in
  // winter and 15 % in summer, four times as much; the sky's light changes in the same sense.
  Lit house(plan_of(kGable, kGlass, "",
                    "obstacles:\n  oak:\n    kind: tree crown\n    east: 0 m\n    north: -40 m\n    width: 50 m\n"
                    "    bottom: 0 m\n    height: 80 m\n    lets_through_in_leaf: 15 %\n    lets_through_bare: 60 %"));
  const Sun sun{180.0, 35.0};
  Lit open(plan_of(kGable));
  std::vector<double> winter(house.row.size()), summer(winter), none(open.row.size());
  const SkyLight beam_only{700.0, 0.0, 0.0}, sky_only{0.0, 90.0, 90.0};
  const SunlitHouse::Instant bare = house.instant(sun, 15), leafy = house.instant(sun, 196);
  const double bare_w = house.account.write(beam_only, bare, 0, winter.data()).came_w;
  const double leafy_w = house.account.write(beam_only, leafy, 0, summer.data()).came_w;
  const double open_w = open.account.write(beam_only, open.instant(sun), 0, none.data()).came_w;
  EXPECT_NEAR(bare_w, 0.60 * open_w, 1e-9 * open_w);
  EXPECT_NEAR(leafy_w, 0.15 * open_w, 1e-9 * open_w);
  for (std::size_t p = 0; p < house.row.places; ++p)
    EXPECT_NEAR(winter[house.row.light(p)], 4.0 * summer[house.row.light(p)], 1e-9 * winter[house.row.light(p)]);
  EXPECT_GT(house.account.write(sky_only, bare, 0, winter.data()).came_w,
            house.account.write(sky_only, leafy, 0, summer.data()).came_w);
}

TEST(SunlightAccount, ALongHighWallTakesTheSunAndHalfTheSky) {
  // A wall along all of the south, at 2 m, higher than any sun asked: no beam, less from the sky, but not nothing.
  Lit house(plan_of(kGable, kGlass, "",
                    "obstacles:\n  cliff:\n    kind: block\n    east: 0 m\n    north: -4 m\n    faces: 0 deg\n"
                    "    length: 400 m\n    height: 100 m"));
  Lit open(plan_of(kGable));
  std::vector<double> row(house.row.size());
  const Sun sun{180.0, 60.0};
  EXPECT_EQ(house.account.write({700.0, 0.0, 0.0}, house.instant(sun), 0, row.data()).came_w, 0.0);
  const double walled = house.account.write({0.0, 90.0, 90.0}, house.instant(sun), 0, row.data()).came_w;
  const double free = open.account.write({0.0, 90.0, 90.0}, open.instant(sun), 0, row.data()).came_w;
  EXPECT_LT(walled, 0.75 * free);
  EXPECT_GT(walled, 0.45 * free);
}

}  // namespace
}  // namespace noonhouse
