// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <memory>
#include <string_view>

#include "models/air/spray_table.hpp"
#include "models/air/wet_bulb_fast.hpp"
#include "sim/contract/law.hpp"

/// A line of nozzles over layers of air. Its water falls from layer to layer; what evaporates on the way goes into the
/// layer where it does, and the rest lands. How much, the SprayTable says by the drying X [K m] that the water has met.
/// X at the top of a layer is what the laws read: zero (a channel) at the nozzle, below it the reading that a
/// SprayHistory makes of the layer above. A stretch of layer that the spray falls through, and each surface it lands
/// on, is an exchange of its own with its portion of the line's flow; portions that leave a layer's top equal those
/// that arrive from above. So at rest all that leaves the tank is the flow, to rounding. While the air changes,
/// readings lag by the time of fall, and what is on its way makes the difference; conserved it is at every instant,
/// because each flux is one edge of the graph. Not modelled: drops that the air carries along, spray that drifts out
/// through openings, air that falls with it.
namespace noonhouse {

/// Drying [K m] of a stretch of fall through one layer's air, never negative, zero from saturation on, slope
/// continuous:  (T - T_wet bulb) dz, the depression by drying_difference_k.
template <class S>
S drying_k_m(const S& temperature_k, const S& w, double fall_m, double pressure_pa) {
  return fall_m * drying_difference_k(S(temperature_k - wet_bulb_fast_k(temperature_k, w, pressure_pa)));
}

/// The drying [K m] that water has met when it leaves a layer, a reading that follows with a lag:
///   dX/dt = (X_above + (T - T_wet bulb) dz - X) / tau
/// Inputs: X, X_above, T, w of the layer. The flux is from nowhere to the reading. It goes on while the line is off, so
/// that it is right when it starts.
struct SprayHistory {
  static constexpr std::string_view kName = "spray on its way";
  double depth_m = 0.0;          ///< dz, of the layer or from the nozzle to its bottom
  double time_constant_s = 1.0;  ///< tau: the order of a drop's time of fall through a layer
  double pressure_pa = 101325.0;
  static constexpr int kInputs = 4, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 1>& q) const {
    q[0] = (in[1] + drying_k_m(in[2], in[3], depth_m, pressure_pa) - in[0]) / time_constant_s;
  }
};

/// Spray that evaporates into one layer. Inputs: X_above [K m], T, w of the layer, tank temperature [K], flow of the
/// line [kg/s]. Fluxes: water [kg/s] tank -> air, its heat as liquid of the tank [W] tank -> air.
///   m = portion flow (F(X_above + (T - T_wet bulb) dz) - F(X_above))
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
    const S below = in[0] + drying_k_m(in[1], in[2], depth_m, pressure_pa);
    q[0] = (portion * in[4]) * (table->evaporated_share(below) - table->evaporated_share(in[0]));
    q[1] = q[0] * liquid_enthalpy(in[3]);
  }
};

/// Spray that lands on a surface. Inputs: X_above [K m], T, w of the layer in which the surface lies, tank temperature
/// [K], flow of the line [kg/s].
/// Fluxes: water [kg/s] tank -> surface, its heat as liquid [W] tank -> surface, heat [W] tank -> air of the layer.
///   m = portion flow (1 - F(X_above + (T - T_wet bulb) dz));  it lands with  T_tank + G (T_wet bulb - T_tank)
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
    const S depression = drying_difference_k(S(in[1] - wet_bulb_fast_k(in[1], in[2], pressure_pa)));
    q[0] = (portion * in[4]) * (1.0 - table->evaporated_share(S(in[0] + depth_m * depression)));
    const S cooling = approach * (in[3] - (in[1] - depression));
    q[1] = q[0] * liquid_enthalpy(S(in[3] - cooling));
    q[2] = q[0] * (kWaterHeat * cooling);
  }
};

}  // namespace noonhouse
