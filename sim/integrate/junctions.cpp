// SPDX-License-Identifier: Apache-2.0
#include "sim/integrate/junctions.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

constexpr int kMostIterations = 60;
constexpr double kShortestShare = 1e-9;  ///< of Newton's own step
constexpr double kOvershoot = 0.1;       ///< share of the first descent that may have turned into a climb
constexpr double kFallen = 0.9;          ///< share of the first descent at which a shortened step is long enough
}  // namespace

Junctions::Junctions(const House& house)
    : house_(&house),
      factor_(house.junctions.pattern),
      potential_(at(house.states + house.channels), 0.0),
      flux_(at(house.fluxes), 0.0),
      derivative_(at(house.derivatives), 0.0),
      jacobian_(at(house.junctions.pattern.entries()) + 1, 0.0),
      imbalance_(house.junctions.states.size(), 0.0),
      move_(house.junctions.states.size(), 0.0) {}

/// Flows into every junction at the potentials that stand; the largest of them [kg/s].
double Junctions::flows() {
  const JunctionLayout& layout = house_->junctions;
  ++evaluations_;
  for (const int b : layout.batches)
    house_->exchange_batches[at(b)]->fluxes(potential_.data(), flux_.data() + house_->batch_first_flux[at(b)]);
  double most = 0.0;
  for (std::size_t i = 0; i < layout.states.size(); ++i) {
    const int state = layout.states[i], end = house_->state_fluxes_end[at(state)];
    double sum = 0.0;
    for (int k = state > 0 ? house_->state_fluxes_end[at(state - 1)] : 0; k < end; ++k)
      sum += house_->state_fluxes[at(k)].sign * flux_[at(house_->state_fluxes[at(k)].index)];
    imbalance_[i] = sum;
    most = std::isfinite(sum) ? std::max(most, std::abs(sum)) : INFINITY;
  }
  return most;
}

void Junctions::look_around(const double* flux_derivatives) {
  if (house_->junctions.states.empty()) return;
  std::fill(jacobian_.begin(), jacobian_.end(), 0.0);
  for (const auto& entry : house_->junctions.scatter) {
    jacobian_[at(entry.minus)] -= flux_derivatives[entry.derivative];
    jacobian_[at(entry.plus)] += flux_derivatives[entry.derivative];
  }
  has_matrix_ = factor_.factor(0.0, jacobian_.data());
  steepest_ = 0.0;
  for (std::size_t k = 0; k + 1 < jacobian_.size(); ++k) steepest_ = std::max(steepest_, std::abs(jacobian_[k]));
}

void Junctions::move(double share) {
  const auto& states = house_->junctions.states;
  for (std::size_t k = 0; k < move_.size(); ++k) potential_[at(states[k])] += share * move_[k];
  most_ = flows();
}

/// One step by the matrix at hand, undone unless it takes nine tenths off the imbalance.
bool Junctions::near_step() {
  if (!has_matrix_) return false;
  move_ = imbalance_;
  factor_.solve(move_.data());
  const double before = most_;
  move(1.0);
  if (most_ <= balanced() || most_ < 0.1 * before) return true;
  move(-1.0);
  return false;
}

/// What the last digit of the largest pressure makes of the flows [kg/s].
double Junctions::rounding() const {
  double most = 0.0;
  for (const int state : house_->junctions.states) most = std::max(most, std::abs(potential_[at(state)]));
  return std::numeric_limits<double>::epsilon() * most * steepest_;
}

/// What the imbalances do along the move [W]: how steeply the convex function still falls that way.
double Junctions::descent() const {
  double sum = 0.0;
  for (std::size_t k = 0; k < move_.size(); ++k) sum += imbalance_[k] * move_[k];
  return std::isfinite(most_) ? sum : -INFINITY;
}

/// One step along Newton's direction, to where the function has stopped falling that way at the latest. False where
/// nothing more can be gained.
bool Junctions::newton_step() {
  for (const int b : house_->junctions.batches)
    house_->exchange_batches[at(b)]->derivatives(potential_.data(), flux_.data() + house_->batch_first_flux[at(b)],
                                                 derivative_.data() + house_->batch_first_derivative[at(b)]);
  look_around(derivative_.data());
  if (!has_matrix_) return false;
  move_ = imbalance_;
  factor_.solve(move_.data());
  const double before = most_, steepest = descent();
  double taken = 0.0, low = 0.0, high = 2.0;
  for (double share = 1.0; high - low > kShortestShare; share = 0.5 * (low + high)) {
    move(share - taken);
    taken = share;
    if (most_ <= balanced()) return true;
    // Close to the balance imbalances are rounding, and so is what they do along the move.
    if (before <= almost_balanced() && most_ >= before) break;
    const double descends = descent();
    if (descends >= -kOvershoot * steepest && (share == 1.0 || descends <= kFallen * steepest)) return true;
    (descends > 0.0 ? low : high) = share;
  }
  move(-taken);
  return false;
}

bool Junctions::settle(double* y, const double* channels) {
  const auto& states = house_->junctions.states;
  if (states.empty()) return true;
  for (const auto& batch : house_->store_batches) batch->potentials(y, potential_.data());
  std::copy_n(channels, house_->channels, potential_.data() + house_->states);
  most_ = flows();
  if (!std::isfinite(most_)) return false;
  for (int i = 0; i < kMostIterations && most_ > balanced(); ++i)
    if (!near_step() && !newton_step()) break;
  for (const int state : states) y[state] = potential_[at(state)];
  return most_ <= almost_balanced();
}

int Junctions::worst() const {
  std::size_t worst = 0;
  for (std::size_t i = 1; i < imbalance_.size() && !std::isnan(imbalance_[worst]); ++i)
    if (std::isnan(imbalance_[i]) || std::abs(imbalance_[i]) > std::abs(imbalance_[worst])) worst = i;
  return house_->junctions.states[worst];
}

}  // namespace noonhouse
