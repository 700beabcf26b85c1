// SPDX-License-Identifier: Apache-2.0
// The laws of the network of pressures, each at a balance that a closed formula knows.
#include "models/air/air_network.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

using Three = std::array<double, 3>;
constexpr double kThin = 0.01;  ///< rise of an opening that is a slit [m]

template <class L, std::size_t N>
Three flux(const L& law, const std::array<double, N>& in) {
  Three q{};
  law.flux(in, q);
  return q;
}
double density(double kelvin) { return dry_air_density(kelvin, 0.0, kStandardPressure); }

/// The pressure [Pa] at which the flows out of a box add up to nothing; they rise with it.
double balance(const std::function<double(double)>& outflow) {
  double low = -1e3, high = 1e3;
  for (int i = 0; i < 200; ++i) {
    const double middle = 0.5 * (low + high);
    (outflow(middle) < 0.0 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

/// A slit at a height of a room of one layer, without the wind's unrest.
OpeningPiece slit(double area_m2, double middle_m, double discharge = 0.65, double layer_middle_m = 1.5) {
  return {{middle_m - 0.5 * kThin, layer_middle_m, 1.2, kStandardPressure}, {area_m2 / kThin, kThin, discharge}, 0.0};
}

// Q = C_d A sqrt(2 g dH (T_i - T_o) / T_i), ASHRAE Handbook of Fundamentals, ventilation chapter. Worked out from the
// printed equation: C_d 0.65; A 0.5 m2, 1.5 m to the neutral level, 35 / 30 degC: 0.2246 m3/s; A 1 m2, 2 m, 35 / 25
// degC: 0.7335 m3/s. 0.5 %. Bernoulli's equation gives T_i in the denominator for the air that comes in, below.
TEST(OpeningPiece, LetsInTheHandbooksStackFlowBelowItsNeutralLevel) {
  struct Row {
    double area, rise, inside, outside, flow;
  };
  for (const Row& row : {Row{0.5, 1.5, 308.15, 303.15, 0.2246}, Row{1.0, 2.0, 308.15, 298.15, 0.7335}}) {
    const double warm = density(row.inside), cold = density(row.outside);
    // As much mass leaves above as comes in below at equal pressures if areas go as 1 / sqrt(density).
    const auto low = slit(row.area, 0.3), high = slit(row.area * std::sqrt(cold / warm), 0.3 + 2.0 * row.rise);
    const auto out = [&](const OpeningPiece& piece, double p) {
      return flux(piece, std::array{p, row.inside, 0.0, row.outside, 0.0, 0.0, 0.0, 1.0})[0];
    };
    const double p = balance([&](double at) { return out(low, at) + out(high, at); });
    EXPECT_NEAR(-out(low, p) / cold, row.flow, 0.005 * row.flow);
    EXPECT_NEAR(out(low, p), -out(high, p), 1e-12);
    // A cold room works the same upside down: heavy air leaves below.
    const double q = balance([&](double at) {
      return flux(low, std::array{at, row.outside, 0.0, row.inside, 0.0, 0.0, 0.0, 1.0})[0] +
             flux(high, std::array{at, row.outside, 0.0, row.inside, 0.0, 0.0, 0.0, 1.0})[0];
    });
    EXPECT_GT(flux(low, std::array{q, row.outside, 0.0, row.inside, 0.0, 0.0, 0.0, 1.0})[0], 0.0);
  }
}

TEST(OpeningPiece, FallsOutOfTheReferenceDensityAndTheLayersMiddle) {
  auto piece = slit(0.5, 2.2);
  const std::array in{0.3, 305.0, 0.012, 298.0, 0.008, 0.4, 0.0, 1.0};
  const Three q = flux(piece, in);
  // A column of the reference density that stands at zero at the floor: P changes by g (rho_ref' - rho_ref) z_m ...
  auto other = piece;
  other.place.reference_kg_m3 = 1.0;
  auto moved = in;
  moved[0] -= kGravity * (other.place.reference_kg_m3 - piece.place.reference_kg_m3) * -piece.place.layer_middle_m;
  const Three r = flux(other, moved);
  for (std::size_t k = 0; k < 3; ++k) EXPECT_NEAR(r[k], q[k], 1e-9 * std::abs(q[k]));
  // ... and a layer's middle elsewhere in the same air by the weight between.
  other = piece;
  other.place.layer_middle_m += 0.7;
  moved = in;
  const auto inside = air_densities(in[1], in[2], kStandardPressure);
  moved[0] -= kGravity * 0.7 * (inside.moist - piece.place.reference_kg_m3);
  const Three s = flux(other, moved);
  for (std::size_t k = 0; k < 3; ++k) EXPECT_NEAR(s[k], q[k], 1e-9 * std::abs(q[k]));
}

// Openings in series, BS 5925:1991: 0.5 and 0.3 m2 act as 0.2572 m2; the smaller takes the larger fall of pressure.
TEST(OpeningPiece, InSeriesActsAsOneOfTheEffectiveAreaAndDividesThePressure) {
  const auto big = slit(0.5, 1.5), small = slit(0.3, 1.5);
  const double rho = density(300.0), wind_pa = 2.0;
  const auto out = [](const OpeningPiece& piece, double p, double wind) {
    return flux(piece, std::array{p, 300.0, 0.0, 300.0, 0.0, wind, 0.0, 1.0})[0];
  };
  const double p = balance([&](double at) { return out(big, at, wind_pa) + out(small, at, 0.0); });
  EXPECT_NEAR(out(small, p, 0.0) / rho, 0.65 * 0.2572 * std::sqrt(2.0 * wind_pa / rho), 0.001 * 0.65 * 0.2572 * 1.83);
  // Shares (A / A_i)^2: 0.2572^2 / 0.3^2 = 0.735 of the pressure across the smaller.
  const double across = p + kGravity * (rho - 1.2) * 1.5;  // P less what the column to the layer's middle weighs
  EXPECT_NEAR(across / wind_pa, 0.735, 0.0005 + 0.001);
}

// Q = C_d A U sqrt(dC_p), BS 5925:1991, with the openings upwind and downwind in series; 1 %.
TEST(OpeningPiece, LetsTheWindBlowThrough) {
  const auto windward = slit(1.2, 1.5), lee = slit(0.9, 1.5);
  const double rho = density(295.0), cp_in = 0.6, cp_out = -0.3;
  const double effective = area_in_series_m2(std::array{1.2, 0.9});
  for (const double speed : {0.5, 3.0, 12.0}) {
    const double unit = 0.5 * rho * speed * speed;
    const auto out = [&](const OpeningPiece& piece, double p, double cp) {
      return flux(piece, std::array{p, 295.0, 0.0, 295.0, 0.0, cp * unit, speed, 1.0})[0];
    };
    const double p = balance([&](double at) { return out(windward, at, cp_in) + out(lee, at, cp_out); });
    const double expected = cross_wind_flow(0.65, effective, speed, cp_in - cp_out);
    EXPECT_NEAR(out(lee, p, cp_out) / rho, expected, 0.01 * expected) << speed;
  }
}

// Brown & Solvason 1962, Int. J. Heat Mass Transf. 5, 859: an opening alone has its neutral level at half height and
// exchanges Q = (C_d / 3) W H sqrt(g H |rho_a - rho_b| / rho).
TEST(OpeningPiece, AloneExchangesAsBrownAndSolvason) {
  const OpeningPiece door{{0.2, 1.5, 1.2, kStandardPressure}, {0.9, 2.0, 0.6}, 0.0};
  constexpr double kTracer = 1e-5;  // of humidity, in the room alone: it counts what leaves
  for (const double inside : {303.0, 293.0}) {
    const std::array at{0.0, inside, kTracer, 298.0, 0.0, 0.0, 0.0, 1.0};
    const double p = balance([&](double x) {
      auto in = at;
      in[0] = x;
      return flux(door, in)[0];
    });
    auto in = at;
    in[0] = p;
    const double contrast = std::abs(density(inside) - density(298.0));
    const double mean = 0.5 * (density(inside) + density(298.0));
    const double expected = 0.6 / 3.0 * 0.9 * 2.0 * std::sqrt(kGravity * 2.0 * contrast / mean);
    EXPECT_NEAR(flux(door, in)[1] / kTracer / mean, expected, 0.01 * expected) << inside;
  }
}

// Q = 0.025 A U, BS 5925:1991, single-sided ventilation by wind.
TEST(OpeningPiece, AloneInTheWindExchangesByUnrestToWhatMovesAtRest) {
  const double area = 2.0, rho = density(300.0);
  const OpeningPiece lone{{0.0, 0.0, rho, kStandardPressure}, {1.0, 2.0}, 0.025};
  constexpr double kTracer = 1e-5;
  const auto exchange = [&](const OpeningPiece& piece, double speed) {
    const double p = balance([&](double at) {
      return flux(piece, std::array{at, 300.0, kTracer, 300.0, kTracer, 0.0, speed, 1.0})[0];
    });
    return flux(piece, std::array{p, 300.0, kTracer, 300.0, 0.0, 0.0, speed, 1.0})[1] / kTracer / rho;
  };
  auto calm = lone;
  calm.unrest = 0.0;
  const double rest = exchange(calm, 0.0);
  EXPECT_LT(rest, 0.012 * area) << "1 cm/s each way is what the rounding of rest moves";
  for (const double speed : {1.0, 3.0, 10.0, 40.0}) {
    const double expected = single_sided_wind_flow(area, speed);
    EXPECT_NEAR(exchange(lone, speed), expected, rest + 0.02 * 0.025 * area) << speed;
  }
  EXPECT_NEAR(exchange(lone, 40.0), single_sided_wind_flow(area, 40.0), 0.01 * single_sided_wind_flow(area, 40.0));
}

TEST(OpeningPiece, ItsUnrestFadesWhereAirFlowsThrough) {
  const OpeningPiece with{{0.0, 0.0, 1.2, kStandardPressure}, {1.0, 1.0}, 0.025};
  auto without = with;
  without.unrest = 0.0;
  constexpr double kTracer = 1e-5;
  double last = 1e9;
  for (const double p : {0.0, 0.01, 0.1, 1.0, 10.0}) {
    const std::array in{p, 300.0, kTracer, 300.0, 0.0, 0.0, 3.0, 1.0};
    const double more = flux(with, in)[1] - flux(without, in)[1];
    EXPECT_GT(more, 0.0);
    EXPECT_LT(more, last) << p;
    EXPECT_NEAR(flux(with, in)[0], flux(without, in)[0], 1e-12) << "as much comes in as goes out";
    last = more;
  }
}

TEST(OpeningPiece, CarriesVapourAndEnthalpyOfWhereItsAirComesFrom) {
  const auto piece = slit(0.5, 1.5);
  const double in_h = moist_air_enthalpy(310.0, 0.02), out_h = moist_air_enthalpy(300.0, 0.005);
  const Three out = flux(piece, std::array{50.0, 310.0, 0.02, 300.0, 0.005, 0.0, 0.0, 1.0});
  // A counterflow of d / (2 |dp|) = 1e-6 of the flow is left by the rounding.
  EXPECT_NEAR(out[1] / out[0], 0.02, 0.02 * 1e-5);
  EXPECT_NEAR(out[2] / out[0], in_h, 1e-5 * in_h);
  const Three into = flux(piece, std::array{-50.0, 310.0, 0.02, 300.0, 0.005, 0.0, 0.0, 1.0});
  EXPECT_LT(into[0], 0.0);
  EXPECT_NEAR(into[1] / into[0], 0.005, 0.02 * 1e-5);
  EXPECT_NEAR(into[2] / into[0], out_h, 1e-5 * in_h);
  const Three half = flux(piece, std::array{50.0, 310.0, 0.02, 300.0, 0.005, 0.0, 0.0, 0.5});
  for (std::size_t k = 0; k < 3; ++k) EXPECT_DOUBLE_EQ(half[k], 0.5 * out[k]);
}

// Q = C dp^n, ASHRAE Handbook of Fundamentals, ventilation chapter.
TEST(LeakPiece, FollowsItsPowerLaw) {
  const double rho = density(300.0);
  const LeakPiece leak{{0.0, 0.0, rho, kStandardPressure}, 0.004};
  for (const double dp : {0.5, 4.0, 50.0, 500.0}) {
    const double expected = rho * 0.004 * std::pow(dp, 0.65);
    const auto q = flux(leak, std::array{dp, 300.0, 0.0, 300.0, 0.0, 0.0});
    EXPECT_NEAR(q[0], expected, 0.01 * expected) << dp;
    EXPECT_NEAR(flux(leak, std::array{0.0, 300.0, 0.0, 300.0, 0.0, dp})[0], -q[0], 1e-12) << "wind presses it in";
  }
}

TEST(LeakPiece, IsDrivenByStackFromItsOwnHeight) {
  const LeakPiece high{{2.0, 1.0, 1.2, kStandardPressure}, 0.004};
  const double warm = density(310.0), cold = density(290.0);
  // At the pressure at which warm and cold columns meet at the floor.
  const double p = -kGravity * (warm - 1.2) * 1.0;
  const double expected = warm * 0.004 * std::pow(kGravity * (cold - warm) * 2.0, 0.65);
  EXPECT_NEAR(flux(high, std::array{p, 310.0, 0.0, 290.0, 0.0, 0.0})[0], expected, 0.001 * expected);
}

TEST(FanPiece, WorksWhereItsCurveMeetsTheOpeningInSeries) {
  const double rho = density(300.0);
  const OpeningPlace floor{0.0, 0.0, rho, kStandardPressure};
  const QuadraticFan fan{0.6, 60.0};
  for (const double area : {0.02, 0.1, 0.5}) {
    for (const bool blows_out : {true, false}) {
      const FanPiece piece{floor, fan, blows_out};
      const OpeningPiece way{floor, {area / kThin, kThin, 0.65}, 0.0};
      const auto fan_out = [&](double p) { return flux(piece, std::array{p, 300.0, 0.0, 300.0, 0.0, 0.0, 1.0})[0]; };
      const double p = balance([&](double at) {
        return fan_out(at) + flux(way, std::array{at, 300.0, 0.0, 300.0, 0.0, 0.0, 0.0, 1.0})[0];
      });
      // dp of the curve falls with the flow, that of the opening rises as its square.
      const double flow = balance([&](double q) {
        const double x = 1e-3 * q + 1.0;  // q from -1000 to 1000 is a flow from 0 to 2 m3/s
        return 0.5 * rho * std::pow(x / (0.65 * area), 2) - fan.pressure_pa(x, rho, 1.0);
      });
      const double expected = 1e-3 * flow + 1.0;
      EXPECT_NEAR(fan_out(p) / rho, blows_out ? expected : -expected, 0.01 * expected) << area;
      EXPECT_EQ(p < 0.0, blows_out) << "a fan that blows out draws the room down";
    }
  }
}

TEST(FanPiece, AtRestIsShutAndInAGaleIsBlownBack) {
  const FanPiece fan{{0.0, 0.0, density(300.0), kStandardPressure}, {0.6, 60.0}, true};
  EXPECT_EQ(flux(fan, std::array{10.0, 300.0, 0.01, 300.0, 0.0, 50.0, 0.0}), Three{});
  EXPECT_GT(flux(fan, std::array{0.0, 300.0, 0.0, 300.0, 0.0, 55.0, 1.0})[0], 0.0);
  EXPECT_LT(flux(fan, std::array{0.0, 300.0, 0.0, 300.0, 0.0, 70.0, 1.0})[0], 0.0) << "more than its shut-off";
}

// Brown & Solvason, as above, between two bays.
TEST(SectionPiece, ExchangesAsBrownAndSolvasonAndPassesWhatIsDrivenThrough) {
  const SectionPiece section{{0.0, 1.0, 1.2, kStandardPressure}, {3.0, 2.0, 0.6}};
  constexpr double kTracer = 1e-5;
  const double warm = density(303.0), cool = density(300.0);
  const auto at = [&](double p) { return flux(section, std::array{p, 303.0, kTracer, 0.0, 300.0, 0.0}); };
  const double p = balance([&](double x) { return at(x)[0]; });
  const double expected = 0.6 / 3.0 * 6.0 * std::sqrt(kGravity * 2.0 * (cool - warm) / (0.5 * (cool + warm)));
  EXPECT_NEAR(at(p)[1] / kTracer / (0.5 * (warm + cool)), expected, 0.01 * expected);
  const Three pushed = flux(section, std::array{1.0, 300.0, 0.0, 0.0, 300.0, 0.0});
  EXPECT_NEAR(pushed[0], 0.6 * 6.0 * std::sqrt(2.0 * cool), 0.01 * 0.6 * 6.0 * std::sqrt(2.0 * cool));
}

TEST(LayerLift, LetsAirStandThatIsInItsHydrostaticBalanceAndLiftsTheRest) {
  const LayerLift law{0.5, 0.2, 4.0, 1.2, kStandardPressure};
  const double low = density(300.0), high = density(305.0);
  // P at the middle of each layer, less the reference column: rises by what air weighs less than it.
  const double rest = kGravity * ((low - 1.2) * 0.2 + (high - 1.2) * 0.3);
  const auto still = flux(law, std::array{rest, 300.0, 0.0, 0.0, 305.0, 0.0});
  EXPECT_NEAR(still[0], 0.0, 1e-12);
  const auto lifted = flux(law, std::array{rest + 1e-3, 300.0, 0.004, 0.0, 305.0, 0.02});
  EXPECT_GT(lifted[0], 0.0);
  const auto sunk = flux(law, std::array{rest - 1e-3, 300.0, 0.0, 0.0, 305.0, 0.0});
  EXPECT_NEAR(sunk[0], -law.conductance_kg_s_pa_m2 * law.area_m2 * 1e-3, 1e-9);
  EXPECT_NEAR(sunk[2] / sunk[0], moist_air_enthalpy(305.0, 0.0), 1e-3 * moist_air_enthalpy(305.0, 0.0))
      << "what sinks comes from above";
}

}  // namespace
}  // namespace noonhouse
