// SPDX-License-Identifier: Apache-2.0
#include "models/light/light_scene.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

constexpr int kGrid = 6;            ///< points along each side of a surface
constexpr int kEndGrid = 9;         ///< of the box around an end, of which those within the end count
constexpr double kHair = 1e-6;      ///< how far points stand off their surface [m]
constexpr double kFloorStep = 0.3;  ///< between points of the floor at most [m]

/// The stretch of a ray, as distances along it, between two parallel planes: |q + t d| <= half.
struct Stretch {
  double from = -kInfinity, to = kInfinity;
  void within(double q, double d, double half) {
    if (std::abs(d) < 1e-12) {
      if (std::abs(q) > half) to = -kInfinity;
      return;
    }
    const double a = (-half - q) / d, b = (half - q) / d;
    from = std::max(from, std::min(a, b));
    to = std::min(to, std::max(a, b));
  }
  bool met() const { return to > std::max(from, 0.0); }
};

/// How far a ray goes until it ends on level ground at the height of the floor [m].
double way_to_ground(const Vector3& from, const Vector3& direction) {
  return direction.z < 0.0 ? std::max(0.0, from.z) / -direction.z : kInfinity;
}

double passes(const LightBox& box, const Vector3& from, const Vector3& direction) {
  const double c = std::cos(box.turn_rad), s = std::sin(box.turn_rad), x = from.x - box.x, y = from.y - box.y;
  Stretch stretch;
  stretch.within(c * x + s * y, c * direction.x + s * direction.y, box.half_length);
  stretch.within(c * y - s * x, c * direction.y - s * direction.x, box.half_width);
  stretch.within(from.z - 0.5 * (box.bottom + box.top), direction.z, 0.5 * (box.top - box.bottom));
  stretch.to = std::min(stretch.to, way_to_ground(from, direction));
  return stretch.met() ? box.passes : 1.0;
}

double passes(const LightCrown& crown, const Vector3& from, const Vector3& direction) {
  const double half = 0.5 * (crown.top - crown.bottom);
  const Vector3 q{(from.x - crown.x) / crown.radius, (from.y - crown.y) / crown.radius,
                  (from.z - 0.5 * (crown.top + crown.bottom)) / half};
  const Vector3 d{direction.x / crown.radius, direction.y / crown.radius, direction.z / half};
  const double a = dot(d, d), b = dot(q, d), c = dot(q, q) - 1.0, root = b * b - a * c;
  const bool met =
      root > 0.0 && -b + std::sqrt(root) > 0.0 && (-b - std::sqrt(root)) / a < way_to_ground(from, direction);
  return met ? crown.passes : 1.0;
}

bool holds(const LightShelf& shelf, double x, double y) {
  return x >= shelf.x_low && x <= shelf.x_high && y >= shelf.y_low && y <= shelf.y_high;
}

}  // namespace

double LightShell::top_m() const {
  double top = 0.0;
  for (const ProfileCorner& corner : profile) top = std::max(top, corner.z);
  return top;
}

LightScene::LightScene(LightShell shell, std::vector<LightShelf> shelves, std::vector<LightObstacle> obstacles)
    : shell_(std::move(shell)), shelves_(std::move(shelves)), obstacles_(std::move(obstacles)) {
  NOON_ASSERT(shell_.profile.size() >= 3 && shell_.bay_ends.size() >= 2);
  for (std::size_t k = 0; k + 1 < shell_.profile.size(); ++k) {
    const ProfileCorner &a = shell_.profile[k], &b = shell_.profile[k + 1];
    const double length = std::hypot(b.y - a.y, b.z - a.z);
    NOON_ASSERT(length > 0.0);
    const Vector3 out{0.0, (b.z - a.z) / length, (a.y - b.y) / length};
    planes_.push_back({out, out.y * a.y + out.z * a.z, static_cast<int>(k)});
  }
  planes_.push_back({{1.0, 0.0, 0.0}, shell_.bay_ends.front(), -1});
  planes_.push_back({{-1.0, 0.0, 0.0}, -shell_.bay_ends.back(), -2});
  add_segment_pieces();
  add_end_pieces();
  add_inside_surfaces();
  share_out_floors();
}

