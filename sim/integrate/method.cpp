// SPDX-License-Identifier: Apache-2.0
#include "sim/integrate/method.hpp"

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

/// Cubic Hermite interpolation, theta in [0, 1] over a step of h seconds.
struct Hermite {
  double y0, y1, d0, d1;
  Hermite(double theta, double h) {
    const double s = 1.0 - theta;
    y1 = theta * theta * (3.0 - 2.0 * theta);
    y0 = 1.0 - y1;
    d0 = h * theta * s * s;
    d1 = -h * theta * theta * s;
  }
};

void interpolate(const Step& step, Tick when, const std::vector<double>& a0, const std::vector<double>& r0,
                 const std::vector<double>& a1, const std::vector<double>& r1, double* out) {
  NOON_ASSERT(when >= step.begin && when <= step.end);
  const double h = seconds(step.end - step.begin);
  const Hermite w(seconds(when - step.begin) / h, h);
  for (std::size_t i = 0; i < a0.size(); ++i) out[i] = w.y0 * a0[i] + w.y1 * a1[i] + w.d0 * r0[i] + w.d1 * r1[i];
}

}  // namespace

void ChannelLine::at(Tick when, double* out) const {
  const double elapsed = seconds(when - begin);
  for (std::size_t i = 0; i < value.size(); ++i) out[i] = value[i] + slope[i] * elapsed;
}

void Step::amounts_at(Tick when, double* out) const {
  interpolate(*this, when, amounts0, rates0, amounts1, rates1, out);
}

void Step::carried_at(Tick when, double* out) const {
  interpolate(*this, when, carried0, fluxes0, carried1, fluxes1, out);
}

}  // namespace noonhouse
