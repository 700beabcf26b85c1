// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "models/properties/sun.hpp"
#include "tools/scenario/house_shape.hpp"

namespace noonhouse {

/// Through which facet light reaches the floor of each bay. From points evenly over the floor a ray goes to the sun,
/// and cosine-weighted rays go to the whole sky; each leaves the gable through exactly one facet, so a bay's shares add
/// up to one, and the floor can never get more than the open ground outside. Obstacles and benches cast no shadow here.
class LightShares {
 public:
  LightShares(const HouseShape& shape, double faces_rad);

  /// Shares of the beam, laid out [bay][facet]; all zero while the sun is down.
  std::vector<double> beam(const SunPosition& sun) const;
  /// Shares of an even sky's light, laid out [bay][facet].
  const std::vector<double>& diffuse() const { return diffuse_; }

 private:
  struct Ray {
    double along = 0.0, across = 0.0, up = 0.0;  ///< direction: out of the first end, out of the front, upward
  };
  std::vector<double> shares(const std::vector<Ray>& rays) const;
  int exit_facet(double along_m, double across_m, const Ray& ray) const;

  const HouseShape* shape_;
  double faces_rad_;
  std::vector<double> diffuse_;
};

}  // namespace noonhouse
