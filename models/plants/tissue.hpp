// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// When a plant's stomata open.
enum class StomataRhythm { day, night };

/// Transpiration of one plant group: water drawn from its pot, evaporated in the tissue, given to its air.
/// Inputs: tissue T [K], pot water [kg], pot T [K], air T [K], humidity ratio w, light on the plants [W/m2].
/// Fluxes: water [kg/s] pot -> air, heat of the sap [W] pot -> tissue, heat of the vapour [W] tissue -> air.
///   m = A rho (w_s(T_tissue) - w) / (1/g_b + 1/g_s), never below zero
///   g_s = f(water) (g_min + (g_max - g_min) f(light) / (1 + D/D0))
///   D = e_s(T_tissue) - e: the vapour-deficit form of Leuning 1995, Plant Cell Environ. 18, 339
///   f(light) = I / (I + I_half); night-opening kinds (crassulacean metabolism): 1 - f(light)
///   f(water) rises from 0 to 1 over the first `dry_share` of the pot's water; nothing is drawn from a dry pot
/// Not modelled: sap storage, temperature response of the stomata, wilting damage.
struct Transpiration {
  double leaf_area_m2 = 0.0;
  double dry_air_density_kg_m3 = 1.0;
  double pressure_pa = 101325.0;
  double boundary_conductance_m_s = 0.0;  ///< g_b [m/s]
  double least_conductance_m_s = 0.0;     ///< g_min [m/s]
  double most_conductance_m_s = 0.0;      ///< g_max [m/s]
  double half_light_w_m2 = 0.0;           ///< I_half [W/m2], above zero
  double half_deficit_pa = 0.0;           ///< D0 [Pa], above zero
  double pot_capacity_kg = 0.0;
  double dry_share = 0.3;
  StomataRhythm rhythm = StomataRhythm::day;
  static constexpr std::string_view kName = "transpiration";
  static constexpr int kInputs = 6, kFluxes = 3;
  static constexpr std::array<Quantity, 3> kCarries{Quantity::water, Quantity::energy, Quantity::energy};

  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 3>& q) const {
    const S saturated = saturation_pressure_fast_pa(in[0]);
    const S drive = humidity_ratio(saturated, pressure_pa) - in[4];
    if (!(drive > 0.0)) {
      q.fill(S(0.0));
      return;
    }
    const S day = in[5] / (in[5] + half_light_w_m2);
    const S open = rhythm == StomataRhythm::day ? day : S(1.0 - day);
    const S deficit = saturated - vapour_pressure_pa(in[4], pressure_pa);
    const S moisture = ramp(in[1], dry_share * pot_capacity_kg);
    const S stomata = least_conductance_m_s * moisture + (most_conductance_m_s - least_conductance_m_s) * open *
                                                             moisture / (1.0 + deficit / half_deficit_pa);
    const S conductance = stomata * boundary_conductance_m_s / (stomata + boundary_conductance_m_s);
    q[0] = (leaf_area_m2 * dry_air_density_kg_m3) * conductance * drive;
    q[1] = q[0] * liquid_enthalpy(in[2]);
    q[2] = q[0] * vapour_enthalpy(in[0]);
  }
};

}  // namespace noonhouse
