// SPDX-License-Identifier: Apache-2.0
// What doses come to: each law's rate against what it promises, and the sums that its rate makes over time.
#include <gtest/gtest.h>

#include <functional>

#include "models/plants/dose.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

/// A memory so long and so wide that neither forgetting nor the end of the dose shows.
constexpr DoseMemory kForgetsNothing{1e30, 1e30};

template <class L>
double rate(const L& law, const std::array<double, static_cast<std::size_t>(L::kInputs)>& in) {
  std::array<double, static_cast<std::size_t>(L::kFluxes)> q{};
  law.flux(in, q);
  return q[0];
}

/// The dose after a time [s], from its rate by its own value: classical fourth-order steps.
double dose_after(double time_s, double start, const std::function<double(double)>& rate_at) {
  constexpr int kSteps = 2000;
  const double h = time_s / kSteps;
  double dose = start;
  for (int i = 0; i < kSteps; ++i) {
    const double a = rate_at(dose), b = rate_at(dose + 0.5 * h * a), c = rate_at(dose + 0.5 * h * b),
                 d = rate_at(dose + h * c);
    dose += h / 6.0 * (a + 2.0 * b + 2.0 * c + d);
  }
  return dose;
}

ThermalDose heat_dose() { return {311.0, 4.0, true, kForgetsNothing}; }
ThermalDose cold_dose() { return {275.0, 3.0, false, kForgetsNothing}; }

TEST(ThermalDose, GrowsTenfoldForEachStepBeyondItsLimit) {
  EXPECT_NEAR(rate(heat_dose(), {315.0, 300.0, 0.0}), 10.0, 1e-9);
  EXPECT_NEAR(rate(heat_dose(), {319.0, 300.0, 0.0}), 100.0, 1e-8);
  EXPECT_NEAR(rate(heat_dose(), {313.0, 300.0, 0.0}), std::sqrt(10.0), 1e-9);
  EXPECT_NEAR(rate(cold_dose(), {272.0, 290.0, 0.0}), 10.0, 1e-9);
  EXPECT_NEAR(rate(cold_dose(), {269.0, 290.0, 0.0}), 100.0, 1e-8);
}

TEST(ThermalDose, IsNothingHalfAKelvinWithinItsLimit) {
  EXPECT_EQ(rate(heat_dose(), {310.5, 300.0, 0.0}), 0.0);
  EXPECT_GT(rate(heat_dose(), {310.6, 300.0, 0.0}), 0.0);
  EXPECT_NEAR(rate(heat_dose(), {311.0, 300.0, 0.0}), 0.5, 1e-12) << "half at the limit itself";
  EXPECT_NEAR(rate(heat_dose(), {311.5, 300.0, 0.0}), std::pow(10.0, 0.5 / 4.0), 1e-9) << "all half a kelvin beyond";
  EXPECT_EQ(rate(cold_dose(), {275.5, 300.0, 0.0}), 0.0);
  EXPECT_GT(rate(cold_dose(), {275.4, 300.0, 0.0}), 0.0);
}

TEST(ThermalDose, IsFlatBeyondAThousandfold) {
  EXPECT_NEAR(rate(heat_dose(), {323.0, 300.0, 0.0}), 1000.0, 1e-6);
  EXPECT_NEAR(rate(heat_dose(), {400.0, 300.0, 0.0}), 1000.0, 1e-9);
  EXPECT_NEAR(rate(cold_dose(), {200.0, 300.0, 0.0}), 1000.0, 1e-9);
}

TEST(ThermalDose, CountsTheWorseSideWhicheverItIs) {
  for (const double worse : {311.3, 318.0}) {
    EXPECT_EQ(rate(heat_dose(), {worse, 305.0, 0.0}), rate(heat_dose(), {305.0, worse, 0.0}));
    EXPECT_GT(rate(heat_dose(), {305.0, worse, 0.0}), 0.0);
  }
  EXPECT_EQ(rate(cold_dose(), {272.0, 290.0, 0.0}), rate(cold_dose(), {290.0, 272.0, 0.0}));
  EXPECT_GT(rate(cold_dose(), {290.0, 272.0, 0.0}), 0.0);
}

// A tenth of the time, four kelvin hotter, is the same dose.
TEST(ThermalDose, IsTheSameForATenthOfTheTimeATenfoldStepHotter) {
  const auto held = [](double kelvin, double time_s) {
    return dose_after(time_s, 0.0, [&](double dose) { return rate(heat_dose(), {kelvin, 300.0, dose}); });
  };
  EXPECT_NEAR(held(313.0, 10.0 * kSecondsPerHour), held(317.0, kSecondsPerHour), 1e-6);
}

