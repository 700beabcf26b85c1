// SPDX-License-Identifier: Apache-2.0
#include "models/air/pad_inlet.hpp"

#include "sim/core/errors.hpp"

namespace noonhouse {

PadInlet pad_inlet(const WetPad& pad, double area_m2, const OpeningPlace& place, double temperature_k) {
  NOON_ASSERT(pad.thickness_m > 0.0 && pad.resistance_per_m > 0.0 && area_m2 >= 0.0);
  PadInlet law;
  law.place = place;
  law.area_m2 = area_m2;
  law.loss = pad.resistance_per_m * pad.thickness_m;
  law.units_at_1_m_s = -std::log1p(-pad_efficiency(pad, 1.0, temperature_k, place.pressure_pa));
  return law;
}

}  // namespace noonhouse
