// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cstddef>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "models/envelope/cover_material.hpp"
#include "models/envelope/cover_optics.hpp"
#include "models/light/light_balance.hpp"
#include "models/plants/plant_sides.hpp"
#include "tools/scenario/house_shape.hpp"
#include "tools/scenario/scenario_spec.hpp"
#include "tools/scenario/standing_place.hpp"

namespace noonhouse {

/// What one part of a surface inside is: the share of its area, and what stands there.
struct SurfacePart {
  enum class Of { facet, floor, bench, sunlit, shaded, pots };
  int surface = 0;
  double share = 1.0;  ///< of its area, by which it takes part in thermal radiation
  Of of = Of::facet;
  int index = 0;  ///< of the facet, bay, bench or plant group
  double absorptance = 0.0, emissivity = 0.0;
  double of_light = share;  ///< share of the light on the surface that falls to it
};

/// All parts of all surfaces of the light's scene; the shares of a surface sum to one. Facets come first, by index.
std::vector<SurfacePart> surface_parts(const ScenarioSpec& spec, const HouseShape& shape, const LightScene& scene);

/// The scene as it stands on a day of the year: crowns in leaf or bare.
LightScene light_scene(const ScenarioSpec& spec, const HouseShape& shape, int day_of_year);

/// A direction of the compass in house coordinates: unit vector, from azimuth clockwise from north and elevation.
Vector3 house_direction(double azimuth_rad, double elevation_rad, double faces_rad);

/// The surface of the light's scene that a place is.
int surface_of(const StandingPlace& place, const LightScene& scene);

/// The kind of a group of plants; its name is known to be right.
const PlantKindSpec& kind_of(const PlantGroupSpec& group, const ScenarioSpec& spec);

/// Area of ground that a group's leaves hide [m2].
double leaf_cover_m2(const PlantGroupSpec& group, const PlantKindSpec& kind);

inline constexpr double kTissueEmissivity = 0.95;  ///< leaves 0.94 to 0.99; from memory
inline constexpr double kPotEmissivity = 0.92;     ///< clay, plastics; from memory

/// How the tissue of a kind divides into a sunlit and a shaded side.
PlantSides sides_of(const PlantKindSpec& kind);

/// What the leaves of a kind do with the light on the ground that they cover.
CanopyLight canopy_of(const PlantKindSpec& kind);

/// Shares of the light on the ground that a group covers which its sides take up, of the direct and of the soft light.
struct LightTaken {
  double sunlit_direct = 0.0, sunlit_soft = 0.0, shaded_direct = 0.0, shaded_soft = 0.0;
};
LightTaken light_taken(const PlantKindSpec& kind);

/// The cover of a facet: that of the part of the cover it belongs to, else of the roof or the walls.
const SheetSpec& sheet_of(const Facet& facet, const HouseShape& shape, const CoverSpec& cover);

/// A sheet's values as its optics want them.
CoverMake cover_make(const SheetSpec& sheet);

/// Index of the shade cloth over a facet; -1 for none.
int shade_of(const Facet& facet, const std::vector<Named<ShadeSpec>>& shades);

/// A facet with its cloth drawn or away: what light from outside meets, and who takes it up.
class FacetOptics {
 public:
  FacetOptics(const CoverOptics* cover, const ShadeSpec* cloth);
  /// What happens to light on the outer face, and who takes it up, as shares of it.
  struct Taken {
    double passes = 0.0, returns = 0.0, cover = 0.0, cloth = 0.0, scatters = 0.0;
  };
  Taken beam(double incidence_rad) const;
  const Taken& diffuse() const { return diffuse_; }
  const Taken& from_inside() const { return inside_; }  ///< passes: let out

 private:
  LayerOptics net_optics() const;
  Taken beam_past_cloth(const LayerOptics& glazing, double scatters) const;
  Taken beam_onto_cloth(const LayerOptics& glazing, double scatters) const;
  const CoverOptics* cover_;
  const ShadeSpec* cloth_;
  Taken diffuse_, inside_;
};

/// A place given by metres east and north of the house's middle, in house coordinates on the ground.
Vector3 house_place(double east_m, double north_m, double faces_rad);

/// Geometry for every season that a run meets, and each instant's sun on it; one for all plans with the same house,
/// benches, obstacles, site and days.
class SunlitHouse {
 public:
  struct Instant {
    double azimuth_rad = 0.0, elevation_rad = -1.0;
    Vector3 to_sun;
    const LightGeometry* geometry = nullptr;
    std::vector<BeamShare> shares;  ///< empty while the sun is down
    std::vector<double> sunlit;
  };
  SunlitHouse(const ScenarioSpec& spec, const HouseShape& shape) : spec_(spec), shape_(shape) {}

  const LightGeometry& geometry(int day_of_year);
  void add(double azimuth_rad, double elevation_rad, int day_of_year);
  const std::vector<Instant>& instants() const { return instants_; }

 private:
  ScenarioSpec spec_;
  HouseShape shape_;
  std::map<std::vector<bool>, std::unique_ptr<const LightGeometry>> by_season_;
  std::vector<Instant> instants_;
};

}  // namespace noonhouse
