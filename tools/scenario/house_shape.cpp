// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/house_shape.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr double kPi = std::numbers::pi;

/// Inner width at a height [m].
double width_at(const HouseSpec& h, double z) {
  return z <= h.eaves_m ? h.width_m : h.width_m * (h.ridge_m - z) / (h.ridge_m - h.eaves_m);
}

/// Area of the cross-section between two heights [m2]: exact for the gable's straight lines.
double section_area(const HouseSpec& h, double low, double high) {
  const double below = std::clamp(h.eaves_m, low, high);
  return h.width_m * (below - low) + 0.5 * (width_at(h, below) + width_at(h, high)) * (high - below);
}

BayShape bay_shape(const HouseSpec& h, const Named<BaySpec>& bay) {
  BayShape out;
  out.name = bay.name;
  out.length_m = h.length_m * bay.value.share;
  out.floor_m2 = out.length_m * h.width_m;
  for (int i = 0; i < h.layers; ++i) {
    LayerShape layer;
    layer.bottom_m = h.ridge_m * i / h.layers;
    layer.top_m = h.ridge_m * (i + 1) / h.layers;
    layer.section_area_m2 = section_area(h, layer.bottom_m, layer.top_m);
    layer.volume_m3 = layer.section_area_m2 * out.length_m;
    layer.top_area_m2 = width_at(h, layer.top_m) * out.length_m;
    out.volume_m3 += layer.volume_m3;
    out.layers.push_back(layer);
  }
  return out;
}

void add_bay_facets(const HouseSpec& h, HouseShape& shape, int bay) {
  const BayShape& b = shape.bays[static_cast<std::size_t>(bay)];
  const double rise = h.ridge_m - h.eaves_m, run = 0.5 * h.width_m;
  const double roof_slope = std::atan2(rise, run), roof_width = std::hypot(rise, run);
  const auto turned = [&](double quarter_turns) {
    return std::fmod(h.faces_rad + quarter_turns * kPi / 2.0, 2.0 * kPi);
  };
  const std::string of = " of the " + b.name + " bay";
  const double wall = b.length_m * h.eaves_m, roof = b.length_m * roof_width;
  const double end = h.width_m * h.eaves_m + 0.5 * h.width_m * rise;
  shape.facets.push_back({"front wall" + of, WallSide::front, bay, wall, kPi / 2, turned(0), 0, h.eaves_m});
  shape.facets.push_back({"back wall" + of, WallSide::back, bay, wall, kPi / 2, turned(2), 0, h.eaves_m});
  shape.facets.push_back(
      {"front roof" + of, WallSide::roof_front, bay, roof, roof_slope, turned(0), h.eaves_m, h.ridge_m});
  shape.facets.push_back(
      {"back roof" + of, WallSide::roof_back, bay, roof, roof_slope, turned(2), h.eaves_m, h.ridge_m});
  if (bay == 0)
    shape.facets.push_back({"first end" + of, WallSide::first_end, bay, end, kPi / 2, turned(1), 0, h.ridge_m});
  if (bay + 1 == static_cast<int>(shape.bays.size()))
    shape.facets.push_back({"last end" + of, WallSide::last_end, bay, end, kPi / 2, turned(3), 0, h.ridge_m});
}

}  // namespace

HouseShape shape_of(const HouseSpec& house) {
  HouseShape shape{house.length_m, house.width_m, house.eaves_m, house.ridge_m, {}, {}};
  for (const auto& bay : house.bays) shape.bays.push_back(bay_shape(house, bay));
  for (int bay = 0; bay < static_cast<int>(shape.bays.size()); ++bay) add_bay_facets(house, shape, bay);
  return shape;
}

int HouseShape::bay_index(const std::string& name) const {
  const auto at = std::find_if(bays.begin(), bays.end(), [&](const BayShape& b) { return b.name == name; });
  NOON_ASSERT(at != bays.end());
  return static_cast<int>(at - bays.begin());
}

int HouseShape::layer_at(double height_m) const {
  const auto& layers = bays.front().layers;
  for (std::size_t i = 0; i < layers.size(); ++i)
    if (height_m < layers[i].top_m) return static_cast<int>(i);
  return static_cast<int>(layers.size()) - 1;
}

int HouseShape::facet_index(int bay, WallSide side) const {
  for (std::size_t i = 0; i < facets.size(); ++i)
    if (facets[i].bay == bay && facets[i].side == side) return static_cast<int>(i);
  return -1;
}

double opening_rise_m(const OpeningSpec& opening, const Facet& facet) {
  return opening.height_m * std::sin(facet.slope_rad);
}

double overlap_share(double bottom_m, double top_m, const LayerShape& layer) {
  const double shared = std::min(top_m, layer.top_m) - std::max(bottom_m, layer.bottom_m);
  return top_m > bottom_m ? std::max(0.0, shared) / (top_m - bottom_m) : 0.0;
}

}  // namespace noonhouse
