// SPDX-License-Identifier: Apache-2.0
#include "sim/run/crossings.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <optional>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Where the cubic Hermite of one amount turns inside the step, as a share of it, if its rate changes sign.
std::optional<double> turning_point(double y0, double r0, double y1, double r1, double h) {
  if (!(r0 * r1 < 0.0)) return std::nullopt;
  // d/dtheta: a theta^2 + b theta + c with c = h r0
  const double rise = y1 - y0;
  const double a = 3.0 * (h * (r0 + r1) - 2.0 * rise);
  const double b = 2.0 * (3.0 * rise - h * (2.0 * r0 + r1));
  const double c = h * r0;
  if (std::abs(a) < 1e-14 * (std::abs(b) + std::abs(c))) return b != 0.0 ? std::optional(-c / b) : std::nullopt;
  const double root = std::sqrt(std::max(b * b - 4.0 * a * c, 0.0));
  for (double theta : {(-b + root) / (2.0 * a), (-b - root) / (2.0 * a)})
    if (theta > 0.0 && theta < 1.0) return theta;
  return std::nullopt;
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

/// An instant inside the step at which the watch is passed: the end, or a turning point of its node.
Tick CrossingFinder::passing_point(const ArmedWatch& watch, const Step& step, const ChannelLine& channels,
                                   double at_end) {
  if (watch.passed(at_end)) return step.end;
  if (!watch.watch.what.node.valid()) return kNever;  // a channel is a straight line
  const auto& node = house_->nodes[at(watch.watch.what.node.index)];
  const double h = seconds(step.end - step.begin);
  for (int k = 0; k < node.states; ++k) {
    const auto i = at(node.first_state + k);
    const auto theta = turning_point(step.amounts0[i], step.rates0[i], step.amounts1[i], step.rates1[i], h);
    if (!theta) continue;
    const Tick when = step.begin + ticks(*theta * h);
    if (when <= step.begin || when >= step.end) continue;
    if (watch.passed(reader_.potentials(step, channels, when)[at(watch.potential)])) return when;
  }
  return kNever;
}

/// Narrows (step.begin, passed] down to the isolation width; the right end, which is passed, counts.
Tick CrossingFinder::isolate(const ArmedWatch& watch, const Step& step, const ChannelLine& channels, Tick passed) {
  const double sign = watch.watch.direction == Watch::Direction::rising ? 1.0 : -1.0;
  const auto beyond = [&](Tick when) {
    return sign * (reader_.potentials(step, channels, when)[at(watch.potential)] - watch.watch.threshold);
  };
  const double at_begin = beyond(step.begin), at_passed = beyond(passed);
  if (at_begin >= 0.0) return step.begin + Tick{1};  // armed exactly on its limit
  if (at_passed == 0.0) return passed;
  const auto span = [&](double s) { return beyond(step.begin + ticks(s)); };
  const double width = seconds(width_);
  std::uintmax_t most = 60;
  const auto bracket = boost::math::tools::toms748_solve(
      span, 0.0, seconds(passed - step.begin), at_begin, at_passed,
      [width](double a, double b) { return std::abs(b - a) <= width; }, most);
  // The bracket's ends may come as either side of the crossing: take the first whole tick that is passed.
  Tick when = step.begin + ticks(bracket.first);
  if (when <= step.begin) when = step.begin + Tick{1};
  if (beyond(when) >= 0.0) return when;
  when = std::min(step.begin + ticks_up(bracket.second), passed);
  NOON_ASSERT(beyond(when) >= 0.0 || when == passed);
  return when;
}

}  // namespace noonhouse
