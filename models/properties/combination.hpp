// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "models/properties/constants.hpp"
#include "models/properties/saturation.hpp"
#include "models/properties/water.hpp"

/// Evaporation from the energy at hand and the dryness of the air together, with the surface's own temperature
/// eliminated: the combination equation of Penman 1948, Proc. R. Soc. A 193, 120, and Monteith 1965, Symp. Soc. Exp.
/// Biol. 19, 205. Written with the share that the stomata leave, which has no pole where they shut (0) or where the
/// surface is wet (1). To use it for a leaf or a canopy:
///   const CombinationSurface<double> leaf{.available_w_m2 = 300.0, .air_k = 303.15, .deficit_pa = 2000.0,
///                                         .heat_conductance_m_s = 0.02, .vapour_share = vapour_share(0.005, 0.02)};
///   const double latent_w_m2 = combination_latent_heat_w_m2(leaf);
///   const double leaf_k = leaf_temperature_k(leaf, latent_w_m2);
namespace noonhouse {

/// What evaporation is combined from, in any unit of energy or of water: that of `available` is that of the result.
template <class S>
struct CombinationTerms {
  S slope_pa_k;          ///< s: of the saturation pressure with temperature
  S psychrometric_pa_k;  ///< gamma
  S available;           ///< A: net radiation less heat into ground or tissue, as energy or as the water it evaporates
  S aerodynamic_factor;  ///< F: of a wet surface as warm as the air, evaporation over deficit [unit of A / Pa]
  S deficit_pa;          ///< D: of the air
  S vapour_share;        ///< c = 1 / (1 + r), r the surface's resistance to vapour over the air's: 0 shut, 1 wet
};

/// Evaporation [unit of `available`], positive away from the surface; negative where dew falls.
///   E = (s A + gamma F D) / (s + gamma (1 + r)) = c (s A + gamma F D) / (c s + gamma)   [Monteith 1965]
/// Linear in A and in D. For a psychrometric constant above zero. Not modelled: the curvature of the saturation
/// pressure between air and surface; a secant for s takes it in.
template <class S>
S combination(const CombinationTerms<S>& t) {
  const S wet = t.slope_pa_k * t.available + t.psychrometric_pa_k * t.aerodynamic_factor * t.deficit_pa;
  return t.vapour_share * wet / (t.vapour_share * t.slope_pa_k + t.psychrometric_pa_k);
}

/// Share that a surface's own conductance leaves of the air's, 0 to 1: g_s / (g_s + g_a), both [m/s], g_a above zero.
/// More generally the conductance for vapour over that for heat, over the same area: about a half at most
/// where a leaf gives heat from two sides and vapour from one.
template <class S>
S vapour_share(const S& surface_conductance_m_s, const S& aerodynamic_conductance_m_s) {
  return surface_conductance_m_s / (surface_conductance_m_s + aerodynamic_conductance_m_s);
}

/// Psychrometric constant [Pa/K] by its definition: gamma = c_p p / (0.621945 lambda).   [FAO-56, eq. (8)]
/// With lambda of the air's temperature and c_p of dry air: 2.7 % below the 0.665e-3 p of tables at 0 degC, 0.9 %
/// at 20.
template <class S>
S psychrometric_coefficient_pa_k(const S& air_k, double pressure_pa) {
  return kDryAirHeat * pressure_pa / (kMolarRatio * latent_heat(air_k));
}

/// Heat that a cubic metre of air holds for each kelvin [J/(m3 K)]: rho c_p = p c_p / (R_da T), as if dry. Vapour
/// lowers rho and raises c_p: at 0.02 kg/kg the product is 0.5 % more.
template <class S>
S air_heat_capacity_j_m3_k(const S& air_k, double pressure_pa) {
  return kDryAirHeat * pressure_pa / (kGasConstantDryAir * air_k);
}

/// A leaf or a canopy in its air; all flows over one area, whichever it is.
template <class S>
struct CombinationSurface {
  S available_w_m2;         ///< A: radiation kept, less what warms ground or tissue
  S air_k;                  ///< temperature of the air
  S deficit_pa;             ///< D: saturation pressure at air_k less the vapour pressure of the air
  S heat_conductance_m_s;   ///< g_a: from surface to air, above zero
  S vapour_share = S(1.0);  ///< c: see vapour_share(); 1 for a wet surface
  double pressure_pa = kStandardPressure;
};

/// Latent heat that leaves a surface [W/m2], positive away from it; over latent_heat(air_k) it is [kg/(m2 s)].
///   lambda E = (s A + rho c_p D g_a) / (s + gamma (1 + g_a / g_s))       [Monteith 1965; FAO-56, eq. (3)]
/// With the slope [Pa/K] of the saturation pressure given: a secant from air to surface makes it exact. A is taken as
/// given: let thermal radiation that answers to the surface's own temperature be part of A by iteration.
template <class S>
S combination_latent_heat_w_m2(const CombinationSurface<S>& at, const S& slope_pa_k) {
  const S psychrometric = psychrometric_coefficient_pa_k(at.air_k, at.pressure_pa);
  const S heat = air_heat_capacity_j_m3_k(at.air_k, at.pressure_pa) * at.heat_conductance_m_s;
  return combination(CombinationTerms<S>{.slope_pa_k = slope_pa_k,
                                         .psychrometric_pa_k = psychrometric,
                                         .available = at.available_w_m2,
                                         .aerodynamic_factor = heat / psychrometric,
                                         .deficit_pa = at.deficit_pa,
                                         .vapour_share = at.vapour_share});
}

/// The same with the slope at the air's temperature: too little, by up to 5 % of latent and sensible heat together
/// where the surface is within 3 K of the air. Below 0.01 degC the slope is the one over ice, with a step of a tenth
/// there.
template <class S>
S combination_latent_heat_w_m2(const CombinationSurface<S>& at) {
  return combination_latent_heat_w_m2(at, saturation_pressure_slope(at.air_k));
}

/// Temperature [K] of a surface that gives off this latent heat [W/m2] and the rest of A as sensible heat.
///   T = T_air + (A - lambda E) / (rho c_p g_a)
template <class S>
S leaf_temperature_k(const CombinationSurface<S>& at, const S& latent_heat_w_m2) {
  const S heat = air_heat_capacity_j_m3_k(at.air_k, at.pressure_pa) * at.heat_conductance_m_s;
  return at.air_k + (at.available_w_m2 - latent_heat_w_m2) / heat;
}

}  // namespace noonhouse
