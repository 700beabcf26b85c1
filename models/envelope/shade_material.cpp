// SPDX-License-Identifier: Apache-2.0
#include "models/envelope/shade_material.hpp"

#include "models/properties/sourced_value.hpp"

namespace noonhouse {
namespace {

constexpr const char* kNominal = "the shading that the cloth is sold by";
constexpr const char* kThread =
    "what threads hold back less what they reflect: black 6 %, green 20 %, white 55 % (common practice, no source)";
constexpr const char* kHoles =
    "holes: black threads pass no light, green 7 %, white 25 % of it (common practice, no source)";
constexpr const char* kThermal =
    "Abdel-Ghany & Al-Helal 2014, doi 10.1155/2014/165605, abstract: passes 0.16 to 0.55, absorbs 0.41 to 0.82, "
    "reflects up to 0.08; placed within by density";

constexpr ShadeMaterial kShades[] = {
    {.name = "green knitted net 30 %",
     .about = "green polyethylene threads, shades 30 %",
     .transmits = {0.7, kNominal},
     .absorbs = {0.24, kThread},
     .open_share = {0.68, kHoles},
     .infrared_transmittance = {0.55, kThermal},
     .emissivity = {0.42, kThermal}},
    {.name = "green knitted net 50 %",
     .about = "green polyethylene threads, shades 50 %",
     .transmits = {0.5, kNominal},
     .absorbs = {0.39, kThread},
     .open_share = {0.46, kHoles},
     .infrared_transmittance = {0.4, kThermal},
     .emissivity = {0.55, kThermal}},
    {.name = "green knitted net 70 %",
     .about = "green polyethylene threads, shades 70 %",
     .transmits = {0.3, kNominal},
     .absorbs = {0.55, kThread},
     .open_share = {0.25, kHoles},
     .infrared_transmittance = {0.2, kThermal},
     .emissivity = {0.74, kThermal}},
    {.name = "black knitted net 30 %",
     .about = "black polyethylene threads, shades 30 %",
     .transmits = {0.7, kNominal},
     .absorbs = {0.28, kThread},
     .open_share = {0.7, kHoles},
     .infrared_transmittance = {0.55, kThermal},
     .emissivity = {0.42, kThermal}},
    {.name = "black knitted net 50 %",
     .about = "black polyethylene threads, shades 50 %",
     .transmits = {0.5, kNominal},
     .absorbs = {0.47, kThread},
     .open_share = {0.5, kHoles},
     .infrared_transmittance = {0.4, kThermal},
     .emissivity = {0.55, kThermal}},
    {.name = "black knitted net 70 %",
     .about = "black polyethylene threads, shades 70 %",
     .transmits = {0.3, kNominal},
     .absorbs = {0.66, kThread},
     .open_share = {0.3, kHoles},
     .infrared_transmittance = {0.2, kThermal},
     .emissivity = {0.74, kThermal}},
    {.name = "white knitted net 30 %",
     .about = "white polyethylene threads, shades 30 %",
     .transmits = {0.7, kNominal},
     .absorbs = {0.08, kThread},
     .open_share = {0.6, kHoles},
     .infrared_transmittance = {0.55, kThermal},
     .emissivity = {0.42, kThermal}},
    {.name = "white knitted net 50 %",
     .about = "white polyethylene threads, shades 50 %",
     .transmits = {0.5, kNominal},
     .absorbs = {0.13, kThread},
     .open_share = {0.33, kHoles},
     .infrared_transmittance = {0.4, kThermal},
     .emissivity = {0.55, kThermal}},
    {.name = "white knitted net 70 %",
     .about = "white polyethylene threads, shades 70 %",
     .transmits = {0.3, kNominal},
     .absorbs = {0.19, kThread},
     .open_share = {0.07, kHoles},
     .infrared_transmittance = {0.2, kThermal},
     .emissivity = {0.74, kThermal}},
    {.name = "aluminised screen 50 %",
     .about = "strips of aluminium foil and gaps, shades 50 %",
     .transmits = {0.5, kNominal},
     .absorbs = {0.1, kCommonPractice},
     .open_share = {0.42, kCommonPractice},
     .infrared_transmittance = {0.42, "the gaps: foil passes none"},
     .emissivity = {0.2, "0.35 of the strips, foil under a skin of plastic (from memory)"}},
    {.name = "aluminised screen 70 %",
     .about = "strips of aluminium foil and gaps, shades 70 %",
     .transmits = {0.3, kNominal},
     .absorbs = {0.14, kCommonPractice},
     .open_share = {0.22, kCommonPractice},
     .infrared_transmittance = {0.22, "the gaps: foil passes none"},
     .emissivity = {0.27, "0.35 of the strips, foil under a skin of plastic (from memory)"}},
    {.name = "blackout cloth",
     .about = "woven, black inside and white outside, to shorten the day",
     .transmits = {0.0002, kCommonPractice},
     .absorbs = {0.3, kCommonPractice},
     .open_share = {0.0, kCommonPractice},
     .infrared_transmittance = {0.0, kCommonPractice},
     .emissivity = {0.9, kThermal}},
};

}  // namespace

std::span<const ShadeMaterial> shade_materials() { return kShades; }

const ShadeMaterial* find_shade_material(std::string_view name) { return find_named(shade_materials(), name); }

LayerOptics layer_of(const ShadeMaterial& material) {
  const double reflects = 1.0 - material.transmits.value - material.absorbs.value;
  return {.transmittance = material.transmits.value, .reflectance_front = reflects, .reflectance_back = reflects};
}

}  // namespace noonhouse
