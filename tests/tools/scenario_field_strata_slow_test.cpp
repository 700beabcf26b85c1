// SPDX-License-Identifier: Apache-2.0
// The finest cut of the demonstration's air: what it still changes.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include "tests/support/field_strata.hpp"

namespace noonhouse {
namespace {

using field::peak_profile;
using field::Profile;

// Found: shut 0.05 K, aired 0.08 K from 16 to 32 layers on those of 16; on those of four 0.06, 0.05, 0.01 K and 0.26,
// 0.16, 0.05 K from each cut to the next. Of 32 layers gradients are not held against those seen: between layers of 8
// cm it is up to 14 K/m, 1.1 K, for an instant as a vent is switched.
TEST(FieldStrata, AreThoseOfThirtyTwoLayers) {
  for (const char* plan : {"all shut", "vents and fan"}) {
    const Profile four = peak_profile(plan, 4), eight = peak_profile(plan, 8), sixteen = peak_profile(plan, 16),
                  most = peak_profile(plan, 32);
    EXPECT_LT(sixteen.difference(most), 0.5) << plan;
    EXPECT_LT(eight.as_cut(4).difference(sixteen), four.difference(eight)) << plan;
    EXPECT_LT(sixteen.steepest_k_m, 11.65) << "seen by 63 sensors in three houses [J. Plant Sci. 2014, 2(5)]";
    EXPECT_LT(sixteen.as_cut(4).difference(most), eight.as_cut(4).difference(sixteen)) << plan;
    RecordProperty(plan, fmt::format("{:.3f}, at most {:.1f} K/m", sixteen.difference(most), most.steepest_k_m));
  }
}

}  // namespace
}  // namespace noonhouse
