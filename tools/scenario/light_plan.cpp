// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/light_plan.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

constexpr double kLowestShelf = 0.02;      ///< a bench on the floor is a board [m]
constexpr double kFloorEmissivity = 0.95;  ///< soil, slabs; from memory
constexpr double kBenchEmissivity = 0.9;   ///< timber; from memory

bool in_leaf(const CrownSpec& crown, int day) {
  const bool ordered = crown.leaf_out_day <= crown.leaf_fall_day;
  const bool within = day >= crown.leaf_out_day && day < crown.leaf_fall_day;
  const bool around = day >= crown.leaf_out_day || day < crown.leaf_fall_day;  // leaves over the turn of the year
  return ordered ? within : around;
}

std::vector<bool> season(const ScenarioSpec& spec, int day) {
  std::vector<bool> out;
  for (const auto& item : spec.obstacles)
    if (const auto* crown = std::get_if<CrownSpec>(&item.value.what)) out.push_back(in_leaf(*crown, day));
  return out;
}

LightObstacle obstacle(const BlockSpec& block, double faces_rad) {
  const Vector3 middle = house_place(block.east_m, block.north_m, faces_rad);
  // Its length runs a quarter turn from where its long face looks to.
  const Vector3 along = house_direction(block.faces_rad + 0.5 * std::numbers::pi, 0.0, faces_rad);
  return LightBox{
      middle.x,       middle.y,          0.5 * block.length_m, 0.5 * block.thickness_m, std::atan2(along.y, along.x),
      -100.0,  // it stands on the ground, wherever that lies beside the house
      block.height_m, block.lets_through};
}

LightObstacle obstacle(const CrownSpec& crown, double faces_rad, int day) {
  const Vector3 middle = house_place(crown.east_m, crown.north_m, faces_rad);
  return LightCrown{
      middle.x,       middle.y,       0.5 * crown.width_m,
      crown.bottom_m, crown.height_m, in_leaf(crown, day) ? crown.lets_through_in_leaf : crown.lets_through_bare};
}

/// Share of a bench that lets light through: its gaps, where no plants and pots hide them.
double bench_passes(const Named<BenchSpec>& bench, const ScenarioSpec& spec) {
  double hidden = 0.0;
  for (const auto& group : spec.plants)
    if (group.value.place == bench.name && !group.value.under) hidden += group.value.area_m2;
  return bench.value.lets_through * (1.0 - std::min(1.0, hidden / (bench.value.length_m * bench.value.width_m)));
}

}  // namespace

Vector3 house_place(double east_m, double north_m, double faces_rad) {
  return {east_m * std::cos(faces_rad) - north_m * std::sin(faces_rad),
          east_m * std::sin(faces_rad) + north_m * std::cos(faces_rad), 0.0};
}

Vector3 house_direction(double azimuth_rad, double elevation_rad, double faces_rad) {
  const double turn = azimuth_rad - faces_rad, level = std::cos(elevation_rad);
  return {level * std::sin(turn), level * std::cos(turn), std::sin(elevation_rad)};
}

LightScene light_scene(const ScenarioSpec& spec, const HouseShape& shape, int day_of_year) {
  LightShell shell;
  for (const ShapeCorner& corner : shape.profile) shell.profile.push_back({corner.y_m, corner.z_m});
  shell.pieces = shape.facets.size();
  for (int bay = 0; bay < static_cast<int>(shape.bays.size()); ++bay) {
    shell.bay_ends.push_back(shape.bay_begins_m(bay));
    shell.piece_of_segment.emplace_back(shape.profile.size() - 1, -1);
  }
  shell.bay_ends.push_back(-0.5 * shape.length_m);
  for (std::size_t f = 0; f < shape.facets.size(); ++f) {
    const Facet& facet = shape.facets[f];
    if (facet.segment >= 0) shell.piece_of_segment[at(facet.bay)][at(facet.segment)] = static_cast<int>(f);
    if (facet.side == WallSide::first_end) shell.first_end_piece = static_cast<int>(f);
    if (facet.side == WallSide::last_end) shell.last_end_piece = static_cast<int>(f);
  }
  std::vector<LightShelf> shelves;
  const auto benches = bench_shapes(spec.benches, shape);
  for (std::size_t i = 0; i < benches.size(); ++i)
    shelves.push_back({benches[i].x_low_m, benches[i].x_high_m, benches[i].y_low_m, benches[i].y_high_m,
                       std::max(kLowestShelf, benches[i].z_m), bench_passes(spec.benches[i], spec)});
  std::vector<LightObstacle> obstacles;
  for (const auto& item : spec.obstacles) {
    if (const auto* block = std::get_if<BlockSpec>(&item.value.what))
      obstacles.push_back(obstacle(*block, shape.faces_rad));
    else
      obstacles.push_back(obstacle(std::get<CrownSpec>(item.value.what), shape.faces_rad, day_of_year));
  }
  return {std::move(shell), std::move(shelves), std::move(obstacles)};
}