TEST(ThermalDose, IsForgottenByHalves) {
  ThermalDose law = heat_dose();
  law.memory = {24.0 * kSecondsPerHour, 1e30};
  const auto cool = [&](double dose) { return rate(law, {300.0, 299.0, dose}); };
  EXPECT_NEAR(dose_after(24.0 * kSecondsPerHour, 1000.0, cool), 500.0, 1e-6);
  EXPECT_NEAR(dose_after(72.0 * kSecondsPerHour, 1000.0, cool), 125.0, 1e-6);
}

TEST(ThermalDose, EndsAtTheMostItCanCome) {
  ThermalDose law = heat_dose();
  law.memory = {1e30, 5000.0};
  const auto hot = [&](double dose) { return rate(law, {319.0, 300.0, dose}); };
  EXPECT_NEAR(dose_after(20.0 * kSecondsPerHour, 0.0, hot), 5000.0, 1e-3);
  EXPECT_NEAR(hot(2500.0), 0.5 * hot(0.0), 1e-9) << "slower the nearer it comes";
}

TEST(LightHabit, FollowsTheSunWithinItsTime) {
  const LightHabit law{10.0 * 86400.0};
  const auto in_sun = [&](double used) { return rate(law, {300.0, used}); };
  EXPECT_NEAR(dose_after(10.0 * 86400.0, 0.0, in_sun), 300.0 * (1.0 - std::exp(-1.0)), 1e-6);
  EXPECT_NEAR(dose_after(10.0 * 86400.0, 600.0, in_sun), 300.0 * (1.0 + std::exp(-1.0)), 1e-6);
  EXPECT_EQ(in_sun(300.0), 0.0);
}

// Half a sine over t hours of day has a mean over day and night of its peak times 2 t / (24 pi). The stated 3 is to be
// within what clear days of 12 to 15 hours come to (3.14 to 2.51).
TEST(LightHabit, PeaksAsOftenItsMeanAsAClearDayDoes) {
  const auto peak_over_mean = [](double hours) { return 24.0 * kPi / (2.0 * hours); };
  EXPECT_LE(kPeakOverMean, peak_over_mean(12.0));
  EXPECT_GE(kPeakOverMean, peak_over_mean(15.0));
}

SunburnDose burn() { return {315.0, 4.0, 100.0, 400.0, kForgetsNothing}; }

TEST(SunburnDose, IsTheSunBeyondWhatIsBorneAtTheTemperatureThatBurns) {
  EXPECT_NEAR(rate(burn(), {315.0, 500.0, 0.0, 0.0}), 1.0, 1e-9) << "400 W/m2 beyond the 100 it bears";
  EXPECT_NEAR(rate(burn(), {315.0, 900.0, 0.0, 0.0}), 2.0, 1e-9);
  EXPECT_NEAR(rate(burn(), {319.0, 500.0, 0.0, 0.0}), 10.0, 1e-9);
  EXPECT_NEAR(rate(burn(), {311.0, 500.0, 0.0, 0.0}), 0.1, 1e-9);
}

TEST(SunburnDose, NeedsBothLightAndHeat) {
  EXPECT_EQ(rate(burn(), {330.0, 0.0, 0.0, 0.0}), 0.0) << "hot in the shade";
  EXPECT_EQ(rate(burn(), {330.0, 99.0, 0.0, 0.0}), 0.0) << "in the sun it bears";
  EXPECT_LT(rate(burn(), {299.0, 500.0, 0.0, 0.0}), 1.1e-4) << "in the sun but cool: four steps below";
  EXPECT_GT(rate(burn(), {330.0, 500.0, 0.0, 0.0}), 1.0);
}

TEST(SunburnDose, SparesWhatIsUsedToTheSun) {
  EXPECT_EQ(rate(burn(), {320.0, 400.0, 100.0, 0.0}), 0.0) << "three times 100 and the 100 it bears anyway";
  EXPECT_GT(rate(burn(), {320.0, 850.0, 50.0, 0.0}), rate(burn(), {320.0, 850.0, 100.0, 0.0}));
  EXPECT_GT(rate(burn(), {320.0, 850.0, 100.0, 0.0}), 0.0);
}

TEST(SunburnDose, NoHabitMakesAPlantBearMoreThanTheBurningSunAgain) {
  const double most = burn().bears_w_m2 + burn().burns_w_m2;
  EXPECT_EQ(rate(burn(), {320.0, most, 300.0, 0.0}), 0.0);
  EXPECT_GT(rate(burn(), {320.0, most + 100.0, 300.0, 0.0}), 0.0);
  EXPECT_EQ(rate(burn(), {320.0, most + 100.0, 300.0, 0.0}), rate(burn(), {320.0, most + 100.0, 250.0, 0.0}));
}

