// SPDX-License-Identifier: Apache-2.0
#include "sim/integrate/evaluation.hpp"

#include <algorithm>

#include "sim/core/index.hpp"

namespace noonhouse {

Evaluation::Evaluation(const House& house)
    : house_(&house),
      potential_(at(house.states + house.channels), 0.0),
      slope_(at(house.states) * 2, 0.0),
      flux_(at(house.fluxes), 0.0),
      derivative_(at(house.derivatives), 0.0),
      jacobian_(at(house.pattern.entries()) + 1, 0.0),
      direction_(at(house.states + house.channels), 0.0) {}

void Evaluation::gather(const double* flux, double* rate) const {
  const SignedTerm* term = house_->state_fluxes.data();
  const int* end = house_->state_fluxes_end.data();
  for (int i = 0, k = 0; i < house_->states; ++i) {
    double sum = 0.0;
    for (; k < end[i]; ++k) sum += term[k].sign * flux[term[k].index];
    rate[i] = sum;
  }
}

void Evaluation::rates(const double* y, const double* channels, double* rate) {
  for (const auto& batch : house_->store_batches) batch->potentials(y, potential_.data());
  std::copy_n(channels, house_->channels, potential_.data() + house_->states);
  for (std::size_t b = 0; b < house_->exchange_batches.size(); ++b)
    house_->exchange_batches[b]->fluxes(potential_.data(), flux_.data() + house_->batch_first_flux[b]);
  gather(flux_.data(), rate);
}

void Evaluation::rates_and_jacobian(const double* y, const double* channels, double* rate) {
  for (const auto& batch : house_->store_batches) batch->slopes(y, potential_.data(), slope_.data());
  std::copy_n(channels, house_->channels, potential_.data() + house_->states);
  for (std::size_t b = 0; b < house_->exchange_batches.size(); ++b)
    house_->exchange_batches[b]->derivatives(potential_.data(), flux_.data() + house_->batch_first_flux[b],
                                             derivative_.data() + house_->batch_first_derivative[b]);
  gather(flux_.data(), rate);
  std::fill(jacobian_.begin(), jacobian_.end(), 0.0);
  double* jacobian = jacobian_.data();
  const double* derivative = derivative_.data();
  for (const auto& entry : house_->scatter) {
    jacobian[entry.minus] -= derivative[entry.derivative];
    jacobian[entry.plus] += derivative[entry.derivative];
  }
  by_amounts();
}

/// Turns columns "by potential" into columns "by amount": a node's own chain rule.
void Evaluation::by_amounts() {
  double* jacobian = jacobian_.data();
  const double* slope = slope_.data();
  for (const auto& column : house_->single_columns) jacobian[column.position] *= slope[2 * column.state];
  for (const auto& pair : house_->paired_columns) {
    const double* s = slope + 2 * pair.state;
    const double first = jacobian[pair.position], second = jacobian[pair.position + 1];
    jacobian[pair.position] = first * s[0] + second * s[3];
    jacobian[pair.position + 1] = first * s[1] + second * s[2];
  }
}

void Evaluation::time_slopes(const double* channel_slopes, double* rate_slope, double* flux_slope) const {
  std::fill_n(direction_.begin(), house_->states, 0.0);
  std::copy_n(channel_slopes, house_->channels, direction_.begin() + house_->states);
  std::fill_n(flux_slope, house_->fluxes, 0.0);
  add_change_along_direction(flux_slope);
  gather(flux_slope, rate_slope);
}

void Evaluation::add_flux_change(const double* v, double scale, double* out) const {
  // direction in potentials: each state's own slope and its partner's, which is 0 for one that is its own partner
  double* d = direction_.data();
  const double* slope = slope_.data();
  const int* partner = house_->partner.data();
  for (int i = 0; i < house_->states; ++i) d[i] = scale * (slope[2 * i] * v[i] + slope[2 * i + 1] * v[partner[i]]);
  std::fill_n(direction_.begin() + house_->states, house_->channels, 0.0);
  add_change_along_direction(out);
}

void Evaluation::add_change_along_direction(double* out) const {
  for (std::size_t b = 0; b < house_->exchange_batches.size(); ++b)
    house_->exchange_batches[b]->add_change(derivative_.data() + house_->batch_first_derivative[b], direction_.data(),
                                            out + house_->batch_first_flux[b]);
}

}  // namespace noonhouse
