// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/air/fan_curve.hpp"
#include "models/air/opening_flow.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

/// The air of a house as a network of pressures: each layer of each bay is a junction where the flows of dry air add up
/// to nothing; openings, leaks, fans and the air above and below join it to the others and to outdoors.
///
/// A junction's potential P [Pa] is the pressure at the middle of its layer, less that of a column of air of the
/// reference density that stands at zero at the floor:  p(z) = P - (rho - rho_ref) g (z - z_m) - rho_ref g z  within
/// the layer. Outdoors the same reads p(z) = p_w - (rho_out - rho_ref) g z - rho_ref g z with the wind's pressure p_w
/// on the facet. rho_ref falls out of every difference of pressure and only keeps the numbers small. All air laws carry
/// dry air [kg/s], vapour [kg/s] and enthalpy [W], from inside (or a) to outside (or b), each stream with the state of
/// where it comes from. A layer's dry air is fixed: air that warms does not expand.
namespace noonhouse {

inline constexpr std::array<Quantity, 3> kAirVapourHeat{Quantity::air, Quantity::water, Quantity::energy};

/// Density of moist air, and of the dry air in it [kg/m3].
template <class S>
struct AirDensities {
  S moist, dry;
};
template <class S>
AirDensities<S> air_densities(const S& temperature_k, const S& w, double pressure_pa) {
  const S dry = dry_air_density(temperature_k, w, pressure_pa);
  return {dry * (1.0 + w), dry};
}

/// Streams of dry air both ways with what they carry [kg/s, kg/s, W].
template <class S>
void carry_both_ways(const S& a_to_b, const S& b_to_a, const S& t_a, const S& w_a, const S& t_b, const S& w_b,
                     std::array<S, 3>& q) {
  q[0] = a_to_b - b_to_a;
  q[1] = a_to_b * w_a - b_to_a * w_b;
  q[2] = a_to_b * moist_air_enthalpy(t_a, w_a) - b_to_a * moist_air_enthalpy(t_b, w_b);
}

/// Where a piece of an opening stands in the column of air of its layer.
struct OpeningPlace {
  double bottom_m = 0.0;          ///< of the piece, above the floor
  double layer_middle_m = 0.0;    ///< z_m
  double reference_kg_m3 = 1.2;   ///< rho_ref
  double pressure_pa = 101325.0;  ///< of the air, for its density
  /// Inside less outside at the piece's bottom [Pa].
  template <class S>
  S difference(const S& p, const S& inside_kg_m3, const S& outside_kg_m3, const S& wind_pa) const {
    return p - wind_pa -
           kGravity * ((inside_kg_m3 - reference_kg_m3) * (bottom_m - layer_middle_m) -
                       (outside_kg_m3 - reference_kg_m3) * bottom_m);
  }
};

/// The piece of an opening that lies in one layer: air both ways at once, by stack and wind. Positive outwards.
/// Inputs: P, T, w of the layer; T, w outdoors; wind's pressure on the facet [Pa]; wind [m/s]; share open (0 to 1).
///   streams of TallOpening (Bernoulli at every level), and by the wind's unrest, which a mean pressure does not show,
///   m_u each way with  Q_u = (0.025 A U)^2 / (0.025 A U + Q_out + Q_in)
/// 0.025 A U is the exchange of an opening that has no partner [BS 5925:1991, single-sided ventilation by wind]; that
/// it fades where air flows through for other reasons is this project's, after measured shares of turbulent exchange
/// that fall with the wind through screened side vents [Lopez, Valera & Molina-Aiz 2011, Sensors 11, 9820]. A screen in
/// the opening is part of the discharge coefficient (discharge_in_series).
struct OpeningPiece {
  OpeningPlace place;
  TallOpening opening;
  double unrest = 0.025;
  static constexpr std::string_view kName = "air through an opening";
  static constexpr int kInputs = 8, kFluxes = 3;
  static constexpr auto kCarries = kAirVapourHeat;
  template <class S>
  void flux(const std::array<S, 8>& in, std::array<S, 3>& q) const {
    const auto inside = air_densities(in[1], in[2], place.pressure_pa);
    const auto outside = air_densities(in[3], in[4], place.pressure_pa);
    const auto mass =
        opening.flow(place.difference(in[0], inside.moist, outside.moist, in[5]), inside.moist, outside.moist);
    const S out = mass.a_to_b_kg_s / (1.0 + in[2]), into = mass.b_to_a_kg_s / (1.0 + in[4]);
    constexpr double kStill = 0.02;  // the wind is never quite at rest [m/s]
    const S restless = (unrest * opening.width_m * opening.height_m) * (in[6] + kStill) * inside.dry;
    const S both = restless * restless / (restless + out + into);
    carry_both_ways(S(in[7] * (out + both)), S(in[7] * (into + both)), in[1], in[2], in[3], in[4], q);
  }
};

/// Cracks and laps of a facet in one layer, all the same inside-outside difference at its middle. Positive outwards.
///   Q = C dp^n   [power law of cracks, ASHRAE Handbook of Fundamentals, ventilation chapter]
/// Inputs: P, T, w of the layer; T, w outdoors; wind's pressure on the facet [Pa].
struct LeakPiece {
  OpeningPlace place;              ///< bottom_m: where the cracks are, on average
  double coefficient = 0.0;        ///< C [m3/(s Pa^n)]
  double exponent = 0.65;          ///< n, typical of whole houses; from memory of the same chapter
  double counterflow_kg_s = 1e-6;  ///< each way at rest, which rounds the corner between in and out
  static constexpr std::string_view kName = "air through cracks";
  static constexpr int kInputs = 6, kFluxes = 3;
  static constexpr auto kCarries = kAirVapourHeat;
  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 3>& q) const {
    const auto inside = air_densities(in[1], in[2], place.pressure_pa);
    const auto outside = air_densities(in[3], in[4], place.pressure_pa);
    const S flow = crack_flow(place.difference(in[0], inside.moist, outside.moist, in[5]), coefficient, exponent, 0.01);
    const double width = 2.0 * counterflow_kg_s;
    carry_both_ways(S(inside.dry * smooth_positive(flow, width)), S(outside.dry * smooth_positive(S(-flow), width)),
                    in[1], in[2], in[3], in[4], q);
  }
};

