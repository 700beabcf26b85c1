// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cmath>
#include <numbers>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

/// What a plant has borne, as doses [s] that grow beyond a limit and are forgotten within it. A dose is a reading that
/// the engine integrates with the house; nothing in the house depends on it.
namespace noonhouse {

/// How a dose is forgotten, and where it ends: once it is far beyond what kills nobody asks for more.
///   dD/dt = r (1 - D / D_most) - D ln 2 / t_half
struct DoseMemory {
  double half_life_s = 86400.0;
  double most_s = 1e9;
  template <class S>
  S rate(const S& growth, const S& dose) const {
    return growth * (1.0 - dose / most_s) - (std::numbers::ln2 / half_life_s) * dose;
  }
};

/// A tenfold law held flat beyond a thousandfold: 10^(x / z), x beyond the limit [K].
template <class S>
S tenfold(const S& beyond_k, double tenfold_k) {
  using std::exp;
  constexpr double kMost = 3.0;  // powers of ten
  if (beyond_k >= kMost * tenfold_k) return S(1000.0);
  return exp(beyond_k * (std::numbers::ln10 / tenfold_k));
}

/// Growth of a dose of heat or cold by how far the tissue is beyond its limit [K]; see ThermalDose.
template <class S>
S thermal_dose_rate(const S& beyond_k, double tenfold_k) {
  if (beyond_k <= -0.5) return S(0.0);
  return ramp(S(beyond_k + 0.5), 1.0) * tenfold(beyond_k, tenfold_k);
}

/// Dose of heat or cold [s at the limit]: the time that tissue bears falls tenfold for each z kelvin beyond its limit,
/// so that a short time far beyond counts as much as a long one just beyond.
///   r = 10^((T - T_limit) / z), for cold with the other sign; none half a kelvin within the limit, all half beyond
///   [log-linear fall of the time borne: Levitt 1980, Responses of Plants to Environmental Stresses, vol. 1; Neuner &
///   Buchner 2023; z of 2 to 5 K for leaves; from memory]
/// Inputs: temperature of both sides of the tissue [K], dose. The worse side counts, or a mean of both.
struct ThermalDose {
  static constexpr bool kMayRepeat = true;
  double limit_k = 0.0, tenfold_k = 4.0;
  bool heat = true;  ///< else cold
  DoseMemory memory;
  double first_share = -1.0;  ///< if not negative, the mean of both with this weight on the first counts, not the worse
  static constexpr std::string_view kName = "dose of heat or cold";
  static constexpr int kInputs = 3, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 1>& q) const {
    const bool first = heat == (in[0] > in[1]);
    const S worse = first_share >= 0.0 ? S(first_share * in[0] + (1.0 - first_share) * in[1]) : (first ? in[0] : in[1]);
    const S beyond = heat ? S(worse - limit_k) : S(limit_k - worse);
    q[0] = memory.rate(thermal_dose_rate(beyond, tenfold_k), in[2]);
  }
};

/// The direct sun that a plant is used to [W/m2], a mean over about `time_s`:  dH/dt = (I - H) / t.
/// Inputs: direct sun on the level, H.
struct LightHabit {
  double time_s = 10.0 * 86400.0;  ///< leaves change over one to two weeks; from memory
  static constexpr std::string_view kName = "habit of light";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = (in[0] - in[1]) / time_s;
  }
};

/// Peak of direct sun over its mean of day and night: a plant used to a mean bears this much more at noon. A clear day
/// of 12 to 15 hours peaks at 3 times its mean (half a sine: pi times 12 / 24 hours and more by the air's length).
inline constexpr double kPeakOverMean = 3.0;

