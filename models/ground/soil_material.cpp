// SPDX-License-Identifier: Apache-2.0
#include "models/ground/soil_material.hpp"

#include <array>

namespace noonhouse {

namespace {

constexpr const char* kDeVries04 =
    "de Vries 1963, in van Wijk (ed.), Physics of Plant Environment, ch. 7; pore space 0.4, as restated in a table of "
    "hydrometeorology";
constexpr const char* kDeVries09 =
    "de Vries 1963, in van Wijk (ed.), Physics of Plant Environment, ch. 7; pore space 0.9, as restated in a table of "
    "hydrometeorology";
constexpr const char* kCampbell =
    "Campbell 1985, Soil Physics with BASIC, eqs. (4.20) and (4.25) to (4.28) for bulk density 1300 kg/m3 and 20 % "
    "clay; "
    "from memory";
constexpr const char* kCampbellHeat =
    "de Vries 1963, in van Wijk (ed.), Physics of Plant Environment, ch. 7: minerals 1.92 and water 4.18 MJ/(m3 K) by "
    "their shares, bulk density 1300 kg/m3 of grains of 2650; from memory";
constexpr const char* kVdi = "VDI 4640-1, table of rocks and soils; from memory";
constexpr const char* kVdiMiddle = "VDI 4640-1, table of rocks and soils, middle of its range; from memory";
constexpr const char* kGround = "EN ISO 13370:2007, Table 1; from memory";
constexpr const char* kBuilding = "EN ISO 10456:2007, Table 3; from memory";
constexpr const char* kBuildingHeat = "EN ISO 10456:2007, Table 3, density times specific heat; from memory";
constexpr const char* kBrick = "Incropera & DeWitt, 5th ed., Table A.3, brick, common; from memory";
constexpr const char* kBrickHeat =
    "Incropera & DeWitt, 5th ed., Table A.3, brick, common: 1920 kg/m3 times 835 J/(kg K); from memory";
constexpr const char* kChips = "Holman, Heat Transfer, 8th ed., table A-3, wood shavings; from memory";
constexpr const char* kChipsHeat =
    "150 kg/m3 loosely heaped (common practice, no source) times 1600 J/(kg K) of timber (EN ISO 10456:2007, Table 3; "
    "from memory)";

constexpr std::array kMaterials{
    SoilMaterial{
        "dry sand", {0.24, kDeVries04}, {1.28e6, kDeVries04}, "Sand without water: warms and cools at its top."},
    SoilMaterial{"half wet sand", {2.1, kDeVries04}, {2.12e6, kDeVries04}, "Sand with its pores half full of water."},
    SoilMaterial{"wet sand", {2.5, kDeVries04}, {2.96e6, kDeVries04}, "Sand with its pores full of water."},
    SoilMaterial{"dry clay", {0.15, kDeVries04}, {1.43e6, kDeVries04}, "Clay without water."},
    SoilMaterial{"half wet clay", {0.9, kDeVries04}, {2.27e6, kDeVries04}, "Clay with its pores half full of water."},
    SoilMaterial{"wet clay", {1.4, kDeVries04}, {3.10e6, kDeVries04}, "Clay with its pores full of water."},
    SoilMaterial{"dry peat", {0.04, kDeVries09}, {0.25e6, kDeVries09}, "Peat without water: insulates."},
    SoilMaterial{"half wet peat", {0.27, kDeVries09}, {2.13e6, kDeVries09}, "Peat with its pores half full of water."},
    SoilMaterial{"wet peat", {0.50, kDeVries09}, {4.01e6, kDeVries09}, "Peat with its pores full: stores like water."},
    SoilMaterial{"dry loam", {0.27, kCampbell}, {1.15e6, kCampbellHeat}, "Garden soil with 5 % water by volume."},
    SoilMaterial{"moist loam", {0.99, kCampbell}, {1.99e6, kCampbellHeat}, "Garden soil with 25 % water by volume."},
    SoilMaterial{"dry gravel", {0.4, kVdi}, {1.5e6, kVdiMiddle}, "A drained bed of gravel."},
    SoilMaterial{"wet gravel", {1.8, kVdi}, {2.4e6, kVdiMiddle}, "Gravel that stands in water."},
    SoilMaterial{
        "clay or silt ground", {1.5, kGround}, {3.0e6, kGround}, "Deep ground of clay or silt, for heat loss."},
    SoilMaterial{
        "sand or gravel ground", {2.0, kGround}, {2.0e6, kGround}, "Deep ground of sand or gravel, for heat loss."},
    SoilMaterial{"rock", {3.5, kGround}, {2.0e6, kGround}, "Solid rock under a thin floor, for heat loss."},
    SoilMaterial{"concrete slab", {1.65, kBuilding}, {2.2e6, kBuildingHeat}, "Plain concrete of 2200 kg/m3."},
    SoilMaterial{"dense concrete", {2.0, kBuilding}, {2.4e6, kBuildingHeat}, "Heavy concrete of 2400 kg/m3."},
    SoilMaterial{"paving brick", {0.72, kBrick}, {1.60e6, kBrickHeat}, "Brick laid flat, without its sand bed."},
    SoilMaterial{"stone paving", {1.4, kBuilding}, {2.0e6, kBuildingHeat}, "Slabs of limestone, 2000 kg/m3."},
    SoilMaterial{"ceramic tiles", {1.3, kBuilding}, {1.93e6, kBuildingHeat}, "Fired tiles, 2300 kg/m3."},
    SoilMaterial{"timber boards", {0.13, kBuilding}, {0.80e6, kBuildingHeat}, "Softwood boards, 500 kg/m3."},
    SoilMaterial{
        "wood chips", {0.059, kChips}, {0.24e6, kChipsHeat}, "A dry mulch of chips: insulates and stores little."},
};

}  // namespace

std::span<const SoilMaterial> soil_materials() { return kMaterials; }

const SoilMaterial* find_soil_material(std::string_view name) { return find_named(soil_materials(), name); }

double soil_diffusivity_m2_s(const SoilMaterial& material) {
  return material.conductivity_w_m_k.value / material.heat_capacity_j_m3_k.value;
}

}  // namespace noonhouse
