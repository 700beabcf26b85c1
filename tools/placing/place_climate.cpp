// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/place_climate.hpp"

#include <algorithm>
#include <cmath>

#include "tools/scenario/plant_builder.hpp"
#include "tools/scenario/sunlight_account.hpp"

namespace noonhouse {
namespace {
constexpr double kLeastRoom = 0.01;  ///< [m2]
std::size_t ix(int i) { return static_cast<std::size_t>(i); }
double fourth(double x) { return x * x * x * x; }

}  // namespace

const LayerSeries& HouseClimates::air_at(const PlaceClimate& climate, double height_m) const {
  std::size_t layer = 0;
  while (layer + 1 < layer_tops_m.size() && height_m >= layer_tops_m[layer]) ++layer;
  return air[static_cast<std::size_t>(climate.place.bay)][layer];
}

PlaceWatcher::PlaceWatcher(const Assembly& assembly, const ScenarioSpec& spec, const SiteTable& table, Tick every)
    : assembly_(assembly), next_(every) {
  climates_ = {
      every, assembly.plan.length, assembly.pressure_pa, assembly.air_density_kg_m3, table.mean_outdoor_k(), {}, {},
      {}};
  for (const LayerShape& layer : assembly.shape.bays.front().layers) climates_.layer_tops_m.push_back(layer.top_m);
  for (const BayParts& bay : assembly.bays) climates_.air.emplace_back(bay.air.size());
  for (std::size_t p = 0; p < assembly.places.size(); ++p) watch(p, spec, table);
}

void PlaceWatcher::watch(std::size_t p, const ScenarioSpec& spec, const SiteTable& table) {
  const StandingPlace& place = assembly_.places[p];
  const LightGeometry& geometry = *table.sun().instants().front().geometry;
  const int surface = surface_of(place, geometry.scene);
  // What lets light by has its whole top for pots all the same.
  const double lit_m2 = geometry.scene.surfaces()[ix(surface)].area_m2;
  if (lit_m2 <= 0.0) return;
  const bool on = place.of == StandingPlace::Of::on;
  const double room =
      on ? spec.benches[ix(place.bench)].value.length_m * spec.benches[ix(place.bench)].value.width_m : lit_m2;
  if (room < kLeastRoom) return;
  const BayParts& bay = assembly_.bays[ix(place.bay)];
  Watched it;
  it.stirring = bay.stirring;
  it.ground = place.of == StandingPlace::Of::on ? assembly_.benches[ix(place.bench)] : bay.floor;
  it.light = assembly_.light[p];
  it.sees = sights_of(surface, spec, geometry);
  for (const LandingParts& landing : assembly_.landings)
    if (landing.place == static_cast<int>(p)) {
      it.landings.push_back(landing);
      it.sprayed_m2 += landing.area_m2;
    }
  watched_.push_back(std::move(it));

  PlaceClimate climate;
  climate.place = place;
  climate.bay = bay.name;
  climate.room_m2 = room;
  climate.used_to_w_m2 = usual_direct(table, static_cast<int>(p));
  climate.headroom_m = headroom_m(place, spec, assembly_.shape);
  climates_.places.push_back(std::move(climate));
}

std::vector<PlaceWatcher::Seen> PlaceWatcher::sights_of(int surface, const ScenarioSpec& spec,
                                                        const LightGeometry& geometry) const {
  using Of = SurfacePart::Of;
  const auto& surfaces = geometry.scene.surfaces();
  const HouseShape& shape = assembly_.shape;
  std::vector<NodeId> covers(shape.facets.size());
  std::vector<std::size_t> next(shape.bays.size(), 0);
  for (std::size_t f = 0; f < covers.size(); ++f)
    covers[f] = assembly_.bays[ix(shape.facets[f].bay)].covers[next[ix(shape.facets[f].bay)]++];
  std::vector<Seen> out;
  double sum = 0.0;
  for (const SurfacePart& part : surface_parts(spec, shape, geometry.scene)) {
    const double weight =
        part.share * geometry.exchange_m2(ix(surface), ix(part.surface)) / surfaces[ix(surface)].area_m2;
    if (weight <= 1e-6) continue;
    sum += weight;
    const std::size_t i = ix(part.index);
    if (part.of == Of::floor) out.push_back({assembly_.bays[i].floor, weight});
    if (part.of == Of::bench) out.push_back({assembly_.benches[i], weight});
    if (part.of == Of::sunlit) out.push_back({assembly_.plants[i].tissue, weight});
    if (part.of == Of::shaded) out.push_back({assembly_.plants[i].shaded, weight});
    if (part.of == Of::pots) out.push_back({assembly_.plants[i].wall, weight});
    if (part.of != Of::facet) continue;
    const double passes = sheet_of(shape.facets[i], shape, spec.house.cover).infrared_passes;
    const int shade = shade_of(shape.facets[i], spec.shades);
    const bool inside = shade >= 0 && spec.shades[ix(shade)].value.hangs == ShadeSide::inside;
    const double cloth_passes = shade >= 0 ? spec.shades[ix(shade)].value.infrared_passes : 1.0;
    const double sky = geometry.outlooks[i].sky;
    out.push_back({covers[i], weight * (1.0 - passes), inside ? shade : -1, cloth_passes});
    if (passes <= 0.0) continue;
    out.push_back({assembly_.site.sky, weight * passes * sky, shade, cloth_passes});
    out.push_back({assembly_.site.outdoor, weight * passes * (1.0 - sky), shade, cloth_passes});
  }
  for (Seen& seen : out) seen.weight /= sum;
  return out;
}

void PlaceWatcher::see_stretch(const Stretch& stretch) {
  for (; next_ <= stretch.end(); next_ = next_ + climates_.every) take(stretch, next_);
}

double PlaceWatcher::radiant_k(const Watched& place, std::span<const double> p) const {
  double sum = 0.0;
  for (const Seen& seen : place.sees) {
    const double bare = fourth(at(p, seen.what));
    if (seen.cloth < 0) {
      sum += seen.weight * bare;
      continue;
    }
    const double hidden = at(p, assembly_.site.drawn[static_cast<std::size_t>(seen.cloth)]) * (1.0 - seen.cloth_passes);
    sum += seen.weight *
           ((1.0 - hidden) * bare + hidden * fourth(at(p, assembly_.cloths[static_cast<std::size_t>(seen.cloth)])));
  }
  return std::sqrt(std::sqrt(sum));
}

void PlaceWatcher::take(const Stretch& stretch, Tick when) {
  const auto p = stretch.potentials_at(when);
  for (std::size_t b = 0; b < assembly_.bays.size(); ++b)
    for (std::size_t i = 0; i < assembly_.bays[b].air.size(); ++i) {
      const BayParts& bay = assembly_.bays[b];
      climates_.air[b][i].push_back({at(p, bay.air[i]), at(p, Input(bay.air[i], 1)), at(p, bay.draught[i])});
    }
  for (std::size_t i = 0; i < watched_.size(); ++i) {
    const Watched& it = watched_[i];
    climates_.places[i].moments.push_back({at(p, it.stirring), at(p, it.ground), radiant_k(it, p), at(p, it.light.all),
                                           at(p, it.light.direct), 0.0, 0.0});
  }
  const auto carried = stretch.carried_at(when);
  for (std::size_t i = 0; i < watched_.size(); ++i) {
    Watched& it = watched_[i];
    if (it.landings.empty()) continue;
    double water = 0.0, heat = 0.0;
    for (const LandingParts& landing : it.landings) {
      const auto flux = at_flux(landing.exchange);
      water += carried[flux];
      heat += carried[flux + 1];
    }
    PlaceMoment& moment = climates_.places[i].moments.back();
    const double per = 1.0 / (it.sprayed_m2 * seconds(climates_.every));
    if (when.ms > 0) {
      moment.spray_kg_m2_s = (water - it.water_kg) * per;
      moment.spray_heat_w_m2 = (heat - it.heat_j) * per;
    }
    it.water_kg = water;
    it.heat_j = heat;
  }
}

}  // namespace noonhouse
