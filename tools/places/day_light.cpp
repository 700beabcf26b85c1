// SPDX-License-Identifier: Apache-2.0
#include "tools/places/day_light.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/sun.hpp"
#include "models/weather/weather_signal.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/scenario/sunlight_account.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

constexpr double kCountsAsDirect = 0.05;  ///< share of the beam that must come through unscattered
constexpr int kAlong = 8, kAcross = 6;    ///< points of a place that is no surface

/// A place with what it sees, before the sun moves.
struct LitPlace {
  PlaceLight light;
  std::vector<LightSurface::Point> points;
  Sights sights;
};

/// Points across a bay at a height, as far as the room reaches there.
std::vector<LightSurface::Point> points_at(const HouseShape& shape, int bay, double height_m) {
  const auto across = shape.across_at(height_m);
  const double x_high = shape.bay_begins_m(bay), length = shape.bays[static_cast<std::size_t>(bay)].length_m;
  std::vector<LightSurface::Point> out;
  for (int i = 0; i < kAlong; ++i)
    for (int j = 0; j < kAcross; ++j)
      out.push_back({{x_high - length * (i + 0.5) / kAlong,
                      across.back_m + (across.front_m - across.back_m) * (j + 0.5) / kAcross, height_m},
                     1.0 / (kAlong * kAcross)});
  return out;
}

std::vector<LitPlace> places_of(const ScenarioSpec& spec, const HouseShape& shape, const LightScene& scene) {
  std::vector<LitPlace> out;
  const auto add = [&](std::string name, const std::string& bay, double height,
                       std::vector<LightSurface::Point> points) {
    if (points.empty()) return;
    const std::vector<double> minutes(kMinutesOfDay, 0.0);
    Sights sights = look_around(scene, points, {0.0, 0.0, 1.0});
    out.push_back({{std::move(name), bay, height, minutes, minutes, minutes}, std::move(points), std::move(sights)});
  };
  const auto surface = [&](int s) { return scene.surfaces()[static_cast<std::size_t>(s)].points; };
  for (int i = 0; i < static_cast<int>(spec.benches.size()); ++i) {
    const auto& bench = spec.benches[static_cast<std::size_t>(i)];
    add("on the " + bench.name, bench.value.bay, bench.value.height_m, surface(scene.shelf_top(i)));
    add("under the " + bench.name, bench.value.bay, 0.0, surface(scene.floor_beneath(i)));
  }
  for (int b = 0; b < static_cast<int>(shape.bays.size()); ++b) {
    const BayShape& bay = shape.bays[static_cast<std::size_t>(b)];
    add("open floor of the " + bay.name + " bay", bay.name, 0.0, surface(scene.floor_surface(b)));
    for (const LayerShape& layer : bay.layers)
      add(fmt::format("{:.1f} m up in the {} bay", layer.middle_m(), bay.name), bay.name, layer.middle_m(),
          points_at(shape, b, layer.middle_m()));
  }
  return out;
}

/// The weather of a moment of a cloudless day.
WeatherRow clear_row(const ScenarioSpec& spec, const SunPosition& sun, double turbidity) {
  WeatherRow row;
  const SolarSplit split = clear_sky(sun.elevation_rad, standard_pressure_pa(spec.site.altitude_m), turbidity,
                                     extraterrestrial_normal_at_distance(sun.distance_au));
  row.beam_normal_w_m2 = split.beam_normal_w_m2;
  row.diffuse_horizontal_w_m2 = split.diffuse_w_m2;
  row.global_horizontal_w_m2 = split.global_w_m2;
  return row;
}

/// Light at one place at one moment.
void shine_on(LitPlace& place, std::size_t minute, const SunlitHouse::Instant& now, const SunlightAccount::Lit& lit,
              const std::vector<double>& sent, const SunlightAccount& account, std::size_t state) {
  const auto shares = beam_by_piece(now.geometry->scene, place.points, {0.0, 0.0, 1.0}, now.to_sun);
  double sunlit = 0.0, direct = 0.0, soft = 0.0;
  for (std::size_t f = 0; f < shares.size(); ++f) {
    const double straight = lit.beams[f].transmittance * (1.0 - lit.beams[f].scatters);
    if (straight >= kCountsAsDirect) sunlit += shares[f];
    direct += shares[f] * straight * lit.outdoors.beam_w_m2 * now.to_sun.z;
    const FacetOptics::Taken& diffuse = account.facet(f, state).diffuse();
    soft += diffuse.passes * (1.0 - diffuse.scatters) *
            (place.sights.sky[f] * lit.outdoors.sky_w_m2 + place.sights.ground[f] * lit.outdoors.ground_w_m2 +
             place.sights.obstacle[f] * lit.outdoors.obstacle_w_m2);
  }
  for (std::size_t s = 0; s < sent.size(); ++s) soft += place.sights.view[s] * sent[s];
  place.light.sunlit[minute] = lit.outdoors.beam_w_m2 > 0.0 ? std::min(1.0, sunlit) : 0.0;
  place.light.direct_w_m2[minute] = direct;
  place.light.soft_w_m2[minute] = soft;
}

