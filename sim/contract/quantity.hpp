// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <string_view>

namespace noonhouse {

/// What an amount counts. Energy, water, charge and dry air are conserved and balanced separately; a reading
/// (an instrument's own lagging value) is not a conserved amount and stays out of every balance.
enum class Quantity : std::uint8_t { energy, water, charge, air, reading };

inline constexpr int kConservedQuantities = 4;

constexpr std::string_view quantity_name(Quantity q) {
  switch (q) {
    case Quantity::energy:
      return "energy";
    case Quantity::water:
      return "water";
    case Quantity::charge:
      return "charge";
    case Quantity::air:
      return "air";
    case Quantity::reading:
      break;
  }
  return "reading";
}

}  // namespace noonhouse
