// SPDX-License-Identifier: Apache-2.0
#include "models/light/radiant_room.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace noonhouse {
namespace {
std::size_t at(Eigen::Index i) { return static_cast<std::size_t>(i); }
}  // namespace

RadiantRoom radiant_room(const Grid& exchange_m2, const std::vector<double>& areas_m2,
                         const std::vector<RadiantPart>& parts) {
  const auto n = static_cast<Eigen::Index>(parts.size());
  Eigen::MatrixXd view = Eigen::MatrixXd::Zero(n, n), system = Eigen::MatrixXd::Identity(n, n), takes(n, 2 * n);
  for (Eigen::Index p = 0; p < n; ++p)
    for (Eigen::Index q = 0; q < n; ++q) {
      const RadiantPart &from = parts[at(p)], &to = parts[at(q)];
      const auto s = static_cast<std::size_t>(from.surface), t = static_cast<std::size_t>(to.surface);
      if (areas_m2[s] > 0.0) view(p, q) = exchange_m2(s, t) / areas_m2[s] * to.share;
      system(p, q) -= view(p, q) * (1.0 - to.emissivity - to.transmittance);
      takes(p, q) = view(p, q) * to.emissivity;
      takes(p, n + q) = view(p, q) * to.transmittance;
    }
  const Eigen::MatrixXd factors = system.partialPivLu().solve(takes);
  RadiantRoom out{Grid(parts.size(), parts.size()), Grid(parts.size(), parts.size())};
  const auto emits = [&](Eigen::Index p) {
    const RadiantPart& part = parts[at(p)];
    return part.emissivity * part.share * areas_m2[static_cast<std::size_t>(part.surface)];
  };
  for (Eigen::Index p = 0; p < n; ++p)
    for (Eigen::Index q = 0; q < n; ++q) {
      out.between(at(p), at(q)) = 0.5 * (emits(p) * factors(p, q) + emits(q) * factors(q, p));
      out.through(at(p), at(q)) = emits(p) * factors(p, n + q);
    }
  return out;
}

ThinnedExchange thin_exchange(const Grid& between, double least_share) {
  const std::size_t n = between.rows;
  std::vector<double> sums(n, 0.0), dropped(n, 0.0);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < n; ++j)
      if (i != j) sums[i] += between(i, j);
  ThinnedExchange out;
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j) {
      const double area = between(i, j);
      if (area <= 0.0) continue;
      if (area >= least_share * std::min(sums[i], sums[j])) {
        out.pairs.push_back({i, j, area});
      } else {
        dropped[i] += area;
        dropped[j] += area;
      }
    }
  constexpr int kSweeps = 200;
  out.to_centre_m2 = dropped;
  for (int sweep = 0; sweep < kSweeps; ++sweep) {
    const double all = std::accumulate(out.to_centre_m2.begin(), out.to_centre_m2.end(), 0.0);
    if (all <= 0.0) break;
    for (std::size_t i = 0; i < n; ++i)
      out.to_centre_m2[i] = dropped[i] / std::max(0.25, 1.0 - out.to_centre_m2[i] / all);
  }
  return out;
}

}  // namespace noonhouse
