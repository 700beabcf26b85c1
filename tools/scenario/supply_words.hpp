// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace noonhouse {

/// What a device says it lacks when a supply has ended: written into the log by devices, looked for by the comparison.
inline constexpr const char* kBatteryCutOff = "the battery is cut off";
inline constexpr const char* kPumpCutOut = "the pump is cut out for a low tank";

}  // namespace noonhouse
