// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/material_tree.hpp"

#include <fmt/format.h>

#include <vector>

#include "models/envelope/cover_material.hpp"
#include "models/envelope/shade_material.hpp"
#include "models/ground/soil_material.hpp"
#include "sim/core/errors.hpp"
#include "tools/scenario/tree_text.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

constexpr std::size_t kWidth = 100;

/// Writes figures as lines of a branch.
class Figures {
 public:
  Figures(Branch& branch, UnitSystem system) : branch_(branch), system_(system) {}
  void quantity(const char* words, const SourcedValue& value, Dimension dimension) const {
    line(words, format_quantity(value.value, dimension, system_), value);
  }
  void share(const char* words, const SourcedValue& value) const { quantity(words, value, Dimension::share); }
  void number(const char* words, const SourcedValue& value) const {
    line(words, fmt::format("{:.4g}", value.value), value);
  }

 private:
  void line(const char* words, const std::string& value, const SourcedValue& of) const {
    branch_.children.push_back({fmt::format("{} {} ({})", words, unbroken(value), of.source)});
  }
  Branch& branch_;
  UnitSystem system_;
};

Branch branch_of(const CoverMaterial& m, UnitSystem system) {
  Branch out{fmt::format("{}: {}", m.name, m.about), {}};
  const Figures figures(out, system);
  if (m.opaque_reflects.value >= 0.0) {
    figures.share("opaque, reflects", m.opaque_reflects);
  } else {
    figures.share("lets through, straight on,", m.transmittance);
    figures.number("refractive index", m.refractive_index);
    figures.number("optical depth of a sheet", m.optical_depth);
    figures.share("scatters of what it lets through", m.haze);
    figures.share("throws back of what would pass", m.thrown_back);
    figures.share("drops on it send back", m.drops_return);
    figures.share("lets through of thermal radiation, dry,", m.infrared_transmittance);
  }
  figures.share("emissivity", m.emissivity);
  figures.quantity("solid thickness", m.thickness_m, Dimension::length);
  figures.quantity("density", m.density_kg_m3, Dimension::density);
  figures.quantity("specific heat", m.specific_heat_j_kg_k, Dimension::specific_heat);
  figures.quantity("resistance from face to face", m.resistance_m2_k_w, Dimension::thermal_resistance);
  return out;
}

Branch branch_of(const ShadeMaterial& m, UnitSystem system) {
  Branch out{fmt::format("{}: {}", m.name, m.about), {}};
  const Figures figures(out, system);
  figures.share("lets through", m.transmits);
  figures.share("of all light, straight through its holes", m.open_share);
  figures.share("takes up", m.absorbs);
  figures.share("lets through of thermal radiation", m.infrared_transmittance);
  figures.share("emissivity", m.emissivity);
  return out;
}

Branch branch_of(const SoilMaterial& m, UnitSystem system) {
  Branch out{fmt::format("{}: {}", m.name, m.about), {}};
  const Figures figures(out, system);
  figures.quantity("conductivity", m.conductivity_w_m_k, Dimension::thermal_conductivity);
  figures.quantity("heat capacity", m.heat_capacity_j_m3_k, Dimension::volume_heat_capacity);
  return out;
}

template <class Material>
Branch library(const char* words, std::span<const Material> materials, const std::string& wanted, UnitSystem system) {
  Branch out{words, {}};
  for (const Material& material : materials)
    if (std::string(material.name).find(wanted) != std::string::npos)
      out.children.push_back(branch_of(material, system));
  return out;
}

}  // namespace

std::string material_tree(const std::string& wanted, UnitSystem system) {
  std::vector<Branch> branches;
  for (Branch& branch : std::vector<Branch>{library("covers and walls", cover_materials(), wanted, system),
                                            library("shade cloths and screens", shade_materials(), wanted, system),
                                            library("soils and floors", soil_materials(), wanted, system)})
    if (!branch.children.empty()) branches.push_back(std::move(branch));
  if (!branches.empty()) return tree_text(branches, kWidth);
  std::vector<std::string> names;
  for (const auto& m : cover_materials()) names.emplace_back(m.name);
  for (const auto& m : shade_materials()) names.emplace_back(m.name);
  for (const auto& m : soil_materials()) names.emplace_back(m.name);
  throw UserError(ErrorKind::unknown_name,
                  fmt::format("no material's name holds \"{}\"{}", wanted, did_you_mean(wanted, names)));
}

}  // namespace noonhouse
