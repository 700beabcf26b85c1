// SPDX-License-Identifier: Apache-2.0
#include "sim/integrate/stepper.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"
#include "sim/integrate/ros3.hpp"

namespace noonhouse {
namespace {

constexpr double kBulge = 4.0 / 27.0;   ///< largest value of theta (1 - theta)^2, by which a slope moves a cubic
constexpr double kBulgeOfChange = 0.5;  ///< most that dense output may leave the straight line, of a step's change
constexpr double kBulgeInUnits = 5.0;   ///< and in units of error besides

bool differs(double a, double b) { return std::abs(a - b) > 1e-9 * (std::abs(a) + std::abs(b)) + 1e-12; }

}  // namespace

Stepper::Stepper(const House& house, const StepControl& control)
    : house_(&house),
      control_(control),
      first_(house),
      middle_(house),
      junctions_(house),
      factor_(house.pattern),
      next_length_s_(seconds(control.restart)) {
  const std::size_t n = at(house.states), fluxes = at(house.fluxes), channels = at(house.channels);
  for (auto* v : {&rates_, &rate_slope_, &inner_rates_, &u1_, &u2_, &u3_, &trial_, &error_, &increment_})
    v->assign(n, 0.0);
  for (auto* v : {&step_.amounts0, &step_.rates0, &step_.amounts1, &step_.rates1}) v->assign(n, 0.0);
  for (auto* v : {&step_.carried0, &step_.fluxes0, &step_.carried1, &step_.fluxes1, &flux_slope_})
    v->assign(fluxes, 0.0);
  for (auto* v : {&prepared_channels_, &channels_}) v->assign(channels, 0.0);
}

void Stepper::restart() {
  prepared_ = false;
  next_length_s_ = std::min(next_length_s_, seconds(control_.restart));
}

void Stepper::prepare(HouseState& state, const ChannelLine& channels) {
  channels.at(state.now, channels_.data());
  // A channel that jumped at this instant; rounding at a break where the lines meet is no jump.
  if (prepared_ && !std::equal(channels_.begin(), channels_.end(), prepared_channels_.begin(),
                               [](double a, double b) { return !differs(a, b); }))
    restart();
  if (!prepared_) {
    prepared_channels_ = channels_;
    balanced_ = junctions_.settle(state.amounts.data(), channels_.data());
    if (!balanced_) give_up(state);
    first_.rates_and_jacobian(state.amounts.data(), channels_.data(), rates_.data());
    prepared_ = true;
  }
  first_.time_slopes(channels.slope.data(), rate_slope_.data(), flux_slope_.data());
}

/// The next trial's length within the room before the limit: at least a tick, and shorter than what was last rejected.
Tick Stepper::choose_length(Tick room, Tick rejected) const {
  const Tick most = std::min(room, rejected - Tick{1});
  const Tick wish = std::clamp(ticks(next_length_s_), Tick{1}, control_.longest);
  if (wish.ms * 11 >= room.ms * 10) return most;  // no sliver left before the limit
  if (wish.ms * 2 > room.ms) return std::min(most, Tick{(room.ms + 1) / 2});
  return std::min(most, wish);
}

const Step& Stepper::advance(HouseState& state, const ChannelLine& channels, Tick limit) {
  NOON_ASSERT(limit > state.now);
  prepare(state, channels);
  Tick rejected = kNever;
  for (;;) {
    const Tick length = choose_length(limit - state.now, rejected);
    const double error = try_step(state, channels, length);
    const double scale = std::isfinite(error)
                             ? std::clamp(0.9 * std::pow(std::max(error, 1e-10), -1.0 / ros3::kErrorOrder), 0.1,
                                          rejected < kNever ? 1.0 : control_.growth)
                             : 0.1;
    if (error <= 1.0) {
      // A step cut short by the limit that could have grown as far as it may says nothing against the old wish.
      const bool keep_wish = scale >= control_.growth && seconds(length) * scale < next_length_s_;
      if (!keep_wish) next_length_s_ = seconds(length) * scale;
      accept(state, channels, length);
      return step_;
    }
    ++rejected_;
    if (length <= std::max(Tick{1}, control_.shortest)) give_up(state);
    rejected = length;
    next_length_s_ = seconds(length) * scale;
  }
}

/// One trial step; returns its error in units of the tolerance, or infinity when it cannot be factored.
double Stepper::try_step(const HouseState& state, const ChannelLine& channels, Tick length) {
  const std::size_t n = at(house_->states);
  const double h = seconds(length);
  if (!factor_.factor(1.0 / (h * ros3::kGamma), first_.jacobian(), house_->stores.data())) return INFINITY;
  junctions_.look_around(first_.flux_derivatives());
  const double* y = state.amounts.data();
  for (std::size_t i = 0; i < n; ++i) u1_[i] = rates_[i] + ros3::kTime[0] * h * rate_slope_[i];
  factor_.solve(u1_.data());
  for (std::size_t i = 0; i < n; ++i) trial_[i] = y[i] + ros3::kA21 * u1_[i];
  const double begin_s = seconds(state.now - channels.begin);
  const auto channels_after = [&](double s) {
    for (std::size_t i = 0; i < channels_.size(); ++i)
      channels_[i] = channels.value[i] + channels.slope[i] * (begin_s + s);
  };
  channels_after(ros3::kAlpha2 * h);
  balanced_ = junctions_.settle(trial_.data(), channels_.data());
  if (!balanced_) return INFINITY;
  middle_.rates(trial_.data(), channels_.data(), inner_rates_.data());
  const double c21 = ros3::kC21 / h, c31 = ros3::kC31 / h, c32 = ros3::kC32 / h;
  // A junction has no memory: its row says that its flows add up to nothing, at every stage.
  const double* stores = house_->stores.data();
  for (std::size_t i = 0; i < n; ++i)
    u2_[i] = inner_rates_[i] + stores[i] * c21 * u1_[i] + ros3::kTime[1] * h * rate_slope_[i];
  factor_.solve(u2_.data());
  for (std::size_t i = 0; i < n; ++i)
    u3_[i] = inner_rates_[i] + stores[i] * (c31 * u1_[i] + c32 * u2_[i]) + ros3::kTime[2] * h * rate_slope_[i];
  factor_.solve(u3_.data());
  const double error = combine_stages(y);
  channels_after(h);
  if (error <= 1.0) balanced_ = junctions_.settle(trial_.data(), channels_.data());
  return balanced_ ? error : INFINITY;
}

/// The step's end from its stages, with the error in units of the tolerance.
double Stepper::combine_stages(const double* y) {
  const std::size_t n = at(house_->states);
  double sum = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    trial_[i] = y[i] + ros3::kM[0] * u1_[i] + ros3::kM[1] * u2_[i] + ros3::kM[2] * u3_[i];
    error_[i] = house_->stores[i] * (ros3::kE[0] * u1_[i] + ros3::kE[1] * u2_[i] + ros3::kE[2] * u3_[i]) /
                house_->amount_tolerance[i];
    sum += error_[i] * error_[i];
  }
  return std::sqrt(sum / static_cast<double>(n - house_->junctions.states.size())) / control_.tolerance;
}

