// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "models/air/rising_power.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/counterflow.hpp"
#include "sim/contract/law.hpp"

/// Mixing of a bay's air up and down as a diffusivity, so that neighbouring layers exchange at K / spacing and a finer
/// cut of the same air comes to the same profile instead of to less mixing.
namespace noonhouse {

inline constexpr double kKarman = 0.4;
/// Of heat in air at 27 degC [m2/s]; tables of gases, from memory.
inline constexpr double kStillAirDiffusivity = 2.2e-5;

/// Mixing length [m] at a height between floor and roof:  l = 0.4 min(z, H - z), at most longest_m.
///   [Prandtl's mixing length with von Karman's constant]. A canopy's own length is not modelled.
inline double mixing_length_m(double height_m, double house_height_m, double longest_m) {
  return std::clamp(kKarman * std::min(height_m, house_height_m - height_m), 0.0, longest_m);
}

/// Stratification N^2 [1/s2] between two levels, positive where lighter air lies above:
///   N^2 = g (T_v,upper - T_v,lower) / (spacing T_v,mean),   T_v = T (1 + 0.608 w)
/// Not modelled: the 0.01 K/m by which air that rises cools of itself.
template <class S>
S stratification_1_s2(const S& lower_k, const S& lower_w, const S& upper_k, const S& upper_w, double spacing_m) {
  const S lower = lower_k * (1.0 + 0.608 * lower_w), upper = upper_k * (1.0 + 0.608 * upper_w);
  return (2.0 * kGravity / spacing_m) * (upper - lower) / (upper + lower);
}

/// Diffusivity of heat and vapour alike in air that is still on the whole.
///   K = K_0 + a l^2 sqrt(max(-N^2, 0)) + l u_t (1 + (10/3) Ri)^(-3/2),   Ri = max(N^2, 0) l^2 / u_t^2
/// First term: what is there without warmth or stirring, by default the molecules alone. Second: free fall over a
/// mixing length, so that a given heat rises by a gradient of the power -4/3 of the height [Priestley 1954, Aust. J.
/// Phys. 7, 176, from memory]; over open land K = h z^2 sqrt(-N^2) was measured with h about 1 (0.9 to 1.4, from
/// memory), which with l = 0.4 z makes a about 6. Third: stirring of speed u_t, damped by layering [form for heat of
/// Munk & Anderson 1948, J. Mar. Res. 7, 276; from memory]. K never rises with N^2 and never falls with u_t. It is
/// smooth: max(+-N^2, 0) and its root by rising_power(), with kStratificationSoftness; the third term is l u_t^4 /
/// (u_t^2 + (10/3) N^2 l^2 + u_0^2)^(3/2), u_0 = 0.1 mm/s, which is zero where all three are. Not modelled: plumes
/// (plume.hpp) and jets that pass a layer without mixing with it, waves, the memory of turbulence.
struct StillAirDiffusivity {
  double length_m = 0.0;                     ///< l at the level between the two layers
  double still_m2_s = kStillAirDiffusivity;  ///< K_0
  double overturning = 6.0;                  ///< a

  static constexpr double kStratificationSoftness = 1e-3;  ///< [1/s2]; 1 K/m makes 0.033
  static constexpr double kDamping = 10.0 / 3.0;
  static constexpr double kLeastSpeed = 1e-4;  ///< u_0 [m/s]

  /// K [m2/s] by N^2 [1/s2] and the speed of stirring u_t >= 0 [m/s].
  template <class S>
  S diffusivity_m2_s(const S& stratification, const S& stirring_m_s) const {
    using std::sqrt;
    const double square_m2 = length_m * length_m;
    const S rising = rising_power(S(-stratification), 0.5, kStratificationSoftness);
    const S layered = rising_power(stratification, 1.0, kStratificationSoftness);
    const S speed2 = stirring_m_s * stirring_m_s;
    const S weight = speed2 + (kDamping * square_m2) * layered + kLeastSpeed * kLeastSpeed;
    return still_m2_s + (overturning * square_m2) * rising + length_m * speed2 * speed2 / (weight * sqrt(weight));
  }
};

/// Exchange between two neighbouring layers of one bay, positive from lower to upper; vapour [kg/s], enthalpy [W].
/// Inputs: T_lower, w_lower, T_upper, w_upper, speed of stirring u_t >= 0 [m/s] (fans, spray, draughts).
///   m = rho_dry A K / spacing, both ways alike
/// K is StillAirDiffusivity's at the N^2 between the layers' middles. Zero between layers of the same air.
/// As the spacing falls the layers' profile goes to that of K alone, with an error of second order.
struct LayerExchange {
  double area_m2 = 0.0;
  double spacing_m = 1.0;  ///< between the layers' middles
  double dry_air_density_kg_m3 = 1.0;
  double length_m = 0.0;  ///< mixing_length_m() at the section between the layers
  double still_m2_s = kStillAirDiffusivity;
  double overturning = 6.0;
  static constexpr std::string_view kName = "exchange between layers";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    const StillAirDiffusivity air{length_m, still_m2_s, overturning};
    const S k = air.diffusivity_m2_s(stratification_1_s2(in[0], in[1], in[2], in[3], spacing_m), in[4]);
    counterflow(S((dry_air_density_kg_m3 * area_m2 / spacing_m) * k), in[0], in[1], in[2], in[3], q);
  }
};

}  // namespace noonhouse
