// SPDX-License-Identifier: Apache-2.0
// A house whose fan draws its air through a wet pad, put together from the air's laws and run by the engine.
#include <gtest/gtest.h>

#include <cmath>

#include "models/air/pad_inlet.hpp"
#include "models/water/wet_mass.hpp"
#include "tests/support/aired_box.hpp"

namespace noonhouse {
namespace {

constexpr double kPadHouseFloor = 20.0, kPadHouseHeight = 3.0;  // [m2], [m]

struct Outdoors {
  double t_k, w;
};

Outdoors by_humidity(double celsius, double share) {
  const double t = celsius + kZeroCelsius;
  return {t, humidity_ratio(share * saturation_pressure_pa(t), AiredBox::kPressure)};
}

struct PadHouse {
  WetPad pad;
  double face_m2 = 1.0;
  double air_m3_m2_s = 0.05;   ///< the fan's, by floor area
  double sensible_w_m2 = 0.0;  ///< heat that the sun leaves to the air, by floor area
  Outdoors outdoors{308.15, 0.01};

  struct Found {
    double mean_k = 0.0, lowest_k = 0.0, drawn_m3_s = 0.0, water_kg_s = 0.0;
  };

  /// At rest.
  Found run() const {
    AiredBox box(3, kPadHouseHeight, kPadHouseFloor, outdoors.t_k, outdoors.t_k);
    const ChannelId wet = box.graph.channel("wet", "1", 1.0);
    const double bulb = wet_bulb_k(outdoors.t_k, outdoors.w, AiredBox::kPressure);
    const NodeId tank = box.graph.node("tank", WetMass{1e4}, {bulb, 1e5}, {0.01, 1.0});
    const std::size_t low = 0;
    const PadInlet law = pad_inlet(pad, face_m2, box.place(0.5), outdoors.t_k);
    const NodeId air = box.air[low];
    const ExchangeId way =
        box.graph.exchange("pad", "ventilation", law,
                           {box.pressure[low], air, Input(air, 1), box.out_k, box.out_w, box.wind_pa, wet, tank},
                           {{{box.pressure[low], box.out_air},
                             {End(air, 1), box.out_vapour},
                             {air, box.out_heat},
                             {End(tank, 1), End(air, 1)},
                             {tank, air}}});
    const NodeId far = box.air[1];
    box.outdoors(
        "fan", FanPiece{box.place(1.5), QuadraticFan{air_m3_m2_s * kPadHouseFloor, 2000.0}, true}, 1,
        std::array<Input, 7>{box.pressure[1], far, Input(far, 1), box.out_k, box.out_w, box.wind_pa, box.open});
    box.column_of(0.1, 0.5 * kPadHouseFloor);
    box.heat(box.column[0]);
    const auto rest = box.run(3_h, {{box.heat_w, sensible_w_m2 * kPadHouseFloor}, {box.out_w, outdoors.w}});
    Found out;
    for (const NodeId node : box.air) {
      const double t = rest.potential(node);
      out.mean_k += t / static_cast<double>(box.air.size());
      out.lowest_k = out.lowest_k > 0.0 ? std::min(out.lowest_k, t) : t;
    }
    const auto fluxes = rest.fluxes();
    const auto first =
        static_cast<std::size_t>(rest.plan.house.exchanges[static_cast<std::size_t>(way.index)].first_flux);
    out.drawn_m3_s = -fluxes[first] / dry_air_density(outdoors.t_k, outdoors.w, AiredBox::kPressure);
    out.water_kg_s = fluxes[first + 3];
    return out;
  }
};

// Jakubowski et al. 2024 (abstract): a small house with a cellulose pad and 821 W/m2 outdoors is 5.5 K cooler inside
// than outdoors at 23.8 degC, by 37.6 % of what was possible; with a net outside, at 771 W/m2, 6.6 K, 23.4 degC, 45.0
// %. Bands 1 K and 5 points. So outdoors it was 29.3 and 30.0 degC with wet bulbs 14.6 and 14.7 K below. Assumed: a pad
// of 4 cm, 1 m/s by its face, half of that with the net, which is all that a net does here (it shades the pad, too);
// what was cooled is taken as the air that comes in. Found: 5.6 and 6.2 K.
TEST(PadHouse, CoolsAsASmallHousesPadDidWithANetAndWithout) {
  PadHouse house;
  house.pad.thickness_m = 0.04;
  house.face_m2 = 1.0;
  struct Row {
    double inside_c, cooling_k, efficiency, speed;
  };
  double before = 0.0;
  for (const Row& row : {Row{23.8, 5.5, 0.376, 1.0}, Row{23.4, 6.6, 0.450, 0.5}}) {
    const double t = row.inside_c + row.cooling_k + kZeroCelsius, depression = row.cooling_k / row.efficiency;
    house.outdoors = {t, humidity_ratio_from_wet_bulb(t, t - depression, AiredBox::kPressure)};
    house.air_m3_m2_s = row.speed * house.face_m2 / kPadHouseFloor;
    const PadHouse::Found found = house.run();
    EXPECT_NEAR(found.drawn_m3_s, row.speed * house.face_m2, 0.05 * row.speed);
    EXPECT_NEAR(found.mean_k - kZeroCelsius, row.inside_c, 1.0);
    EXPECT_NEAR((t - found.mean_k) / depression, row.efficiency, 0.05);
    EXPECT_GT(t - found.mean_k, before) << "the net's house is cooled more";
    before = t - found.mean_k;
    RecordProperty("cooling_" + std::to_string(row.speed), std::to_string(before));
  }
}

// Willits 2003 (its own model): without a pad little is gained above 0.05 m3/(m2 s), with one the house still cools on
// to 0.13. Assumed: 35 degC and 30 %, a pad of 10 cm of a twentieth of the floor's area by what the fan moves, so that
// air comes through it at 1.25 m/s at every flow; 150 W/m2 of heat. Found: 32.3, 28.4, 27.4, 27.1 degC at 0.02, 0.05,
// 0.08, 0.13.
TEST(PadHouse, StillGainsByMoreAirWhereAVentedHouseHardlyDoes) {
  PadHouse house;
  house.outdoors = by_humidity(35.0, 0.30);
  house.sensible_w_m2 = 150.0;
  double before = 1e9;
  for (const double air : {0.02, 0.05, 0.08, 0.13}) {
    house.air_m3_m2_s = air;
    house.face_m2 = air * kPadHouseFloor / 1.25;
    const PadHouse::Found found = house.run();
    EXPECT_LT(found.mean_k, before - 0.2) << air;
    EXPECT_LT(found.mean_k, house.outdoors.t_k - 1.0) << "below outdoors, which no vent does";
    before = found.mean_k;
    RecordProperty("at_" + std::to_string(air), std::to_string(found.mean_k - kZeroCelsius));
  }
}

// Boyaci & Akyuz 2018 (abstract): about 40 degC outdoors fan and pad keep a house up to 15 K below. An upper bound, and
// never below the wet bulb. Assumed: humidities of 10 to 60 %, 15 cm at 1.25 m/s, 0.08 m3/(m2 s), 150 W/m2 of heat.
// Found: 15.5, 14.1, 10.4 and 4.6 K below at 10, 15, 30 and 60 %.
TEST(PadHouse, IsUpToFifteenKelvinBelowHotAirAndNeverBelowItsWetBulb) {
  PadHouse house;
  house.pad.thickness_m = 0.15;
  house.air_m3_m2_s = 0.08;
  house.face_m2 = 0.08 * kPadHouseFloor / 1.25;
  house.sensible_w_m2 = 150.0;
  double most = 0.0;
  for (const double share : {0.10, 0.15, 0.3, 0.6}) {
    house.outdoors = by_humidity(40.0, share);
    const PadHouse::Found found = house.run();
    EXPECT_GT(found.lowest_k, wet_bulb_k(house.outdoors.t_k, house.outdoors.w, AiredBox::kPressure)) << share;
    EXPECT_LT(found.mean_k, house.outdoors.t_k) << share;
    EXPECT_GT(found.water_kg_s, 0.0);
    most = std::max(most, house.outdoors.t_k - found.mean_k);
    RecordProperty("below_at_" + std::to_string(share), std::to_string(house.outdoors.t_k - found.mean_k));
  }
  EXPECT_LT(most, 16.5) << "15 K and a tenth";
  EXPECT_GT(most, 10.0);
}

}  // namespace
}  // namespace noonhouse
