// SPDX-License-Identifier: Apache-2.0
#include "models/envelope/cover_optics.hpp"

#include <algorithm>
#include <vector>

#include "sim/core/errors.hpp"

namespace noonhouse {

namespace {

constexpr double kWhitewashScatter_l_kg = 2.3;

/// g of grains of some micrometres in visible light (from memory): a layer that scatters evenly all round would have 0.
/// A layer throws back 3/4 (1 - g) of the optical depth it has   [van de Hulst 1980, similarity; S of Kubelka & Munk].
constexpr double kForwardness = 0.7;

/// A layer with two like faces.
LayerOptics even(double transmittance, double reflectance) {
  return {.transmittance = transmittance, .reflectance_front = reflectance, .reflectance_back = reflectance};
}

bool is_share(double x) { return x >= 0.0 && x <= 1.0; }

double mix(double share, double a, double b) { return share * a + (1.0 - share) * b; }

}  // namespace

Whitewash whitewash(double kg_per_litre) {
  NOON_ASSERT(kg_per_litre >= 0.0);
  const double passes = 1.0 / (1.0 + kWhitewashScatter_l_kg * kg_per_litre);
  return {.transmits = passes, .reflects = 1.0 - passes};
}

CoverOptics::CoverOptics(const CoverMake& make) : make_(make) {
  NOON_ASSERT(make.sheets >= 0);
  NOON_ASSERT(is_share(make.haze) && is_share(make.thrown_back) && is_share(make.condensate_share));
  NOON_ASSERT(make.dirt >= 0.0 && make.dirt < 1.0);
  NOON_ASSERT(is_share(make.whitewash_transmits) && is_share(make.whitewash_reflects));
  NOON_ASSERT(make.whitewash_transmits + make.whitewash_reflects <= 1.0 + 1e-12);
  NOON_ASSERT(is_share(make.drops_return) && is_share(make.frame_share) && is_share(make.frame_reflects));
  NOON_ASSERT(make.opaque_reflects <= 1.0);
  dirt_depth_ = even_layer_optical_depth(1.0 - make.dirt);
  const std::vector<Sheet> stack(static_cast<std::size_t>(make.sheets), make.sheet);
  const SheetOptics clear = diffuse_stack_optics(stack);
  diffuse_sheets_ =
      even(clear.transmittance * (1.0 - make.thrown_back), clear.reflectance + clear.transmittance * make.thrown_back);
  diffuse_ = side_by_side(make.frame_share, even(0.0, make.frame_reflects),
                          make.opaque_reflects >= 0.0 ? even(0.0, make.opaque_reflects) : diffuse_glazing());
}

/// The mean over the sky, so that light which dirt thins at grazing counts as what is left of it; from behind it
/// passes the same share. What returns inside is that of diffuse layers, which for clean sheets is the mean again.
LayerOptics CoverOptics::diffuse_glazing() const {
  return {.transmittance = hemispherical_mean([this](double angle) {
            const Beam beam = glazing(angle).beam;
            return beam.straight + beam.scattered;
          }),
          .reflectance_front = hemispherical_mean([this](double angle) { return glazing(angle).beam.reflectance(); }),
          .reflectance_back = glazing(0.0).diffuse.reflectance_back};
}

/// Between the two layers a beam stands that crosses once and may be mirrored once, and diffuse light that goes to and
/// fro to every order. A beam never bounces twice: only the sheets mirror, and what stands before them scatters.
CoverOptics::Layer CoverOptics::behind(const Layer& first, const Layer& second) {
  const Beam& a = first.beam;
  const Beam& b = second.beam;
  const double room = 1.0 - first.diffuse.reflectance_back * second.diffuse.reflectance_front;
  const double mirrored = a.straight * b.mirrored;
  const double thrown = a.straight * b.returned_scattered;
  // Diffuse light inwards in the gap, from what the first scatters and what it sends back of light on its way out.
  const double inwards = room > 0.0 ? (a.scattered + first.diffuse.reflectance_back * (mirrored + thrown)) / room : 0.0;
  const double outwards = thrown + inwards * second.diffuse.reflectance_front;
  return {.beam = {.straight = a.straight * b.straight,
                   .scattered = a.straight * b.scattered + inwards * second.diffuse.transmittance,
                   .mirrored = a.mirrored + mirrored * a.straight,
                   .returned_scattered =
                       a.returned_scattered + mirrored * a.scattered + outwards * first.diffuse.transmittance},
          .diffuse = couple(first.diffuse, second.diffuse).whole};
}

/// An even layer that takes up light along its slanted path and scatters as much again ahead (common practice, no
/// source: clean dust scatters more, soot hardly).
CoverOptics::Layer CoverOptics::dirt(double incidence_rad) const {
  if (dirt_depth_ <= 0.0) return {};
  const double slanted = std::exp(-dirt_depth_ / std::max(std::cos(incidence_rad), 1e-9));
  return {.beam = {.straight = slanted * slanted, .scattered = slanted - slanted * slanted},
          .diffuse = even(1.0 - make_.dirt, 0.0)};
}

CoverOptics::Layer CoverOptics::lime() const {
  const double passes = make_.whitewash_transmits;
  const double returns = make_.whitewash_reflects;
  // R / T is the scattering S X of Kubelka & Munk, so its optical depth follows; what meets no grain passes straight.
  const double met = passes > 0.0 ? returns / passes / (0.75 * (1.0 - kForwardness)) : 0.0;
  const double straight = std::min(passes, std::exp(-met));
  return {.beam = {.straight = straight, .scattered = passes - straight, .returned_scattered = returns},
          .diffuse = even(passes, returns)};
}

CoverOptics::Layer CoverOptics::sheets(double incidence_rad) const {
  const SheetOptics clear = parallel_sheets_optics(incidence_rad, make_.sheets, make_.sheet);
  const double passes = clear.transmittance * (1.0 - make_.thrown_back);
  return {.beam = {.straight = passes * (1.0 - make_.haze),
                   .scattered = passes * make_.haze,
                   .mirrored = clear.reflectance,
                   .returned_scattered = clear.transmittance * make_.thrown_back},
          .diffuse = diffuse_sheets_};
}

CoverOptics::Layer CoverOptics::glazing(double incidence_rad) const {
  const Layer dry = behind(behind(dirt(incidence_rad), lime()), sheets(incidence_rad));
  const double wet_share = make_.condensate_share;
  if (wet_share <= 0.0) return dry;
  // Drops bend all light that they hold; light between them passes as it came.
  const double ahead = 1.0 - make_.drops_return;
  const double between = std::min(ahead, 1.0 - kDropCover);
  const Layer drops{
      .beam = {.straight = between, .scattered = ahead - between, .returned_scattered = make_.drops_return},
      .diffuse = even(ahead, make_.drops_return)};
  const Layer wet = behind(dry, drops);
  return {.beam = {.straight = mix(wet_share, wet.beam.straight, dry.beam.straight),
                   .scattered = mix(wet_share, wet.beam.scattered, dry.beam.scattered),
                   .mirrored = mix(wet_share, wet.beam.mirrored, dry.beam.mirrored),
                   .returned_scattered = mix(wet_share, wet.beam.returned_scattered, dry.beam.returned_scattered)},
          .diffuse = side_by_side(wet_share, wet.diffuse, dry.diffuse)};
}

LayerOptics CoverOptics::at(double incidence_rad) const {
  if (make_.opaque_reflects >= 0.0) return diffuse_;
  const Layer glazed = glazing(incidence_rad);
  const LayerOptics beam{.transmittance = glazed.beam.straight + glazed.beam.scattered,
                         .reflectance_front = glazed.beam.reflectance(),
                         .reflectance_back = glazed.diffuse.reflectance_back};
  return side_by_side(make_.frame_share, even(0.0, make_.frame_reflects), beam);
}

double CoverOptics::scattered_share_at(double incidence_rad) const {
  if (make_.opaque_reflects >= 0.0) return 0.0;
  const Beam beam = glazing(incidence_rad).beam;
  const double passes = beam.straight + beam.scattered;
  return passes > 0.0 ? beam.scattered / passes : 0.0;
}

double wet_infrared_transmittance(double dry, double film_kg_m2) { return dry * dry_share(film_kg_m2); }

}  // namespace noonhouse
