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

/// A gable house as planes and layers: ridge along its length, bays in order along the ridge, layers of equal
/// height from floor to ridge. The first end is a quarter turn clockwise from the front.
struct HouseShape {
  double length_m = 0.0, width_m = 0.0, eaves_m = 0.0, ridge_m = 0.0;
  std::vector<BayShape> bays;
  std::vector<Facet> facets;

  /// Plan area of the whole roof [m2], what rain falls on.
  double plan_area_m2() const { return length_m * width_m; }
  /// Index of a bay by its name; the name is known to be right.
  int bay_index(const std::string& name) const;
  /// The layer that holds a height, the top one for anything above.
  int layer_at(double height_m) const;
  /// Index of the facet of a bay on a side; -1 where that bay has none (an end that belongs to another bay).
  int facet_index(int bay, WallSide side) const;
};

HouseShape shape_of(const HouseSpec& house);

/// How much of its own height an opening rises: all of it in a wall, along the slope in a roof.
double opening_rise_m(const OpeningSpec& opening, const Facet& facet);

/// Share of [bottom, top] that lies in a layer; a level plane counts wholly to its layer.
double overlap_share(double bottom_m, double top_m, const LayerShape& layer);

}  // namespace noonhouse