/// Dose of sunburn [s of full sun at the temperature that burns]: direct sun beyond what the tissue is used to, the
/// worse the hotter the tissue is.
///   r = max(0, (I - I_bears - min(3 H, I_burns)) / I_burns) 10^((T - T_burns) / z)
/// So habit helps only so far: by it a plant of the shade bears no full sun.
///   [sunburn of fruit needs both light and heat and spares what has grown used to the sun: Schrader, Zhang & Duplaga
///   2001, Plant Health Progress; Schrader et al. 2003; the product is this project's; from memory]
/// Inputs: temperature of the sunlit side [K], direct sun on the level [W/m2], what it is used to [W/m2], dose.
struct SunburnDose {
  double burns_above_k = 0.0, tenfold_k = 4.0;
  double bears_w_m2 = 100.0, burns_w_m2 = 400.0;
  DoseMemory memory;
  static constexpr std::string_view kName = "dose of sunburn";
  static constexpr int kInputs = 4, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 1>& q) const {
    const S habit = kPeakOverMean * in[2] < burns_w_m2 ? S(kPeakOverMean * in[2]) : S(burns_w_m2);
    const S beyond = in[1] - bears_w_m2 - habit;
    const S excess = beyond > 0.0 ? S(beyond * ramp(beyond, 50.0) / burns_w_m2) : S(0.0);
    q[0] = memory.rate(S(excess * tenfold(S(in[0] - burns_above_k), tenfold_k)), in[3]);
  }
};

/// Time beyond a limit in spells [s]: it grows while the value is beyond, and is forgotten by halves while it is not.
///   dD/dt = s - (1 - s) D ln 2 / t_half,  s from 0 to 1 within the width about the limit
struct SpellOf {
  double limit = 0.0;
  double width = 1.0;  ///< of the rounding, above zero
  bool above = true;   ///< beyond means above
  double half_life_s = 12.0 * 3600.0, most_s = 1e9;
  template <class S>
  S rate(const S& value, const S& dose) const {
    const S beyond = above ? S(value - limit) : S(limit - value);
    const S share = ramp(S(beyond + 0.5 * width), width);
    return share * (1.0 - dose / most_s) - (1.0 - share) * (std::numbers::ln2 / half_life_s) * dose;
  }
};

/// Spell of a value: a temperature, or water on tissue [kg]. Inputs: value, dose.
struct ValueSpell {
  static constexpr bool kMayRepeat = true;
  SpellOf spell;
  static constexpr std::string_view kName = "spell beyond a limit";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = spell.rate(in[0], in[1]);
  }
};

/// Spell of dry or damp air, by its vapour pressure deficit [Pa]. Inputs: air T [K], humidity ratio, dose.
struct DeficitSpell {
  static constexpr bool kMayRepeat = true;
  SpellOf spell;
  double pressure_pa = 101325.0;
  static constexpr std::string_view kName = "spell of dry or damp air";
  static constexpr int kInputs = 3, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 1>& q) const {
    const S deficit = saturation_pressure_fast_pa(in[0]) - vapour_pressure_pa(in[1], pressure_pa);
    q[0] = spell.rate(deficit, in[2]);
  }
};

/// Light received since the start [J/m2], and time with light enough to count as day [s]. Input: light [W/m2].
/// A plant tells day from night by a few micromoles a square metre and second; 2 W/m2 of sunlight are 4. Twilight, when
/// the sun is down, is not counted: it adds half an hour at each end for the most sensitive kinds (from memory).
struct LightSum {
  double day_above_w_m2 = 2.0;
  static constexpr std::string_view kName = "light received";
  static constexpr int kInputs = 1, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::reading, Quantity::reading};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 2>& q) const {
    q[0] = in[0];
    q[1] = ramp(in[0], 2.0 * day_above_w_m2);
  }
};

/// A speed of air as the plants feel it [m/s]: follows what passes the layer, each way with the section it passes,
/// within `time_s`. The share of one way:  dV/dt = |M| / (rho A t); Draught::rest takes V away again.
template <class L>
struct DraughtBy {
  static constexpr bool kMayRepeat = true;
  L way;                   ///< a law whose first flux is dry air [kg/s]
  double kg_s_of_1 = 1.0;  ///< flow that makes 1 m/s: density times section
  double time_s = 30.0;
  static constexpr std::string_view kName = "draught past plants";
  static constexpr int kInputs = L::kInputs, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, static_cast<std::size_t>(L::kInputs)>& in, std::array<S, 1>& q) const {
    std::array<S, static_cast<std::size_t>(L::kFluxes)> carried;
    way.flux(in, carried);
    q[0] = smooth_abs(carried[0], 0.01 * kg_s_of_1) / (kg_s_of_1 * time_s);
  }
};
struct DraughtFades {
  double time_s = 30.0;
  static constexpr std::string_view kName = "draught that fades";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = -in[0] / time_s;
  }
};

}  // namespace noonhouse
