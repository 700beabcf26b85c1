// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <variant>
#include <vector>

/// The house as light meets it: a closed convex shell with shelves inside and obstacles outside.
///
/// House coordinates [m]: x along the house, positive towards the first end; y across, positive towards the front; z up
/// from the floor. The origin is the middle of the floor.
namespace noonhouse {

/// A point [m], or a direction of unit length.
struct Vector3 {
  double x = 0.0, y = 0.0, z = 0.0;
};
inline Vector3 operator+(const Vector3& a, const Vector3& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Vector3 operator-(const Vector3& a, const Vector3& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Vector3 operator*(double s, const Vector3& a) { return {s * a.x, s * a.y, s * a.z}; }
inline double dot(const Vector3& a, const Vector3& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

/// A corner of the cross-section [m].
struct ProfileCorner {
  double y = 0.0, z = 0.0;
};

/// A convex cross-section drawn out along the house and divided into bays. Pieces are numbered by whoever made it.
struct LightShell {
  std::vector<ProfileCorner> profile;              ///< from the front foot over the top to the back foot
  std::vector<double> bay_ends;                    ///< x of the bays' borders, falling, one more than there are bays
  std::vector<std::vector<int>> piece_of_segment;  ///< [bay][segment of the profile]
  int first_end_piece = -1, last_end_piece = -1;   ///< the ends of the house
  std::size_t pieces = 0;
  std::size_t bays() const { return bay_ends.size() - 1; }
  double top_m() const;
};

/// A level rectangle inside that stops light but for a share that passes between its slats. Its two faces have the area
/// of the slats alone.
struct LightShelf {
  double x_low = 0.0, x_high = 0.0, y_low = 0.0, y_high = 0.0, z = 0.0;
  double passes = 0.0;
  double area_m2() const { return (x_high - x_low) * (y_high - y_low); }
};

/// An upright box outside, turned about the vertical: a building, a wall, a fence.
struct LightBox {
  double x = 0.0, y = 0.0;  ///< its middle
  double half_length = 0.0, half_width = 0.0;
  double turn_rad = 0.0;           ///< of its length from the x axis towards y
  double bottom = 0.0, top = 0.0;  ///< above the house's floor
  double passes = 0.0;             ///< share of light that goes through
};

/// The crown of a tree: an upright ellipsoid of revolution.
struct LightCrown {
  double x = 0.0, y = 0.0, radius = 0.0, bottom = 0.0, top = 0.0;
  double passes = 0.0;
};
using LightObstacle = std::variant<LightBox, LightCrown>;

/// A plane inside that takes part in the exchange of light. Pieces of the shell come first, in their numbering, then
/// for each bay its open floor, then for each shelf its top, its underside and the floor beneath it.
struct LightSurface {
  /// A point a hair off the surface that stands for a share of its area.
  struct Point {
    Vector3 at;
    double share = 0.0;
  };
  double area_m2 = 0.0;       ///< zero for a floor that shelves leave nothing of
  Vector3 normal;             ///< into the room
  std::vector<Point> points;  ///< their shares add up to one; none where the area is zero
};

/// A share of a ray's light and the surface that it meets.
struct LightMeeting {
  int surface = -1;
  double share = 0.0;
};

/// How a ray leaves the house.
struct LightExit {
  int piece = -1;
  double passed = 0.0;  ///< share left by the shelves on its way
  Vector3 at;
};

class LightScene {
 public:
  LightScene(LightShell shell, std::vector<LightShelf> shelves, std::vector<LightObstacle> obstacles);

  const std::vector<LightSurface>& surfaces() const { return surfaces_; }
  const LightShell& shell() const { return shell_; }
  const std::vector<LightShelf>& shelves() const { return shelves_; }
  bool has_obstacles() const { return !obstacles_.empty(); }
  int floor_surface(int bay) const;
  int shelf_top(int shelf) const;
  int shelf_underside(int shelf) const;
  int floor_beneath(int shelf) const;

  /// Where a ray from a point inside leaves the shell, and what the shelves leave of it.
  LightExit leave(const Vector3& from, const Vector3& direction) const;
  /// Share of light that comes past the obstacles along this direction to a point outside, 0 to 1.
  double past_obstacles(const Vector3& from, const Vector3& direction) const;
  /// The surfaces a ray from a point inside meets; shares add up to one. Slatted shelves let a share of it go on.
  /// The last entry is where it ends: a floor or a piece of the shell.
  void follow(const Vector3& from, const Vector3& direction, std::vector<LightMeeting>& meetings) const;

 private:
  int bay_at(double x) const;
  int floor_at(double x, double y) const;
  void add_segment_pieces();
  void add_end_pieces();
  void add_inside_surfaces();
  void share_out_floors();

  LightShell shell_;
  std::vector<LightShelf> shelves_;
  std::vector<LightObstacle> obstacles_;
  struct Plane {
    Vector3 out;          ///< outward normal
    double offset = 0.0;  ///< out . point of it
    int segment = -1;     ///< of the profile; -1 first end, -2 last end
  };
  std::vector<Plane> planes_;
  std::vector<LightSurface> surfaces_;
};

}  // namespace noonhouse
