// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/sunlight_account.hpp"

#include <algorithm>
#include <cmath>

#include "sim/core/index.hpp"

namespace noonhouse {
namespace {
/// Light that a square metre of wall or crown sends out over global on the level: it meets about half of it and returns
/// a fifth of that (common practice, no source).
constexpr double kObstacleSends = 0.1;
}  // namespace

SunlightAccount::SunlightAccount(const ScenarioSpec& spec, const HouseShape& shape, const SunRow& row)
    : spec_(spec), shape_(shape), row_(row), optics_(row.cloths + 1), places_(standing_places(spec, shape)) {
  for (const auto& group : spec.plants) takes_.push_back(light_taken(kind_of(group.value, spec)));
  for (const Facet& facet : shape.facets) {
    covers_.push_back(std::make_unique<const CoverOptics>(cover_make(sheet_of(facet, shape, spec.house.cover))));
    cloth_of_.push_back(shade_of(facet, spec.shades));
    for (std::size_t state = 0; state <= row.cloths; ++state) {
      const bool drawn = state > 0 && cloth_of_.back() == static_cast<int>(state) - 1;
      optics_[state].emplace_back(covers_.back().get(), drawn ? &spec_.shades[state - 1].value : nullptr);
    }
  }
}

const LightBalance& SunlightAccount::balance(const LightGeometry& geometry, std::size_t state) {
  auto& made = balances_[{&geometry, state}];
  if (made) return *made;
  auto& parts = parts_[&geometry];
  if (parts.empty()) parts = surface_parts(spec_, shape_, geometry.scene);
  std::vector<PieceOptics> pieces;
  for (const FacetOptics& facet : optics_[state])
    pieces.push_back(
        {{facet.diffuse().passes, facet.diffuse().returns, facet.from_inside().returns}, facet.diffuse().scatters});
  std::vector<double> reflects(geometry.scene.surfaces().size(), 0.0);
  for (const SurfacePart& part : parts) reflects[at(part.surface)] += part.of_light * (1.0 - part.absorptance);
  made = std::make_unique<const LightBalance>(geometry, std::move(pieces), reflects);
  return *made;
}

SunlightAccount::Lit SunlightAccount::light_up(const SkyLight& light, const SunlitHouse::Instant& now,
                                               std::size_t state) {
  Lit out;
  out.outdoors = {light.beam_w_m2, now.to_sun, light.sky_w_m2, spec_.site.albedo * light.global_w_m2,
                  kObstacleSends * light.global_w_m2};
  const auto& surfaces = now.geometry->scene.surfaces();
  for (std::size_t f = 0; f < row_.facets; ++f) {
    const double cosine = -dot(surfaces[f].normal, now.to_sun);
    out.facets.push_back(cosine > 0.0 ? optics_[state][f].beam(std::acos(std::min(1.0, cosine)))
                                      : FacetOptics::Taken{});
    out.beams.push_back({out.facets.back().passes, out.facets.back().scatters});
  }
  out.house = balance(*now.geometry, state).lit(out.outdoors, out.beams, now.shares, now.sunlit);
  return out;
}

SunlightAccount::Totals SunlightAccount::write(const SkyLight& light, const SunlitHouse::Instant& now,
                                               std::size_t state, double* row) {
  const Lit lit = light_up(light, now, state);
  std::fill(row, row + row_.size(), 0.0);
  Totals totals;
  for (std::size_t f = 0; f < row_.facets; ++f) {
    const FacetOptics::Taken &beam = lit.facets[f], &diffuse = optics_[state][f].diffuse(),
                             &inside = optics_[state][f].from_inside();
    const double beam_w = lit.house.beam_w[f], diffuse_w = lit.house.diffuse_w[f], in_w = lit.house.arriving_w[f];
    // A wall takes up light at the face that meets it; sheets take it up throughout.
    const double outer_w = beam_w * beam.cover + diffuse_w * diffuse.cover, inner_w = in_w * inside.cover;
    const bool wall = covers_[f]->diffuse().transmittance <= 0.0;
    row[row_.outer_face(f)] = wall ? outer_w : 0.5 * (outer_w + inner_w);
    row[row_.facet(f)] = wall ? inner_w : 0.5 * (outer_w + inner_w);
    const double cloth_w = beam_w * beam.cloth + diffuse_w * diffuse.cloth + in_w * inside.cloth;
    if (cloth_of_[f] >= 0) row[row_.cloth(at(cloth_of_[f]))] += cloth_w;
    totals.came_w += beam_w + diffuse_w;
    totals.taken_up_w += outer_w + inner_w + cloth_w;
    totals.sent_back_w += beam_w * beam.returns + diffuse_w * diffuse.returns;
    totals.let_out_w += in_w * inside.passes;
  }
  totals.taken_up_w += write_inside(lit.house, *now.geometry, row);
  write_places(lit.house, *now.geometry, row);
  return totals;
}

/// What the parts inside take up; returns their sum [W].
double SunlightAccount::write_inside(const LitHouse& lit, const LightGeometry& geometry, double* row) const {
  double sum = 0.0;
  using Of = SurfacePart::Of;
  for (const SurfacePart& part : parts_.at(&geometry)) {
    if (part.of == Of::facet) continue;
    const double arriving = lit.arriving_w[at(part.surface)], straight = lit.beam_arriving_w[at(part.surface)];
    const double taken = part.of_light * part.absorptance * arriving;
    sum += taken;
    const std::size_t i = at(part.index);
    if (part.of == Of::floor) row[row_.floor(i)] += taken;
    if (part.of == Of::bench) row[row_.bench(i)] += taken;
    if (part.of == Of::pots) row[row_.pots(i)] += taken;
    if (part.of != Of::sunlit && part.of != Of::shaded) continue;
    // Both sides bring in what meets the group; of it the sunlit one takes all that is straight and its part of the
    // rest.
    const double direct = arriving > 0.0 ? std::min(1.0, straight / arriving) : 0.0;
    const LightTaken& takes = takes_[i];
    // Shares of what the group takes up, so that both of its parts together make it whole.
    const double all =
        direct * (takes.sunlit_direct + takes.shaded_direct) + (1.0 - direct) * (takes.sunlit_soft + takes.shaded_soft);
    const double met = all > 0.0 ? taken / all : 0.0;
    row[row_.sunlit(i)] += met * (direct * takes.sunlit_direct + (1.0 - direct) * takes.sunlit_soft);
    row[row_.shaded(i)] += met * (direct * takes.shaded_direct + (1.0 - direct) * takes.shaded_soft);
  }
  return sum;
}

void SunlightAccount::write_places(const LitHouse& lit, const LightGeometry& geometry, double* row) const {
  const auto& surfaces = geometry.scene.surfaces();
  for (std::size_t p = 0; p < places_.size(); ++p) {
    const std::size_t s = at(surface_of(places_[p], geometry.scene));
    if (surfaces[s].area_m2 <= 0.0) continue;
    row[row_.light(p)] = lit.arriving_w[s] / surfaces[s].area_m2;
    row[row_.direct(p)] = std::min(lit.arriving_w[s], lit.beam_arriving_w[s]) / surfaces[s].area_m2;
    row[row_.soft(p)] = row[row_.light(p)] - row[row_.direct(p)];
  }
}

}  // namespace noonhouse