std::size_t cloth_state(const PlanScenario& plan, const std::string& name) {
  if (name.empty()) return 0;
  std::vector<std::string> names;
  for (const auto& shade : plan.spec.shades) names.push_back(shade.name);
  const auto found = std::find(names.begin(), names.end(), name);
  if (found == names.end())
    throw UserError(ErrorKind::unknown_name, fmt::format("--drawn: the scenario has no shade cloth \"{}\"{}; {}", name,
                                                         did_you_mean(name, names), allowed_words(names)));
  return static_cast<std::size_t>(found - names.begin()) + 1;
}

int minute_of(double julian_day, double midnight) {
  return static_cast<int>(std::lround((julian_day - midnight) * kMinutesOfDay));
}

}  // namespace

DayLight light_of_day(const Scenario& scenario, const PlanScenario& plan, const DayQuestion& question) {
  using namespace std::chrono;
  const ScenarioSpec& spec = plan.spec;
  const HouseShape shape = shape_of(spec.house);
  const auto since_start = duration<double>(sys_days(question.date) - sys_days(spec.run.start)).count();
  DayLight out;
  out.house = spec.title;
  out.plan = plan.name;
  out.date = question.date;
  out.latitude_rad = spec.site.latitude_rad;
  out.clear_sky = question.clear_sky || since_start < 0.0 || since_start + 86400.0 > spec.run.length_s;
  out.outdoors_w_m2.assign(kMinutesOfDay, 0.0);
  std::optional<WeatherSignal> weather;
  if (!out.clear_sky)
    weather.emplace(weather_of(scenario, plan), sys_seconds(sys_days(spec.run.start)), spec.run.length_s);

  const auto [year, month, day] =
      std::tuple(static_cast<int>(question.date.year()), static_cast<int>(static_cast<unsigned>(question.date.month())),
                 static_cast<int>(static_cast<unsigned>(question.date.day())));
  const double midnight = julian_day(year, month, day, 0.0) - spec.site.utc_offset_s / 86400.0;
  const LightGeometry geometry(light_scene(spec, shape, day_of_year(year, month, day)));
  const SunRow row = sun_row(spec, shape);
  SunlightAccount account(spec, shape, row);
  const std::size_t state = cloth_state(plan, question.drawn);
  std::vector<LitPlace> places = places_of(spec, shape, geometry.scene);
  for (std::size_t minute = 0; minute < kMinutesOfDay; ++minute) {
    const double seconds = (static_cast<double>(minute) + 0.5) * 60.0;
    const SunPosition sun = sun_position(midnight + seconds / 86400.0, spec.site.latitude_rad, spec.site.longitude_rad);
    if (sun.elevation_rad <= 0.0) continue;
    const WeatherRow sky = weather ? weather->at(Tick{static_cast<std::int64_t>((since_start + seconds) * 1000.0)})
                                   : clear_row(spec, sun, question.turbidity);
    out.outdoors_w_m2[minute] = sky.global_horizontal_w_m2;
    SunlitHouse::Instant now{sun.azimuth_rad,
                             sun.elevation_rad,
                             house_direction(sun.azimuth_rad, sun.elevation_rad, shape.faces_rad),
                             &geometry,
                             {},
                             {}};
    now.shares = beam_shares(geometry.scene, now.to_sun);
    now.sunlit = sunlit_shares(geometry.scene, now.to_sun);
    const SunlightAccount::Lit lit = account.light_up(sky_light(sky, sun), now, state);
    const std::vector<double> sent = account.balance(geometry, state).sent_w_m2(lit.house, lit.beams);
    for (LitPlace& place : places) shine_on(place, minute, now, lit, sent, account, state);
  }
  for (LitPlace& place : places) out.places.push_back(std::move(place.light));
  if (const auto times = sun_times(midnight + 0.5, spec.site.latitude_rad, spec.site.longitude_rad)) {
    out.sunrise_minute = minute_of(times->sunrise_julian_day, midnight);
    out.sunset_minute = minute_of(times->sunset_julian_day, midnight);
  }
  return out;
}

}  // namespace noonhouse
