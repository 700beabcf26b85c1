// SPDX-License-Identifier: Apache-2.0
#include "sim/integrate/evaluation.hpp"

#include <algorithm>

namespace noonhouse {
namespace {
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

Evaluation::Evaluation(const House& house)
    : house_(&house),
      potential_(at(house.states + house.channels), 0.0),
      slope_(at(house.states) * 2, 0.0),
      flux_(at(house.fluxes), 0.0),
      derivative_(at(house.derivatives), 0.0),
      jacobian_(at(house.pattern.entries()), 0.0),
      direction_(at(house.states), 0.0),
      accounts_(at(house.states + house.accounts), 0.0) {}

void Evaluation::gather(const double* flux, double* rate) const {
  // Accounts gather too, into scratch, so that the loop needs no branch.
  double* all = accounts_.data();
  std::fill(accounts_.begin(), accounts_.end(), 0.0);
  const int* from = house_->flux_from.data();
  const int* to = house_->flux_to.data();
  for (int j = 0; j < house_->fluxes; ++j) {
    const double q = flux[j];
    all[from[j]] -= q;
    all[to[j]] += q;
  }
  std::copy_n(all, house_->states, rate);
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
  for (const auto& entry : house_->minus) jacobian[entry.position] -= derivative_[at(entry.derivative)];
  for (const auto& entry : house_->plus) jacobian[entry.position] += derivative_[at(entry.derivative)];
  by_amounts();
}

/// Turns columns "by potential" into columns "by amount": a node's own chain rule.
void Evaluation::by_amounts() {
  double* jacobian = jacobian_.data();
  for (const auto& column : house_->single_columns) jacobian[column.position] *= slope_[at(2 * column.state)];
  for (const auto& pair : house_->paired_columns) {
    const double* s = slope_.data() + 2 * pair.state;
    const double first = jacobian[pair.position], second = jacobian[pair.position + 1];
    jacobian[pair.position] = first * s[0] + second * s[3];
    jacobian[pair.position + 1] = first * s[1] + second * s[2];
  }
}

void Evaluation::time_slopes(const double* channel_slopes, double* rate_slope, double* flux_slope) const {
  std::fill_n(flux_slope, house_->fluxes, 0.0);
  for (const auto& entry : house_->by_channel)
    flux_slope[entry.flux] += derivative_[at(entry.derivative)] * channel_slopes[entry.potential - house_->states];
  gather(flux_slope, rate_slope);
}

void Evaluation::add_flux_change(const double* v, double scale, double* out) const {
  // direction in potentials: each state's own slope and its partner's
  double* d = direction_.data();
  for (const auto& node : house_->nodes) {
    const int i = node.first_state;
    const double* s = slope_.data() + 2 * i;
    d[i] = s[0] * v[i];
    if (node.states == 2) {
      d[i] += s[1] * v[i + 1];
      d[i + 1] = s[2] * v[i + 1] + s[3] * v[i];
    }
  }
  for (const auto& entry : house_->by_state)
    out[entry.flux] += scale * derivative_[at(entry.derivative)] * d[entry.potential];
}

}  // namespace noonhouse
