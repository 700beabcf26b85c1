// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/plants/leaf_boundary.hpp"
#include "models/properties/film_evaporation.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// When a plant's stomata open.
enum class StomataRhythm { day, night };

/// Conductance of stomata and skin [m/s], over leaf area of one side: a product of answers, each from 0 to 1.
///   g_s = f(water) [g_min + (g_max - g_min) f(light) f(T) / (1 + D / D_0)]     [Jarvis 1976, Phil. Trans. R. Soc. B
///   273, 593, for the product; the deficit's form of Leuning 1995, Plant Cell Environ. 18, 339]
///   f(light) = I / (I + I_half); night-opening kinds (crassulacean metabolism): 1 - f(light)
///   f(T) = 1 / (1 + ((T - T_best) / spread)^2), this project's bell
///   f(water) rises from 0 to 1 over the first `pot_share` of what the pot holds; nothing is drawn from a dry pot
/// D = e_s(T_tissue) - e [Pa]. Not modelled: carbon dioxide, age, lag of minutes with which stomata follow.
struct Stomata {
  double least_m_s = 0.0, most_m_s = 0.0;
  double half_light_w_m2 = 100.0, half_deficit_pa = 1500.0;  ///< above zero
  double best_k = 300.0, spread_k = 20.0;                    ///< spread above zero
  double pot_capacity_kg = 1.0, pot_share = 0.3;
  StomataRhythm rhythm = StomataRhythm::day;
  template <class S>
  S conductance(const S& tissue_k, const S& pot_kg, const S& light_w_m2, const S& deficit_pa) const {
    const S day = light_w_m2 / (light_w_m2 + half_light_w_m2);
    const S open = rhythm == StomataRhythm::day ? day : S(1.0 - day);
    const S off = (tissue_k - best_k) / spread_k;
    const S answers = open / ((1.0 + deficit_pa / half_deficit_pa) * (1.0 + off * off));
    return ramp(pot_kg, pot_share * pot_capacity_kg) * (least_m_s + (most_m_s - least_m_s) * answers);
  }
};

/// Transpiration of one part of a plant group: water drawn from its pot, evaporated in the tissue, given to its air.
/// Inputs: tissue T [K], pot water [kg], pot T [K], air T [K], humidity ratio w, light on this part [W/m2], air through
/// the layer and stirred in it [m/s].
/// Fluxes: water [kg/s] pot -> air, heat of the sap [W] pot -> tissue, heat of the vapour [W] tissue -> air.
///   m = A rho (w_s(T_tissue) - w) / (1/g_b + 1/g_s), never below zero;  g_b = n h / (rho c_p Le^(2/3)) of TissueFilm
///   n: faces of the leaf that have stomata; g_s counts all of them
/// This is the combination of Penman and Monteith with nothing linearised: where that equation eliminates the tissue's
/// temperature with the slope of saturation, the house's balance solves for it; a test shows that both agree
/// (combination.hpp). Not modelled: sap storage, wilting damage.
struct Transpiration {
  double leaf_area_m2 = 0.0;
  double dry_air_density_kg_m3 = 1.0;
  double pressure_pa = 101325.0;
  TissueFilm film;
  Stomata stomata;
  double faces = 1.0;  ///< of a leaf that have stomata: 1 or 2, each with its own film
  static constexpr std::string_view kName = "transpiration";
  static constexpr int kInputs = 8, kFluxes = 3;
  static constexpr std::array<Quantity, 3> kCarries{Quantity::water, Quantity::energy, Quantity::energy};

  template <class S>
  void flux(const std::array<S, 8>& in, std::array<S, 3>& q) const {
    const S saturated = saturation_pressure_fast_pa(in[0]);
    const S drive = humidity_ratio(saturated, pressure_pa) - in[4];
    if (!(drive > 0.0)) {
      q.fill(S(0.0));
      return;
    }
    const S deficit = saturated - vapour_pressure_pa(in[4], pressure_pa);
    const S stomata_m_s = stomata.conductance(in[0], in[1], in[5], deficit);
    const S layer =
        faces * film.at(S(in[0] - in[3]), in[6], in[7]) / (dry_air_density_kg_m3 * kDryAirHeat * kLewisTwoThirds);
    const S conductance = stomata_m_s * layer / (stomata_m_s + layer);
    q[0] = (leaf_area_m2 * dry_air_density_kg_m3) * conductance * drive;
    q[1] = q[0] * liquid_enthalpy(in[2]);
    q[2] = q[0] * vapour_enthalpy(in[0]);
  }
};

/// Heat from tissue to the air beside it [W], positive from the tissue: to the layer, and where the tissue is the
/// warmer to the column of rising air (second flux), as from any warm surface (PlumeConvection).
/// Inputs: tissue T, air T [K], air through the layer and stirred in it [m/s].
struct TissueConvection {
  double area_m2 = 0.0;  ///< both sides
  TissueFilm film;
  static constexpr std::string_view kName = "convection of tissue";
  static constexpr int kInputs = 4, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::energy, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 2>& q) const {
    const S difference = in[0] - in[1];
    const S heat = area_m2 * film.at(difference, in[2], in[3]) * difference;
    q[1] = heat * ramp(difference, 0.5);
    q[0] = heat - q[1];
  }
};

/// Evaporation of water that lies on tissue, or dew on it: WetSurface with the film of tissue.
/// Inputs: tissue T [K], water on it [kg], air T [K], humidity ratio, air through the layer and stirred in it [m/s].
/// Fluxes: water [kg/s], energy [W], from the tissue to the air.
struct WetTissue {
  double area_m2 = 0.0;  ///< both sides
  double pressure_pa = 101325.0;
  double half_wet_kg = 0.0;  ///< water at which half of the tissue still evaporates
  TissueFilm film;
  static constexpr std::string_view kName = "evaporation from tissue";
  static constexpr int kInputs = 6, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 2>& q) const {
    const S drive = saturation_humidity_ratio_fast(in[0], pressure_pa) - in[3];
    q[0] = evaporation_kg_s(area_m2, film.at(S(in[0] - in[2]), in[4], in[5]), drive, in[1], half_wet_kg);
    q[1] = q[0] * vapour_enthalpy(in[0]);
  }
};

}  // namespace noonhouse
