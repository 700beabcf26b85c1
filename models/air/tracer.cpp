// SPDX-License-Identifier: Apache-2.0
#include "models/air/tracer.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <sstream>
#include <unsupported/Eigen/MatrixFunctions>
#include <utility>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

using Zones = std::vector<FlushedZone>;
using Streams = std::vector<ZoneStream>;

template <class... Parts>
[[noreturn]] void refuse(ErrorKind kind, const Parts&... parts) {
  std::ostringstream message;
  (message << ... << parts);
  throw UserError(kind, message.str());
}

Eigen::Index row(std::size_t k) { return static_cast<Eigen::Index>(k); }

Eigen::VectorXd volumes(const Zones& zones) {
  Eigen::VectorXd out(row(zones.size()));
  for (std::size_t k = 0; k < zones.size(); ++k) out[row(k)] = zones[k].volume_m3;
  return out;
}

/// A of the class [m3/s].
Eigen::MatrixXd exchange(const Zones& zones, const Streams& streams) {
  Eigen::MatrixXd a = Eigen::MatrixXd::Zero(row(zones.size()), row(zones.size()));
  for (std::size_t k = 0; k < zones.size(); ++k) a(row(k), row(k)) = zones[k].to_outdoors_m3_s;
  for (const ZoneStream& s : streams) {
    a(row(s.from), row(s.from)) += s.flow_m3_s;
    a(row(s.to), row(s.from)) -= s.flow_m3_s;
  }
  return a;
}

/// V^-1 A [1/s].
Eigen::MatrixXd rates(const Zones& zones, const Streams& streams) {
  return volumes(zones).cwiseInverse().asDiagonal() * exchange(zones, streams);
}

void require_ranges(const Zones& zones, const Streams& streams) {
  if (zones.empty()) refuse(ErrorKind::does_not_fit, "there is no zone to flush");
  for (std::size_t k = 0; k < zones.size(); ++k) {
    const FlushedZone& z = zones[k];
    if (!(z.volume_m3 > 0.0) || !(z.from_outdoors_m3_s >= 0.0) || !(z.to_outdoors_m3_s >= 0.0))
      refuse(ErrorKind::out_of_range, "zone ", k, " has volume ", z.volume_m3, " m3 and outdoor flows ",
             z.from_outdoors_m3_s, " in, ", z.to_outdoors_m3_s, " m3/s out: volumes above 0, flows of 0 or more");
  }
  for (const ZoneStream& s : streams)
    if (s.from >= zones.size() || s.to >= zones.size() || s.from == s.to || !(s.flow_m3_s >= 0.0))
      refuse(ErrorKind::out_of_range, "a stream of ", s.flow_m3_s, " m3/s from zone ", s.from, " to zone ", s.to,
             ": flows of 0 or more between two different zones below ", zones.size());
}

void require_balance(const Zones& zones, const Streams& streams) {
  for (std::size_t k = 0; k < zones.size(); ++k) {
    double in = zones[k].from_outdoors_m3_s, out = zones[k].to_outdoors_m3_s;
    for (const ZoneStream& s : streams) {
      if (s.to == k) in += s.flow_m3_s;
      if (s.from == k) out += s.flow_m3_s;
    }
    if (std::abs(in - out) > 1e-6 * std::max(in, out))
      refuse(ErrorKind::does_not_fit, "zone ", k, " gets ", in, " m3/s and gives ", out, ": they must be equal");
  }
}

/// Follows the streams from the zones that outdoor air enters.
void require_reached(const Zones& zones, const Streams& streams) {
  std::vector<bool> reached(zones.size());
  for (std::size_t k = 0; k < zones.size(); ++k) reached[k] = zones[k].from_outdoors_m3_s > 0.0;
  for (std::size_t round = 0; round < zones.size(); ++round)
    for (const ZoneStream& s : streams)
      if (s.flow_m3_s > 0.0 && reached[s.from]) reached[s.to] = true;
  for (std::size_t k = 0; k < zones.size(); ++k)
    if (!reached[k])
      refuse(ErrorKind::does_not_fit, "no outdoor air reaches zone ", k, ": its air would age without end");
}

}  // namespace

double air_change_from_decay_1_s(double before, double after, double outdoors, double time_s) {
  const double ratio = (before - outdoors) / (after - outdoors);
  if (!(ratio > 0.0) || !std::isfinite(ratio) || !(time_s > 0.0))
    refuse(ErrorKind::out_of_range, "a tracer of ", before, " before and ", after, " after ", time_s, " s with ",
           outdoors, " outdoors shows no air change: both lie above or both below it, after a time above 0");
  return std::log(ratio) / time_s;
}

FlushedZones::FlushedZones(std::vector<FlushedZone> zones, std::vector<ZoneStream> streams)
    : zones_(std::move(zones)), streams_(std::move(streams)) {
  require_ranges(zones_, streams_);
  require_balance(zones_, streams_);
  require_reached(zones_, streams_);
}

std::vector<double> FlushedZones::after(double time_s, const std::vector<double>& before, double outdoors) const {
  NOON_ASSERT(before.size() == zones_.size() && time_s >= 0.0);
  Eigen::VectorXd excess(row(before.size()));
  for (std::size_t k = 0; k < before.size(); ++k) excess[row(k)] = before[k] - outdoors;
  const Eigen::MatrixXd exponent = -time_s * rates(zones_, streams_);
  const Eigen::MatrixXd left = exponent.exp();
  const Eigen::VectorXd now = left * excess;
  std::vector<double> out(before.size());
  for (std::size_t k = 0; k < out.size(); ++k) out[k] = outdoors + now[row(k)];
  return out;
}

std::vector<double> FlushedZones::local_mean_age_s() const {
  const Eigen::VectorXd age = exchange(zones_, streams_).partialPivLu().solve(volumes(zones_));
  return {age.data(), age.data() + age.size()};
}

double FlushedZones::mean_age_s() const {
  const std::vector<double> ages = local_mean_age_s();
  double weighted = 0.0, volume = 0.0;
  for (std::size_t k = 0; k < ages.size(); ++k) {
    weighted += zones_[k].volume_m3 * ages[k];
    volume += zones_[k].volume_m3;
  }
  return weighted / volume;
}

double FlushedZones::nominal_time_s() const {
  double flow = 0.0, volume = 0.0;
  for (const FlushedZone& zone : zones_) {
    flow += zone.from_outdoors_m3_s;
    volume += zone.volume_m3;
  }
  return volume / flow;
}

double FlushedZones::slowest_decay_1_s() const {
  const Eigen::MatrixXd rate = rates(zones_, streams_);
  return Eigen::EigenSolver<Eigen::MatrixXd>(rate, false).eigenvalues().real().minCoeff();
}

double FlushedZones::mean_decay_1_s(double time_s) const {
  const std::vector<double> left = after(time_s, std::vector<double>(zones_.size(), 1.0), 0.0);
  double tracer = 0.0, volume = 0.0;
  for (std::size_t k = 0; k < left.size(); ++k) {
    tracer += zones_[k].volume_m3 * left[k];
    volume += zones_[k].volume_m3;
  }
  return air_change_from_decay_1_s(1.0, tracer / volume, 0.0, time_s);
}

}  // namespace noonhouse
