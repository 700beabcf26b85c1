// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/house_shape.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

using Corners = std::vector<ShapeCorner>;

/// Front foot, front eaves, the roof's corners, back eaves, back foot, without repeats.
Corners profile_of(const HouseSpec& h) {
  const double half = 0.5 * h.width_m;
  Corners out{{half, 0.0}};
  switch (h.form) {
    case HouseForm::gable:
      out.insert(out.end(), {{half, h.eaves_m}, {0.0, h.ridge_m}, {-half, h.eaves_m}});
      break;
    case HouseForm::lean_to:
      out.insert(out.end(), {{half, h.eaves_m}, {-half, h.ridge_m}});
      break;
    case HouseForm::flat_roof:
      out.insert(out.end(), {{half, h.eaves_m}, {-half, h.eaves_m}});
      break;
    case HouseForm::hoop: {
      const int parts = 2 * h.arch_parts;
      for (int i = h.eaves_m > 0.0 ? 0 : 1; i <= (h.eaves_m > 0.0 ? parts : parts - 1); ++i) {
        const double angle = kPi * i / parts;
        out.push_back({half * std::cos(angle), h.eaves_m + (h.ridge_m - h.eaves_m) * std::sin(angle)});
      }
      break;
    }
  }
  out.push_back({-half, 0.0});
  return out;
}

/// Which side of the house a segment of the profile belongs to.
WallSide side_of_segment(const ShapeCorner& a, const ShapeCorner& b) {
  const double middle = 0.5 * (a.y_m + b.y_m);
  if (std::abs(a.y_m - b.y_m) < 1e-9) return middle > 0.0 ? WallSide::front : WallSide::back;
  return middle > -1e-9 ? WallSide::roof_front : WallSide::roof_back;
}

/// Area of the cross-section between two heights [m2]: exact, as the width is a straight line between corners.
double section_area(const HouseShape& h, double low, double high) {
  std::vector<double> cuts{low, high};
  for (const ShapeCorner& corner : h.profile)
    if (corner.z_m > low && corner.z_m < high) cuts.push_back(corner.z_m);
  std::sort(cuts.begin(), cuts.end());
  double area = 0.0;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    // Just within the stretch: a flat roof ends at its full width.
    const double hair = 1e-9 * (cuts[i + 1] - cuts[i]);
    area += 0.5 * (h.width_at(cuts[i] + hair) + h.width_at(cuts[i + 1] - hair)) * (cuts[i + 1] - cuts[i]);
  }
  return area;
}

BayShape bay_shape(const HouseSpec& h, const HouseShape& shape, const Named<BaySpec>& bay) {
  BayShape out;
  out.name = bay.name;
  out.length_m = h.length_m * bay.value.share;
  out.floor_m2 = out.length_m * h.width_m;
  for (int i = 0; i < h.layers; ++i) {
    LayerShape layer;
    layer.bottom_m = shape.top_m * i / h.layers;
    layer.top_m = shape.top_m * (i + 1) / h.layers;
    layer.section_area_m2 = section_area(shape, layer.bottom_m, layer.top_m);
    layer.volume_m3 = layer.section_area_m2 * out.length_m;
    layer.top_area_m2 = shape.width_at(layer.top_m) * out.length_m;
    out.volume_m3 += layer.volume_m3;
    out.layers.push_back(layer);
  }
  return out;
}

const char* side_name(WallSide side) {
  switch (side) {
    case WallSide::front:
      return "front wall";
    case WallSide::back:
      return "back wall";
    case WallSide::first_end:
      return "first end";
    case WallSide::last_end:
      return "last end";
    case WallSide::roof_front:
      return "front roof";
    case WallSide::roof_back:
      return "back roof";
  }
  return "";
}

double turned(const HouseShape& shape, double quarter_turns) {
  return std::fmod(shape.faces_rad + quarter_turns * kPi / 2.0, 2.0 * kPi);
}

/// One facet for each segment of the profile, then the ends of the house where the bay has them.
void add_bay_facets(HouseShape& shape, int bay) {
  const BayShape& b = shape.bays[static_cast<std::size_t>(bay)];
  const std::string of = " of the " + b.name + " bay";
  std::array<int, 6> of_side{}, seen{};
  for (std::size_t k = 0; k + 1 < shape.profile.size(); ++k)
    ++of_side[static_cast<std::size_t>(side_of_segment(shape.profile[k], shape.profile[k + 1]))];
  for (std::size_t k = 0; k + 1 < shape.profile.size(); ++k) {
    const ShapeCorner &from = shape.profile[k], &to = shape.profile[k + 1];
    const WallSide side = side_of_segment(from, to);
    const auto s = static_cast<std::size_t>(side);
    const std::string part = of_side[s] > 1 ? " " + std::to_string(++seen[s]) : "";
    const double dy = from.y_m - to.y_m, dz = to.z_m - from.z_m, width = std::hypot(dy, dz);
    // Outward normal (dz, dy) / width: upright where dy is zero, behind where dz falls.
    const double slope = std::acos(std::clamp(dy / width, -1.0, 1.0));
    const bool front = dz > 0.0 || (dz == 0.0 && from.y_m + to.y_m > -1e-9);
    shape.facets.push_back({std::string(side_name(side)).append(part).append(of), side, bay, b.length_m * width, slope,
                            turned(shape, front ? 0.0 : 2.0), std::min(from.z_m, to.z_m), std::max(from.z_m, to.z_m),
                            static_cast<int>(k)});
  }
  const double end = section_area(shape, 0.0, shape.top_m);
  const bool first = bay == 0, last = bay + 1 == static_cast<int>(shape.bays.size());
  if (first)
    shape.facets.push_back(
        {"first end" + of, WallSide::first_end, bay, end, kPi / 2, turned(shape, 1.0), 0, shape.top_m, -1});
  if (last)
    shape.facets.push_back(
        {"last end" + of, WallSide::last_end, bay, end, kPi / 2, turned(shape, 3.0), 0, shape.top_m, -1});
}

}  // namespace