/// A fan in the cover that blows from a layer to outdoors (or inwards), by its curve. Positive outwards.
/// Inputs: P, T, w of the layer; T, w outdoors; wind's pressure on the facet [Pa]; share of its speed (0 to 1).
/// At rest its shutter is shut. A gale can drive air backwards through a running fan.
/// Not modelled: the motor's heat, which leaves with the air of a fan that blows out.
struct FanPiece {
  OpeningPlace place;
  QuadraticFan fan;
  bool blows_out = true;
  static constexpr std::string_view kName = "air through a fan";
  static constexpr int kInputs = 7, kFluxes = 3;
  static constexpr auto kCarries = kAirVapourHeat;
  template <class S>
  void flux(const std::array<S, 7>& in, std::array<S, 3>& q) const {
    const auto inside = air_densities(in[1], in[2], place.pressure_pa);
    const auto outside = air_densities(in[3], in[4], place.pressure_pa);
    const S outwards = place.difference(in[0], inside.moist, outside.moist, in[5]);
    const S shutter = ramp(in[6], 0.1);
    const S flow = blows_out ? S(fan.flow_m3_s(S(-outwards), inside.moist, in[6]))
                             : S(-fan.flow_m3_s(outwards, outside.moist, in[6]));
    constexpr double kRound = 1e-5;  // [m3/s]
    carry_both_ways(S(shutter * inside.dry * smooth_positive(flow, kRound)),
                    S(shutter * outside.dry * smooth_positive(S(-flow), kRound)), in[1], in[2], in[3], in[4], q);
  }
};

/// The common section of two bays in one layer, an opening between two columns of air. Positive from a to b.
/// Inputs: P, T, w of a; P, T, w of b.
struct SectionPiece {
  OpeningPlace place;  ///< in both bays alike
  TallOpening opening;
  static constexpr std::string_view kName = "air between bays";
  static constexpr int kInputs = 6, kFluxes = 3;
  static constexpr auto kCarries = kAirVapourHeat;
  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 3>& q) const {
    const auto a = air_densities(in[1], in[2], place.pressure_pa);
    const auto b = air_densities(in[4], in[5], place.pressure_pa);
    const S sill = in[0] - in[3] - (kGravity * (place.bottom_m - place.layer_middle_m)) * (a.moist - b.moist);
    const auto mass = opening.flow(sill, a.moist, b.moist);
    carry_both_ways(S(mass.a_to_b_kg_s / (1.0 + in[2])), S(mass.b_to_a_kg_s / (1.0 + in[5])), in[1], in[2], in[4],
                    in[5], q);
  }
};

/// Air that rises or sinks through the level between two layers of a bay. Positive upwards.
/// Inputs: P, T, w of the lower layer; P, T, w of the upper.
///   M = G (what the pressures of both layers differ by at the level)
/// so that pressure is that of air at rest but for M / G. G stands for no resistance at all: 1 kg/s costs 2e-3 Pa at
/// 1 m2, as much as the air's own speed would.
struct LayerLift {
  double middle_to_middle_m = 0.0;   ///< of the two layers
  double level_above_lower_m = 0.0;  ///< of the level above the lower layer's middle
  double area_m2 = 0.0;
  double reference_kg_m3 = 1.2;
  double pressure_pa = 101325.0;
  double conductance_kg_s_pa_m2 = 500.0;  ///< G by area
  static constexpr std::string_view kName = "air that rises or sinks";
  static constexpr int kInputs = 6, kFluxes = 3;
  static constexpr auto kCarries = kAirVapourHeat;
  template <class S>
  void flux(const std::array<S, 6>& in, std::array<S, 3>& q) const {
    const auto lower = air_densities(in[1], in[2], pressure_pa);
    const auto upper = air_densities(in[4], in[5], pressure_pa);
    const S excess = in[0] - in[3] -
                     kGravity * ((lower.moist - reference_kg_m3) * level_above_lower_m +
                                 (upper.moist - reference_kg_m3) * (middle_to_middle_m - level_above_lower_m));
    const S flow = (conductance_kg_s_pa_m2 * area_m2) * excess;
    const double round = 5e-4 * area_m2;  // [kg/s]
    carry_both_ways(smooth_positive(flow, round), smooth_positive(S(-flow), round), in[1], in[2], in[4], in[5], q);
  }
};

}  // namespace noonhouse