int surface_of(const StandingPlace& place, const LightScene& scene) {
  if (place.of == StandingPlace::Of::floor) return scene.floor_surface(place.bay);
  return place.of == StandingPlace::Of::under ? scene.floor_beneath(place.bench) : scene.shelf_top(place.bench);
}

const PlantKindSpec& kind_of(const PlantGroupSpec& group, const ScenarioSpec& spec) {
  const auto kind = std::find_if(spec.plant_kinds.begin(), spec.plant_kinds.end(),
                                 [&](const auto& k) { return k.name == group.kind; });
  NOON_ASSERT(kind != spec.plant_kinds.end());
  return kind->value;
}

double leaf_cover_m2(const PlantGroupSpec& group, const PlantKindSpec& kind) {
  return group.area_m2 * (1.0 - std::exp(-kLeafExtinction * kind.leaf_area_index));
}

CanopyLight canopy_of(const PlantKindSpec& kind) {
  if (kind.body == PlantBody::one_body) return bodies_light(kind.absorptance, kind.leaf_area_index);
  return canopy_light(kind.absorptance, kind.leaf_area_index);
}

/// Light that a leaf meets first goes to the sunlit side where it is direct, and by the canopy's depth where it is
/// soft; what leaves throw to one another goes by their area.
LightTaken light_taken(const PlantKindSpec& kind) {
  const PlantSides sides = sides_of(kind);
  const CanopyLight canopy = canopy_of(kind);
  const double first = canopy.takes * canopy.first_hit, again = canopy.takes - first;
  const double by_area = again * sides.sunlit_area, others = again - by_area;
  return {first + by_area, first * sides.sunlit_takes_soft + by_area, others,
          first * (1.0 - sides.sunlit_takes_soft) + others};
}

PlantSides sides_of(const PlantKindSpec& kind) {
  return kind.body == PlantBody::leaves ? sides_of_leaves(kind.leaf_area_index) : sides_of_one_body();
}

