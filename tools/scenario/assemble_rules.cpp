// SPDX-License-Identifier: Apache-2.0
// Rules: states of affairs that forbid or call devices, or are a sign for the grower.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <map>

#include "models/control/running_sum.hpp"
#include "models/control/script.hpp"
#include "models/control/standing_rule.hpp"
#include "models/plants/plant_sides.hpp"
#include "models/properties/figure_text.hpp"
#include "models/weather/weather_signal.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
// How far each value must come back before a rule lets go: told with the fields.
constexpr double kTemperatureGap = 1.0, kHumidityGap = 0.03, kDeficitGap = 100.0;
constexpr double kWetBegins = 0.05,
                 kWetEnds = 0.02;  ///< share of the film that leaves hold; common practice, no source
}  // namespace

void Assembler::add_rules() {
  const bool forecast = std::any_of(spec_.rules.begin(), spec_.rules.end(),
                                    [](const auto& rule) { return rule.value.forecast_above_k.has_value(); });
  if (forecast) add_forecast();
  for (const auto& item : spec_.rules) add_rule(item);
}

void Assembler::add_rule(const Named<RuleSpec>& item) {
  const RuleSpec& r = item.value;
  StandingRule::Parameters p;
  p.name = item.name;
  p.holds = graph_.channel("rule " + item.name, "1", 0.0);
  p.tests = reading_tests(r);
  add_outdoor_tests(item, p.tests);
  p.hours = {ticks(r.from_s), ticks(r.until_s)};
  p.after = ticks(r.after_s);
  p.least_hold = ticks(r.least_hold_s);
  if (r.during != PartOfDay::any) {
    p.only_in_spells = true;
    for (const Spell& spell : parts_of_day(r.during, ticks(r.before_dusk_s)))
      p.spells.push_back({spell.from, spell.until});
  }
  rule_holds_[item.name] = p.holds;
  for (const std::string& device : r.forbids) forbids_[device].push_back({p.holds, item.name});
  const ChannelId heard = r.sensor == "none" ? ChannelId{} : sensor(r.sensor).good;  // without it nobody is to heed it
  for (const std::string& device : r.calls) callers_[device].emplace_back(p.holds, heard);
  add_agent<StandingRule>(std::move(p));
}

std::vector<StandingRule::Test> Assembler::reading_tests(const RuleSpec& r) const {
  std::vector<StandingRule::Test> out;
  if (r.sensor == "none") return out;
  const Input reading = sensor(r.sensor).told;
  // Without a reading it neither forbids nor calls.
  if (sensor(r.sensor).good.valid()) out.push_back({Input(sensor(r.sensor).good), {0.5, 0.4}, true});
  const auto test = [&](const std::optional<double>& limit, double back) {
    if (limit) out.push_back({reading, {*limit, *limit + back}});
  };
  test(r.warmer_k, -kTemperatureGap);
  test(r.colder_k, kTemperatureGap);
  test(r.damper, -kHumidityGap);
  test(r.drier_than, kHumidityGap);
  test(r.deficit_above_pa, -kDeficitGap);
  test(r.deficit_below_pa, kDeficitGap);
  return out;
}

void Assembler::add_outdoor_tests(const Named<RuleSpec>& item, std::vector<StandingRule::Test>& tests) {
  const RuleSpec& r = item.value;
  const auto test = [&](const Input& what, const std::optional<double>& limit, double back_at) {
    if (limit) tests.push_back({what, {*limit, back_at}});
  };
  if (r.raining) tests.push_back({Input(raining_), {0.5, 0.4}});
  test(Input(out_.site.gust), r.wind_above_m_s, 0.8 * r.wind_above_m_s.value_or(0.0));
  test(Input(out_.site.outdoor), r.outdoors_above_k, r.outdoors_above_k.value_or(0.0) - kTemperatureGap);
  test(Input(out_.site.outdoor), r.outdoors_below_k, r.outdoors_below_k.value_or(0.0) + kTemperatureGap);
  test(Input(forecast_), r.forecast_above_k, r.forecast_above_k.value_or(0.0) - 1e-6);
  test(Input(out_.site.global), r.sun_above_w_m2, 0.8 * r.sun_above_w_m2.value_or(0.0));
  test(Input(out_.site.global), r.sun_below_w_m2, 1.25 * r.sun_below_w_m2.value_or(0.0));
  if (r.tank_below_m3) {
    const double level = kWaterKgPerM3 * *r.tank_below_m3;
    tests.push_back({Input(out_.tank, 1), {level, 1.1 * level + 1.0}});
  }
  if (r.charge_below) tests.push_back({Input(charge_above(*r.charge_below)), {0.4, 0.5}});
  if (!r.wet_leaves.empty()) tests.push_back({Input(any_wet(item)), {0.5, 0.4}});
}

