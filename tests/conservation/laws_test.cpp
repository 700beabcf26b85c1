// SPDX-License-Identifier: Apache-2.0
// Identities that every law of the models keeps, written once and run on the states of cases.yaml.
// That sums balance is the engine's doing (engine_test.cpp); what a law can get wrong is here.
#include <gtest/gtest.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "tests/support/law_cases.hpp"

namespace noonhouse::law_cases {
namespace {

const std::filesystem::path kSource = NOONHOUSE_SOURCE_DIR;

struct Case {
  std::string law, label;
  YAML::Node node;
  std::unique_ptr<AnyLaw> it;
  std::vector<std::string> inputs, fluxes;
  std::vector<Values> states, kinks;

  std::size_t input(const std::string& name) const { return place(inputs, name); }
  std::size_t flux(const std::string& name) const { return place(fluxes, name); }
  std::vector<Values> all_states() const {
    auto out = states;
    out.insert(out.end(), kinks.begin(), kinks.end());
    return out;
  }

 private:
  std::size_t place(const std::vector<std::string>& names, const std::string& name) const {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) throw UserError(ErrorKind::unknown_name, law + " has no '" + name + "'");
    return static_cast<std::size_t>(found - names.begin());
  }
};

using CasePointer = std::shared_ptr<const Case>;
void PrintTo(const CasePointer& c, std::ostream* out) { *out << c->label; }

std::vector<CasePointer> read_cases() {
  std::vector<CasePointer> out;
  std::map<std::string, int> seen;
  for (const YAML::Node& node : YAML::LoadFile((kSource / "tests/conservation/cases.yaml").string())) {
    auto c = std::make_shared<Case>();
    c->node = node;
    c->law = node["law"].as<std::string>();
    const int again = ++seen[c->law];
    c->label = c->law + (again > 1 ? std::to_string(again) : "");
    c->it = all_laws().at(c->law)(node["parameters"] ? node["parameters"].as<Settings>() : Settings{});
    c->inputs = node["inputs"].as<std::vector<std::string>>();
    c->fluxes = node["fluxes"].as<std::vector<std::string>>();
    c->states = node["states"].as<std::vector<Values>>();
    if (node["kinks"]) c->kinks = node["kinks"].as<std::vector<Values>>();
    out.push_back(std::move(c));
  }
  return out;
}

const std::vector<CasePointer>& cases() {
  static const auto all = read_cases();
  return all;
}

std::string text(const Values& in) {
  std::ostringstream out;
  for (double x : in) out << (out.tellp() > 0 ? ", " : "[") << x;
  return out.str() + "]";
}

class Law : public testing::TestWithParam<CasePointer> {
 protected:
  using Names = std::vector<std::string>;
  const Case& c() const { return *GetParam(); }
  Names listed(const YAML::Node& node) const { return node ? node.as<Names>() : Names{}; }
  /// Pairs of inputs under a key, as positions.
  std::vector<std::pair<std::size_t, std::size_t>> pairs(const char* key) const {
    std::vector<std::pair<std::size_t, std::size_t>> out;
    for (const auto& pair : c().node[key])
      out.emplace_back(c().input(pair[0].as<std::string>()), c().input(pair[1].as<std::string>()));
    return out;
  }
  /// The largest size of an input over the states: what its finite differences are small against.
  double scale(std::size_t k) const {
    double out = 0.0;
    for (const auto& state : c().all_states()) out = std::max(out, std::abs(state[k]));
    return out > 0.0 ? out : 1.0;
  }
  double flux_scale(std::size_t j) const {
    double out = 0.0;
    for (const auto& state : c().all_states()) out = std::max(out, std::abs(c().it->flux(state)[j]));
    return out;
  }
  Values shifted(Values in, std::size_t k, double by) const {
    in[k] += by;
    return in;
  }
  /// Slope of flux j by input k, by central differences of two widths (error of fourth order).
  double slope_between(const Values& in, std::size_t j, std::size_t k, double h) const {
    const auto central = [&](double w) {
      return (c().it->flux(shifted(in, k, w))[j] - c().it->flux(shifted(in, k, -w))[j]) / (2.0 * w);
    };
    return (4.0 * central(0.5 * h) - central(h)) / 3.0;
  }
  double slope_beyond(const Values& in, std::size_t j, std::size_t k, double h) const {
    return (c().it->flux(shifted(in, k, h))[j] - c().it->flux(in)[j]) / h;
  }
};

TEST_P(Law, IsDescribedCompletely) {
  EXPECT_EQ(c().inputs.size(), c().it->inputs());
  EXPECT_EQ(c().fluxes.size(), c().it->fluxes());
  EXPECT_GE(c().states.size(), 2U);
  for (const auto& state : c().all_states()) ASSERT_EQ(state.size(), c().it->inputs()) << text(state);
}

TEST_P(Law, HasTheSameValueWithAndWithoutDerivatives) {
  for (const auto& state : c().all_states()) {
    const auto sloped = c().it->sloped(state);
    EXPECT_EQ(c().it->flux(state), sloped.flux) << text(state);
    for (std::size_t j = 0; j < sloped.flux.size(); ++j) {
      EXPECT_TRUE(std::isfinite(sloped.flux[j])) << c().fluxes[j] << " at " << text(state);
      for (double slope : sloped.slope[j]) EXPECT_TRUE(std::isfinite(slope)) << c().fluxes[j] << " at " << text(state);
    }
  }
}

TEST_P(Law, HasTheSlopesOfItsValues) {
  for (const auto& state : c().states) {
    const auto sloped = c().it->sloped(state);
    for (std::size_t j = 0; j < c().fluxes.size(); ++j)
      for (std::size_t k = 0; k < c().inputs.size(); ++k) {
        const double expected = slope_between(state, j, k, 1e-6 * scale(k));
        const double rounding = 1e-7 * flux_scale(j) / scale(k);
        EXPECT_NEAR(sloped.slope[j][k], expected, 2e-6 * std::abs(expected) + rounding)
            << c().fluxes[j] << " by " << c().inputs[k] << " at " << text(state);
      }
  }
}

TEST_P(Law, HasTheSlopeOfOneSideOnACorner) {
  for (const auto& state : c().kinks) {
    const auto sloped = c().it->sloped(state);
    for (std::size_t j = 0; j < c().fluxes.size(); ++j)
      for (std::size_t k = 0; k < c().inputs.size(); ++k) {
        const double h = 1e-7 * scale(k), slope = sloped.slope[j][k];
        const double up = slope_beyond(state, j, k, h), down = slope_beyond(state, j, k, -h);
        const double nearest = std::abs(slope - up) < std::abs(slope - down) ? up : down;
        EXPECT_NEAR(slope, nearest, 1e-4 * std::abs(nearest) + 1e-6 * flux_scale(j) / scale(k))
            << c().fluxes[j] << " by " << c().inputs[k] << " at " << text(state);
      }
  }
}

/// What is left of the largest jump of flux j on the straight way from a to b when the way is narrowed down on it.
double jump_between(const AnyLaw& law, const Values& a, const Values& b, std::size_t j) {
  const auto at = [&](double s) {
    Values in(a.size());
    for (std::size_t k = 0; k < in.size(); ++k) in[k] = a[k] + s * (b[k] - a[k]);
    return law.flux(in)[j];
  };
  constexpr int kParts = 400;
  double worst = -1.0, low = 0.0, high = 1.0;
  for (int i = 1; i + 1 < kParts; ++i) {
    const double s = static_cast<double>(i) / kParts, part = 1.0 / kParts;
    const double bend = std::abs(3.0 * (at(s + part) - at(s)) - (at(s + 2.0 * part) - at(s - part)));
    if (bend <= worst) continue;
    worst = bend;
    low = s;
    high = s + part;
  }
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (low + high);
    (std::abs(at(middle) - at(low)) > std::abs(at(high) - at(middle)) ? high : low) = middle;
  }
  return std::abs(at(high) - at(low));
}

