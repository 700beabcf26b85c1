// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/air/spray_table.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"

namespace noonhouse {
namespace {

AirAroundDrop air_about(double celsius, double share, double pressure_pa = kStandardPressure) {
  const double t = celsius + kZeroCelsius;
  return {t, humidity_ratio(share * saturation_pressure_pa(t), pressure_pa), pressure_pa};
}

double air_depression_k(const AirAroundDrop& air) {
  return air.temperature_k - wet_bulb_k(air.temperature_k, air.humidity_ratio, air.pressure_pa);
}

struct Spray {
  DropSizes sizes;
  std::vector<double> classes_m;
  SprayTable table;
  explicit Spray(NozzleKind kind, const AirAroundDrop& reference = air_about(30, 0.4))
      : sizes(sizes_of(nozzle_preset(kind))), classes_m(equal_volume_classes(sizes, 100)), table(sizes, reference) {}
  /// Share evaporated of the same classes, each drop followed by itself down through layers of one height.
  double followed(double layer_m, const std::vector<AirAroundDrop>& layers) const {
    double left = 0.0;
    for (const double d : classes_m) {
      double now = d;
      for (const AirAroundDrop& air : layers) now = diameter_after_fall_m(now, layer_m, air);
      left += now * now * now / (d * d * d);
    }
    return 1.0 - left / static_cast<double>(classes_m.size());
  }
};

const std::vector<NozzleKind> kKinds{NozzleKind::high_pressure_fog, NozzleKind::low_pressure_mist,
                                     NozzleKind::coarse_sprinkler};

// The tolerance is the one that the docstring states.
TEST(SprayTable, IsInItsReferenceAirWhatItsDropsDoOneByOne) {
  for (const NozzleKind kind : kKinds) {
    for (const double pressure : {101325.0, 83000.0}) {
      const AirAroundDrop air = air_about(30, 0.4, pressure);
      const Spray spray(kind, air);
      for (const double part : {1e-4, 1e-3, 0.01, 0.05, 0.2, 0.5, 0.9}) {
        const double drying = part * spray.table.all_gone_k_m();
        EXPECT_NEAR(spray.table.evaporated_share(drying), spray.followed(drying / air_depression_k(air), {air}), 0.002)
            << part;
      }
    }
  }
}

// The tolerance is the one that the docstring states.
TEST(SprayTable, HoldsNearlyInOtherAir) {
  for (const NozzleKind kind : kKinds) {
    const Spray spray(kind);
    for (const AirAroundDrop& air :
         {air_about(45, 0.10), air_about(38, 0.20), air_about(25, 0.85), air_about(15, 0.7)}) {
      for (const double part : {0.003, 0.01, 0.03, 0.1, 0.3}) {
        const double drying = part * spray.table.all_gone_k_m();
        EXPECT_NEAR(spray.table.evaporated_share(drying), spray.followed(drying / air_depression_k(air), {air}), 0.015)
            << air.temperature_k << " " << part;
      }
    }
  }
}

TEST(SprayTable, AddsUpWhatLayersOfDifferentAirDo) {
  const std::vector<AirAroundDrop> down{air_about(42, 0.15), air_about(34, 0.35), air_about(28, 0.7)};
  const std::vector<AirAroundDrop> up{down.rbegin(), down.rend()};
  for (const NozzleKind kind : kKinds) {
    const Spray spray(kind);
    double per_m = 0.0;
    for (const AirAroundDrop& air : down) per_m += air_depression_k(air);
    for (const double part : {0.01, 0.05, 0.2}) {
      const double layer_m = part * spray.table.all_gone_k_m() / per_m;
      const double share = spray.table.evaporated_share(per_m * layer_m);
      EXPECT_NEAR(share, spray.followed(layer_m, down), 0.015) << part;
      EXPECT_NEAR(share, spray.followed(layer_m, up), 0.015) << part << ": the order hardly matters";
    }
  }
}

// One size only: the reach is the fall in which fate_of_falling_drop sees it vanish, by quadrature over the diameter.
TEST(SprayTable, ReachesAsFarAsADropLasts) {
  const AirAroundDrop air = air_about(30, 0.4);
  for (const NozzleKind kind : kKinds) {
    const Spray spray(kind, air);
    for (const double d : {spray.classes_m.front(), spray.classes_m[50], spray.classes_m.back()}) {
      const double reach = fate_of_falling_drop(d, air).fall_m * air_depression_k(air);
      EXPECT_NEAR(spray.table.reach_k_m(d), reach, 0.005 * reach) << d;
    }
    EXPECT_EQ(spray.table.reach_k_m(0.0), 0.0);
  }
}

TEST(SprayTable, RisesFromNothingToAllWithoutAKink) {
  for (const NozzleKind kind : kKinds) {
    const Spray spray(kind);
    const double end = spray.table.all_gone_k_m();
    EXPECT_EQ(spray.table.evaporated_share(0.0), 0.0);
    EXPECT_EQ(spray.table.evaporated_share(end), 1.0);
    EXPECT_EQ(spray.table.evaporated_share(1e9 * end), 1.0);
    double before = 0.0, slope_before = 0.0;
    for (double x = 1e-9 * end; x < 1.2 * end; x *= 1.0005) {
      const Dual<1> at = spray.table.evaporated_share(Dual<1>::input(x, 0));
      EXPECT_GE(at.value, before);
      EXPECT_LE(at.value, 1.0);
      EXPECT_GE(at.grad[0], 0.0);
      if (slope_before > 0.0) {
        // Within a piece or across a knot, 0.05 % further on the slope is nearly the same.
        EXPECT_NEAR(at.grad[0] * end, slope_before * end, 0.02 * slope_before * end + 1e-3) << x / end;
      }
      before = at.value;
      slope_before = at.grad[0];
    }
  }
}

TEST(SprayTable, HasTheSlopeOfItsValues) {
  const Spray spray(NozzleKind::low_pressure_mist);
  for (const double x : {1e-4, 1e-3, 0.1, 3.0, 40.0, 200.0, 400.0}) {
    const double h = 1e-5 * x;
    const double rise = spray.table.evaporated_share(x + h) - spray.table.evaporated_share(x - h);
    const double slope = spray.table.evaporated_share(Dual<1>::input(x, 0)).grad[0];
    EXPECT_NEAR(slope, rise / (2.0 * h), 1e-5 * slope + 1e-9) << x;
  }
}

// On paper, drops that shrink by d^2' = -86 f dT' um^2/(s K), 8 k / (rho_w L), dT' 1.1 times the depression because
// vapour diffuses faster than heat, v going like d^a and f like d^b: reach = 2 / (2 + a - b) v d^2 / (86 f 1.1).
//   20 um:  v 12 mm/s, f 1,    a 2,   b 0:    0.025 K m
//   120 um: v 0.36 m/s, f 1.2, a 1.4, b 0.1:  28 K m
//   1 mm:   v 4 m/s,    f 5,   a 1,   b 0.75: 7500 K m, of which 20 K m take 0.75 * 20 / 7500 = 0.2 %, and more from
//           its smaller companions
// 20 % for what this leaves out.
TEST(SprayTable, TellsFogFromSprinklers) {
  const Spray fog(NozzleKind::high_pressure_fog), mist(NozzleKind::low_pressure_mist),
      rain(NozzleKind::coarse_sprinkler);
  EXPECT_NEAR(fog.table.reach_k_m(20e-6), 0.025, 0.2 * 0.025);
  EXPECT_NEAR(mist.table.reach_k_m(120e-6), 28.0, 0.2 * 28.0);
  EXPECT_NEAR(rain.table.reach_k_m(1e-3), 7500.0, 0.2 * 7500.0);
  EXPECT_EQ(fog.table.evaporated_share(20.0), 1.0);
  EXPECT_GT(rain.table.evaporated_share(20.0), 0.002);
  EXPECT_LT(rain.table.evaporated_share(20.0), 0.05);
}

// On paper, one drop of 1 mm in air whose wet bulb is 20 degC: v 3.9 m/s, Re 256, f_v = 0.78 + 0.308 * 0.846 * 16.0 =
// 4.95, f_h = 0.78 + 0.308 * 0.892 * 16.0 = 5.18; Nu k = 10.35 * 0.0257 = 0.266; Sh rho D L dw_s/dT = 9.9 * 1.18 *
// 2.47e-5 * 2.453e6 * 9.5e-4 = 0.672. l = 3.9 * 998 * 4186 * 1e-6 / (6 * 0.938) = 2.90 m.
TEST(SprayTable, BringsWaterToTheWetBulbAsOnPaper) {
  const double t = 305.15, w = humidity_ratio_from_wet_bulb(t, 293.15, kStandardPressure);
  const SprayTable one(drop_sizes_of_median(1e-3, 2000.0), {t, w, kStandardPressure}, 1);
  EXPECT_NEAR(one.approach_to_wet_bulb(2.90), 1.0 - std::exp(-1.0), 0.03 * std::exp(-1.0));
  EXPECT_EQ(one.approach_to_wet_bulb(0.0), 0.0);
  EXPECT_NEAR(one.approach_to_wet_bulb(100.0), 1.0, 1e-9);
}

TEST(SprayTable, BringsFineDropsToTheWetBulbFirst) {
  const Spray fog(NozzleKind::high_pressure_fog), mist(NozzleKind::low_pressure_mist),
      rain(NozzleKind::coarse_sprinkler);
  for (const double fall : {0.01, 0.1, 1.0}) {
    EXPECT_GE(fog.table.approach_to_wet_bulb(fall), mist.table.approach_to_wet_bulb(fall));
    EXPECT_GT(mist.table.approach_to_wet_bulb(fall), rain.table.approach_to_wet_bulb(fall));
    EXPECT_GT(rain.table.approach_to_wet_bulb(2.0 * fall), rain.table.approach_to_wet_bulb(fall));
  }
}

}  // namespace
}  // namespace noonhouse
