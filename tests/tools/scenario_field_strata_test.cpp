// SPDX-License-Identifier: Apache-2.0
// Air by height in the demonstration's house on its hottest days: what a finer cut changes, and how steep it is.
// Thirty- two layers are in the slow test.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include "tests/support/field_strata.hpp"

namespace noonhouse {
namespace {

using field::peak_profile;
using field::Profile;

/// The largest gradient seen by 63 sensors in three modern research houses [K/m]; J. Plant Sci. 2014, 2(5).
constexpr double kSteepestSeen = 11.65;

// Successive cuts on the coarsest one's layers. Found: 0.03 K each, at most 1.2 K/m. (On the coarser cut's own
// layers single places differ more, since what stands in a thinner layer warms that alone.)
TEST(FieldStrata, ConvergeAsTheCutIsMadeFiner) {
  const Profile four = peak_profile("all shut", 4), eight = peak_profile("all shut", 8),
                sixteen = peak_profile("all shut", 16);
  const double first = four.difference(eight), second = eight.as_cut(4).difference(sixteen);
  EXPECT_LT(second, first + 0.02) << "what is left is what steps and minutes leave of a peak";
  EXPECT_LT(first, 0.5);
  for (const Profile* profile : {&four, &eight, &sixteen}) EXPECT_LT(profile->steepest_k_m, kSteepestSeen);
  RecordProperty("found", fmt::format("{:.3f} {:.3f}", first, second));
}

// Aired by vents that open and shut. Found: 0.26 K from four to eight layers, at most 5.3 K/m.
TEST(FieldStrata, AreNeverSteeperThanSeenWhereVentsAreSwitched) {
  const Profile four = peak_profile("vents and fan", 4), eight = peak_profile("vents and fan", 8);
  EXPECT_LT(four.difference(eight), 0.5);
  for (const Profile* profile : {&four, &eight}) EXPECT_LT(profile->steepest_k_m, kSteepestSeen);
}

// Common practice, no source: the upper part of a house is the hotter one, shut and aired.
TEST(FieldStrata, AreHotterAbove) {
  for (const char* plan : {"all shut", "vents and fan"}) {
    const Profile profile = peak_profile(plan, 8);
    for (const auto& bay : profile.peak_k) EXPECT_GT(bay.back(), bay.front() + 0.2) << plan;
  }
}

}  // namespace
}  // namespace noonhouse
