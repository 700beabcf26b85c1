// SPDX-License-Identifier: Apache-2.0
#include "tools/places/light_svg.hpp"
namespace noonhouse {
std::string light_svg(const DayLight&) { return {}; }
}
