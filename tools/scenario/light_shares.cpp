// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/light_shares.hpp"

#include <array>
#include <cmath>
#include <limits>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {
constexpr int kPointsAlong = 6, kPointsAcross = 6;  ///< rays start at the middles of this grid of each bay's floor
constexpr int kRings = 16, kSectors = 32;           ///< of the sky, each of equal cosine-weighted share
}  // namespace

LightShares::LightShares(const HouseShape& shape, double faces_rad) : shape_(&shape), faces_rad_(faces_rad) {
  std::vector<Ray> sky;
  for (int ring = 0; ring < kRings; ++ring) {
    const double sine_squared = (ring + 0.5) / kRings;  // equal steps of sin^2 of the zenith angle weigh by its cosine
    for (int sector = 0; sector < kSectors; ++sector) {
      const double azimuth = 2.0 * kPi * (sector + 0.5) / kSectors, level = std::sqrt(sine_squared);
      sky.push_back({level * std::cos(azimuth), level * std::sin(azimuth), std::sqrt(1.0 - sine_squared)});
    }
  }
  diffuse_ = shares(sky);
}

std::vector<double> LightShares::beam(const SunPosition& sun) const {
  const double up = std::sin(sun.elevation_rad), level = std::cos(sun.elevation_rad);
  if (up <= 0.0) return std::vector<double>(shape_->bays.size() * shape_->facets.size(), 0.0);
  const double turn = sun.azimuth_rad - faces_rad_;  // the first end is a quarter turn clockwise from the front
  return shares({{level * std::sin(turn), level * std::cos(turn), up}});
}

std::vector<double> LightShares::shares(const std::vector<Ray>& rays) const {
  const std::size_t facets = shape_->facets.size();
  std::vector<double> out(shape_->bays.size() * facets, 0.0);
  const double each = 1.0 / (static_cast<double>(rays.size()) * kPointsAlong * kPointsAcross);
  double bay_end = 0.5 * shape_->length_m;  // the first bay begins at the first end
  for (std::size_t b = 0; b < shape_->bays.size(); ++b) {
    const double length = shape_->bays[b].length_m;
    for (int i = 0; i < kPointsAlong; ++i)
      for (int j = 0; j < kPointsAcross; ++j) {
        const double along = bay_end - length * (i + 0.5) / kPointsAlong;
        const double across = shape_->width_m * ((j + 0.5) / kPointsAcross - 0.5);
        for (const Ray& ray : rays) out[b * facets + static_cast<std::size_t>(exit_facet(along, across, ray))] += each;
      }
    bay_end -= length;
  }
  return out;
}

/// The gable is convex: the plane met first is the one the ray leaves by.
int LightShares::exit_facet(double along, double across, const Ray& ray) const {
  const double half_length = 0.5 * shape_->length_m, half_width = 0.5 * shape_->width_m;
  const double slope = (shape_->ridge_m - shape_->eaves_m) / half_width;
  struct Plane {
    WallSide side;
    double room, speed;  ///< distance left and how fast the ray uses it up
  };
  const std::array<Plane, 6> planes{
      {{WallSide::front, half_width - across, ray.across},
       {WallSide::back, half_width + across, -ray.across},
       {WallSide::first_end, half_length - along, ray.along},
       {WallSide::last_end, half_length + along, -ray.along},
       {WallSide::roof_front, shape_->ridge_m - slope * across, ray.up + slope * ray.across},
       {WallSide::roof_back, shape_->ridge_m + slope * across, ray.up - slope * ray.across}}};
  double nearest = std::numeric_limits<double>::infinity();
  WallSide side = WallSide::roof_front;
  for (const Plane& plane : planes) {
    if (plane.speed <= 0.0 || plane.room / plane.speed >= nearest) continue;
    nearest = plane.room / plane.speed;
    side = plane.side;
  }
  int bay = 0;
  if (side == WallSide::last_end) bay = static_cast<int>(shape_->bays.size()) - 1;
  if (side != WallSide::first_end && side != WallSide::last_end) {
    double end = half_length - shape_->bays.front().length_m;
    const double there = along + nearest * ray.along;
    while (there < end && bay + 1 < static_cast<int>(shape_->bays.size()))
      end -= shape_->bays[static_cast<std::size_t>(++bay)].length_m;
  }
  const int facet = shape_->facet_index(bay, side);
  NOON_ASSERT(facet >= 0);
  return facet;
}

}  // namespace noonhouse
