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

// Successive cuts on the coarsest one's layers. Found: shut 0.06 and 0.05 K, aired 0.26 and 0.16 K; at most 1.2 and 8.9
// K/m. (Between cuts compared on the coarser one's own layers single places differ by up to 0.4 K, since what stands in
// a thinner layer warms that alone.)
TEST(FieldStrata, ConvergeAsTheCutIsMadeFiner) {
  for (const char* plan : {"all shut", "vents and fan"}) {
    const Profile four = peak_profile(plan, 4), eight = peak_profile(plan, 8), sixteen = peak_profile(plan, 16);
    const double first = four.difference(eight), second = eight.as_cut(4).difference(sixteen);
    EXPECT_LT(second, first) << plan;
    EXPECT_LT(first, 0.5) << plan;
    EXPECT_LT(eight.difference(sixteen), 0.5) << plan;
    for (const Profile* profile : {&four, &eight, &sixteen}) EXPECT_LT(profile->steepest_k_m, kSteepestSeen) << plan;
    RecordProperty(plan, fmt::format("{:.3f} {:.3f}", first, second));
  }
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
