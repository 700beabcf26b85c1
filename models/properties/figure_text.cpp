// SPDX-License-Identifier: Apache-2.0
#include "models/properties/figure_text.hpp"

#include <array>
#include <cstdio>

#include "models/properties/constants.hpp"

namespace noonhouse {

std::string number_text(double value, int decimals) {
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
  return text.data();
}

std::string celsius_text(double temperature_k) { return number_text(temperature_k - kZeroCelsius, 1) + " degC"; }
std::string percent_text(double share) { return number_text(100.0 * share, 0) + " %"; }
std::string kilopascal_text(double pressure_pa) { return number_text(pressure_pa / 1000.0, 2) + " kPa"; }

}  // namespace noonhouse
