// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "sim/contract/ids.hpp"

namespace noonhouse {

/// One thing that the grower's hand sets: a device's hand channel, or the mark that holds it off.
struct HandMove {
  ChannelId channel;
  double value = 1.0;
  ChannelId lasting{};  ///< as the hand leaves it where nothing is to be put back; may be none
  ChannelId pending{};  ///< how many responses have yet to put it back; may be none
};

}  // namespace noonhouse