/// A channel above nothing while the leaves of any of the groups are wet.
ChannelId Assembler::any_wet(const Named<RuleSpec>& item) {
  const ChannelId any = graph_.channel("wet leaves for " + item.name, "1", 0.0);
  RunningSum::Parameters sum{"wet leaves for " + item.name, {}, 0.0, {}, any};
  for (const std::string& name : item.value.wet_leaves) {
    const auto [at, fresh] = leaves_wet_.try_emplace(name);
    if (fresh) {
      const auto plant = std::find_if(out_.plants.begin(), out_.plants.end(),
                                      [&, &group = name](const auto& p) { return p.name == group; });
      const auto spec = std::find_if(spec_.plants.begin(), spec_.plants.end(),
                                     [&, &group = name](const auto& g) { return g.name == group; });
      const double held = plant->limits.holds_film_kg_m2 * spec->value.area_m2 * sides_of(plant->limits).sunlit_area;
      StandingRule::Parameters wet;
      wet.name = "leaves of " + name;
      wet.holds = at->second = graph_.channel("leaves of " + name + " are wet", "1", 0.0);
      wet.tests.push_back({Input(plant->tissue, 1), {kWetBegins * held, kWetEnds * held}});
      wet.begins = "are wet";
      wet.ends = "are dry";
      add_agent<StandingRule>(std::move(wet));
    }
    sum.parts.push_back({at->second, 1.0});
  }
  add_agent<RunningSum>(std::move(sum));
  return any;
}

/// Nights, or days, by the sun's rise and set; a night may begin before the sun sets. They reach beyond the run: what
/// begins a night in it may be a sunset after its end, at most as far off as `before_dusk` may be long, half a day.
std::vector<Assembler::Spell> Assembler::parts_of_day(PartOfDay part, Tick before_dusk) const {
  const WeatherSignal signal(weather_, std::chrono::sys_days(spec_.run.start), spec_.run.length_s);
  const Tick first{-kDay.ms}, last = signal.end() + kDay;
  std::vector<Spell> days, nights;
  Tick night_from = first;
  for (const WeatherSignal::Daylight& sun : signal.daylight(first, last)) {
    const Spell day{sun.from, sun.until - before_dusk};
    if (day.until <= day.from) continue;  // the night begins before the sun has risen
    if (day.from > night_from) nights.push_back({night_from, day.from});
    days.push_back(day);
    night_from = day.until;
  }
  if (night_from < last) nights.push_back({night_from, last});
  return part == PartOfDay::day ? days : nights;
}

/// The day's high, told at its midnight. It is the run's own weather: a forecast that does not err.
void Assembler::add_forecast() {
  forecast_ = graph_.channel("forecast of the day's high", "K", 0.0);
  Script::Parameters script{"forecast", {}};
  std::map<std::int64_t, double> highs_k;  // by day
  for (std::size_t k = 0; k + 1 < table_->instants(); ++k) {
    double& high = highs_k[table_->grid().when(k).ms / kDay.ms];
    high = std::max(high, table_->instant(k).outdoor_k);
  }
  for (const auto& [day, high] : highs_k)
    script.lines.push_back(
        {kDay * day, "today's high: " + celsius_text(high), EventKind::weather, {{forecast_, high}}});
  add_agent<Script>(std::move(script));
}

}  // namespace noonhouse