TEST_P(Law, NeverJumps) {
  const auto states = c().all_states();
  for (std::size_t a = 0; a < states.size(); ++a)
    for (std::size_t b = a + 1; b < states.size(); ++b)
      for (std::size_t j = 0; j < c().fluxes.size(); ++j)
        EXPECT_LE(jump_between(*c().it, states[a], states[b], j), 1e-6 * flux_scale(j) + 1e-300)
            << c().fluxes[j] << " between " << text(states[a]) << " and " << text(states[b]);
}

TEST_P(Law, IsAtRestWhereItsPotentialsAreEqual) {
  const auto equal = pairs("at_rest");
  for (auto state : equal.empty() ? std::vector<Values>{} : c().all_states()) {
    for (const auto& [a, b] : equal) state[b] = state[a];
    EXPECT_EQ(c().it->flux(state), Values(c().fluxes.size(), 0.0)) << text(state);
  }
}

TEST_P(Law, ReversesWithItsEnds) {
  const auto ends = pairs("reverses");
  for (const auto& state : ends.empty() ? std::vector<Values>{} : c().all_states()) {
    auto other = state;
    for (const auto& [a, b] : ends) std::swap(other[a], other[b]);
    const auto there = c().it->flux(state), back = c().it->flux(other);
    for (std::size_t j = 0; j < there.size(); ++j)
      EXPECT_NEAR(there[j], -back[j], 1e-12 * flux_scale(j)) << c().fluxes[j] << " at " << text(state);
  }
}

