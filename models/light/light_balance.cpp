// SPDX-License-Identifier: Apache-2.0
#include "models/light/light_balance.hpp"

#include <Eigen/Dense>
#include <algorithm>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

/// A_r V_rg scaled so that each column sums to one; where nothing is seen, as the piece sees the room.
Grid shares_by_sight(const LightGeometry& g, std::vector<double> Sights::*seen) {
  const std::size_t n = g.scene.surfaces().size(), pieces = g.scene.shell().pieces;
  Grid out(n, pieces);
  for (std::size_t piece = 0; piece < pieces; ++piece) {
    double sum = 0.0;
    for (std::size_t r = 0; r < n; ++r) {
      out(r, piece) = g.scene.surfaces()[r].area_m2 * (g.sights[r].*seen)[piece];
      sum += out(r, piece);
    }
    for (std::size_t r = 0; r < n; ++r)
      out(r, piece) = sum > 0.0 ? out(r, piece) / sum : g.exchange_m2(r, piece) / g.scene.surfaces()[piece].area_m2;
  }
  return out;
}

}  // namespace

LightGeometry::LightGeometry(LightScene scene_made) : scene(std::move(scene_made)) {
  for (const LightSurface& surface : scene.surfaces())
    sights.push_back(look_around(scene, surface.points, surface.normal));
  for (std::size_t piece = 0; piece < scene.shell().pieces; ++piece)
    outlooks.push_back(look_out(scene, static_cast<int>(piece)));
  exchange_m2 = exchange_areas(scene, sights);
}

LightBalance::LightBalance(const LightGeometry& geometry, std::vector<PieceOptics> pieces,
                           const std::vector<double>& reflects)
    : geometry_(&geometry),
      pieces_(std::move(pieces)),
      reflects_(reflects),
      sky_(shares_by_sight(geometry, &Sights::sky)),
      ground_(shares_by_sight(geometry, &Sights::ground)),
      obstacle_(shares_by_sight(geometry, &Sights::obstacle)) {
  const auto n = static_cast<Eigen::Index>(geometry.scene.surfaces().size());
  NOON_ASSERT(pieces_.size() == geometry.scene.shell().pieces && reflects_.size() == at(static_cast<int>(n)));
  for (std::size_t piece = 0; piece < pieces_.size(); ++piece)
    reflects_[piece] = pieces_[piece].diffuse.reflectance_back;
  Eigen::MatrixXd system = Eigen::MatrixXd::Identity(n, n);
  for (Eigen::Index i = 0; i < n; ++i)
    for (Eigen::Index j = 0; j < n; ++j) {
      const auto from = static_cast<std::size_t>(j), to = static_cast<std::size_t>(i);
      const double area = geometry.scene.surfaces()[from].area_m2;
      if (area > 0.0) system(i, j) -= reflects_[from] * geometry.exchange_m2(from, to) / area;
    }
  const Eigen::MatrixXd spread = system.partialPivLu().inverse();
  spread_ = Grid(at(static_cast<int>(n)), at(static_cast<int>(n)));
  for (Eigen::Index i = 0; i < n; ++i)
    for (Eigen::Index j = 0; j < n; ++j)
      spread_(static_cast<std::size_t>(i), static_cast<std::size_t>(j)) = spread(i, j);
}

/// What a piece lets through scattered leaves its inner face evenly over the half-space.
void LightBalance::scatter(std::size_t piece, double watts, std::vector<double>& first) const {
  if (watts <= 0.0) return;
  const double area = geometry_->scene.surfaces()[piece].area_m2;
  for (std::size_t r = 0; r < first.size(); ++r) first[r] += watts * geometry_->exchange_m2(piece, r) / area;
}

