// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "sim/run/run.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse::field {

/// Highest temperature of the air by height in each bay, over the run, and the steepest rise between layers.
struct Profile {
  std::vector<std::vector<LayerShape>> layers;
  std::vector<std::vector<double>> peak_k;
  double steepest_k_m = 0.0;

  /// This profile as a coarser cut of the same house would show it: means by volume.
  Profile as_cut(std::size_t count) const {
    Profile out;
    for (std::size_t b = 0; b < peak_k.size(); ++b) {
      const std::size_t each = peak_k[b].size() / count;
      std::vector<double> means;
      for (std::size_t i = 0; i < count; ++i) {
        double sum = 0.0, volume = 0.0;
        for (std::size_t k = i * each; k < (i + 1) * each; ++k) {
          sum += layers[b][k].volume_m3 * peak_k[b][k];
          volume += layers[b][k].volume_m3;
        }
        means.push_back(sum / volume);
      }
      out.peak_k.push_back(means);
    }
    return out;
  }
  /// Largest difference from a finer cut, layer by layer of this one [K].
  double difference(const Profile& finer) const {
    const Profile same = finer.as_cut(peak_k.front().size());
    double most = 0.0;
    for (std::size_t b = 0; b < peak_k.size(); ++b)
      for (std::size_t i = 0; i < peak_k[b].size(); ++i)
        most = std::max(most, std::abs(peak_k[b][i] - same.peak_k[b][i]));
    return most;
  }
};

/// The demonstration's text, cut to its hottest day and the one before, clear both, and into this many layers.
inline std::string demo_in_layers(int layers) {
  std::ifstream in(NOONHOUSE_SOURCE_DIR "/scenarios/heatwave/heatwave.yaml");
  std::stringstream text;
  text << in.rdbuf();
  std::string out = text.str();
  for (const auto& [from, to] : {std::pair{"length: 7 d", "length: 2 d"},
                                 {"\n  peak_day: 4", "\n  peak_day: 2"},
                                 {"dust_day: 3", "dust_day: 0"},
                                 {"storm_day: 6", "storm_day: 0"}})
    out = small_scenario::with(out, from, to);
  return small_scenario::with(out, "layers: 4", "layers: " + std::to_string(layers));
}

/// Sees the air at the ends of steps alone: what the method has solved for, not what is read between.
class PeakAir final : public Observer {
 public:
  PeakAir(const Assembly& assembly, Profile& out) : assembly_(assembly), out_(out) {
    for (std::size_t b = 0; b < assembly.bays.size(); ++b) {
      out.layers.push_back(assembly.shape.bays[b].layers);
      out.peak_k.emplace_back(assembly.bays[b].air.size(), 0.0);
    }
  }
  void see_start(const Stretch& stretch) override { see_stretch(stretch); }
  void see_stretch(const Stretch& stretch) override {
    const auto p = stretch.potentials_at(stretch.end());
    for (std::size_t b = 0; b < out_.peak_k.size(); ++b) {
      const auto& air = assembly_.bays[b].air;
      for (std::size_t i = 0; i < air.size(); ++i) {
        const double t = p[static_cast<std::size_t>(assembly_.plan.house.position(Input(air[i])))];
        out_.peak_k[b][i] = std::max(out_.peak_k[b][i], t);
        if (i == 0) continue;
        const double below = p[static_cast<std::size_t>(assembly_.plan.house.position(Input(air[i - 1])))];
        const double apart = out_.layers[b][i].middle_m() - out_.layers[b][i - 1].middle_m();
        out_.steepest_k_m = std::max(out_.steepest_k_m, std::abs(t - below) / apart);
      }
    }
  }

 private:
  const Assembly& assembly_;
  Profile& out_;
};

/// Of a plan of the demonstration's house in this many layers.
inline Profile peak_profile(const std::string& name, int layers) {
  const Scenario scenario = read_scenario_text(demo_in_layers(layers), "demo.yaml");
  const PlanScenario& plan = scenario.plan(name);
  const WeatherSeries weather = weather_of(scenario, plan);
  const Assembly assembly = assemble(plan, site_table(plan, weather), weather);
  Profile out;
  PeakAir peaks(assembly, out);
  Run run(assembly.plan);
  run.add_observer(peaks);
  run.go();
  return out;
}

}  // namespace noonhouse::field