TEST_P(Law, FlowsDownhill) {
  for (const auto& entry : c().node["downhill"]) {
    const auto j = c().flux(entry.first.as<std::string>());
    const auto from = c().input(entry.second[0].as<std::string>()), to = c().input(entry.second[1].as<std::string>());
    bool flowed = false;
    for (const auto& state : c().all_states()) {
      const double product = c().it->flux(state)[j] * (state[from] - state[to]);
      EXPECT_GE(product, 0.0) << c().fluxes[j] << " at " << text(state);
      flowed = flowed || product > 0.0;
    }
    EXPECT_TRUE(flowed) << c().fluxes[j];
  }
}

TEST_P(Law, NeverFlowsBackWhereItGoesOneWay) {
  for (const auto& name : listed(c().node["one_way"])) {
    const auto j = c().flux(name);
    bool flowed = false;
    for (const auto& state : c().all_states()) {
      EXPECT_GE(c().it->flux(state)[j], 0.0) << name << " at " << text(state);
      flowed = flowed || c().it->flux(state)[j] > 0.0;
    }
    EXPECT_TRUE(flowed) << name << " is zero in every state: say it of states where it is not";
  }
}

TEST_P(Law, RisesAndFallsWithWhatDrivesIt) {
  for (const auto& [key, sign] : {std::pair{"rises_with", 1.0}, std::pair{"falls_with", -1.0}})
    for (const auto& entry : c().node[key])
      for (const auto& input : listed(entry.second)) {
        const auto j = c().flux(entry.first.as<std::string>()), k = c().input(input);
        bool moved = false;
        for (const auto& state : c().all_states()) {
          const double slope = sign * c().it->sloped(state).slope[j][k];
          EXPECT_GE(slope, -1e-12 * flux_scale(j) / scale(k)) << c().fluxes[j] << " by " << input << " " << text(state);
          moved = moved || slope > 0.0;
        }
        EXPECT_TRUE(moved) << c().fluxes[j] << " does not follow " << input << " in any state";
      }
}

TEST_P(Law, IsSilentWithoutWhatItNeeds) {
  for (const auto& input : listed(c().node["silent_without"]))
    for (auto state : c().all_states()) {
      state[c().input(input)] = 0.0;
      EXPECT_EQ(c().it->flux(state), Values(c().fluxes.size(), 0.0)) << "without " << input << ": " << text(state);
    }
}

TEST_P(Law, DividesWhatItIsGivenWithoutRest) {
  for (const auto& sum : c().node["sums"])
    for (const auto& state : c().all_states()) {
      const auto q = c().it->flux(state);
      double total = 0.0;
      for (const auto& name : listed(sum["fluxes"])) total += q[c().flux(name)];
      const double given = sum["factor"].as<double>() * state[c().input(sum["input"].as<std::string>())];
      EXPECT_NEAR(total, given, 1e-12 * std::abs(given)) << text(state);
    }
}

INSTANTIATE_TEST_SUITE_P(Cases, Law, testing::ValuesIn(cases()),
                         [](const auto& tested) { return tested.param->label; });

/// Names of the structs in the models' headers that are laws.
std::set<std::string> laws_in_headers() {
  std::set<std::string> out;
  const std::regex law("struct (\\w+) \\{[^}]*?kName\\s*=");
  for (const auto& entry : std::filesystem::recursive_directory_iterator(kSource / "models")) {
    if (entry.path().extension() != ".hpp") continue;
    std::ifstream file(entry.path());
    const std::string all((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    for (auto it = std::sregex_iterator(all.begin(), all.end(), law); it != std::sregex_iterator(); ++it)
      out.insert((*it)[1]);
  }
  return out;
}

TEST(LawCases, HoldEveryLawOfTheModels) {
  std::set<std::string> in_table, in_cases;
  for (const auto& entry : all_laws()) in_table.insert(entry.first);
  for (const auto& c : cases()) in_cases.insert(c->law);
  EXPECT_EQ(laws_in_headers(), in_table) << "tests/support/law_cases.hpp";
  EXPECT_EQ(in_cases, in_table) << "tests/conservation/cases.yaml";
}

}  // namespace
}  // namespace noonhouse::law_cases
