// SPDX-License-Identifier: Apache-2.0
// Junctions beside the independent solver, to which a junction is a stiff state with a tiny store of its own.
#include <gtest/gtest.h>

#include "tests/support/cvode_method.hpp"
#include "tests/support/toy_junctions.hpp"
#include "tests/support/toy_stepping.hpp"

namespace noonhouse {
namespace {

using toy::advance_to;
using toy::start_of;
using toy::TwoRooms;

TEST(CvodeJunctions, TemperaturesAndPressuresAreThoseOfTheIndependentSolver) {
  const TwoRooms rooms;
  StepControl control;
  control.tolerance = 1e-3;  // 1e-5 K a step
  Stepper own(rooms.house, control);
  CvodeMethod other(rooms.house, {.relative = 1e-9, .absolute_factor = 1e-6, .carry = false});
  HouseState here = start_of(rooms.house), there = here;
  for (const Tick until : {20_s, 60_s, 3_min, 10_min}) {
    advance_to(own, here, rooms.line, until);
    advance_to(other, there, rooms.line, until);
    // A step's error by the number of steps; the other's junctions follow the rest within milliseconds.
    EXPECT_NEAR(rooms.kelvin(here.amounts, rooms.warm), rooms.kelvin(there.amounts, rooms.warm), 1e-3);
    EXPECT_NEAR(rooms.kelvin(here.amounts, rooms.cool), rooms.kelvin(there.amounts, rooms.cool), 1e-3);
    EXPECT_NEAR(rooms.pressure(here.amounts, rooms.first), rooms.pressure(there.amounts, rooms.first), 1e-4);
    EXPECT_NEAR(rooms.pressure(here.amounts, rooms.second), rooms.pressure(there.amounts, rooms.second), 1e-4);
  }
  EXPECT_LT(rooms.kelvin(here.amounts, rooms.warm), 300.0) << "the rooms did change";
}

}  // namespace
}  // namespace noonhouse