void LightScene::add_segment_pieces() {
  surfaces_.resize(shell_.pieces);
  for (std::size_t bay = 0; bay < shell_.bays(); ++bay)
    for (std::size_t k = 0; k + 1 < shell_.profile.size(); ++k) {
      const ProfileCorner &a = shell_.profile[k], &b = shell_.profile[k + 1];
      const double x_high = shell_.bay_ends[bay], x_low = shell_.bay_ends[bay + 1];
      LightSurface& surface = surfaces_[at(shell_.piece_of_segment[bay][k])];
      surface.area_m2 = (x_high - x_low) * std::hypot(b.y - a.y, b.z - a.z);
      surface.normal = -1.0 * planes_[k].out;
      for (int i = 0; i < kGrid; ++i)
        for (int j = 0; j < kGrid; ++j) {
          const double u = (j + 0.5) / kGrid;
          const Vector3 on{x_low + (x_high - x_low) * (i + 0.5) / kGrid, a.y + u * (b.y - a.y), a.z + u * (b.z - a.z)};
          surface.points.push_back({on + kHair * surface.normal, 1.0 / (kGrid * kGrid)});
        }
    }
}

void LightScene::add_end_pieces() {
  double area = 0.0, y_low = 0.0, y_high = 0.0;
  for (std::size_t k = 0; k + 1 < shell_.profile.size(); ++k) {
    const ProfileCorner &a = shell_.profile[k], &b = shell_.profile[k + 1];
    area += 0.5 * (a.y - b.y) * (a.z + b.z);
    y_low = std::min({y_low, a.y, b.y});
    y_high = std::max({y_high, a.y, b.y});
  }
  const double top = shell_.top_m();
  for (const bool first : {true, false}) {
    LightSurface& surface = surfaces_[at(first ? shell_.first_end_piece : shell_.last_end_piece)];
    surface.area_m2 = area;
    surface.normal = {first ? -1.0 : 1.0, 0.0, 0.0};
    for (int i = 0; i < kEndGrid; ++i)
      for (int j = 0; j < kEndGrid; ++j) {
        const Vector3 on{first ? shell_.bay_ends.front() - kHair : shell_.bay_ends.back() + kHair,
                         y_low + (y_high - y_low) * (i + 0.5) / kEndGrid, top * (j + 0.5) / kEndGrid};
        if (std::all_of(planes_.begin(), planes_.end(), [&](const Plane& p) { return dot(p.out, on) < p.offset; }))
          surface.points.push_back({on, 0.0});
      }
    for (auto& point : surface.points) point.share = 1.0 / static_cast<double>(surface.points.size());
  }
}

/// Floors of the bays, then top, underside and floor beneath of each shelf; the floors' areas come later.
void LightScene::add_inside_surfaces() {
  const Vector3 up{0.0, 0.0, 1.0}, down{0.0, 0.0, -1.0};
  for (std::size_t bay = 0; bay < shell_.bays(); ++bay) surfaces_.push_back({0.0, up, {}});
  for (const LightShelf& shelf : shelves_) {
    const double solid = (1.0 - shelf.passes) * shelf.area_m2();  // what meets light; the gaps are no surface
    LightSurface top{solid, up, {}}, underside{solid, down, {}};
    for (int i = 0; i < kGrid; ++i)
      for (int j = 0; j < kGrid; ++j) {
        const double x = shelf.x_low + (shelf.x_high - shelf.x_low) * (i + 0.5) / kGrid;
        const double y = shelf.y_low + (shelf.y_high - shelf.y_low) * (j + 0.5) / kGrid;
        top.points.push_back({{x, y, shelf.z + kHair}, 1.0 / (kGrid * kGrid)});
        underside.points.push_back({{x, y, shelf.z - kHair}, 1.0 / (kGrid * kGrid)});
      }
    surfaces_.push_back(std::move(top));
    surfaces_.push_back(std::move(underside));
    surfaces_.push_back({0.0, up, {}});
  }
}

/// Cuts the floor along every shelf's edges, so that each cell belongs to one floor wholly: areas are exact.
void LightScene::share_out_floors() {
  std::vector<double> xs = shell_.bay_ends, ys{shell_.profile.front().y, shell_.profile.back().y};
  for (const LightShelf& shelf : shelves_) {
    xs.insert(xs.end(), {shelf.x_low, shelf.x_high});
    ys.insert(ys.end(), {shelf.y_low, shelf.y_high});
  }
  std::sort(xs.begin(), xs.end());
  std::sort(ys.begin(), ys.end());
  for (std::size_t i = 0; i + 1 < xs.size(); ++i)
    for (std::size_t j = 0; j + 1 < ys.size(); ++j) {
      const double dx = xs[i + 1] - xs[i], dy = ys[j + 1] - ys[j];
      if (dx * dy <= 0.0) continue;
      LightSurface& floor = surfaces_[at(floor_at(xs[i] + 0.5 * dx, ys[j] + 0.5 * dy))];
      const int along = std::max(1, static_cast<int>(std::ceil(dx / kFloorStep)));
      const int across = std::max(1, static_cast<int>(std::ceil(dy / kFloorStep)));
      floor.area_m2 += dx * dy;
      for (int k = 0; k < along; ++k)
        for (int l = 0; l < across; ++l)
          floor.points.push_back(
              {{xs[i] + dx * (k + 0.5) / along, ys[j] + dy * (l + 0.5) / across, kHair}, dx * dy / (along * across)});
    }
  for (LightSurface& surface : surfaces_)
    if (surface.normal.z > 0.5 && surface.area_m2 > 0.0 && surface.points.front().at.z <= kHair)
      for (auto& point : surface.points) point.share /= surface.area_m2;
}

