// SPDX-License-Identifier: Apache-2.0
// What bad weather does to the house.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "models/control/device.hpp"
#include "models/control/gives_way.hpp"
#include "models/control/script.hpp"
#include "models/hazard/hail.hpp"
#include "models/hazard/hail_strike.hpp"
#include "models/hazard/wind_load.hpp"
#include "tools/scenario/assembler.hpp"
#include "tools/scenario/cover_hail.hpp"
#include "tools/scenario/light_plan.hpp"

namespace noonhouse {
namespace {

constexpr double kLargeStones =
    0.02;  ///< share of the ice that falls in stones of the stated size; common practice, no source

bool covers(const ShadeSpec& shade, const Facet& facet) {
  return shade.over == ShadeOver::all || (shade.over == ShadeOver::roof) == facet.roof();
}

/// What a hazard of the weather says of itself when it begins; hail speaks for itself.
struct Beginning {
  int day = 0;
  double at_s = 0.0;
  std::string words;
  double blows_s = 0.0;  ///< of gusts: how long
  void operator()(const HailSpec&) {}
  void operator()(const GustsSpec& h) {
    *this = {h.day, h.at_s, fmt::format("gusts of {:.3g} m/s begin", h.speed_m_s), h.lasts_s};
  }
  void operator()(const CloudburstSpec& h) {
    *this = {h.day, h.at_s, fmt::format("a cloudburst of {:.3g} mm begins", 1000.0 * h.rain_m)};
  }
  void operator()(const FrostNightSpec& h) { *this = {h.day, 64800.0, "a frost night comes"}; }
  void operator()(const HazeSpec& h) { *this = {h.day, 0.0, "a day of smoke or dust begins"}; }
};

}  // namespace

/// Area that a cloth covers [m2].
double Assembler::cloth_area_m2(const ShadeSpec& shade) const {
  double sum = 0.0;
  for (const Facet& facet : out_.shape.facets)
    if (covers(shade, facet)) sum += facet.area_m2;
  return sum;
}

void Assembler::add_hazards() {
  Script::Parameters script{"hazard", {}};
  const ChannelId storm_until = graph_.channel("gusts blow until", "s", 0.0);
  for (const auto& [name, hazard] : spec_.hazards) {
    Beginning begins;
    std::visit([&](const auto& what) { begins(what); }, hazard.what);
    if (begins.day == 0) continue;
    const Tick from = kDay * (begins.day - 1) + ticks(begins.at_s);
    Script::Line line{from, name + ": " + begins.words, EventKind::weather};
    if (begins.blows_s > 0.0) line.sets.emplace_back(storm_until, seconds(from) + begins.blows_s);
    script.lines.push_back(std::move(line));
  }
  for (const auto& [name, hazard] : spec_.hazards)
    if (const auto* hail = std::get_if<HailSpec>(&hazard.what)) {
      const ChannelId hailing = graph_.channel("hail falls: " + name, "1", 0.0);
      script.lines.push_back({begin_of(*hail),
                              fmt::format("{}: hail begins, stones of {:.3g} mm", name, 1000.0 * hail->stone_m),
                              EventKind::weather,
                              {{hailing, 1.0}}});
      script.lines.push_back({end_of(*hail), name + ": hail ends", EventKind::weather, {{hailing, 0.0}}});
      add_hail(*hail, hailing);
    }
  std::stable_sort(script.lines.begin(), script.lines.end(),
                   [](const auto& a, const auto& b) { return a.when < b.when; });
  if (!script.lines.empty()) add_agent<Script>(std::move(script));
  add_wind_damage(storm_until);
}

/// What a storm brings upon a facet: hits and the energy of each, before any cloth. On a wall only what the stones have
/// across it counts; on a roof all of it.
HailStrike::Parameters Assembler::strike_on(const Facet& facet, const HailSpec& hail) const {
  Hailstone stone;
  stone.diameter_m = hail.stone_m;
  stone.air_density_kg_m3 = reference_density_;
  HailStrike::Parameters p;
  p.name = facet.name;
  p.from = begin_of(hail);
  p.until = end_of(hail);
  const SiteTable::MeanWind wind = table_->mean_wind(p.from, p.until);
  const HailOnFacet meets = hail_on_facet(stone, wind.speed_m_s, facet.slope_rad, wind.from_rad - facet.azimuth_rad);
  p.stone_j = hail_energy_j(stone, wind.speed_m_s) * (facet.roof() ? 1.0 : meets.across_share);
  const SheetSpec& sheet = sheet_of(facet, out_.shape, spec_.house.cover);
  p.bears_j = sheet.hail_rating_j;
  p.hits_m2_s = (hail.hits_m2_s ? *hail.hits_m2_s : hail_hits_per_m2_s(kLargeStones * kSevereHail_kg_m2_s, stone)) *
                meets.per_level_hit;
  p.opens_m2 = hail_opening_m2(hail_rating_of(sheet.material), hail.stone_m);
  return p;
}

/// Whether a storm may break a facet. Of walls only those are followed that bare stones would break.
bool Assembler::hail_may_break(const Facet& facet, const HailSpec& hail) const {
  if (facet.roof()) return true;
  const HailStrike::Parameters p = strike_on(facet, hail);
  return hail_breaks(p.stone_j, p.bears_j);
}

void Assembler::add_hail(const HailSpec& hail, ChannelId hailing) {
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) {
    const Facet& facet = out_.shape.facets[f];
    if (!hail_may_break(facet, hail)) continue;
    HailStrike::Parameters p = strike_on(facet, hail);
    for (const auto& [name, shade] : spec_.shades)
      if (shade.hangs == ShadeSide::outside && covers(shade, facet) && plan_.uses(name))
        p.covers.push_back({name, position_channel(name, "shade"), shade.stops_hail_j});
    p.broken = broken_.at(f);
    p.hailing = hailing;
    add_agent<HailStrike>(std::move(p));
  }
}

