// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "models/properties/wet_bulb_fast.hpp"
#include "sim/contract/law.hpp"

/// What instruments read of the air where they hang. Each follows, with a lag, what it would show there for ever:
///   dx/dt = (shown - x) / tau,    flux: from nowhere to the reading
/// Inputs of all: its own reading, temperature of the air [K], its humidity ratio [kg/kg], light on its place [W/m2],
/// its wetness (0 dry to 1 wet all over), and how much too high it reads [its own unit].
/// Not modelled: the small heat and water that an instrument trades with the house, radiant heat of warm cover and cold
/// sky, less error by sun on a wet instrument than on a dry one (the water takes up more than half of it).
namespace noonhouse {

/// The body of a small instrument [K]: in the sun warmer than the air, in the spray a wet bulb.
///   T_b = T + a G / h - wetness (T - T_wet)
/// The first part balances light taken up against what the film carries off; linear. The second is the thermodynamic
/// wet bulb and wants a draught, as any wet bulb does. Where the air is beyond saturation a wet body is the warmer one.
/// A thermometer without a shield errs by up to 25 K in strong sun and calm [WMO-No. 8, vol. I, ch. 2; from memory].
struct SensorBody {
  double pressure_pa = 101325.0;
  /// a: absorptance times light caught per surface of the body [-]. Zero for a shielded one that draws its air in; for
  /// a bare white one about 0.1 (absorptance 0.3; a beam meets a quarter of a sphere, light from above half).
  double light_taken = 0.0;
  /// h [W/(m2 K)], above zero. A sphere of 10 mm in 0.3 m/s: 25 [sphere_nusselt]; in still air,
  /// 5 K warmer than it, about 11 [Churchill's law of free convection on a sphere; from memory].
  double film_w_m2_k = 25.0;
  template <class S>
  S temperature_k(const S& air_k, const S& w, const S& light_w_m2, const S& wetness) const {
    return air_k + (light_taken / film_w_m2_k) * light_w_m2 -
           wetness * (air_k - wet_bulb_fast_k(air_k, w, pressure_pa));
  }
  /// What a hygrometer in this body would show, 1 = saturated: vapour of the air against saturation at the body, and
  /// saturation itself where the body is wet. Over liquid at every temperature.
  template <class S>
  S humidity(const S& body_k, const S& w, const S& wetness) const {
    const S dry = vapour_pressure_pa(w, pressure_pa) / saturation_pressure_fast_pa(body_k);
    return dry + wetness * (1.0 - dry);
  }
};

/// A thermometer: reading [K].   shown = T_b + bias
struct ThermometerLag {
  double time_constant_s = 0.0;  ///< tau [s], above zero
  SensorBody body;
  static constexpr std::string_view kName = "thermometer";
  static constexpr int kInputs = 6, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 1>& q) const {
    q[0] = (body.temperature_k(in[1], in[2], in[3], in[4]) + in[5] - in[0]) / time_constant_s;
  }
};

/// A hygrometer: reading is relative humidity as a share, 1 = saturated.   shown = humidity at the body + bias
/// In the sun it reads low, in the spray 1. Not modelled: a scale that ends at 1.
struct HygrometerLag {
  double time_constant_s = 0.0;  ///< tau [s], above zero
  SensorBody body;
  static constexpr std::string_view kName = "hygrometer";
  static constexpr int kInputs = 6, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 1>& q) const {
    const S body_k = body.temperature_k(in[1], in[2], in[3], in[4]);
    q[0] = (body.humidity(body_k, in[2], in[4]) + in[5] - in[0]) / time_constant_s;
  }
};

/// An instrument for the vapour pressure deficit: reading [Pa].   shown = e_s(T_b) (1 - humidity at the body) + bias
/// It reckons from the temperature and humidity that its own body shows: high in the sun, zero in the spray.
struct DeficitLag {
  double time_constant_s = 0.0;  ///< tau [s], above zero
  SensorBody body;
  static constexpr std::string_view kName = "deficit instrument";
  static constexpr int kInputs = 6, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 1>& q) const {
    const S body_k = body.temperature_k(in[1], in[2], in[3], in[4]);
    const S shown = saturation_pressure_fast_pa(body_k) * (1.0 - body.humidity(body_k, in[2], in[4]));
    q[0] = (shown + in[5] - in[0]) / time_constant_s;
  }
};

/// How wet an instrument is: reading, 0 dry to 1 wet all over.   dx/dt = s (1 - x) / t_wets - (1 - s) x / t_dries
/// Input beside the reading: s, the share of the spray's full flow that reaches it, 0 to 1. Stays between 0 and 1.
/// Not modelled: drying that follows the air's dryness, drops that hang on.
struct SensorWetness {
  double wets_s = 20.0;    ///< t_wets [s], above zero; common practice, no source
  double dries_s = 240.0;  ///< t_dries [s], above zero; common practice, no source
  static constexpr std::string_view kName = "wetness of an instrument";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = in[1] * (1.0 - in[0]) / wets_s - (1.0 - in[1]) * in[0] / dries_s;
  }
};

}  // namespace noonhouse