HouseShape shape_of(const HouseSpec& house) {
  HouseShape shape;
  shape.length_m = house.length_m;
  shape.width_m = house.width_m;
  shape.faces_rad = house.faces_rad;
  shape.profile = profile_of(house);
  for (const ShapeCorner& corner : shape.profile) shape.top_m = std::max(shape.top_m, corner.z_m);
  for (const auto& bay : house.bays) shape.bays.push_back(bay_shape(house, shape, bay));
  for (int bay = 0; bay < static_cast<int>(shape.bays.size()); ++bay) add_bay_facets(shape, bay);
  return shape;
}

bool BenchShape::overlaps(const BenchShape& other) const {
  constexpr double kTouch = 1e-6;
  return std::min(x_high_m, other.x_high_m) - std::max(x_low_m, other.x_low_m) > kTouch &&
         std::min(y_high_m, other.y_high_m) - std::max(y_low_m, other.y_low_m) > kTouch;
}

std::vector<BenchShape> bench_shapes(const std::vector<Named<BenchSpec>>& benches, const HouseShape& shape) {
  struct Spread {
    double width_m = 0.0, next_m = 0.0;
    int count = 0;
  };
  std::vector<Spread> spread(shape.bays.size());
  for (const auto& item : benches) {
    if (item.value.from_front_m) continue;
    Spread& s = spread[static_cast<std::size_t>(shape.bay_index(item.value.bay))];
    s.width_m += item.value.width_m;
    ++s.count;
  }
  std::vector<BenchShape> out;
  for (const auto& item : benches) {
    const BenchSpec& b = item.value;
    const int bay = shape.bay_index(b.bay);
    const double bay_length = shape.bays[static_cast<std::size_t>(bay)].length_m;
    const double along = b.from_first_end_m.value_or(0.5 * (bay_length - b.length_m));
    double across = 0.0;
    if (b.from_front_m) {
      across = *b.from_front_m;
    } else {
      Spread& s = spread[static_cast<std::size_t>(bay)];
      const double gap = (shape.width_m - s.width_m) / (s.count + 1);
      across = s.next_m + gap;
      s.next_m = across + b.width_m;
    }
    const double x_high = shape.bay_begins_m(bay) - along, y_high = 0.5 * shape.width_m - across;
    out.push_back({x_high - b.length_m, x_high, y_high - b.width_m, y_high, b.height_m});
  }
  return out;
}

HouseShape::Across HouseShape::across_at(double height_m) const {
  double front = -0.5 * width_m, back = 0.5 * width_m;
  for (std::size_t k = 0; k + 1 < profile.size(); ++k) {
    const ShapeCorner &a = profile[k], &b = profile[k + 1];
    const double low = std::min(a.z_m, b.z_m), high = std::max(a.z_m, b.z_m);
    if (height_m < low || height_m > high) continue;
    for (const double share :
         high > low ? std::vector<double>{(height_m - a.z_m) / (b.z_m - a.z_m)} : std::vector<double>{0.0, 1.0}) {
      const double y = a.y_m + share * (b.y_m - a.y_m);
      front = std::max(front, y);
      back = std::min(back, y);
    }
  }
  return front > back ? Across{front, back} : Across{};
}

double HouseShape::bay_begins_m(int bay) const {
  double x = 0.5 * length_m;
  for (int b = 0; b < bay; ++b) x -= bays[static_cast<std::size_t>(b)].length_m;
  return x;
}

HouseShape::Side HouseShape::side_of(int bay, WallSide side) const {
  Side out;
  bool first = true;
  for (const Facet& facet : facets) {
    if (facet.bay != bay || facet.side != side) continue;
    out.area_m2 += facet.area_m2;
    out.bottom_m = first ? facet.bottom_m : std::min(out.bottom_m, facet.bottom_m);
    out.top_m = first ? facet.top_m : std::max(out.top_m, facet.top_m);
    first = false;
  }
  return out;
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

int HouseShape::facet_index(int bay, WallSide side, double height_m) const {
  int found = -1;
  for (std::size_t i = 0; i < facets.size(); ++i) {
    if (facets[i].bay != bay || facets[i].side != side) continue;
    if (found < 0 || (height_m >= facets[i].bottom_m && height_m <= facets[i].top_m)) found = static_cast<int>(i);
  }
  return found;
}

double opening_rise_m(const OpeningSpec& opening, const Facet& facet) {
  return opening.height_m * std::sin(facet.slope_rad);
}

double overlap_share(double bottom_m, double top_m, const LayerShape& layer) {
  const double shared = std::min(top_m, layer.top_m) - std::max(bottom_m, layer.bottom_m);
  return top_m > bottom_m ? std::max(0.0, shared) / (top_m - bottom_m) : 0.0;
}

double facet_share_in_layer(const Facet& facet, const std::vector<LayerShape>& layers, std::size_t i) {
  if (facet.top_m > facet.bottom_m) return overlap_share(facet.bottom_m, facet.top_m, layers[i]);
  return i + 1 == layers.size() ? 1.0 : 0.0;
}

}  // namespace noonhouse
