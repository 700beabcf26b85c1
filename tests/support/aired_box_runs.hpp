// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "sim/integrate/junctions.hpp"
#include "tests/support/aired_box.hpp"
#include "tests/support/run_marks.hpp"

/// What tests of a box of layers do with it: settle it, run it in weather, cut slits and cracks into it.
namespace noonhouse::aired {

using Settings = std::vector<std::pair<ChannelId, double>>;
inline constexpr double kOutsideK = 293.15, kSlit = 0.01;

/// The flows at the start, with the pressures that belong to it; nothing runs.
inline AiredBox::Rest settled(AiredBox& box, const Settings& set = {}) {
  AiredBox::Rest out;
  out.plan.house = box.graph.compile();
  for (const auto& [channel, value] : set)
    out.plan.house.initial_channels[static_cast<std::size_t>(channel.index)] = value;
  out.result.state.amounts = out.plan.house.initial_amounts;
  out.result.channels = out.plan.house.initial_channels;
  Junctions junctions(out.plan.house);
  EXPECT_TRUE(junctions.settle(out.result.state.amounts.data(), out.result.channels.data()));
  return out;
}

/// A box with a slit at a height under a wind pressure of its own.
inline void slit(AiredBox& box, const std::string& name, double z, double area_m2, ChannelId wind_pa,
                 double unrest = 0.0) {
  const std::size_t i = box.layer_at(z);
  const OpeningPiece law{{z, box.middle_m(i), box.density, AiredBox::kPressure}, {area_m2 / kSlit, kSlit}, unrest};
  box.outdoors(name, law, i,
               std::array<Input, 8>{box.pressure[i], box.air[i], Input(box.air[i], 1), box.out_k, box.out_w, wind_pa,
                                    box.wind, box.open});
}
inline void crack(AiredBox& box, const std::string& name, double z, double coefficient, ChannelId wind_pa) {
  const std::size_t i = box.layer_at(z);
  LeakPiece law{{z, box.middle_m(i), box.density, AiredBox::kPressure}, coefficient};
  law.counterflow_kg_s = 1e-3 * coefficient;
  box.outdoors(name, law, i,
               std::array<Input, 6>{box.pressure[i], box.air[i], Input(box.air[i], 1), box.out_k, box.out_w, wind_pa});
}

/// A run with marks, weather on straight lines and its number of steps.
struct Watched {
  AiredBox::Rest rest;
  RunMarks marks;
  double kelvin(std::size_t mark, NodeId node) const {
    return marks.value(mark, rest.plan.house.position(Input(node)));
  }
  std::int64_t steps() const { return rest.result.steps; }
};
using Lines = std::vector<std::pair<ChannelId, PolylineForcing::Points>>;
inline Watched watched(AiredBox& box, Tick length, const Settings& set, const Lines& lines = {}) {
  AiredBox::Rest rest;
  rest.plan.house = box.graph.compile();
  for (const auto& [channel, value] : set)
    rest.plan.house.initial_channels[static_cast<std::size_t>(channel.index)] = value;
  auto forcing = std::make_unique<PolylineForcing>();
  for (const auto& [channel, points] : lines) forcing->add(channel, points);
  rest.plan.forcing = std::move(forcing);
  rest.plan.length = length;
  auto run = run_with_marks(rest.plan, 15_min);
  rest.result = std::move(run.result);
  return {std::move(rest), std::move(run.marks)};
}

/// Two slits of one area, at the floor and under the ceiling of a box 4 m high over 30 m2.
inline AiredBox chimney(int layers, double inside_k, double area_m2 = 0.4) {
  AiredBox box(layers, 4.0, 30.0, inside_k, kOutsideK);
  box.opening("low", 0.0, area_m2 / kSlit, kSlit);
  box.opening("high", 4.0 - kSlit, area_m2 / kSlit, kSlit);
  box.column_of(0.1);
  box.heat(box.column[0]);
  return box;
}

}  // namespace noonhouse::aired