TEST(SunburnDose, IsForgottenByHalves) {
  SunburnDose law = burn();
  law.memory.half_life_s = 3600.0;
  EXPECT_NEAR(dose_after(2.0 * 3600.0, 400.0, [&](double d) { return rate(law, {300.0, 0.0, 0.0, d}); }), 100.0, 1e-6);
}

TEST(ValueSpell, GrowsBySecondsBeyondAndIsForgottenByHalvesWithin) {
  const ValueSpell above{{305.0, 1.0, true, 12.0 * kSecondsPerHour, 1e30}},
      below{{280.0, 1.0, false, 12.0 * kSecondsPerHour, 1e30}};
  EXPECT_NEAR(rate(above, {305.5, 5000.0}), 1.0, 1e-12) << "a second a second, nothing forgotten meanwhile";
  EXPECT_NEAR(rate(below, {279.5, 5000.0}), 1.0, 1e-12);
  EXPECT_NEAR(rate(above, {305.0, 0.0}), 0.5, 1e-12) << "half on the limit";
  EXPECT_NEAR(dose_after(12.0 * kSecondsPerHour, 5000.0,
                         [&](double d) {
                           return rate(above, {304.5, d});
                         }),
              2500.0, 1e-6);
  EXPECT_NEAR(dose_after(12.0 * kSecondsPerHour, 5000.0,
                         [&](double d) {
                           return rate(below, {280.5, d});
                         }),
              2500.0, 1e-6);
}

TEST(ValueSpell, EndsAtTheMostItCanCome) {
  const ValueSpell law{{305.0, 1.0, true, 12.0 * kSecondsPerHour, 1e4}};
  EXPECT_NEAR(dose_after(40.0 * kSecondsPerHour, 0.0, [&](double d) { return rate(law, {310.0, d}); }), 1e4, 0.1);
}

// Air of 30 degC at 40 %: saturation 4246 Pa [ASHRAE Handbook of Fundamentals 2017, ch. 1, table 3], so 2548 Pa short.
TEST(DeficitSpell, TellsDryFromDampByTheVapourTheAirIsShortOf) {
  const double w = humidity_ratio(0.4 * 4246.0, 101325.0);
  const auto dry = [&](double limit_pa) {
    return rate(DeficitSpell{{limit_pa, 2.0, true, 1e30, 1e30}}, {303.15, w, 0.0});
  };
  const auto damp = [&](double limit_pa) {
    return rate(DeficitSpell{{limit_pa, 2.0, false, 1e30, 1e30}}, {303.15, w, 0.0});
  };
  EXPECT_EQ(dry(2548.0 - 10.0), 1.0);
  EXPECT_EQ(dry(2548.0 + 10.0), 0.0);
  EXPECT_EQ(damp(2548.0 - 10.0), 0.0);
  EXPECT_EQ(damp(2548.0 + 10.0), 1.0);
}

TEST(LightSum, SumsLightAndCountsTheTimeThatIsDay) {
  std::array<double, 2> q{};
  const LightSum law{2.0};
  for (const auto& [light, day] : {std::pair{0.0, 0.0}, {2.0, 0.5}, {4.0, 1.0}, {800.0, 1.0}}) {
    law.flux(std::array{light}, q);
    EXPECT_EQ(q[0], light);
    EXPECT_NEAR(q[1], day, 1e-12) << light;
  }
}

/// A way that lets a given flow of dry air through [kg/s].
struct GivenAir {
  static constexpr int kInputs = 1, kFluxes = 1;
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = in[0];
  }
};

// With what the draught fades by, it comes to rest at flow over density and section.
TEST(DraughtBy, ComesToTheSpeedOfWhatPassesWhicheverWay) {
  const DraughtBy<GivenAir> by{{}, 1.15 * 2.0, 30.0};  // a section of 2 m2
  const DraughtFades fades{30.0};
  for (const double flow : {1.15, -1.15}) {
    const auto change = [&](double v) { return rate(by, {flow}) + rate(fades, {v}); };
    EXPECT_NEAR(dose_after(600.0, 0.0, change), 0.5, 1e-3) << flow;
    EXPECT_NEAR(dose_after(30.0, 0.0, change), 0.5 * (1.0 - std::exp(-1.0)), 1e-3) << "within its time";
  }
  EXPECT_LT(dose_after(600.0, 1.0, [&](double v) { return rate(by, {0.0}) + rate(fades, {v}); }), 0.0101)
      << "still air: the rounding's hundredth of 1 m/s";
}

}  // namespace
}  // namespace noonhouse
