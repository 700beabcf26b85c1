// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

namespace noonhouse {

/// A temperature [K] for the event log: "34.0 degC".
std::string celsius_text(double temperature_k);
/// A share, such as relative humidity: "85 %".
std::string percent_text(double share);
/// A pressure or a vapour-pressure deficit [Pa]: "1.20 kPa".
std::string kilopascal_text(double pressure_pa);
/// A number with the given decimals.
std::string number_text(double value, int decimals);

}  // namespace noonhouse
