// SPDX-License-Identifier: Apache-2.0
#include "models/light/sights.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

constexpr int kRings = 20, kSectors = 30;  ///< of a half-space, each of equal cosine-weighted share

/// Directions about a normal, each of equal cosine-weighted share. Each point has its own set, turned by a multiple of
/// the golden ratio of a sector, so that together they fill the gaps.
std::vector<Vector3> half_space(const Vector3& normal, std::size_t point) {
  const double turn = std::fmod(0.5 + 0.6180339887498949 * static_cast<double>(point), 1.0);
  const Vector3 side = std::abs(normal.z) > 0.9 ? Vector3{1.0, 0.0, 0.0} : Vector3{0.0, 0.0, 1.0};
  const Vector3 u0 = side - dot(side, normal) * normal;
  const Vector3 u = (1.0 / std::sqrt(dot(u0, u0))) * u0;
  const Vector3 v{normal.y * u.z - normal.z * u.y, normal.z * u.x - normal.x * u.z, normal.x * u.y - normal.y * u.x};
  std::vector<Vector3> rays;
  for (int ring = 0; ring < kRings; ++ring) {
    const double sine_squared = (ring + 0.5) / kRings;  // equal steps of sin^2 weigh by the cosine
    const double sine = std::sqrt(sine_squared), cosine = std::sqrt(1.0 - sine_squared);
    for (int sector = 0; sector < kSectors; ++sector) {
      const double angle = 2.0 * kPi * (sector + turn + 0.7548776662466927 * ring) / kSectors;
      rays.push_back(cosine * normal + sine * std::cos(angle) * u + sine * std::sin(angle) * v);
    }
  }
  return rays;
}

}  // namespace

Sights look_around(const LightScene& scene, const std::vector<LightSurface::Point>& points, const Vector3& normal) {
  const std::size_t pieces = scene.shell().pieces;
  Sights out{std::vector<double>(scene.surfaces().size()), std::vector<double>(pieces), std::vector<double>(pieces),
             std::vector<double>(pieces)};
  std::vector<LightMeeting> meetings;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double each = points[i].share / (kRings * kSectors);
    for (const Vector3& ray : half_space(normal, i)) {
      scene.follow(points[i].at, ray, meetings);
      for (const LightMeeting& meeting : meetings) out.view[at(meeting.surface)] += each * meeting.share;
      const LightMeeting& last = meetings.back();
      if (last.surface >= static_cast<int>(pieces) || last.share <= 0.0) continue;
      const std::size_t piece = at(last.surface);
      const double passed = scene.has_obstacles() ? scene.past_obstacles(scene.leave(points[i].at, ray).at, ray) : 1.0;
      out.obstacle[piece] += each * last.share * (1.0 - passed);
      (ray.z > 0.0 ? out.sky : out.ground)[piece] += each * last.share * passed;
    }
  }
  return out;
}

Outlook look_out(const LightScene& scene, int piece) {
  const LightSurface& surface = scene.surfaces()[at(piece)];
  const Vector3 out_normal = -1.0 * surface.normal;
  Outlook out;
  for (std::size_t i = 0; i < surface.points.size(); ++i) {
    const double each = surface.points[i].share / (kRings * kSectors);
    for (const Vector3& ray : half_space(out_normal, i)) {
      const double passed = scene.has_obstacles() ? scene.past_obstacles(surface.points[i].at, ray) : 1.0;
      out.obstacle += each * (1.0 - passed);
      (ray.z > 0.0 ? out.sky : out.ground) += each * passed;
    }
  }
  return out;
}

std::vector<double> beam_by_piece(const LightScene& scene, const std::vector<LightSurface::Point>& points,
                                  const Vector3& normal, const Vector3& to_sun) {
  std::vector<double> shares(scene.shell().pieces, 0.0);
  if (to_sun.z <= 0.0 || dot(normal, to_sun) <= 0.0) return shares;
  for (const auto& point : points) {
    const LightExit exit = scene.leave(point.at, to_sun);
    if (exit.passed > 0.0) shares[at(exit.piece)] += point.share * exit.passed * scene.past_obstacles(exit.at, to_sun);
  }
  return shares;
}

std::vector<BeamShare> beam_shares(const LightScene& scene, const Vector3& to_sun) {
  std::vector<BeamShare> out;
  for (std::size_t s = 0; s < scene.surfaces().size(); ++s) {
    const LightSurface& surface = scene.surfaces()[s];
    const std::vector<double> shares = beam_by_piece(scene, surface.points, surface.normal, to_sun);
    for (std::size_t piece = 0; piece < shares.size(); ++piece)
      if (shares[piece] > 0.0) out.push_back({static_cast<int>(s), static_cast<int>(piece), shares[piece]});
  }
  return out;
}

std::vector<double> sunlit_shares(const LightScene& scene, const Vector3& to_sun) {
  std::vector<double> out(scene.shell().pieces, 0.0);
  if (to_sun.z <= 0.0) return out;
  for (std::size_t piece = 0; piece < out.size(); ++piece) {
    const LightSurface& surface = scene.surfaces()[piece];
    if (dot(surface.normal, to_sun) >= 0.0) continue;
    for (const auto& point : surface.points) out[piece] += point.share * scene.past_obstacles(point.at, to_sun);
  }
  return out;
}

Grid close_exchange(const Grid& view, const std::vector<double>& areas_m2) {
  constexpr int kMostSweeps = 2000;
  constexpr double kClosed = 1e-14;
  const std::size_t n = areas_m2.size();
  Grid exchange(n, n);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < n; ++j) exchange(i, j) = 0.5 * (areas_m2[i] * view(i, j) + areas_m2[j] * view(j, i));
  std::vector<double> scale(n, 1.0);
  const auto row_sum = [&](std::size_t i) {
    double sum = 0.0;
    for (std::size_t j = 0; j < n; ++j) sum += exchange(i, j) * scale[j];
    return sum;
  };
  for (int sweep = 0; sweep < kMostSweeps; ++sweep) {
    double worst = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
      const double sum = row_sum(i);
      if (areas_m2[i] <= 0.0 || sum <= 0.0) continue;
      const double wanted = areas_m2[i] / sum;
      worst = std::max(worst, std::abs(wanted / scale[i] - 1.0));
      scale[i] = std::sqrt(scale[i] * wanted);
    }
    if (worst < kClosed) break;
  }
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < n; ++j) exchange(i, j) *= scale[i] * scale[j];
  for (std::size_t i = 0; i < n; ++i)  // what rounding leaves, a surface exchanges with itself: that moves no light
    exchange(i, i) += areas_m2[i] - [&] {
      double sum = 0.0;
      for (std::size_t j = 0; j < n; ++j) sum += exchange(i, j);
      return sum;
    }();
  return exchange;
}

Grid exchange_areas(const LightScene& scene, const std::vector<Sights>& sights) {
  const std::size_t n = scene.surfaces().size();
  NOON_ASSERT(sights.size() == n);
  Grid view(n, n);
  std::vector<double> areas(n);
  for (std::size_t i = 0; i < n; ++i) {
    areas[i] = scene.surfaces()[i].area_m2;
    for (std::size_t j = 0; j < n; ++j) view(i, j) = sights[i].view[j];
  }
  return close_exchange(view, areas);
}

}  // namespace noonhouse