int LightScene::floor_surface(int bay) const { return static_cast<int>(shell_.pieces) + bay; }
int LightScene::shelf_top(int shelf) const { return static_cast<int>(shell_.pieces + shell_.bays()) + 3 * shelf; }
int LightScene::shelf_underside(int shelf) const { return shelf_top(shelf) + 1; }
int LightScene::floor_beneath(int shelf) const { return shelf_top(shelf) + 2; }

int LightScene::bay_at(double x) const {
  int bay = 0;
  while (bay + 1 < static_cast<int>(shell_.bays()) && x < shell_.bay_ends[at(bay) + 1]) ++bay;
  return bay;
}

/// The floor beneath the lowest shelf that stands over a point, or the bay's open floor.
int LightScene::floor_at(double x, double y) const {
  int lowest = -1;
  for (std::size_t s = 0; s < shelves_.size(); ++s)
    if (holds(shelves_[s], x, y) && (lowest < 0 || shelves_[s].z < shelves_[at(lowest)].z))
      lowest = static_cast<int>(s);
  return lowest >= 0 ? floor_beneath(lowest) : floor_surface(bay_at(x));
}

LightExit LightScene::leave(const Vector3& from, const Vector3& direction) const {
  double way = kInfinity;
  const Plane* last = nullptr;
  for (const Plane& plane : planes_) {
    const double speed = dot(plane.out, direction);
    if (speed <= 1e-12) continue;
    const double here = (plane.offset - dot(plane.out, from)) / speed;
    if (here >= way) continue;
    way = here;
    last = &plane;
  }
  NOON_ASSERT(last != nullptr);  // the floor is no plane here: ask only for rays that leave by the shell
  LightExit exit{-1, 1.0, from + way * direction};
  if (last->segment < 0) {
    exit.piece = last->segment == -1 ? shell_.first_end_piece : shell_.last_end_piece;
  } else {
    exit.piece = shell_.piece_of_segment[at(bay_at(exit.at.x))][at(last->segment)];
  }
  for (const LightShelf& shelf : shelves_) {
    const double rise = shelf.z - from.z;
    if (rise * direction.z <= 0.0 || rise / direction.z >= way) continue;
    const double t = rise / direction.z;
    if (holds(shelf, from.x + t * direction.x, from.y + t * direction.y)) exit.passed *= shelf.passes;
  }
  return exit;
}

double LightScene::past_obstacles(const Vector3& from, const Vector3& direction) const {
  double passed = 1.0;
  for (const LightObstacle& obstacle : obstacles_)
    passed *= std::visit([&](const auto& one) { return passes(one, from, direction); }, obstacle);
  return passed;
}

void LightScene::follow(const Vector3& from, const Vector3& direction, std::vector<LightMeeting>& meetings) const {
  meetings.clear();
  const double to_floor = direction.z < 0.0 ? from.z / -direction.z : kInfinity;
  struct Crossing {
    double way;
    int shelf;
  };
  std::vector<Crossing> crossings;
  for (std::size_t s = 0; s < shelves_.size(); ++s) {
    const double rise = shelves_[s].z - from.z;
    if (rise * direction.z <= 0.0) continue;
    const double way = rise / direction.z;
    if (holds(shelves_[s], from.x + way * direction.x, from.y + way * direction.y))
      crossings.push_back({way, static_cast<int>(s)});
  }
  std::sort(crossings.begin(), crossings.end(), [](const auto& a, const auto& b) { return a.way < b.way; });
  double way_out = kInfinity;
  for (const Plane& plane : planes_) {
    const double speed = dot(plane.out, direction);
    if (speed > 1e-12) way_out = std::min(way_out, (plane.offset - dot(plane.out, from)) / speed);
  }
  double left = 1.0;
  for (const Crossing& crossing : crossings) {
    if (crossing.way >= std::min(way_out, to_floor)) break;
    const double passed = shelves_[at(crossing.shelf)].passes;
    const int side = direction.z < 0.0 ? shelf_top(crossing.shelf) : shelf_underside(crossing.shelf);
    meetings.push_back({side, left * (1.0 - passed)});
    left *= passed;
  }
  if (to_floor < way_out) {
    meetings.push_back({floor_at(from.x + to_floor * direction.x, from.y + to_floor * direction.y), left});
  } else {
    meetings.push_back({leave(from, direction).piece, left});
  }
}

}  // namespace noonhouse
