// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/plan_run.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <exception>
#include <map>
#include <span>
#include <thread>

#include "models/weather/weather_digest.hpp"
#include "sim/core/errors.hpp"
#include "tools/compare/cautions.hpp"
#include "tools/compare/heat_lines.hpp"
#include "tools/compare/in_parallel.hpp"
#include "tools/compare/run_recorder.hpp"
#include "tools/ledger/hourly_ledger.hpp"
#include "tools/record/record_seal.hpp"
#include "tools/scenario/field_tools.hpp"
#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {

/// The plan as one text with every default written out.
std::string expanded_text(const PlanScenario& plan) {
  std::string text = "# plan: " + plan.name + "\n# in service:";
  for (const std::string& device : plan.in_service) text += " " + device + ";";
  return text + "\n" + save_fields(plan.spec, UnitSystem::metric, &plan.places);
}

std::string digest_of(const std::string& text) {
  return fmt::format("crc64:{:016x}", crc64(std::as_bytes(std::span(text.data(), text.size()))));
}

/// What the sun table depends on beside the weather, as text: plans with equal keys share it.
std::string table_key(const PlanScenario& plan) {
  ScenarioSpec shared;
  shared.house = plan.spec.house;
  shared.power = plan.spec.power;
  shared.shades = plan.spec.shades;
  shared.plant_kinds = plan.spec.plant_kinds;
  shared.plants = plan.spec.plants;
  return weather_key(plan) + sun_key(plan) + save_fields(shared);
}

/// Weather, geometry and sunlight of each plan, each made once for all plans that share it.
class Outdoors {
 public:
  explicit Outdoors(const Scenario& scenario) : scenario_(&scenario) {}
  void prepare(const PlanScenario& plan) {
    auto& weather = weathers_[weather_key(plan)];
    if (!weather) weather = std::make_shared<const WeatherSeries>(weather_of(*scenario_, plan));
    auto& table = tables_[table_key(plan)];
    if (!table) {
      auto& sun = suns_[sun_key(plan)];
      if (!sun) sun = sunlit_house(plan, *weather);
      table = site_table(plan, *weather, sun);
    }
    of_plan_.emplace_back(weather, table);
  }
  const WeatherSeries& weather(std::size_t plan) const { return *of_plan_[plan].first; }
  std::shared_ptr<const SiteTable> table(std::size_t plan) const { return of_plan_[plan].second; }

 private:
  const Scenario* scenario_;
  std::map<std::string, std::shared_ptr<const WeatherSeries>> weathers_;
  std::map<std::string, std::shared_ptr<const SunlitHouse>> suns_;
  std::map<std::string, std::shared_ptr<const SiteTable>> tables_;
  std::vector<std::pair<std::shared_ptr<const WeatherSeries>, std::shared_ptr<const SiteTable>>> of_plan_;
};

void refuse_when_stopped(const std::atomic<bool>* stop) {
  if (stop != nullptr && stop->load(std::memory_order_relaxed))
    throw UserError(ErrorKind::interrupted, "interrupted; no run was kept");
}

}  // namespace

RunRecord run_plan(const Scenario& scenario, const PlanScenario& plan, const WeatherSeries& weather,
                   std::shared_ptr<const SiteTable> table, const std::function<void(double)>& progress,
                   const std::function<void(const Assembly&, Run&)>& look_on) {
  const Assembly assembly = assemble(plan, std::move(table), weather);
  RunRecorder recorder(assembly, plan);
  Run run(assembly.plan);
  HourlyLedger ledger(assembly.plan.house, assembly.plan.length);
  run.add_observer(recorder);
  run.add_observer(ledger);
  if (look_on) look_on(assembly, run);
  run.on_progress(progress);
  RunRecord record = recorder.finish(run.go());
  put_ledger(record, ledger.hours());
  record.scenario = scenario.name;
  record.cautions = cautions_for(plan);
  record.scenario_text = expanded_text(plan);
  record.provenance.version = NOONHOUSE_VERSION;
  record.provenance.scenario_file = scenario.file.filename().string();
  record.provenance.scenario_digest = digest_of(record.scenario_text);
  record.provenance.weather_digest = weather_digest(weather);
  record.provenance.seed = plan.spec.run.seed;
  return record;
}

std::vector<RunRecord> run_plans(const Scenario& scenario, const std::vector<const PlanScenario*>& plans, int threads,
                                 const std::function<void(double)>& progress, const std::atomic<bool>* stop) {
  Outdoors outdoors(scenario);
  for (const PlanScenario* plan : plans) {
    refuse_when_stopped(stop);
    outdoors.prepare(*plan);
  }
  std::vector<RunRecord> records(plans.size());
  std::vector<std::atomic<double>> shares(plans.size());
  in_parallel(
      plans.size(), threads,
      [&](std::size_t i) {
        refuse_when_stopped(stop);
        records[i] =
            run_plan(scenario, *plans[i], outdoors.weather(i), outdoors.table(i), [&shares, stop, i](double share) {
              refuse_when_stopped(stop);
              shares[i].store(share, std::memory_order_relaxed);
            });
      },
      [&] {
        double sum = 0.0;
        for (const auto& share : shares) sum += share.load(std::memory_order_relaxed);
        if (progress) progress(sum / static_cast<double>(plans.size()));
      });
  return records;
}

}  // namespace noonhouse
