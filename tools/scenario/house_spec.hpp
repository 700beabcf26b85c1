// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "models/air/droplet_sizes.hpp"
#include "tools/scenario/control_spec.hpp"
#include "tools/scenario/field_options.hpp"

/// The house's part of a scenario: its shell and what belongs to it. SI inside; defaults stand in the field lists.
namespace noonhouse {

enum class WallSide { front, back, first_end, last_end, roof_front, roof_back };
enum class HouseForm { gable, lean_to, hoop, flat_roof };

struct SheetSpec {
  std::string material;  ///< of the library of cover materials; the other values are its own unless given
  int sheets = 1;
  double refractive_index = 0.0, optical_depth = 0.0;
  double thickness_m = 0.0, density_kg_m3 = 0.0, specific_heat_j_kg_k = 0.0, emissivity = 0.0;
  double infrared_passes = 0.0, haze = 0.0, thrown_back = 0.0, resistance_m2_k_w = 0.0;
  std::optional<double> opaque_reflects;
  double dirt = 0.0, whitewash_passes = 0.0, whitewash_reflects = 0.0, wet_share = 0.0, frame_share = 0.0;
  double hail_rating_j = 0.0;
};
/// A part of the cover that differs from the rest.
struct CoverPartSpec {
  WallSide side = WallSide::front;
  std::vector<std::string> bays;  ///< all of them if empty
  SheetSpec sheet;
};
struct CoverSpec {
  SheetSpec roof, walls;
  std::vector<Named<CoverPartSpec>> parts;
};
struct CourseSpec {
  std::string material;
  double thickness_m = 0.0, conductivity_w_m_k = 0.0, heat_capacity_j_m3_k = 0.0;
};
struct FloorSpec {
  std::vector<Named<CourseSpec>> courses;  ///< above the soil, from the top down
  std::string soil;
  double conductivity_w_m_k = 0.0, heat_capacity_j_m3_k = 0.0, depth_m = 0.0, absorptance = 0.0, holds_kg_m2 = 0.0;
  std::optional<double> edge_loss_w_m_k;
  int layers = 0;
};
struct BaySpec {
  double share = 0.0;
};
struct HouseSpec {
  double length_m = 0.0, width_m = 0.0, eaves_m = 0.0, ridge_m = 0.0, faces_rad = 0.0;
  double leakage_per_s = 0.0;
  HouseForm form = HouseForm::gable;
  int layers = 0, arch_parts = 0;
  std::vector<Named<BaySpec>> bays;
  CoverSpec cover;
  FloorSpec floor;
};

/// What stands around the house and shades it; its middle east and north of the house's middle.
struct BlockSpec {
  double east_m = 0.0, north_m = 0.0, length_m = 0.0, thickness_m = 0.0, height_m = 0.0, faces_rad = 0.0;
  double lets_through = 0.0;
};
struct CrownSpec {
  double east_m = 0.0, north_m = 0.0, width_m = 0.0, bottom_m = 0.0, height_m = 0.0;
  double lets_through_in_leaf = 0.0, lets_through_bare = 0.0;
  int leaf_out_day = 0, leaf_fall_day = 0;
};
struct ObstacleSpec {
  std::variant<BlockSpec, CrownSpec> what;
};

struct OpeningSpec {
  std::string bay;
  WallSide side = WallSide::front;
  double area_m2 = 0.0, height_m = 0.0, centre_m = 0.0, shut_share = 0.0, discharge = 0.0;
  std::optional<double> screen_discharge, withstands_m_s;
  bool needs_power = false;
  SwitchingSpec switching;
};
enum class FanMoves { air_out, air_in, air_around };
struct FanSpec {
  std::string bay, inlet_bay;
  FanMoves moves = FanMoves::air_out;
  WallSide side = WallSide::last_end, inlet_side = WallSide::first_end;
  double height_m = 0.0, inlet_height_m = 0.0, flow_m3_s = 0.0, power_w = 0.0, shut_off_pa = 0.0, width_m = 0.0;
  std::optional<double> inlet_area_m2;
  SwitchingSpec switching;
  DrawSpec draw;
};
enum class MistWets { air, floor, roof };
struct MistSpec {
  std::vector<std::string> bays;
  NozzleKind kind = NozzleKind::low_pressure_mist;
  double height_m = 0.0, nozzle_flow_m3_s = 0.0;
  std::optional<double> pump_power_w;  ///< needed where it has a pump of its own
  double pressure_pa = 0.0, rated_pressure_pa = 0.0, median_drop_m = 0.0, drop_spread = 0.0;
  int nozzles = 0;
  MistWets wets = MistWets::air;
  std::string pump;  ///< of the scenario's, or kOwnPump
  SwitchingSpec switching;
  DrawSpec draw;
};
inline constexpr const char* kOwnPump = "its own";
/// A wet pad in a wall, fed from the tank, through which fans draw outdoor air.
struct PadSpec {
  std::string bay;
  WallSide side = WallSide::first_end;
  double area_m2 = 0.0, height_m = 0.0, centre_m = 0.0, thickness_m = 0.0, pump_power_w = 0.0;
  SwitchingSpec switching;
  DrawSpec draw;
};
enum class ShadeSide { outside, inside };
enum class ShadeOver { roof, walls, all };
struct ShadeSpec {
  std::string material;
  ShadeSide hangs = ShadeSide::outside;
  ShadeOver over = ShadeOver::roof;
  double transmits = 0.0, absorbs = 0.0, straight = 0.0, infrared_passes = 0.0, emissivity = 0.0, drive_power_w = 0.0;
  double stops_hail_j = 0.0, uplift = 0.0, ballast_kg = 0.0;
  std::optional<double> loose_kg_m2;  ///< its weight where it lies loose; absent: fixed
  SwitchingSpec switching;
  DrawSpec draw;
};

}  // namespace noonhouse
