// SPDX-License-Identifier: Apache-2.0
#include "models/control/words.hpp"

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

}  // namespace noonhouse
