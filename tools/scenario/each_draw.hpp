// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/scenario/scenario_spec.hpp"

namespace noonhouse {

/// Calls take(section, name, draw, takes_water) for whatever draws on battery or tank, in the order of the sections.
template <class Take>
void each_draw(const ScenarioSpec& spec, const Take& take) {
  const auto section = [&](const char* name, const auto& devices, bool takes_water) {
    for (const auto& device : devices) take(std::string(name), device.name, device.value.draw, takes_water);
  };
  section("fans", spec.fans, false);
  section("mist_lines", spec.mist_lines, true);
  section("pads", spec.pads, true);
  section("drip_lines", spec.drip_lines, true);
  section("shades", spec.shades, false);
}

}  // namespace noonhouse
