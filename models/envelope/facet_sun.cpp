// SPDX-License-Identifier: Apache-2.0
#include "models/envelope/facet_sun.hpp"

#include <vector>

namespace noonhouse {

Pane::Pane(int sheets, const Sheet& sheet) : sheets_(sheets), sheet_(sheet) {
  const std::vector<Sheet> stack(static_cast<std::size_t>(sheets), sheet);
  diffuse_ = diffuse_stack_optics(stack);
}

double Pane::beam_transmittance(double incidence_rad) const {
  return parallel_sheets_optics(incidence_rad, sheets_, sheet_).transmittance;
}

double Pane::absorbed_w_m2(const PlaneSun& sun) const {
  double absorbed = diffuse_.absorptance * sun.diffuse_w_m2;
  if (sun.beam_w_m2 > 0.0)
    absorbed += parallel_sheets_optics(sun.incidence_rad, sheets_, sheet_).absorptance * sun.beam_w_m2;
  return absorbed;
}

}  // namespace noonhouse
