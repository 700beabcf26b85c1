// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/scenario_spec.hpp"

namespace noonhouse {

/// One plane piece of the cover, belonging to one bay.
struct Facet {
  std::string name;  ///< "front roof of the west bay"
  WallSide side = WallSide::front;
  int bay = 0;
  double area_m2 = 0.0;
  double slope_rad = 0.0;    ///< from level: 0 faces up, pi/2 is a wall
  double azimuth_rad = 0.0;  ///< that it faces, clockwise from north
  double bottom_m = 0.0, top_m = 0.0;
  int segment = -1;  ///< of the house's profile; -1 for an end
  bool roof() const { return side == WallSide::roof_front || side == WallSide::roof_back; }
};

/// One layer of air of one bay.
struct LayerShape {
  double bottom_m = 0.0, top_m = 0.0;
  double volume_m3 = 0.0;
  double top_area_m2 = 0.0;      ///< horizontal section at its top
  double section_area_m2 = 0.0;  ///< vertical section across the house, towards the next bay
  double middle_m() const { return 0.5 * (bottom_m + top_m); }
};

struct BayShape {
  std::string name;
  double length_m = 0.0, floor_m2 = 0.0, volume_m3 = 0.0;
  std::vector<LayerShape> layers;
};

/// A corner of the cross-section: y across from the middle, positive towards the front; z above the floor [m].
struct ShapeCorner {
  double y_m = 0.0, z_m = 0.0;
};

/// Where a bench stands, in the house's own coordinates [m]: x along from the middle, positive towards the first end.
struct BenchShape {
  double x_low_m = 0.0, x_high_m = 0.0, y_low_m = 0.0, y_high_m = 0.0, z_m = 0.0;
  bool overlaps(const BenchShape& other) const;
};

/// A house as planes and layers: one cross-section along its length, bays in order from the first end, layers of equal
/// height from floor to the top. The first end is a quarter turn clockwise from the front.
struct HouseShape {
  double length_m = 0.0, width_m = 0.0, top_m = 0.0, faces_rad = 0.0;
  std::vector<ShapeCorner> profile;  ///< convex, from the front foot over the top to the back foot
  std::vector<BayShape> bays;
  std::vector<Facet> facets;

  /// Plan area of the whole roof [m2], what rain falls on.
  double plan_area_m2() const { return length_m * width_m; }
  /// Index of a bay by its name; the name is known to be right.
  int bay_index(const std::string& name) const;
  /// The layer that holds a height, the top one for anything above.
  int layer_at(double height_m) const;
  /// Index of the facet of a bay on a side, of several in an arch the one that holds a height; -1 where that bay has
  /// none (an end that belongs to another bay).
  int facet_index(int bay, WallSide side, double height_m = 0.0) const;
  /// The whole of a bay's side, of one facet or several: its area and how high it reaches.
  struct Side {
    double area_m2 = 0.0, bottom_m = 0.0, top_m = 0.0;
  };
  Side side_of(int bay, WallSide side) const;
  /// Where a bay begins: x of its end towards the first end [m].
  double bay_begins_m(int bay) const;
  /// Inner width at a height [m], and how far the room reaches there, as y.
  double width_at(double height_m) const {
    const Across a = across_at(height_m);
    return a.front_m - a.back_m;
  }
  struct Across {
    double front_m = 0.0, back_m = 0.0;
  };
  Across across_at(double height_m) const;
};

HouseShape shape_of(const HouseSpec& house);

/// Where the benches stand, in their order. One without a place along its bay stands in the bay's middle; those
/// without a place across are spread evenly from front to back, in their order.
std::vector<BenchShape> bench_shapes(const std::vector<Named<BenchSpec>>& benches, const HouseShape& shape);

/// How much of its own height an opening rises: all of it in a wall, along the slope in a roof.
double opening_rise_m(const OpeningSpec& opening, const Facet& facet);

/// Share of [bottom, top] that lies in a layer; a level plane counts wholly to its layer.
double overlap_share(double bottom_m, double top_m, const LayerShape& layer);

/// Share of a facet that borders on layer i of its bay; a level roof borders on the top layer.
double facet_share_in_layer(const Facet& facet, const std::vector<LayerShape>& layers, std::size_t i);

}  // namespace noonhouse
