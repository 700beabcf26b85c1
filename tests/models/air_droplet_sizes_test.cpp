// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <set>
#include <string_view>
#include <vector>

#include "models/air/droplet_sizes.hpp"
#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

// On paper: at the mean 1 - 1/e = 0.6321; at twice the mean and spread 2, 1 - e^-4 = 0.9817; at half, 1 - e^-0.25 =
// 0.2212.
TEST(DropSizes, AreRosinsAndRammlers) {
  const DropSizes sizes{100e-6, 2.0};
  EXPECT_NEAR(volume_share_below(sizes, 100e-6), 0.6321, 0.00005);
  EXPECT_NEAR(volume_share_below(sizes, 200e-6), 0.9817, 0.00005);
  EXPECT_NEAR(volume_share_below(sizes, 50e-6), 0.2212, 0.00005);
  EXPECT_EQ(volume_share_below(sizes, 0.0), 0.0);
  EXPECT_EQ(volume_share_below(sizes, 1.0), 1.0);
}

TEST(DropSizes, AreAlikeForALargeSpreadParameter) {
  const DropSizes sizes{100e-6, 200.0};
  EXPECT_LT(volume_share_below(sizes, 95e-6), 1e-4);
  EXPECT_GT(volume_share_below(sizes, 105e-6), 1.0 - 1e-4);
  EXPECT_NEAR(sauter_mean_m(sizes), 100e-6, 1e-6);
  EXPECT_NEAR(volume_median_m(sizes), 100e-6, 1e-6);
}

TEST(DropSizes, InvertTheirShare) {
  const DropSizes sizes{37e-6, 2.7};
  EXPECT_EQ(diameter_of_volume_share_m(sizes, 0.0), 0.0);
  double before = 0.0;
  for (const double share : {1e-9, 0.1, 0.5, 0.9, 0.999999}) {
    const double d = diameter_of_volume_share_m(sizes, share);
    EXPECT_GT(d, before);
    EXPECT_NEAR(volume_share_below(sizes, d) / share, 1.0, 1e-12);
    before = d;
  }
}

TEST(DropSizes, HaveTheMedianTheyAreMadeOf) {
  const DropSizes sizes = drop_sizes_of_median(120e-6, 2.5);
  EXPECT_NEAR(volume_median_m(sizes), 120e-6, 1e-18);
  EXPECT_NEAR(volume_share_below(sizes, 120e-6), 0.5, 1e-12);
  // (ln 2)^(1/2.5) = exp(-0.366513 / 2.5) = 0.86364 on paper
  EXPECT_NEAR(sizes.mean_m, 120e-6 / 0.86364, 1e-9);
}

// Lefebvre & McDonell, ch. 3 (from memory): median over Sauter mean is (ln 2)^(1/q) Gamma(1 - 1/q); with q = 2,
// Gamma(1/2) = sqrt(pi), 0.83255 * 1.77245 = 1.4757.
TEST(DropSizes, HaveTheSauterMeanOfTheBook) {
  const DropSizes sizes{80e-6, 2.0};
  EXPECT_NEAR(volume_median_m(sizes) / sauter_mean_m(sizes), 1.4757, 0.00005);
}

// Volume over surface by its definition: 1 / integral of dV / d, here by midpoints in u = (d / mean)^(q - 1), in which
// nothing is singular.
TEST(DropSizes, HaveTheSauterMeanOfItsDefinition) {
  for (const double q : {1.5, 2.5, 4.0}) {
    const DropSizes sizes{50e-6, q};
    const int n = 200000;
    const double top = std::pow(40.0, (q - 1.0) / q), step = top / n;
    double surface = 0.0;
    for (int i = 0; i < n; ++i) {
      const double u = (i + 0.5) * step;
      surface += step * q / (q - 1.0) * std::exp(-std::pow(u, q / (q - 1.0)));
    }
    EXPECT_NEAR(sauter_mean_m(sizes), sizes.mean_m / surface, 1e-6 * sizes.mean_m) << q;
  }
}

TEST(DropClasses, HoldEqualVolumes) {
  const DropSizes sizes{60e-6, 2.2};
  for (const int n : {1, 2, 7, 40}) {
    const std::vector<double> drops = equal_volume_classes(sizes, n);
    ASSERT_EQ(drops.size(), static_cast<std::size_t>(n));
    for (int i = 0; i < n; ++i) {
      EXPECT_NEAR(volume_share_below(sizes, drops[static_cast<std::size_t>(i)]) * n, i + 0.5, 1e-9);
    }
    EXPECT_EQ(drops, equal_volume_classes(sizes, n)) << "the same again";
  }
  EXPECT_NEAR(equal_volume_classes(sizes, 1)[0], volume_median_m(sizes), 1e-18);
}

