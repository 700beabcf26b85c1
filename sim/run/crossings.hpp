// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <vector>

#include "sim/contract/agent.hpp"
#include "sim/graph/house.hpp"
#include "sim/integrate/method.hpp"

namespace noonhouse {

/// An agent's watch as the run keeps it.
struct ArmedWatch {
  AgentId agent;
  int slot = 0;
  bool armed = false;
  Watch watch;
  int potential = -1;  ///< position of what is watched
  bool passed(double value) const {
    return watch.direction == Watch::Direction::rising ? value >= watch.threshold : value <= watch.threshold;
  }
};

/// Potentials anywhere inside a step, from its dense output.
class StepReader {
 public:
  explicit StepReader(const House& house);
  /// All potentials at an instant in [begin, end]; valid until the next call.
  std::span<const double> potentials(const Step& step, const ChannelLine& channels, Tick when);

 private:
  const House* house_;
  std::vector<double> amounts_, potentials_;
};

/// The earliest instant in (begin, end] at which an armed watch is passed, on the step's dense output,
/// with all watches that pass at that instant; kNever when none does.
/// "Earliest" compares one crossing of each watch: the one before the step's end where the watch is passed there, or
/// else the one before a turning point of an amount of its node at which it is passed. So a limit that is passed and
/// left again inside one step is found too; but of several crossings of one limit in one step any may be the one found,
/// and a peak of the potential away from the turning points of its node's amounts is not seen.
/// The instant returned is on the passed side, at most `width` after the crossing; watches whose crossings lie closer
/// together than that may come out in either order.
/// A watch that is beyond its limit already at the beginning (water poured in, a channel that jumped at a
/// break) fires at the first tick.
class CrossingFinder {
 public:
  CrossingFinder(const House& house, Tick width) : house_(&house), reader_(house), width_(width) {}
  /// `at_end` are all potentials at the step's end.
  Tick find(const std::vector<ArmedWatch>& watches, const Step& step, const ChannelLine& channels,
            std::span<const double> at_end, std::vector<std::size_t>& fired);

 private:
  Tick passing_point(const ArmedWatch& watch, const Step& step, const ChannelLine& channels, double at_end);
  Tick isolate(const ArmedWatch& watch, const Step& step, const ChannelLine& channels, Tick passed);

  const House* house_;
  StepReader reader_;
  Tick width_;
  std::vector<double> at_begin_;
};

}  // namespace noonhouse