/// Integrals of every flux over the step, by the method's own quadrature; accounts follow from them.
void Stepper::carry(HouseState& state, double h) {
  constexpr auto w = ros3::carried_weights();
  const std::size_t n = at(house_->states);
  for (std::size_t i = 0; i < n; ++i) increment_[i] = w[0] * u1_[i] + w[1] * u2_[i] + w[2] * u3_[i];
  const double time_weight = (w[0] * ros3::kTime[0] + w[1] * ros3::kTime[1] + w[2] * ros3::kTime[2]) * h;
  const auto q1 = first_.fluxes(), q2 = middle_.fluxes();
  double* carried = step_.carried1.data();
  for (std::size_t j = 0; j < q1.size(); ++j)
    carried[j] = h * (w[0] * q1[j] + (w[1] + w[2]) * q2[j] + time_weight * flux_slope_[j]);
  first_.add_flux_change(increment_.data(), h, carried);
  for (std::size_t j = 0; j < q1.size(); ++j) {
    const int from = house_->flux_from[j], to = house_->flux_to[j];
    if (from >= house_->states) state.amounts[at(from)] -= carried[j];
    if (to >= house_->states) state.amounts[at(to)] += carried[j];
    carried[j] += state.carried[j];
  }
}

void Stepper::accept(HouseState& state, const ChannelLine& channels, Tick length) {
  const std::size_t n = at(house_->states);
  ++steps_;
  step_.begin = state.now;
  step_.end = state.now + length;
  std::copy_n(state.amounts.begin(), n, step_.amounts0.begin());
  step_.amounts1 = trial_;
  step_.carried0 = state.carried;
  carry(state, seconds(length));
  std::copy_n(trial_.begin(), n, state.amounts.begin());
  state.carried = step_.carried1;
  state.now = step_.end;
  // The evaluation at the end serves the dense output now and the next step's first stage later.
  channels.at(state.now, channels_.data());
  prepared_channels_ = channels_;
  middle_.rates_and_jacobian(state.amounts.data(), channels_.data(), inner_rates_.data());
  std::swap(first_, middle_);  // the derivatives at the step's beginning stay at hand in middle_
  dense_slopes();
  rates_.swap(inner_rates_);
}

