// SPDX-License-Identifier: Apache-2.0
// Ways of air through the cover: vents, doors, fans with their louvres.
#include <algorithm>
#include <cmath>

#include "models/envelope/heat_links.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
/// (C_d / 2) sqrt(C_w) of continuous roof vents, 0.644 and 0.09 [Boulard & Baille 1995, J. Agric. Eng. Res. 61, 145,
/// eq. (15); coefficients from memory].
constexpr double kRoofVentUnrest = 0.0966;
constexpr double kLouvreSpeed = 2.0;  ///< of a fan's air in its louvre [m/s]; common practice, no source
constexpr double kLeastRise = 0.01;   ///< of an opening that lies level [m]
}  // namespace

/// A side of a bay, or where the bay has no such side another wall of it.
int Assembler::facet_of(int bay, WallSide side, double height_m) const {
  for (const WallSide wanted : {side, WallSide::last_end, WallSide::first_end, WallSide::back, WallSide::roof_back})
    if (const int found = out_.shape.facet_index(bay, wanted, height_m); found >= 0) return found;
  return out_.shape.facet_index(bay, WallSide::roof_front, height_m);
}

/// An opening's pieces, one in each layer that it touches.
void Assembler::open_cover(const std::string& name, int facet, const OpeningSpec& o, double rise_m, ChannelId share) {
  const int bay = out_.shape.facets[at(facet)].bay;
  const auto& layers = out_.shape.bays[at(bay)].layers;
  const double rise = std::max(rise_m, kLeastRise);
  // Within the house, however far the stated middle lies from where the side is.
  const double bottom = std::clamp(o.centre_m - 0.5 * rise, 0.0, std::max(0.0, out_.shape.top_m - rise));
  const double discharge = o.screen_discharge ? discharge_in_series(o.discharge, *o.screen_discharge) : o.discharge;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const double part = overlap_share(bottom, bottom + rise, layers[i]);
    if (part <= 0.0) continue;
    OpeningPiece law{place_in_layer(bay, i, std::max(bottom, layers[i].bottom_m)),
                     TallOpening{o.area_m2 / rise, rise * part, discharge}};
    if (out_.shape.facets[at(facet)].roof()) law.unrest = kRoofVentUnrest;
    join_outdoors(name + " at layer " + std::to_string(i + 1), "ventilation", law, bay, i, out_.site.wind_pa[at(facet)],
                  {Input(out_.site.wind), Input(share)});
  }
}

void Assembler::add_openings() {
  for (const auto& item : spec_.openings) {
    const OpeningSpec& o = item.value;
    const ChannelId position = position_channel(item.name, "opening", o.shut_share);
    const int facet = out_.shape.facet_index(out_.shape.bay_index(o.bay), o.side, o.centre_m);
    open_cover(item.name, facet, o, opening_rise_m(o, out_.shape.facets[at(facet)]), position);
  }
}

/// A fan in the cover and the louvre that opens with it. A fan that moves air around only stirs (add_device_agents).
void Assembler::add_fans() {
  for (const auto& item : spec_.fans) {
    const FanSpec& f = item.value;
    const ChannelId running = position_channel(item.name, "fan");
    const int bay = out_.shape.bay_index(f.bay), facet = facet_of(bay, f.side, f.height_m);
    const auto layer = at(out_.shape.layer_at(f.height_m));
    if (f.moves != FanMoves::air_out)  // one that blows out takes its motor's heat with it
      graph_.exchange("motor of " + item.name, "heat of motors", SwitchedPower{f.power_w}, {running},
                      {{{motors_, out_.bays[at(bay)].air[layer]}}});
    if (f.moves == FanMoves::air_around) continue;
    const FanPiece law{place_in_layer(bay, layer, f.height_m), QuadraticFan{f.flow_m3_s, f.shut_off_pa},
                       f.moves == FanMoves::air_out};
    join_outdoors(item.name, "ventilation", law, bay, layer, out_.site.wind_pa[at(facet)], {Input(running)});
    const bool by_pad =
        std::any_of(spec_.pads.begin(), spec_.pads.end(), [&](const auto& p) { return plan_.uses(p.name); });
    const double area = f.inlet_area_m2.value_or(by_pad ? 0.0 : f.flow_m3_s / kLouvreSpeed);
    if (area <= 0.0) continue;
    OpeningSpec louvre;
    louvre.area_m2 = area;
    louvre.centre_m = f.inlet_height_m;
    louvre.discharge = TallOpening{}.discharge;
    const int side = facet_of(out_.shape.bay_index(f.inlet_bay), f.inlet_side, f.inlet_height_m);
    open_cover("louvre of " + item.name, side, louvre,
               std::sqrt(area) * std::sin(out_.shape.facets[at(side)].slope_rad), running);
  }
}

}  // namespace noonhouse
