// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

namespace noonhouse {

/// Thicknesses of soil layers from the surface down [m], which sum to the depth.
///   d_i = d_0 r^i, d_0 = D (r - 1) / (r^n - 1); n equal layers where r = 1
/// Growth above 1 makes the layers near the surface the thin ones, where the day's wave must be resolved: it is
/// damped to 1/e within 5 to 17 cm (de Vries 1963). Depth [m] and growth above zero, at least one layer.
/// Does not choose the depth or the number of layers for a soil: the scenario says them.
std::vector<double> soil_layer_thicknesses_m(double depth_m, int layers, double growth);

}  // namespace noonhouse
