// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <stdexcept>
#include <string>

#include "models/envelope/cover_material.hpp"
#include "models/envelope/shade_material.hpp"

namespace noonhouse {
namespace {

const CoverMaterial& cover(std::string_view name) {
  const CoverMaterial* found = find_cover_material(name);
  if (found == nullptr) throw std::invalid_argument(std::string(name));
  return *found;
}

double normal_transmittance(std::string_view name) { return CoverOptics(make_of(cover(name))).at(0.0).transmittance; }

// Agricultural extension and trade association tables of glazing: 3 mm glass 0.88, double 0.77; twin-wall
// polycarbonate 0.78 to 0.82; multi-wall acrylic about 0.85 to 0.90. Tolerance 0.02 at the ends, as the tables spread.
TEST(CoverMaterials, PassTheLightOfTheTables) {
  EXPECT_NEAR(normal_transmittance("clear glass 3 mm"), 0.88, 0.005);
  EXPECT_NEAR(normal_transmittance("double glass unit"), 0.77, 0.005);
  for (const char* name : {"twin-wall polycarbonate 6 mm", "twin-wall polycarbonate 10 mm"}) {
    EXPECT_NEAR(normal_transmittance(name), 0.80, 0.02) << name;
  }
  EXPECT_GT(normal_transmittance("multi-wall acrylic 16 mm"), 0.85 - 0.02);
  EXPECT_LT(normal_transmittance("multi-wall acrylic 16 mm"), 0.90 + 0.02);
}

// Half the last printed digit of two.
TEST(CoverMaterials, PassTheLightTheyAreFittedTo) {
  for (const CoverMaterial& material : cover_materials()) {
    EXPECT_NEAR(normal_transmittance(material.name), material.transmittance.value, 0.005) << material.name;
  }
}

// Agricultural extension, table of glazing: overall 1.0 to 1.2 Btu/(h ft2 F) for any single layer, 0.6 to 0.7 for
// double ones; 1 Btu/(h ft2 F) is 5.678 W/(m2 K). Tolerance: half the last printed digit, 0.05 Btu/(h ft2 F).
TEST(CoverMaterials, LoseTheHeatOfTheTables) {
  const double unit = 5.678;
  for (const char* name : {"clear glass 3 mm", "clear glass 4 mm", "hammered glass 4 mm", "polyethylene film",
                           "thermal polyethylene film", "eva film", "single polycarbonate sheet", "acrylic sheet",
                           "glass-fibre reinforced polyester", "corrugated pvc sheet"}) {
    EXPECT_GT(overall_heat_transfer_w_m2_k(cover(name)), 0.95 * unit) << name;
    EXPECT_LT(overall_heat_transfer_w_m2_k(cover(name)), 1.25 * unit) << name;
  }
  for (const char* name : {"double glass unit", "double polyethylene film", "twin-wall polycarbonate 6 mm",
                           "twin-wall polycarbonate 10 mm", "opal twin-wall polycarbonate 10 mm"}) {
    EXPECT_GT(overall_heat_transfer_w_m2_k(cover(name)), 0.55 * unit) << name;
    EXPECT_LT(overall_heat_transfer_w_m2_k(cover(name)), 0.75 * unit) << name;
  }
}

// Data sheets of twin-wall sheet: 3.6 W/(m2 K) at 6 mm, 0.56 to 0.58 Btu/(h ft2 F) at 10 mm. Half the last digit.
TEST(CoverMaterials, TwinWallSheetsLoseWhatTheirDataSheetsSay) {
  EXPECT_NEAR(overall_heat_transfer_w_m2_k(cover("twin-wall polycarbonate 6 mm")), 3.6, 0.05);
  EXPECT_NEAR(overall_heat_transfer_w_m2_k(cover("twin-wall polycarbonate 10 mm")), 0.57 * 5.678, 0.06);
}

// EN 673 (from memory): radiation across a gap 4 sigma T^3 / (2 / e - 1) at 283 K with e 0.837, still air
// 0.025 W/(m K) over 6 mm, glass 1.0 W/(m K): the resistance, by hand, within half its last digit.
TEST(CoverMaterials, DoubleGlassIsTheGapAndThePanes) {
  const double radiation = 4.0 * 5.670e-8 * std::pow(283.0, 3) / (2.0 / 0.837 - 1.0);
  const double resistance = 1.0 / (radiation + 0.025 / 0.006) + 0.006;
  EXPECT_NEAR(cover("double glass unit").resistance_m2_k_w.value, resistance, 0.0005);
}

// Nijskens et al. 1984, Agric. For. Meteorol. 33; CIGR Handbook of Agricultural Engineering vol. II (from memory).
TEST(CoverMaterials, PassThermalRadiationWithinTheBands) {
  const auto infrared = [](const char* name) { return cover(name).infrared_transmittance.value; };
  EXPECT_GE(infrared("polyethylene film"), 0.70);
  EXPECT_LE(infrared("polyethylene film"), 0.80);
  for (const char* name : {"thermal polyethylene film", "eva film"}) {
    EXPECT_GE(infrared(name), 0.2) << name;
    EXPECT_LE(infrared(name), 0.4) << name;
  }
  for (const char* name : {"clear glass 3 mm", "clear glass 4 mm", "hammered glass 4 mm", "double glass unit"}) {
    EXPECT_EQ(infrared(name), 0.0) << name;
  }
  EXPECT_LT(infrared("twin-wall polycarbonate 6 mm"), 0.03);
  EXPECT_LT(infrared("twin-wall polycarbonate 10 mm"), 0.03);
  EXPECT_LE(infrared("single polycarbonate sheet"), 0.1);
  EXPECT_LT(infrared("acrylic sheet"), 0.05);
  EXPECT_LT(infrared("multi-wall acrylic 16 mm"), 0.05);
  EXPECT_LT(wet_infrared_transmittance(infrared("polyethylene film"), 0.1), 0.3);
}

// Two single films one behind the other, by net radiation. Half the last digit.
TEST(CoverMaterials, DoubleFilmIsTwoFilmsInThermalRadiation) {
  const CoverMaterial& single = cover("polyethylene film");
  const double passes = single.infrared_transmittance.value;
  const double returns = 1.0 - passes - single.emissivity.value;
  const LayerOptics film{.transmittance = passes, .reflectance_front = returns, .reflectance_back = returns};
  const LayerOptics two = couple(film, film).whole;
  EXPECT_NEAR(cover("double polyethylene film").infrared_transmittance.value, two.transmittance, 5e-4);
  EXPECT_NEAR(cover("double polyethylene film").emissivity.value, two.absorptance_front(), 5e-4);
}

// Data sheets: 1.3 and 1.7 kg/m2. Half the last digit. Glass by definition: 2.5 kg/m2 a millimetre.
TEST(CoverMaterials, WeighWhatTheyWeigh) {
  const auto mass = [](const char* name) { return cover(name).thickness_m.value * cover(name).density_kg_m3.value; };
  EXPECT_NEAR(mass("twin-wall polycarbonate 6 mm"), 1.3, 0.05);
  EXPECT_NEAR(mass("twin-wall polycarbonate 10 mm"), 1.7, 0.05);
  EXPECT_NEAR(mass("clear glass 4 mm"), 10.0, 1e-12);
}

void expect_sourced(const SourcedValue& figure, const char* name) {
  ASSERT_NE(figure.source, nullptr) << name;
  EXPECT_GT(std::string(figure.source).size(), 3U) << name;
  EXPECT_TRUE(std::isfinite(figure.value)) << name;
}

void expect_named(const char* name, std::set<std::string>& seen) {
  EXPECT_TRUE(seen.insert(name).second) << name << " twice";
  for (const char letter : std::string(name)) EXPECT_FALSE(letter >= 'A' && letter <= 'Z') << name;
}

TEST(CoverMaterials, EachIsNamedOnceSoundAndSourced) {
  std::set<std::string> seen;
  for (const CoverMaterial& m : cover_materials()) {
    expect_named(m.name, seen);
    EXPECT_EQ(find_cover_material(m.name), &m);
    for (const SourcedValue& figure : {m.transmittance, m.refractive_index, m.optical_depth, m.haze, m.thrown_back,
                                       m.drops_return, m.opaque_reflects, m.emissivity, m.infrared_transmittance,
                                       m.thickness_m, m.density_kg_m3, m.specific_heat_j_kg_k, m.resistance_m2_k_w}) {
      expect_sourced(figure, m.name);
    }
    EXPECT_LE(m.emissivity.value + m.infrared_transmittance.value, 1.0) << m.name;
    EXPECT_GT(m.emissivity.value, 0.0) << m.name;
    EXPECT_GT(m.thickness_m.value * m.density_kg_m3.value * m.specific_heat_j_kg_k.value, 0.0) << m.name;
    EXPECT_GE(m.resistance_m2_k_w.value, 0.0) << m.name;
    EXPECT_EQ(m.sheets == 0, m.opaque_reflects.value >= 0.0) << m.name;
    const LayerOptics diffuse = CoverOptics(make_of(m)).diffuse();
    EXPECT_GE(diffuse.absorptance_front(), -1e-14) << m.name;
    EXPECT_EQ(diffuse.transmittance > 0.0, m.sheets > 0) << m.name;
  }
  EXPECT_EQ(find_cover_material("no such thing"), nullptr);
  EXPECT_EQ(find_cover_material(""), nullptr);
}

TEST(CoverMaterials, OpalSheetReturnsWhatItDoesNotPass) {
  const CoverOptics opal(make_of(cover("opal twin-wall polycarbonate 10 mm")));
  const CoverOptics clear(make_of(cover("twin-wall polycarbonate 10 mm")));
  EXPECT_EQ(opal.scattered_share(), 1.0);
  EXPECT_NEAR(opal.at(0.0).absorptance_front(), clear.at(0.0).absorptance_front(), 1e-12);
}

TEST(ShadeMaterials, EachIsNamedOnceSoundAndSourced) {
  std::set<std::string> seen;
  for (const ShadeMaterial& m : shade_materials()) {
    expect_named(m.name, seen);
    EXPECT_EQ(find_shade_material(m.name), &m);
    for (const SourcedValue& figure : {m.transmits, m.absorbs, m.open_share, m.infrared_transmittance, m.emissivity}) {
      expect_sourced(figure, m.name);
      EXPECT_GE(figure.value, 0.0) << m.name;
      EXPECT_LE(figure.value, 1.0) << m.name;
    }
    EXPECT_LE(m.open_share.value, m.transmits.value) << m.name;
    EXPECT_LE(m.emissivity.value + m.infrared_transmittance.value, 1.0) << m.name;
    EXPECT_GE(layer_of(m).reflectance_front, 0.0) << m.name;
    EXPECT_NEAR(layer_of(m).absorptance_front(), m.absorbs.value, 1e-15) << m.name;
    // The number in the name is what it takes away.
    const std::string name = m.name;
    const std::size_t number = name.find_first_of("0123456789");
    if (number == std::string::npos) {
      EXPECT_LT(m.transmits.value, 0.001) << name << ": a cloth without a number takes all";
      continue;
    }
    EXPECT_NEAR(100.0 * (1.0 - m.transmits.value), std::stod(name.substr(number)), 1e-9) << name;
  }
  EXPECT_EQ(find_shade_material("no such thing"), nullptr);
}

// Abdel-Ghany & Al-Helal 2014, doi 10.1155/2014/165605 (abstract): nets absorb 0.41 to 0.82 of thermal radiation, pass
// 0.16 to 0.55 and reflect at most 0.08.
TEST(ShadeMaterials, NetsAreInTheMeasuredRangeOfThermalRadiation) {
  int nets = 0;
  for (const ShadeMaterial& m : shade_materials()) {
    if (std::string(m.name).find("net") == std::string::npos) continue;
    ++nets;
    EXPECT_GE(m.emissivity.value, 0.41) << m.name;
    EXPECT_LE(m.emissivity.value, 0.82) << m.name;
    EXPECT_GE(m.infrared_transmittance.value, 0.16) << m.name;
    EXPECT_LE(m.infrared_transmittance.value, 0.55) << m.name;
    EXPECT_LE(1.0 - m.emissivity.value - m.infrared_transmittance.value, 0.08 + 1e-12) << m.name;
  }
  EXPECT_EQ(nets, 9);
}

}  // namespace
}  // namespace noonhouse
