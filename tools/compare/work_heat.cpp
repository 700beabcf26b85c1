// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/work_heat.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "models/properties/sun.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

constexpr double kBelly_m = 1.1;
constexpr double kLeastSine = 0.08715574;  ///< of 5 deg
constexpr Worker kWorker{WorkRate::moderate, true, false};

double fourth_root(double x) { return std::sqrt(std::sqrt(x)); }
double fourth(double x) { return x * x * x * x; }

std::size_t floor_place(const std::vector<StandingPlace>& places, int bay) {
  const auto found = std::find_if(places.begin(), places.end(), [&](const StandingPlace& place) {
    return place.of == StandingPlace::Of::floor && place.bay == bay;
  });
  return static_cast<std::size_t>(found - places.begin());
}

}  // namespace

void set_sunlight(HeatSurroundings& around, double direct_level_w_m2, double soft_level_w_m2, double sine_elevation,
                  double floor_reflects) {
  const double direct = std::max(0.0, direct_level_w_m2), soft = std::max(0.0, soft_level_w_m2);
  around.beam_normal_w_m2 = direct / std::max(kLeastSine, sine_elevation);
  around.diffuse_level_w_m2 = soft;
  around.reflected_level_w_m2 = floor_reflects * (direct + soft);
}

double work_reference_k() { return wbgt_reference_k(kWorker); }

WorkHeat::WorkHeat(const Assembly& assembly, const PlanScenario& plan) : assembly_(assembly), plan_(plan) {
  const std::chrono::year_month_day start = plan.spec.run.start;
  julian_day_start_ = julian_day(int(start.year()), static_cast<int>(unsigned(start.month())),
                                 static_cast<int>(unsigned(start.day())), -plan.spec.site.utc_offset_s);
  const auto layer = static_cast<std::size_t>(assembly.shape.layer_at(kBelly_m));
  for (std::size_t b = 0; b < assembly.bays.size(); ++b) {
    const BayParts& parts = assembly.bays[b];
    const PlaceChannels& light = assembly.light[floor_place(assembly.places, static_cast<int>(b))];
    Bay bay;
    bay.air = parts.air[layer];
    bay.humidity = Input(parts.air[layer], 1);
    bay.draught = parts.draught[layer];
    bay.stirring = parts.stirring;
    bay.floor = parts.floor;
    bay.direct = light.direct;
    bay.soft = light.soft;
    bay.seen.bay = parts.name;
    for (const Facet& facet : assembly.shape.facets)
      if (facet.bay == static_cast<int>(b)) bay.cover_m2.push_back(facet.area_m2);
    bay.covers.assign(parts.covers.begin(), parts.covers.end());
    bays_.push_back(std::move(bay));
  }
}

double WorkHeat::sine_elevation(Tick when) const {
  const SiteSpec& site = plan_.spec.site;
  return std::sin(
      sun_position(julian_day_start_ + seconds(when) / kSecondsPerDay, site.latitude_rad, site.longitude_rad)
          .elevation_rad);
}

HeatSurroundings WorkHeat::around(const Bay& bay, double sine_elevation, std::span<const double> p) const {
  HeatSurroundings out;
  out.air_k = at(p, bay.air);
  out.humidity_ratio = at(p, bay.humidity);
  out.pressure_pa = assembly_.pressure_pa;
  out.speed_m_s = std::hypot(at(p, bay.draught), at(p, bay.stirring));
  double covers = 0.0, area_m2 = 0.0;
  for (std::size_t i = 0; i < bay.covers.size(); ++i) {
    covers += bay.cover_m2[i] * fourth(at(p, bay.covers[i]));
    area_m2 += bay.cover_m2[i];
  }
  const double floor = fourth(at(p, bay.floor));
  out.radiant_k = fourth_root(area_m2 > 0.0 ? 0.5 * (floor + covers / area_m2) : floor);
  set_sunlight(out, at(p, bay.direct), at(p, bay.soft), sine_elevation, 1.0 - plan_.spec.house.floor.absorptance);
  return out;
}

void WorkHeat::sample(Tick when, std::span<const double> p, double weight_s) {
  const double sine = sine_elevation(when);
  for (Bay& bay : bays_) {
    const double wbgt = wbgt_k(around(bay, sine, p));
    if (unwise_to_work(wbgt, kWorker)) bay.seen.unwise_h += weight_s / 3600.0;
    if (bay.seen.peak_k >= wbgt) continue;
    bay.seen.peak_k = wbgt;
    bay.seen.peak_time_s = seconds(when);
  }
}

void WorkHeat::put(RunRecord& record) const {
  for (const Bay& bay : bays_) record.work_heat.push_back(bay.seen);
}

}  // namespace noonhouse
