// SPDX-License-Identifier: Apache-2.0
#include "models/envelope/facet_sun.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace noonhouse {

Pane::Pane(int sheets, const Sheet& sheet) : sheets_(sheets), sheet_(sheet) {
  const std::vector<Sheet> stack(static_cast<std::size_t>(sheets), sheet);
  diffuse_ = diffuse_stack_optics(stack);
}

CoverSun Pane::pass(const PlaneSun& sun) const {
  CoverSun out;
  if (sun.beam_w_m2 > 0.0) {
    const SheetOptics beam = parallel_sheets_optics(sun.incidence_rad, sheets_, sheet_);
    out.beam_through = beam.transmittance * sun.beam_w_m2;
    out.absorbed = beam.absorptance * sun.beam_w_m2;
  }
  out.diffuse_through = diffuse_.transmittance * sun.diffuse_w_m2;
  out.absorbed += diffuse_.absorptance * sun.diffuse_w_m2;
  return out;
}

double landing_share(double elevation_rad, double run_m, double height_m) {
  if (height_m <= 0.0) return 1.0;
  return std::clamp(run_m * std::tan(std::max(elevation_rad, 0.0)) / height_m, 0.0, 1.0);
}

}  // namespace noonhouse
