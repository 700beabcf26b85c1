// SPDX-License-Identifier: Apache-2.0
// The grower: daily visits, and what is done on a sign.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "models/control/grower.hpp"
#include "models/control/grower_response.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr Tick kVisit = 30_min;      ///< how long a visit lasts; common practice, no source
constexpr double kCanReaches = 0.5;  ///< of the pump's low mark; common practice, no source
}  // namespace

void Assembler::add_people() {
  away_ = graph_.channel("grower is away", "1", 0.0);
  stays_until_ = graph_.channel("grower who was called stays until", "s", 0.0);
  out_.fault_points.push_back({FailureKind::grower_away, "grower", away_, 1.0, 0.0, "is away"});
  for (const auto& visit : spec_.grower.visits) add_visit(visit);
  for (const auto& response : spec_.grower.responses) add_response(response);
}

/// What is opened is held off no longer; what is shut is held off against what controls call.
void Assembler::hands_on(const std::vector<std::string>& names, bool open, std::vector<HandMove>& out) {
  const auto move = [&](ChannelId channel, const std::string& what, double value) {
    HandMove& made = hand_moves_[what];
    if (!made.channel.valid())
      made = {channel, value, graph_.channel(what + ", lasting", "1", 0.0),
              graph_.channel(what + ", to be put back", "1", 0.0)};
    made.value = value;
    out.push_back(made);
  };
  for (const std::string& name : names) {
    if (!plan_.uses(name)) continue;
    move(hand_.at(name), "hand on " + name, open ? 1.0 : 0.0);
    move(held_off_.at(name), "held off by hand: " + name, open ? 0.0 : 1.0);
  }
}

void Assembler::add_visit(const Named<VisitSpec>& visit) {
  GrowerVisit::Parameters p;
  p.name = "grower, " + visit.name;
  p.at = ticks(visit.value.at_s);
  p.tank_water = Input(out_.tank, 1);
  p.tank_temperature = out_.tank;
  p.tank_reserve_kg = kCanReaches * kWaterKgPerM3 * spec_.tank.low_m3;
  p.keeps_back_kg = kWaterKgPerM3 * visit.value.keeps_back_m3;
  p.water_permit = out_.water_permit;
  p.away = away_;
  for (const std::string& name : visit.value.waters) {
    const auto group =
        std::find_if(spec_.plants.begin(), spec_.plants.end(), [&](const auto& g) { return g.name == name; });
    const auto parts =
        std::find_if(out_.plants.begin(), out_.plants.end(), [&](const auto& g) { return g.name == name; });
    p.waters.push_back({name, Input(parts->pot, 1), watering_.at(name),
                        spec_.grower.pours_to * group->value.pot_water_kg_m2 * group->value.area_m2});
  }
  hands_on(visit.value.opens, true, p.moves);
  hands_on(visit.value.shuts, false, p.moves);
  add_agent<GrowerVisit>(std::move(p));
}

void Assembler::add_response(const Named<ResponseSpec>& item) {
  const ResponseSpec& r = item.value;
  GrowerResponse::Parameters p;
  p.name = "grower, " + item.name;
  p.sign = Input(rule_holds_.at(r.sign));
  p.limits = {0.5, 0.4};
  p.sees = "sees: " + r.sign;
  std::vector<std::string> deeds;
  hands_on(r.opens, true, p.moves);
  hands_on(r.shuts, false, p.moves);
  const auto in_service = [&](const std::vector<std::string>& names) {
    std::vector<std::string> out;
    std::copy_if(names.begin(), names.end(), std::back_inserter(out), [&](const auto& n) { return plan_.uses(n); });
    return out;
  };
  const auto opened = in_service(r.opens), shut = in_service(r.shuts);
  if (opened.empty() && shut.empty()) return;
  if (!opened.empty()) deeds.push_back(fmt::format("opens or starts {}", fmt::join(opened, ", ")));
  if (!shut.empty()) deeds.push_back(fmt::format("shuts or stops {}", fmt::join(shut, ", ")));
  p.does = fmt::format("{}", fmt::join(deeds, "; "));
  p.undoes = "puts it back";
  p.undo = r.undo;
  p.presence = presence();
  p.away = away_;
  p.reaction = ticks(spec_.grower.reaction_s);
  p.alarm = r.alarm;
  p.returns_within = ticks(spec_.grower.returns_within_s);
  p.stays = ticks(spec_.grower.stays_s);
  p.stays_until = stays_until_;
  add_agent<GrowerResponse>(std::move(p));
}

std::vector<DailyWindow> Assembler::presence() const {
  std::vector<DailyWindow> out;
  for (const WindowSpec& window : spec_.grower.present) out.push_back({ticks(window.from_s), ticks(window.until_s)});
  for (const auto& visit : spec_.grower.visits)
    out.push_back({ticks(visit.value.at_s), Tick{(ticks(visit.value.at_s) + kVisit).ms % kDay.ms}});
  return out;
}

}  // namespace noonhouse
