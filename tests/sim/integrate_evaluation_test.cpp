// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "sim/integrate/evaluation.hpp"
#include "tests/support/toy_house.hpp"

namespace noonhouse {
namespace {

class EvaluationOfToyHouse : public testing::Test {
 protected:
  EvaluationOfToyHouse() : house(toy::build(id)), y(house.initial_amounts), channels(house.initial_channels) {
    y.resize(n());
    channels[static_cast<std::size_t>(id.sun_w.index)] = 3000.0;
    channels[static_cast<std::size_t>(id.rain_kg_s.index)] = 0.02;
  }
  std::size_t n() const { return static_cast<std::size_t>(house.states); }
  std::vector<double> rates(const std::vector<double>& amounts, const std::vector<double>& at_channels) const {
    Evaluation evaluation(house);
    std::vector<double> rate(n());
    evaluation.rates(amounts.data(), at_channels.data(), rate.data());
    return rate;
  }
  std::vector<double> fluxes(const std::vector<double>& amounts, const std::vector<double>& at_channels) const {
    Evaluation evaluation(house);
    std::vector<double> rate(n());
    evaluation.rates(amounts.data(), at_channels.data(), rate.data());
    return {evaluation.fluxes().begin(), evaluation.fluxes().end()};
  }

  toy::Ids id;
  House house;
  std::vector<double> y, channels;
};

TEST_F(EvaluationOfToyHouse, JacobianByAmountsIsTheFiniteDifferenceOfTheRates) {
  Evaluation evaluation(house);
  std::vector<double> rate(n());
  evaluation.rates_and_jacobian(y.data(), channels.data(), rate.data());
  for (std::size_t col = 0; col < n(); ++col) {
    const double step = house.amount_tolerance[col] * 0.01;
    auto up = y, down = y;
    up[col] += step;
    down[col] -= step;
    const auto above = rates(up, channels), below = rates(down, channels);
    for (std::size_t row = 0; row < n(); ++row) {
      const int position = house.pattern.find(static_cast<int>(row), static_cast<int>(col));
      const double exact = position < 0 ? 0.0 : evaluation.jacobian()[position];
      const double difference = (above[row] - below[row]) / (2.0 * step);
      const double rounding = 1e-15 * (std::abs(rate[row]) + 1e4) / step;
      EXPECT_NEAR(exact, difference, 1e-6 * std::abs(difference) + rounding)
          << house.state_names[row] << " by " << house.state_names[col];
    }
  }
}

TEST_F(EvaluationOfToyHouse, BothWaysOfEvaluatingGiveTheSameRatesAndFluxes) {
  Evaluation evaluation(house);
  std::vector<double> rate(n());
  evaluation.rates_and_jacobian(y.data(), channels.data(), rate.data());
  EXPECT_EQ(rate, rates(y, channels));
  EXPECT_EQ(std::vector<double>(evaluation.fluxes().begin(), evaluation.fluxes().end()), fluxes(y, channels));
}

TEST_F(EvaluationOfToyHouse, TimeSlopesAreTheDifferenceAlongTheChannelLines) {
  Evaluation evaluation(house);
  std::vector<double> rate(n()), rate_slope(n()), flux_slope(static_cast<std::size_t>(house.fluxes));
  evaluation.rates_and_jacobian(y.data(), channels.data(), rate.data());
  std::vector<double> slope(channels.size());
  for (std::size_t c = 0; c < slope.size(); ++c) slope[c] = 1e-3 * (1.0 + static_cast<double>(c)) * channels[c];
  evaluation.time_slopes(slope.data(), rate_slope.data(), flux_slope.data());
  auto before = channels, after = channels;
  constexpr double kHalf = 0.05;
  for (std::size_t c = 0; c < slope.size(); ++c) {
    before[c] -= slope[c] * kHalf;
    after[c] += slope[c] * kHalf;
  }
  const auto r0 = rates(y, before), r1 = rates(y, after), q0 = fluxes(y, before), q1 = fluxes(y, after);
  double largest = 0.0;
  for (std::size_t i = 0; i < n(); ++i) {
    EXPECT_NEAR(rate_slope[i], (r1[i] - r0[i]) / (2.0 * kHalf), 1e-6 * std::abs(rate_slope[i]) + 1e-8);
    largest = std::max(largest, std::abs(rate_slope[i]));
  }
  EXPECT_GT(largest, 0.1);
  for (std::size_t j = 0; j < q0.size(); ++j)
    EXPECT_NEAR(flux_slope[j], (q1[j] - q0[j]) / (2.0 * kHalf), 1e-6 * std::abs(flux_slope[j]) + 1e-8);
}

TEST_F(EvaluationOfToyHouse, FluxChangeIsTheDirectionalDifferenceOfTheFluxes) {
  Evaluation evaluation(house);
  std::vector<double> rate(n()), v(n()), change(static_cast<std::size_t>(house.fluxes), 0.0);
  evaluation.rates_and_jacobian(y.data(), channels.data(), rate.data());
  for (std::size_t i = 0; i < n(); ++i) v[i] = house.amount_tolerance[i] * std::sin(1.0 + static_cast<double>(i));
  evaluation.add_flux_change(v.data(), 2.0, change.data());
  auto up = y, down = y;
  for (std::size_t i = 0; i < n(); ++i) {
    up[i] += 0.01 * v[i];
    down[i] -= 0.01 * v[i];
  }
  const auto above = fluxes(up, channels), below = fluxes(down, channels);
  for (std::size_t j = 0; j < change.size(); ++j)
    EXPECT_NEAR(change[j], 2.0 * (above[j] - below[j]) / 0.02, 1e-5 * std::abs(change[j]) + 1e-7) << j;
}

TEST_F(EvaluationOfToyHouse, FluxesEnterOnceAtEachEndWithTheirSign) {
  const auto q = fluxes(y, channels), rate = rates(y, channels);
  std::vector<double> expected(n() + static_cast<std::size_t>(house.accounts), 0.0);
  for (std::size_t j = 0; j < q.size(); ++j) {
    expected[static_cast<std::size_t>(house.flux[j].from)] -= q[j];
    expected[static_cast<std::size_t>(house.flux[j].to)] += q[j];
  }
  EXPECT_DOUBLE_EQ(std::accumulate(expected.begin(), expected.end(), 0.0) + 1e6, 1e6);
  expected.resize(n());
  for (std::size_t i = 0; i < n(); ++i) EXPECT_NEAR(rate[i], expected[i], 1e-12 * (1e4 + std::abs(rate[i]))) << i;
  // Warm air over a cooler floor loses heat to it; sun warms the floor.
  const auto floor = static_cast<std::size_t>(house.position(Input(id.floor)));
  auto dark = channels;
  dark[static_cast<std::size_t>(id.sun_w.index)] = 0.0;
  EXPECT_NEAR(rate[floor] - rates(y, dark)[floor], 0.7 * 3000.0, 1e-9);
}

TEST(Evaluation, RatesOfAPartThatOnlyExchangesWithinSumToZero) {
  HouseGraph graph;
  std::vector<NodeId> lumps;
  for (int i = 0; i < 12; ++i)
    lumps.push_back(
        graph.node("lump " + std::to_string(i), ThermalMass{1e4 * (i + 1)}, {280.0 + 3.0 * (i % 5)}, {0.01}));
  const auto out = graph.account("outdoors", Quantity::energy);
  graph.exchange("shut door", "x", toy::Decay<Quantity::energy>{0.0}, {lumps[0]}, {{{lumps[0], out}}});
  for (std::size_t i = 0; i < 12; ++i)
    for (std::size_t j = i + 1; j < 12; j += 3)
      graph.exchange(std::to_string(i) + " to " + std::to_string(j), "x", toy::Radiation{1e-7}, {lumps[i], lumps[j]},
                     {{{lumps[i], lumps[j]}}});
  const House house = graph.compile();
  Evaluation evaluation(house);
  std::vector<double> rate(12);
  evaluation.rates_and_jacobian(house.initial_amounts.data(), nullptr, rate.data());
  double largest = 0.0;
  for (double r : rate) largest = std::max(largest, std::abs(r));
  EXPECT_GT(largest, 10.0);
  EXPECT_NEAR(std::accumulate(rate.begin(), rate.end(), 0.0), 0.0, 1e-12 * largest);
  // So does every column of the Jacobian: energy moved is energy kept.
  std::vector<double> column(12, 0.0);
  for (int row = 0; row < 12; ++row)
    for (int p = house.pattern.row_begin[static_cast<std::size_t>(row)];
         p < house.pattern.row_begin[static_cast<std::size_t>(row) + 1]; ++p)
      column[static_cast<std::size_t>(house.pattern.column[static_cast<std::size_t>(p)])] += evaluation.jacobian()[p];
  for (double sum : column) EXPECT_NEAR(sum, 0.0, 1e-15);
}

}  // namespace
}  // namespace noonhouse