std::vector<SurfacePart> surface_parts(const ScenarioSpec& spec, const HouseShape& shape, const LightScene& scene) {
  using Of = SurfacePart::Of;
  std::vector<SurfacePart> out;
  for (std::size_t f = 0; f < shape.facets.size(); ++f)
    out.push_back({static_cast<int>(f), 1.0, Of::facet, static_cast<int>(f), 0.0,
                   sheet_of(shape.facets[f], shape, spec.house.cover).emissivity, 1.0});
  std::vector<double> free(scene.surfaces().size(), 1.0);  // share of each surface that no plants take
  const auto places = standing_places(spec, shape);
  for (std::size_t g = 0; g < spec.plants.size(); ++g) {
    const PlantGroupSpec& group = spec.plants[g].value;
    const PlantKindSpec& kind = kind_of(group, spec);
    const int surface = surface_of(places[at(place_of(group, places, spec))], scene), index = static_cast<int>(g);
    const CanopyLight light = canopy_of(kind);
    const double area = scene.surfaces()[at(surface)].area_m2;
    const double covered = area > 0.0 ? std::min(group.area_m2 / area, free[at(surface)]) : 0.0;
    free[at(surface)] -= covered;
    const double leaves = covered * leaf_cover_m2(group, kind) / group.area_m2, sunlit = sides_of(kind).sunlit_area;
    const double met = covered * (1.0 - light.passes), takes = met > 0.0 ? light.takes / (1.0 - light.passes) : 0.0;
    out.push_back({surface, sunlit * leaves, Of::sunlit, index, takes, kTissueEmissivity, sunlit * met});
    out.push_back(
        {surface, (1.0 - sunlit) * leaves, Of::shaded, index, takes, kTissueEmissivity, (1.0 - sunlit) * met});
    // What passes the leaves falls on the pots and what is in them.
    out.push_back(
        {surface, covered - leaves, Of::pots, index, group.pot_absorptance, kPotEmissivity, covered * light.passes});
  }
  const auto rest = [&](int surface, Of of, int index, double absorptance, double emissivity) {
    const double share = std::max(0.0, free[at(surface)]);
    out.push_back({surface, share, of, index, absorptance, emissivity, share});
  };
  for (int bay = 0; bay < static_cast<int>(shape.bays.size()); ++bay)
    rest(scene.floor_surface(bay), Of::floor, bay, spec.house.floor.absorptance, kFloorEmissivity);
  for (int i = 0; i < static_cast<int>(spec.benches.size()); ++i) {
    const BenchSpec& bench = spec.benches[at(i)].value;
    rest(scene.shelf_top(i), Of::bench, i, bench.absorptance, kBenchEmissivity);
    rest(scene.shelf_underside(i), Of::bench, i, bench.absorptance, kBenchEmissivity);
    rest(scene.floor_beneath(i), Of::floor, shape.bay_index(bench.bay), spec.house.floor.absorptance, kFloorEmissivity);
  }
  return out;
}

const SheetSpec& sheet_of(const Facet& facet, const HouseShape& shape, const CoverSpec& cover) {
  const std::string& bay = shape.bays[at(facet.bay)].name;
  for (const auto& part : cover.parts) {
    const auto& bays = part.value.bays;
    if (part.value.side == facet.side && (bays.empty() || std::find(bays.begin(), bays.end(), bay) != bays.end()))
      return part.value.sheet;
  }
  return facet.roof() ? cover.roof : cover.walls;
}

int shade_of(const Facet& facet, const std::vector<Named<ShadeSpec>>& shades) {
  for (std::size_t i = 0; i < shades.size(); ++i) {
    const ShadeOver over = shades[i].value.over;
    if (over == ShadeOver::all || (over == ShadeOver::roof) == facet.roof()) return static_cast<int>(i);
  }
  return -1;
}

CoverMake cover_make(const SheetSpec& s) {
  CoverMake make;
  if (const CoverMaterial* material = find_cover_material(s.material)) make = make_of(*material);
  make.sheets = s.sheets;
  make.sheet = {s.refractive_index, s.optical_depth};
  make.haze = s.haze;
  make.thrown_back = s.thrown_back;
  make.dirt = s.dirt;
  make.whitewash_transmits = s.whitewash_passes;
  make.whitewash_reflects = s.whitewash_reflects;
  make.condensate_share = s.wet_share;
  make.frame_share = s.frame_share;
  if (s.opaque_reflects) make.opaque_reflects = *s.opaque_reflects;
  return make;
}

FacetOptics::FacetOptics(const CoverOptics* cover, const ShadeSpec* cloth) : cover_(cover), cloth_(cloth) {
  const LayerOptics& glazing = cover->diffuse();
  diffuse_.scatters = beam(0.0).scatters;
  if (cloth == nullptr) {
    diffuse_ = {glazing.transmittance, glazing.reflectance_front, glazing.absorptance_front(), 0.0, diffuse_.scatters};
    inside_ = {glazing.transmittance, glazing.reflectance_back, glazing.absorptance_back(), 0.0, 1.0};
    return;
  }
  const LayerOptics net = net_optics();
  const bool outside = cloth->hangs == ShadeSide::outside;
  const LayerPair pair = outside ? couple(net, glazing) : couple(glazing, net);
  const LayerOptics& whole = pair.whole;
  diffuse_ = {whole.transmittance, whole.reflectance_front, outside ? pair.second_absorbs : pair.first_absorbs,
              outside ? pair.first_absorbs : pair.second_absorbs, diffuse_.scatters};
  inside_ = {whole.transmittance, whole.reflectance_back, outside ? pair.second_absorbs_back : pair.first_absorbs_back,
             outside ? pair.first_absorbs_back : pair.second_absorbs_back, 1.0};
}