/// Holes in facets that hail may break: openings of the facet's size, shut until then. To be added with the openings.
void Assembler::add_holes() {
  for (std::size_t f = 0; f < out_.shape.facets.size(); ++f) {
    const Facet& facet = out_.shape.facets[f];
    const bool may_break = std::any_of(spec_.hazards.begin(), spec_.hazards.end(), [&](const auto& hazard) {
      const auto* hail = std::get_if<HailSpec>(&hazard.value.what);
      return hail != nullptr && hail_may_break(facet, *hail);
    });
    if (!may_break) continue;
    broken_[f] = graph_.channel("broken share of the " + facet.name, "1", 0.0);
    OpeningSpec hole;
    hole.area_m2 = facet.area_m2;
    hole.centre_m = 0.5 * (facet.bottom_m + facet.top_m);
    hole.discharge = TallOpening{}.discharge;
    open_cover("holes in the " + facet.name, static_cast<int>(f), hole, facet.top_m - facet.bottom_m, broken_[f]);
  }
}

/// Loose covers that lift and vents that tear: gone for good, whatever else fails on them and is put right.
void Assembler::add_wind_damage(ChannelId storm_until) {
  const auto lasting_fault = [&](const std::string& name, const char* how) {
    const ChannelId fault = device_fault(name);
    return fault_causes_[fault].lasting = fault_cause(fault, static_cast<double>(DeviceFault::none), how + name);
  };
  for (const auto& [name, shade] : spec_.shades) {
    if (!shade.loose_kg_m2 || !plan_.uses(name)) continue;
    const double area = cloth_area_m2(shade);
    GivesWay::Parameters p;
    p.name = name;
    p.gust = Input(out_.site.gust);
    p.limit_m_s = lift_off_speed_m_s(*shade.loose_kg_m2 + shade.ballast_kg / area, -shade.uplift);
    p.position = position_channel(name, "shade");
    p.fault = lasting_fault(name, "blown off: ");
    p.fault_value = static_cast<double>(DeviceFault::taken_off);
    p.what = fmt::format("is blown off: it lifts at gusts of {:.1f} m/s", p.limit_m_s);
    p.storm_until = storm_until;
    out_.breaks_at_gust_m_s = std::min(out_.breaks_at_gust_m_s, p.limit_m_s);
    add_agent<GivesWay>(std::move(p));
  }
  for (const auto& [name, opening] : spec_.openings) {
    if (!opening.withstands_m_s || !plan_.uses(name)) continue;
    GivesWay::Parameters p;
    p.name = name;
    p.gust = Input(out_.site.gust);
    p.limit_m_s = *opening.withstands_m_s;
    p.position = position_channel(name, "opening");
    p.fault = lasting_fault(name, "torn open: ");
    p.fault_value = static_cast<double>(DeviceFault::torn_on);
    p.what = "is torn open by the wind";
    p.storm_until = storm_until;
    out_.breaks_at_gust_m_s = std::min(out_.breaks_at_gust_m_s, p.limit_m_s);
    add_agent<GivesWay>(std::move(p));
  }
}

}  // namespace noonhouse