void LightBalance::add_diffuse(const OutdoorLight& light, LitHouse& out, std::vector<double>& first) const {
  for (std::size_t piece = 0; piece < pieces_.size(); ++piece) {
    const double area = geometry_->scene.surfaces()[piece].area_m2;
    const Outlook& outlook = geometry_->outlooks[piece];
    const double sky = area * outlook.sky * light.sky_w_m2, ground = area * outlook.ground * light.ground_w_m2,
                 obstacle = area * outlook.obstacle * light.obstacle_w_m2;
    out.diffuse_w[piece] = sky + ground + obstacle;
    const double passes = pieces_[piece].diffuse.transmittance, straight = passes * (1.0 - pieces_[piece].scatters);
    scatter(piece, passes * pieces_[piece].scatters * out.diffuse_w[piece], first);
    if (straight * out.diffuse_w[piece] <= 0.0) continue;
    for (std::size_t r = 0; r < first.size(); ++r)
      first[r] += straight * (sky * sky_(r, piece) + ground * ground_(r, piece) + obstacle * obstacle_(r, piece));
  }
}

void LightBalance::add_beam(const OutdoorLight& light, const std::vector<PieceBeam>& beams,
                            const std::vector<BeamShare>& shares, LitHouse& out, std::vector<double>& first) const {
  const auto& surfaces = geometry_->scene.surfaces();
  const auto projected = [&](const BeamShare& s) {
    const LightSurface& surface = surfaces[at(s.surface)];
    return surface.area_m2 * dot(surface.normal, light.to_sun) * s.share;
  };
  std::vector<double> seen(pieces_.size(), 0.0);
  for (const BeamShare& s : shares) seen[at(s.piece)] += projected(s);
  std::vector<double> straight(pieces_.size(), 0.0);
  for (std::size_t piece = 0; piece < pieces_.size(); ++piece) {
    const double passed = out.beam_w[piece] * beams[piece].transmittance;
    const double scattered = seen[piece] > 0.0 ? beams[piece].scatters : 1.0;
    scatter(piece, passed * scattered, first);
    straight[piece] = passed * (1.0 - scattered);
  }
  for (const BeamShare& s : shares) {
    const double watts = straight[at(s.piece)] * projected(s) / seen[at(s.piece)];
    first[at(s.surface)] += watts;
    out.beam_arriving_w[at(s.surface)] += watts;
  }
}

LitHouse LightBalance::lit(const OutdoorLight& light, const std::vector<PieceBeam>& beams,
                           const std::vector<BeamShare>& shares, const std::vector<double>& sunlit) const {
  const auto& surfaces = geometry_->scene.surfaces();
  const std::size_t n = surfaces.size();
  LitHouse out{std::vector<double>(pieces_.size()), std::vector<double>(pieces_.size()), std::vector<double>(n),
               std::vector<double>(n)};
  std::vector<double> first(n, 0.0);
  add_diffuse(light, out, first);
  if (light.beam_w_m2 > 0.0) {
    for (std::size_t piece = 0; piece < pieces_.size(); ++piece)
      out.beam_w[piece] = surfaces[piece].area_m2 * light.beam_w_m2 * sunlit[piece] *
                          std::max(0.0, -dot(surfaces[piece].normal, light.to_sun));
    add_beam(light, beams, shares, out, first);
  }
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < n; ++j) out.arriving_w[i] += spread_(i, j) * first[j];
  return out;
}

std::vector<double> LightBalance::sent_w_m2(const LitHouse& lit, const std::vector<PieceBeam>& beams) const {
  const auto& surfaces = geometry_->scene.surfaces();
  std::vector<double> out(surfaces.size(), 0.0);
  for (std::size_t s = 0; s < out.size(); ++s) {
    if (surfaces[s].area_m2 <= 0.0) continue;
    double watts = reflects_[s] * lit.arriving_w[s];
    if (s < pieces_.size())
      watts += pieces_[s].scatters *
               (lit.beam_w[s] * beams[s].transmittance + lit.diffuse_w[s] * pieces_[s].diffuse.transmittance);
    out[s] = watts / surfaces[s].area_m2;
  }
  return out;
}

}  // namespace noonhouse