LayerOptics FacetOptics::net_optics() const {
  const double back = 1.0 - cloth_->transmits - cloth_->absorbs;
  return {cloth_->transmits, back, back};
}

FacetOptics::Taken FacetOptics::beam(double incidence_rad) const {
  const LayerOptics glazing = cover_->at(incidence_rad);
  const double scatters = cover_->scattered_share_at(incidence_rad);
  if (cloth_ == nullptr)
    return {glazing.transmittance, glazing.reflectance_front, glazing.absorptance_front(), 0.0, scatters};
  return cloth_->hangs == ShadeSide::outside ? beam_past_cloth(glazing, scatters) : beam_onto_cloth(glazing, scatters);
}

/// The beam meets the cloth first: what passes its holes straight meets the cover at its angle, what it scatters meets
/// it from everywhere, and so does all that goes to and fro between them.
FacetOptics::Taken FacetOptics::beam_past_cloth(const LayerOptics& glazing, double scatters) const {
  const LayerOptics net = net_optics();
  const LayerOptics& soft = cover_->diffuse();
  const double straight = cloth_->straight, scattered = net.transmittance - straight;
  const double upward = (straight * glazing.reflectance_front + scattered * soft.reflectance_front) /
                        (1.0 - net.reflectance_back * soft.reflectance_front);
  const double again = scattered + upward * net.reflectance_back;
  Taken out;
  out.passes = straight * glazing.transmittance + again * soft.transmittance;
  out.cover = straight * glazing.absorptance_front() + again * soft.absorptance_front();
  out.cloth = net.absorptance_front() + upward * net.absorptance_back();
  out.returns = net.reflectance_front + upward * net.transmittance;
  const double unscattered = straight * glazing.transmittance * (1.0 - scatters);
  out.scatters = out.passes > 0.0 ? 1.0 - unscattered / out.passes : 1.0;
  return out;
}

/// The beam meets the cover first, then the cloth; what the cloth returns meets the cover's inner face from everywhere.
FacetOptics::Taken FacetOptics::beam_onto_cloth(const LayerOptics& glazing, double scatters) const {
  const LayerOptics net = net_optics();
  const LayerOptics& soft = cover_->diffuse();
  const double upward =
      glazing.transmittance * net.reflectance_front / (1.0 - soft.reflectance_back * net.reflectance_front);
  const double onto = glazing.transmittance + upward * soft.reflectance_back;
  Taken out;
  out.passes = onto * net.transmittance;
  out.cloth = onto * net.absorptance_front();
  out.cover = glazing.absorptance_front() + upward * soft.absorptance_back();
  out.returns = glazing.reflectance_front + upward * soft.transmittance;
  const double unscattered = glazing.transmittance * (1.0 - scatters) * cloth_->straight;
  out.scatters = out.passes > 0.0 ? 1.0 - unscattered / out.passes : 1.0;
  return out;
}

const LightGeometry& SunlitHouse::geometry(int day_of_year) {
  auto& made = by_season_[season(spec_, day_of_year)];
  if (!made) made = std::make_unique<const LightGeometry>(light_scene(spec_, shape_, day_of_year));
  return *made;
}

void SunlitHouse::add(double azimuth_rad, double elevation_rad, int day_of_year) {
  Instant now;
  now.azimuth_rad = azimuth_rad;
  now.elevation_rad = elevation_rad;
  now.to_sun = house_direction(azimuth_rad, elevation_rad, shape_.faces_rad);
  now.geometry = &geometry(day_of_year);
  now.shares = beam_shares(now.geometry->scene, now.to_sun);
  now.sunlit = sunlit_shares(now.geometry->scene, now.to_sun);
  instants_.push_back(std::move(now));
}

}  // namespace noonhouse
