// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <memory>
#include <string_view>

#include "models/air/spray_table.hpp"
#include "models/properties/wet_bulb_fast.hpp"
#include "sim/contract/law.hpp"

/// A line of nozzles over layers of air. Its water falls from layer to layer; what evaporates on the way goes into the
/// layer where it does, and the rest lands. How much, the SprayTable says by the stage of the spray's drying. The stage
/// at the top of a layer is what the laws read: zero (a channel) at the nozzle, below it the reading that a
/// SprayHistory makes of the layer above. A stretch of layer that the spray falls through, and each surface it lands
/// on, is an exchange of its own with its portion of the line's flow; portions that leave a layer's top equal those
/// that arrive from above. So at rest all that leaves the tank is the flow, to rounding. While the air changes,
/// readings lag, and for as long what leaves the tank differs from the flow, after the start of fog in dry air by up
/// to 2 tau of it a layer. Conserved it is at every instant, because each flux is one edge of the graph. Water
/// colder than saturated air cools it past saturation: what condenses then is FogSettling's. Not modelled: drops that
/// the air carries along, spray that drifts out through openings, air that falls with it.
namespace noonhouse {

/// The wet-bulb depression [K] of air that spray falls through, never negative, slope continuous: d^2 / (d + 0.2 K) of
/// the true d, so that fog stops evaporating over a stretch of humidity that a step in time can see. It lacks at most
/// 0.2 K, 2 % at 10 K; fog saturates air to 0.1 K of the wet bulb instead of 0.02.
template <class S>
S spray_depression_k(const S& temperature_k, const S& w, double pressure_pa) {
  return drying_difference_k(S(temperature_k - wet_bulb_fast_k(temperature_k, w, pressure_pa)), 0.2);
}

/// Drying [K m] of a stretch of fall through one layer's air, zero from saturation on:  (T - T_wet bulb) dz.
template <class S>
S drying_k_m(const S& temperature_k, const S& w, double fall_m, double pressure_pa) {
  return fall_m * spray_depression_k(temperature_k, w, pressure_pa);
}

/// The stage s (SprayTable) at which spray leaves a layer, a reading that follows with a lag:
///   ds/dt = (stage after s_above and (T - T_wet bulb) dz - s) / tau
/// Inputs: s, s_above, T, w of the layer. The flux is from nowhere to the reading. It goes on while the line is off, so
/// that it is right when it starts.
struct SprayHistory {
  static constexpr std::string_view kName = "spray on its way";
  std::shared_ptr<const SprayTable> table;
  double depth_m = 0.0;          ///< dz, of the layer or from the nozzle to its bottom
  double time_constant_s = 0.3;  ///< tau: short of a drop's time of fall, for the tank's sake
  double pressure_pa = 101325.0;
  static constexpr int kInputs = 4, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 1>& q) const {
    q[0] = (table->stage_after(in[1], drying_k_m(in[2], in[3], depth_m, pressure_pa)) - in[0]) / time_constant_s;
  }
};

/// Spray that evaporates into one layer. Inputs: stage above, T, w of the layer, tank temperature [K], flow of the
/// line [kg/s]. Fluxes: water [kg/s] tank -> air, its heat as liquid of the tank [W] tank -> air.
///   m = portion flow (F(below) - F(above)),  below the stage after above and (T - T_wet bulb) dz
/// F by SprayTable. The layer's own air counts at once, so it takes up nothing once it is saturated. Water enters as
/// liquid, so the air pays the latent heat; what the drops that go on take from it is SprayLanding's.
struct SprayEvaporation {
  static constexpr std::string_view kName = "spray that evaporates";
  static constexpr bool kMayRepeat = true;  // stretches of different depth in one layer
  std::shared_ptr<const SprayTable> table;
  double portion = 1.0;  ///< of the line's flow, as it leaves the nozzles, that falls through this stretch
  double depth_m = 0.0;  ///< dz, of the layer, from the nozzle or down to the surface
  double pressure_pa = 101325.0;
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    const S below = table->stage_after(in[0], drying_k_m(in[1], in[2], depth_m, pressure_pa));
    q[0] = (portion * in[4]) * (table->share_at_stage(below) - table->share_at_stage(in[0]));
    q[1] = q[0] * liquid_enthalpy(in[3]);
  }
};

/// Spray that lands on a surface. Inputs: stage above, T, w of the layer in which the surface lies, tank temperature
/// [K], flow of the line [kg/s].
/// Fluxes: water [kg/s] tank -> surface, its heat as liquid [W] tank -> surface, heat [W] tank -> air of the layer.
///   m = portion flow (1 - F(below));  it lands with  T_tank + G (T_wet bulb - T_tank)
/// What it lost or gained on its way it has given to the air, all of it here, to that of this layer: the three fluxes
/// together take the liquid's heat at the tank's temperature, exactly. (Water 5 K from the wet bulb holds 1 % of the
/// heat that it would take up to evaporate, so where it goes hardly matters.)
struct SprayLanding {
  static constexpr std::string_view kName = "spray that lands";
  std::shared_ptr<const SprayTable> table;
  double portion = 1.0;   ///< of the line's flow, as it leaves the nozzles, that comes down on this surface
  double depth_m = 0.0;   ///< dz, from the layer's top or the nozzle in it to the surface
  double approach = 1.0;  ///< G, SprayTable::approach_to_wet_bulb of the whole fall
  double pressure_pa = 101325.0;
  static constexpr int kInputs = 5, kFluxes = 3;
  static constexpr std::array<Quantity, 3> kCarries{Quantity::water, Quantity::energy, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 3>& q) const {
    const S depression = spray_depression_k(in[1], in[2], pressure_pa);
    q[0] = (portion * in[4]) * (1.0 - table->share_at_stage(table->stage_after(in[0], S(depth_m * depression))));
    const S cooling = approach * (in[3] - (in[1] - depression));
    q[1] = q[0] * liquid_enthalpy(S(in[3] - cooling));
    q[2] = q[0] * (kWaterHeat * cooling);
  }
};

}  // namespace noonhouse