/// Slopes for the dense output at both ends of the step. The true rate r of a part that relaxes within a small share
/// of the step would throw a cubic far beyond both its ends, so such parts are led back to the step's mean rate m:
///   r - (1 - S)^2 (r - m) = r + J v,  v = h gamma (S - S^2) (r - m),  S = (1 - h gamma J)^-1
/// which leaves slow parts their own slope to third order in h. J v is what the fluxes change by along v, so
/// slopes of fluxes and of amounts agree as the fluxes and rates do.
void Stepper::dense_slopes() {
  const std::size_t n = at(house_->states);
  const double h = seconds(step_.end - step_.begin), h_gamma = h * ros3::kGamma;
  std::vector<double>&v0 = u1_, &v1 = u2_, &again0 = u3_, &again1 = increment_;
  const double* stores = house_->stores.data();
  for (std::size_t i = 0; i < n; ++i) {
    const double mean = (step_.amounts1[i] - step_.amounts0[i]) / h;
    v0[i] = stores[i] * (rates_[i] - mean);
    v1[i] = stores[i] * (inner_rates_[i] - mean);
  }
  factor_.solve(v0.data(), v1.data());
  for (std::size_t i = 0; i < n; ++i) {
    again0[i] = stores[i] * v0[i];
    again1[i] = stores[i] * v1[i];
  }
  factor_.solve(again0.data(), again1.data());
  for (std::size_t i = 0; i < n; ++i) {
    v0[i] -= again0[i] / h_gamma;
    v1[i] -= again1[i] / h_gamma;
  }
  const auto lead = [&](std::span<const double> fluxes, const std::vector<double>& v, std::vector<double>& flux_slopes,
                        std::vector<double>& rate_slopes) {
    std::copy(fluxes.begin(), fluxes.end(), flux_slopes.begin());
    middle_.add_flux_change(v.data(), 1.0, flux_slopes.data());
    middle_.gather(flux_slopes.data(), rate_slopes.data());
  };
  lead(middle_.fluxes(), v0, step_.fluxes0, step_.rates0);
  lead(first_.fluxes(), v1, step_.fluxes1, step_.rates1);
  straighten_dense_output(h);
  for (const int i : house_->junctions.states)  // pressures go straight from end to end
    step_.rates0[at(i)] = step_.rates1[at(i)] = (step_.amounts1[at(i)] - step_.amounts0[at(i)]) / h;
}

/// The matrix above is that of the step's beginning. A part that becomes fast only later keeps a slope at the end that
/// no such matrix knows to be brief, and the cubic bulges. Then all slopes, of amounts and fluxes alike, are brought
/// nearer to the step's means by one share, so that what is linear in them stays so.
void Stepper::straighten_dense_output(double h) {
  double share = 1.0;
  for (std::size_t i = 0; i < step_.rates0.size(); ++i) {
    if (house_->stores[i] == 0.0) continue;
    const double change = step_.amounts1[i] - step_.amounts0[i], mean = change / h;
    const double bulge = kBulge * h * (std::abs(step_.rates0[i] - mean) + std::abs(step_.rates1[i] - mean));
    const double most = kBulgeOfChange * std::abs(change) + kBulgeInUnits * house_->amount_tolerance[i];
    if (bulge * share > most) share = most / bulge;
  }
  if (share == 1.0) return;
  const auto nearer = [share, h](std::vector<double>& slopes, const std::vector<double>& from,
                                 const std::vector<double>& to) {
    for (std::size_t i = 0; i < slopes.size(); ++i) {
      const double mean = (to[i] - from[i]) / h;
      slopes[i] = mean + share * (slopes[i] - mean);
    }
  };
  nearer(step_.rates0, step_.amounts0, step_.amounts1);
  nearer(step_.rates1, step_.amounts0, step_.amounts1);
  nearer(step_.fluxes0, step_.carried0, step_.carried1);
  nearer(step_.fluxes1, step_.carried0, step_.carried1);
}

void Stepper::cut(HouseState& state, Tick when) {
  if (when == step_.end) return;
  // Accounts follow what the fluxes carried, so that states and accounts are cut alike.
  std::vector<double>& carried = flux_slope_;  // scratch until the next prepare
  step_.carried_at(when, carried.data());
  for (std::size_t j = 0; j < carried.size(); ++j) {
    const double back = carried[j] - state.carried[j];
    const int from = house_->flux_from[j], to = house_->flux_to[j];
    if (from >= house_->states) state.amounts[at(from)] -= back;
    if (to >= house_->states) state.amounts[at(to)] += back;
    state.carried[j] = carried[j];
  }
  step_.amounts_at(when, state.amounts.data());
  state.now = when;
  restart();
}

void Stepper::give_up(const HouseState& state) const {
  const std::string at_time = "the simulation cannot go on at " + std::to_string(seconds(state.now)) + " s: ";
  if (!balanced_)
    throw UserError(ErrorKind::step_collapse,
                    at_time + "no pressure balances the flows of air at '" +
                        house_->state_names[at(junctions_.worst())] +
                        "'. Look for a fan without a way for its air, or a value out of all bounds there.");
  const auto worst = std::max_element(error_.begin(), error_.end(), [](double a, double b) {
    return std::isnan(b) || (!std::isnan(a) && std::abs(a) < std::abs(b));
  });
  const std::string name = house_->state_names[static_cast<std::size_t>(worst - error_.begin())];
  throw UserError(ErrorKind::step_collapse,
                  at_time + "no step, however short, keeps the error of '" + name +
                      "' within its tolerance. Look for a nearly zero heat capacity, volume or area there.");
}

}  // namespace noonhouse
