// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/faults_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <vector>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kLongestS = 1e10;  ///< three hundred years: more is damage

Json time_json(double time_s) { return std::isfinite(time_s) ? Json(time_s) : Json(nullptr); }

Json fault_json(const FaultOutcome& fault) {
  Json hours = Json::array(), costs = Json::array(), additions = Json::array(), breaks = Json::array();
  for (const double grace_s : fault.grace_by_hour_s) hours.push_back(time_json(grace_s));
  for (const FaultCost& cost : fault.costs)
    costs.push_back(
        {{"plants", cost.plants}, {"state", cost.state}, {"reason", cost.reason}, {"time_s", time_json(cost.time_s)}});
  for (const FaultAddition& addition : fault.additions)
    additions.push_back({{"name", addition.name},
                         {"grace_s", time_json(addition.grace_s)},
                         {"gained_s", time_json(addition.grace_s - fault.worst_grace_s)},
                         {"followed_s", addition.followed_s}});
  for (const FaultBreak& b : fault.breaks)
    breaks.push_back({{"of", b.of},
                      {"words", b.words},
                      {"time_s", b.time_s},
                      {"failed_s", time_json(b.failed_s)},
                      {"anyway", b.anyway}});
  return {{"of", fault.of},
          {"words", fault.words},
          {"grace_by_hour_s", hours},
          {"harms", fault.harms},
          {"worst_s", time_json(fault.worst_s)},
          {"worst_grace_s", time_json(fault.worst_grace_s)},
          {"costs", costs},
          {"breaks", breaks},
          {"chain", fault.chain},
          {"additions", additions}};
}

[[noreturn]] void refuse(const std::string& why) {
  throw UserError(ErrorKind::results_unreadable, "not a sheet of failures: " + why);
}

/// A time since the run's start or since a failure [s]; null is none.
double time_of(const Json& value) {
  if (value.is_null()) return kNotHappened;
  const auto time_s = value.get<double>();
  if (!(time_s >= 0.0 && time_s <= kLongestS)) refuse(fmt::format("{} is no time in a run [s]", time_s));
  return time_s;
}

using JsonList = std::vector<Json>;

FaultOutcome fault_of(const Json& json) {
  FaultOutcome fault;
  json.at("of").get_to(fault.of);
  json.at("words").get_to(fault.words);
  const auto hours = json.at("grace_by_hour_s").get<JsonList>();
  if (hours.size() != fault.grace_by_hour_s.size()) refuse("\"grace_by_hour_s\" has not 24 times");
  for (std::size_t hour = 0; hour < hours.size(); ++hour) fault.grace_by_hour_s[hour] = time_of(hours[hour]);
  json.at("harms").get_to(fault.harms);
  fault.worst_s = time_of(json.at("worst_s"));
  fault.worst_grace_s = time_of(json.at("worst_grace_s"));
  for (const Json& cost : json.at("costs").get<JsonList>())
    fault.costs.push_back({cost.at("plants").get<std::string>(), cost.at("state").get<std::string>(),
                           cost.at("reason").get<std::string>(), time_of(cost.at("time_s"))});
  for (const Json& b : json.at("breaks").get<JsonList>())
    fault.breaks.push_back({b.at("of").get<std::string>(), b.at("words").get<std::string>(), time_of(b.at("time_s")),
                            time_of(b.at("failed_s")), b.at("anyway").get<bool>()});
  json.at("chain").get_to(fault.chain);
  for (const Json& addition : json.at("additions").get<JsonList>()) {
    fault.additions.push_back(
        {addition.at("name").get<std::string>(), time_of(addition.at("grace_s")), time_of(addition.at("followed_s"))});
    if (!std::isfinite(fault.additions.back().followed_s))
      refuse(fmt::format("\"{}\" was followed for no time", fault.additions.back().name));
  }
  if (fault.harms != (std::isfinite(fault.worst_s) && std::isfinite(fault.worst_grace_s)))
    refuse(fmt::format("\"{}\" does harm without a worst moment, or none with one", fault.of));
  return fault;
}

FaultSheet sheet_of(const Json& json) {
  FaultSheet sheet;
  json.at("scenario").get_to(sheet.scenario);
  json.at("plan").get_to(sheet.plan);
  json.at("start").get_to(sheet.start);
  sheet.hottest_day_s = time_of(json.at("hottest_day_s"));
  sheet.told_day_s = time_of(json.at("told_day_s"));
  sheet.horizon_s = time_of(json.at("horizon_s"));
  json.at("house_in_danger").get_to(sheet.house_in_danger);
  json.at("runs").get_to(sheet.runs);
  json.at("lost_anyway").get_to(sheet.lost_anyway);
  for (const Json& fault : json.at("faults").get<JsonList>()) sheet.faults.push_back(fault_of(fault));
  if (!(std::isfinite(sheet.hottest_day_s) && std::isfinite(sheet.told_day_s) && sheet.horizon_s > 0.0))
    refuse("a day or a horizon is missing");
  if (!std::is_partitioned(sheet.faults.begin(), sheet.faults.end(), [](const FaultOutcome& f) { return f.harms; }))
    refuse("failures that harm nothing stand before those that do");
  return sheet;
}

}  // namespace

std::string faults_json(const FaultSheet& sheet) {
  Json faults = Json::array();
  for (const FaultOutcome& fault : sheet.faults) faults.push_back(fault_json(fault));
  const Json document{{"scenario", sheet.scenario},
                      {"plan", sheet.plan},
                      {"start", sheet.start},
                      {"hottest_day_s", sheet.hottest_day_s},
                      {"told_day_s", sheet.told_day_s},
                      {"horizon_s", sheet.horizon_s},
                      {"house_in_danger", sheet.house_in_danger},
                      {"runs", sheet.runs},
                      {"lost_anyway", sheet.lost_anyway},
                      {"faults", faults}};
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

FaultSheet read_faults(std::string_view text) {
  try {
    return sheet_of(Json::parse(text));
  } catch (const Json::exception& error) {
    refuse(error.what());
  }
}

}  // namespace noonhouse
