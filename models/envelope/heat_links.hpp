// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/constants.hpp"
#include "models/properties/surface_film.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Heat through a fixed conductance [W], positive from a to b.   Q = UA (T_a - T_b)
struct Conductance {
  double ua_w_k = 0.0;
  static constexpr std::string_view kName = "conductance";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = ua_w_k * (in[0] - in[1]);
  }
};

/// Heat from a surface to the air beside it inside [W], positive from the surface.
///   Q = A h(T_s - T_a) (T_s - T_a)
struct InsideConvection {
  double area_m2 = 0.0;
  SurfaceFilm film;
  static constexpr std::string_view kName = "convection inside";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    const S difference = in[0] - in[1];
    q[0] = area_m2 * film.at(difference) * difference;
  }
};

/// Heat from a surface to the air beside it [W], positive from the surface: into the column of rising air where the
/// surface is the warmer (PlumeConvection's second flux), into the layer where it is the cooler.
///   Q = A h(T_s - T_a) (T_s - T_a);  the share of the column goes from none to all within the first half kelvin.
/// Inputs: T_s, T_a of the layer. The vapour of a warm wet surface goes to the layer (WetSurface).
struct PlumeConvection {
  double area_m2 = 0.0;
  SurfaceFilm film;
  static constexpr std::string_view kName = "convection with a plume";
  static constexpr int kInputs = 2, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::energy, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 2>& q) const {
    const S difference = in[0] - in[1];
    const S heat = area_m2 * film.at(difference) * difference;
    q[1] = heat * ramp(difference, 0.5);
    q[0] = heat - q[1];
  }
};

/// Heat from a surface to outdoor air by wind [W], positive from the surface.
///   Q = A (a + b V) (T_s - T_out)
/// a, b: 2.8 and 3.0 [Watmuff, Charters & Proctor 1977, COMPLES 2; V to about 7 m/s, no radiation], 5.7 and 3.8
/// [McAdams 1954; V below 5 m/s, holds radiation too], 4 and 4 [EN ISO 6946, annex C]. Beyond, the straight line goes
/// on. Inputs: T_s, T_out, V [m/s].
struct WindConvection {
  double area_m2 = 0.0;
  double still_w_m2_k = 2.8;        ///< a
  double per_speed_w_s_m3_k = 3.0;  ///< b
  static constexpr std::string_view kName = "convection outside";
  static constexpr int kInputs = 3, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 1>& q) const {
    q[0] = area_m2 * (still_w_m2_k + per_speed_w_s_m3_k * in[2]) * (in[0] - in[1]);
  }
};

/// Heat of a device that runs [W]:  Q = P s. Input: share running (0 to 1).
struct SwitchedPower {
  double power_w = 0.0;
  static constexpr std::string_view kName = "switched power";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = power_w * in[0];
  }
};

/// Net longwave heat from a to b [W].   Q = A_e sigma (T_a^4 - T_b^4)
/// The effective area holds emissivities and the view factor; it is the same from both sides (reciprocity), so equal
/// temperatures exchange nothing.
struct RadiantExchange {
  double effective_area_m2 = 0.0;
  static constexpr std::string_view kName = "longwave";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    const S a = in[0] * in[0], b = in[1] * in[1];
    q[0] = effective_area_m2 * kStefanBoltzmann * (a - b) * (a + b);
  }
};

/// Longwave between a and b through or to a screen that covers a share of the way [W], positive from a to b.
///   Q = A_e s sigma (T_a^4 - T_b^4),  s = when_away + (when_drawn - when_away) share
/// Inputs: T_a, T_b, share of the screen drawn (0 to 1).
struct ScreenedRadiantExchange {
  double effective_area_m2 = 0.0;
  double when_away = 1.0;   ///< weight with the screen away
  double when_drawn = 0.0;  ///< weight with the screen fully drawn
  static constexpr std::string_view kName = "longwave past a screen";
  static constexpr int kInputs = 3, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 1>& q) const {
    const S a = in[0] * in[0], b = in[1] * in[1];
    const S weight = when_away + (when_drawn - when_away) * in[2];
    q[0] = effective_area_m2 * weight * kStefanBoltzmann * (a - b) * (a + b);
  }
};

/// A power that a channel gives [W]: absorbed sunlight, from the account "sun" to a node.
struct GivenPower {
  static constexpr std::string_view kName = "absorbed sunlight";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = in[0];
  }
};

}  // namespace noonhouse
