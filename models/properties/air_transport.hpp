// SPDX-License-Identifier: Apache-2.0
#pragma once

/// How dry air conducts heat and resists flow. Vapour is not modelled: at 30 degC and saturation it moves these by
/// about 1 % (from memory), less than the laws themselves are sure of.
namespace noonhouse {

/// Heat capacity at constant pressure is taken as constant (kDryAirHeat): the table of Incropera & DeWitt, A.4, has
/// 1006 at 250 K, 1007 at 300 K and 1009 J/(kg K) at 350 K.
struct AirTransport {
  double conductivity_w_m_k;        ///< k
  double dynamic_viscosity_pa_s;    ///< mu
  double kinematic_viscosity_m2_s;  ///< nu = mu / rho
  double thermal_diffusivity_m2_s;  ///< alpha = k / (rho c_p)
  double prandtl;                   ///< Pr = nu / alpha = mu c_p / k
};

/// Dynamic viscosity of dry air [Pa s] by Sutherland's law, any pressure near the atmosphere's.
///   mu = beta T^(3/2) / (T + S), beta = 1.458e-6 kg/(s m K^0.5), S = 110.4 K
/// [U.S. Standard Atmosphere 1976, eq. (51); from memory]. 170 to 1900 K within 2 % [White, Viscous Fluid Flow, table
/// 1-2; from memory]; extrapolated outside.
double air_dynamic_viscosity_pa_s(double temperature_k);

/// Thermal conductivity of dry air [W/(m K)], any pressure near the atmosphere's.
///   k = 2.64638e-3 T^(3/2) / (T + 245.4 10^(-12/T))
/// [U.S. Standard Atmosphere 1976, eq. (53); from memory]. Extrapolated outside the temperatures of the atmosphere.
double air_conductivity_w_m_k(double temperature_k);

/// All transport properties of dry air, an ideal gas, at a temperature and a pressure above zero.
AirTransport dry_air_transport(double temperature_k, double pressure_pa);

}  // namespace noonhouse
