// SPDX-License-Identifier: Apache-2.0
#include "sim/run/crossings.hpp"

#include <algorithm>
#include <array>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <utility>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

/// Shares of the step, in (0, 1) and ascending, at which the cubic Hermite of one amount turns; 1 where there is none.
std::array<double, 2> turning_points(double y0, double r0, double y1, double r1, double h) {
  // d/dtheta: a theta^2 + b theta + c with c = h r0
  const double rise = y1 - y0;
  const double a = 3.0 * (h * (r0 + r1) - 2.0 * rise);
  const double b = 2.0 * (3.0 * rise - h * (2.0 * r0 + r1));
  const double c = h * r0;
  const double discriminant = b * b - 4.0 * a * c;
  std::array<double, 2> out{1.0, 1.0};
  if (!(discriminant > 0.0)) return out;
  // The two roots without subtracting nearly equal numbers; a vanishing a sends one of them out of the step.
  const double q = -0.5 * (b + std::copysign(std::sqrt(discriminant), b));
  std::size_t found = 0;
  for (const double theta : {q / a, c / q})
    if (theta > 0.0 && theta < 1.0) out[found++] = theta;
  if (out[1] < out[0]) std::swap(out[0], out[1]);
  return out;
}

}  // namespace

StepReader::StepReader(const House& house)
    : house_(&house), amounts_(at(house.states), 0.0), potentials_(at(house.states + house.channels), 0.0) {}

std::span<const double> StepReader::potentials(const Step& step, const ChannelLine& channels, Tick when) {
  if (step.begin == step.end) {
    std::copy_n(step.amounts1.begin(), amounts_.size(), amounts_.begin());
  } else {
    step.amounts_at(when, amounts_.data());
  }
  for (const auto& batch : house_->store_batches) batch->potentials(amounts_.data(), potentials_.data());
  channels.at(when, potentials_.data() + house_->states);
  return potentials_;
}

Tick CrossingFinder::find(const std::vector<ArmedWatch>& watches, const Step& step, const ChannelLine& channels,
                          std::span<const double> at_end, std::vector<std::size_t>& fired) {
  fired.clear();
  if (std::none_of(watches.begin(), watches.end(), [](const ArmedWatch& w) { return w.armed; })) return kNever;
  const auto begin_potentials = reader_.potentials(step, channels, step.begin);
  at_begin_.assign(begin_potentials.begin(), begin_potentials.end());
  Tick earliest = kNever;
  for (std::size_t i = 0; i < watches.size(); ++i) {
    if (!watches[i].armed) continue;
    const Tick passed = passing_point(watches[i], step, channels, at_end[at(watches[i].potential)]);
    if (passed == kNever) continue;
    const Tick when = isolate(watches[i], step, channels, passed);
    if (when < earliest) fired.clear();
    if (when <= earliest) {
      earliest = when;
      fired.push_back(i);
    }
  }
  return earliest;
}

/// An instant inside the step at which the watch is passed: the first tick when it was lifted over its limit from
/// outside, else the end, else a turning point of its node.
Tick CrossingFinder::passing_point(const ArmedWatch& watch, const Step& step, const ChannelLine& channels,
                                   double at_end) {
  if (watch.passed(at_begin_[at(watch.potential)])) return step.begin + Tick{1};
  if (watch.passed(at_end)) return step.end;
  if (!watch.watch.what.node.valid()) return kNever;  // a channel is a straight line
  const auto& node = house_->nodes[at(watch.watch.what.node.index)];
  const double h = seconds(step.end - step.begin);
  for (int k = 0; k < node.states; ++k) {
    const auto i = at(node.first_state + k);
    for (const double theta : turning_points(step.amounts0[i], step.rates0[i], step.amounts1[i], step.rates1[i], h)) {
      const Tick when = step.begin + ticks(theta * h);
      if (when <= step.begin || when >= step.end) continue;
      if (watch.passed(reader_.potentials(step, channels, when)[at(watch.potential)])) return when;
    }
  }
  return kNever;
}

/// Narrows (step.begin, passed] down to the isolation width; the right end, which is passed, counts.
Tick CrossingFinder::isolate(const ArmedWatch& watch, const Step& step, const ChannelLine& channels, Tick passed) {
  const double sign = watch.watch.direction == Watch::Direction::rising ? 1.0 : -1.0;
  const auto beyond = [&](Tick when) {
    return sign * (reader_.potentials(step, channels, when)[at(watch.potential)] - watch.watch.threshold);
  };
  const double at_begin = sign * (at_begin_[at(watch.potential)] - watch.watch.threshold), at_passed = beyond(passed);
  if (at_begin >= 0.0 || !(at_passed > 0.0))
    return passed;  // nothing to narrow: the first tick, or exactly on the limit
  const auto span = [&](double s) { return beyond(step.begin + ticks(s)); };
  const double width = seconds(width_);
  std::uintmax_t most = 60;
  const auto bracket = boost::math::tools::toms748_solve(
      span, 0.0, seconds(passed - step.begin), at_begin, at_passed,
      [width](double a, double b) { return std::abs(b - a) <= width; }, most);
  // The solver works on times rounded to ticks: its right end is a tick that is passed, unless both ends met on one.
  const Tick left = step.begin + ticks(bracket.first), right = step.begin + ticks(bracket.second);
  const Tick when = left > step.begin && beyond(left) >= 0.0 ? left : right;
  NOON_ASSERT(when > step.begin && when <= passed && beyond(when) >= 0.0);
  return when;
}

}  // namespace noonhouse
