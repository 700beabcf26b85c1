// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/film_evaporation.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/surface_film.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// Evaporation from a wet surface, or condensation onto it.
/// Inputs: surface temperature [K], water on it [kg], air temperature [K], humidity ratio [kg/kg].
/// Fluxes: water [kg/s] surface -> air, energy [W] surface -> air.
///   m of evaporation_kg_s, d = w_s(T_s) - w; energy m h_v(T_s)
/// h is the film coefficient of the air at the surface, the same as the heat's. Not modelled: drops and rivulets beyond
/// the drying share f.
struct WetSurface {
  double area_m2 = 0.0;
  double pressure_pa = 101325.0;
  double half_wet_kg = 0.0;  ///< water at which half of the surface still evaporates
  SurfaceFilm film;
  static constexpr std::string_view kName = "evaporation and condensation";
  static constexpr int kInputs = 4, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};

  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 2>& q) const {
    const S drive = saturation_humidity_ratio_fast(in[0], pressure_pa) - in[3];
    q[0] = evaporation_kg_s(area_m2, film.at(S(in[0] - in[2])), drive, in[1], half_wet_kg);
    q[1] = q[0] * vapour_enthalpy(in[0]);
  }
};

/// Water that runs off when a film is thicker than its surface holds [kg/s], with its heat [W].
///   m = (film - held) / tau above held, zero below. Inputs: temperature [K], film [kg].
struct Runoff {
  double held_kg = 0.0;
  double time_constant_s = 60.0;
  static constexpr std::string_view kName = "run-off";
  static constexpr int kInputs = 2, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 2>& q) const {
    q[0] = in[1] > held_kg ? S((in[1] - held_kg) / time_constant_s) : S(0.0);
    q[1] = q[0] * liquid_enthalpy(in[0]);
  }
};

}  // namespace noonhouse
