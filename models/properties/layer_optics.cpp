// SPDX-License-Identifier: Apache-2.0
#include "models/properties/layer_optics.hpp"

#include "sim/core/errors.hpp"

namespace noonhouse {

LayerPair couple(const LayerOptics& first, const LayerOptics& second) {
  const double room = 1.0 - first.reflectance_back * second.reflectance_front;
  // Light that meets the inner faces over and over, as a share of what enters between the two layers.
  const double again = room > 0.0 ? 1.0 / room : 0.0;
  const double to_second = first.transmittance * again;
  const double to_first = second.transmittance * again;
  const double returned = to_second * second.reflectance_front;
  const double returned_back = to_first * first.reflectance_back;
  return {.whole = {.transmittance = to_second * second.transmittance,
                    .reflectance_front = first.reflectance_front + returned * first.transmittance,
                    .reflectance_back = second.reflectance_back + returned_back * second.transmittance},
          .first_absorbs = first.absorptance_front() + returned * first.absorptance_back(),
          .second_absorbs = to_second * second.absorptance_front(),
          .first_absorbs_back = to_first * first.absorptance_back(),
          .second_absorbs_back = second.absorptance_back() + returned_back * second.absorptance_front()};
}

LayerOptics side_by_side(double share, const LayerOptics& a, const LayerOptics& b) {
  NOON_ASSERT(share >= 0.0 && share <= 1.0);
  const auto mean = [share](double of_a, double of_b) { return share * of_a + (1.0 - share) * of_b; };
  return {.transmittance = mean(a.transmittance, b.transmittance),
          .reflectance_front = mean(a.reflectance_front, b.reflectance_front),
          .reflectance_back = mean(a.reflectance_back, b.reflectance_back)};
}

}  // namespace noonhouse
