// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>

#include "models/properties/psychrometrics.hpp"

namespace noonhouse {

/// What equal flows of dry air m [kg/s] both ways carry from a to b: vapour [kg/s] and enthalpy [W], in this order,
/// positive from a to b.
///   q_0 = m (w_a - w_b),  q_1 = m (h(T_a, w_a) - h(T_b, w_b))
/// Exact for two well-mixed sides that exchange dry air without gain or loss; temperatures [K], humidity ratios
/// [kg/kg]. Not modelled: the small net flow that the exchanged vapour itself makes.
template <class S>
void counterflow(const S& m, const S& t_a, const S& w_a, const S& t_b, const S& w_b, std::array<S, 2>& q) {
  q[0] = m * (w_a - w_b);
  q[1] = m * (moist_air_enthalpy(t_a, w_a) - moist_air_enthalpy(t_b, w_b));
}

}  // namespace noonhouse
