// SPDX-License-Identifier: Apache-2.0
#pragma once

/// What the error norm calls one unit of each sort of state.
namespace noonhouse {

/// Of temperature [K]; the run's own tolerance is set against it.
inline constexpr double kTemperatureUnit = 0.01;
/// Of films and other small waters [kg].
inline constexpr double kFilmUnit = 1e-3;

}  // namespace noonhouse