TEST(DropClasses, ComeToTheSpraysSurfaceAsTheyBecomeMany) {
  const DropSizes sizes{100e-6, 2.5};
  const auto lack = [&](int n) {
    double surface = 0.0;
    for (const double d : equal_volume_classes(sizes, n)) surface += 1.0 / (n * d);
    return 1.0 - surface * sauter_mean_m(sizes);
  };
  EXPECT_NEAR(lack(10), 0.06, 0.005) << "as documented";
  EXPECT_NEAR(lack(50), 0.02, 0.005);
  EXPECT_LT(lack(10000), 0.002);
  EXPECT_GT(lack(10000), 0.0);
}

// Classes of spray by median: extremely fine below 60 um, fine 106 to 235 um, ultra coarse above 665 um.
// [ASABE S572.1, Spray Nozzle Classification by Droplet Spectra; bounds from memory]
TEST(NozzlePresets, FallIntoThePublishedClasses) {
  const auto median = [](NozzleKind kind) { return volume_median_m(sizes_of(nozzle_preset(kind))); };
  EXPECT_LT(median(NozzleKind::high_pressure_fog), 60e-6);
  EXPECT_GT(median(NozzleKind::low_pressure_mist), 106e-6);
  EXPECT_LT(median(NozzleKind::low_pressure_mist), 235e-6);
  EXPECT_GT(median(NozzleKind::coarse_sprinkler), 665e-6);
}

// Fog drops are 2 to 60 um. [Arbel, Yekutieli & Barak 1999, J. Agric. Eng. Res. 72, 129; from memory]
TEST(NozzlePresets, MakeFogOfFogDrops) {
  const DropSizes fog = sizes_of(nozzle_preset(NozzleKind::high_pressure_fog));
  EXPECT_GT(volume_share_below(fog, 60e-6) - volume_share_below(fog, 2e-6), 0.99);
}

TEST(NozzlePresets, AreEachSoundAndSourced) {
  std::set<NozzleKind> kinds;
  for (const NozzlePreset& preset : nozzle_presets()) {
    kinds.insert(preset.kind);
    EXPECT_EQ(&nozzle_preset(preset.kind), &preset);
    EXPECT_GE(preset.spread.value, 1.5);
    EXPECT_LE(preset.spread.value, 4.0);
    EXPECT_GT(preset.pressure_pa.value, 0.0);
    for (const SourcedValue& value : {preset.volume_median_m, preset.spread, preset.pressure_pa}) {
      EXPECT_GT(std::string_view(value.source).size(), 5U) << preset.about;
    }
  }
  EXPECT_EQ(kinds.size(), 3U);
}

TEST(Nozzle, LetsThroughByTheRootOfThePressure) {
  const double k = nozzle_constant(1e-5, 3e5);
  EXPECT_NEAR(nozzle_flow_m3_s(k, 3e5), 1e-5, 1e-18);
  EXPECT_NEAR(nozzle_flow_m3_s(k, 12e5), 2e-5, 1e-17);
  EXPECT_EQ(nozzle_flow_m3_s(k, 0.0), 0.0);
  EXPECT_EQ(nozzle_flow_m3_s(k, -1e5), 0.0);
}

// On paper: water of 1000 kg/m3 at 2 bar leaves at sqrt(2 * 2e5 / 1000) = 20 m/s; through 0.61 of the opening of 1 mm,
// 0.61 * 7.854e-7 m2 * 20 m/s = 9.582e-6 m3/s.
TEST(Nozzle, IsTorricellisOpening) {
  EXPECT_NEAR(nozzle_flow_m3_s(orifice_constant(0.61, 1e-3, 1000.0), 2e5), 9.582e-6, 0.0005e-6);
}

// On paper: 6 L/min at 70 bar is 1e-4 m3/s * 7e6 Pa = 700 W; what leaves has that as its speed: half rho Q v^2 with v =
// sqrt(2 p / rho).
TEST(Nozzle, TakesPressureTimesFlow) {
  EXPECT_NEAR(hydraulic_power_w(70e5, 6e-3 / 60.0), 700.0, 1e-9);
  const double flow = nozzle_flow_m3_s(orifice_constant(1.0, 2e-3, 998.0), 5e5);
  const double speed = flow / (kPi / 4.0 * 2e-3 * 2e-3);
  EXPECT_NEAR(hydraulic_power_w(5e5, flow), 0.5 * 998.0 * flow * speed * speed, 1e-9);
  EXPECT_EQ(hydraulic_power_w(5e5, 0.0), 0.0);
}

}  // namespace
}  // namespace noonhouse
