// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string_view>

namespace noonhouse {

/// The style sheet and the patterns of place_svg.cpp. Fills grow darker with harm on light paper and brighter on dark
/// paper; `on-NAME` is what can be read on the fill NAME.
inline constexpr std::string_view kPlaceSvgStyle = R"svg(<style>
.noonhouse-place { font-family: system-ui, sans-serif; font-size: 13px; background: #fdfcf8; }
.noonhouse-place .paper { fill: #fdfcf8; }
.noonhouse-place text { fill: #1d2420; stroke: #fdfcf8; stroke-width: 4px; stroke-linejoin: round; paint-order: stroke; }
.noonhouse-place .title { font-size: 19px; font-weight: 600; }
.noonhouse-place .group { font-size: 16px; font-weight: 600; }
.noonhouse-place .quiet { fill: #56605a; }
.noonhouse-place .end { text-anchor: end; }
.noonhouse-place .middle { text-anchor: middle; }
.noonhouse-place .cool { fill: #e3ece9; }
.noonhouse-place .warm { fill: #cfdcc0; }
.noonhouse-place .near { fill: #e8b34a; }
.noonhouse-place .hot { fill: #e07b52; }
.noonhouse-place .far { fill: #8f2b1e; }
.noonhouse-place .cold { fill: #7fa6d3; }
.noonhouse-place .number { stroke: none; }
.noonhouse-place .on-cool, .noonhouse-place .on-warm, .noonhouse-place .on-near { fill: #1d2420; }
.noonhouse-place .on-hot, .noonhouse-place .on-cold { fill: #1d2420; }
.noonhouse-place .on-far { fill: #fdfcf8; }
.noonhouse-place .lines { stroke: #fdfcf8; stroke-width: 1; fill: none; }
.noonhouse-place .rule { stroke: #d8d6cb; stroke-width: 1; fill: none; }
.noonhouse-place .ink { fill: #1d2420; }
.noonhouse-place .now { stroke: #1d2420; stroke-width: 2.5; fill: none; }
.noonhouse-place .near-mark { fill: url(#noonhouse-place-near); }
.noonhouse-place .hot-mark { fill: url(#noonhouse-place-hot); }
.noonhouse-place .far-mark { fill: url(#noonhouse-place-far); }
.noonhouse-place .cold-mark { fill: url(#noonhouse-place-cold); }
@media (prefers-color-scheme: dark) {
.noonhouse-place { background: #141815; }
.noonhouse-place .paper { fill: #141815; }
.noonhouse-place text { fill: #e9ece6; stroke: #141815; }
.noonhouse-place .quiet { fill: #aab4ac; }
.noonhouse-place .cool { fill: #233230; }
.noonhouse-place .warm { fill: #3a4c34; }
.noonhouse-place .near { fill: #80601f; }
.noonhouse-place .hot { fill: #e2764c; }
.noonhouse-place .far { fill: #ffb49a; }
.noonhouse-place .cold { fill: #7fa9d8; }
.noonhouse-place .on-cool, .noonhouse-place .on-warm, .noonhouse-place .on-near { fill: #e9ece6; }
.noonhouse-place .on-hot, .noonhouse-place .on-cold, .noonhouse-place .on-far { fill: #141815; }
.noonhouse-place .lines { stroke: #141815; }
.noonhouse-place .rule { stroke: #2f3631; }
.noonhouse-place .ink { fill: #e9ece6; }
.noonhouse-place .now { stroke: #e9ece6; }
}
@media (max-width: 480px) {
.noonhouse-place { font-size: 20px; }
.noonhouse-place .title { font-size: 26px; }
.noonhouse-place .group { font-size: 22px; }
}
</style>
<defs>
<pattern id="noonhouse-place-near" width="8" height="8" patternUnits="userSpaceOnUse"><rect class="on-near" width="2" height="8"/></pattern>
<pattern id="noonhouse-place-hot" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="on-hot" width="2" height="6"/></pattern>
<pattern id="noonhouse-place-far" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="on-far" width="4" height="6"/></pattern>
<pattern id="noonhouse-place-cold" width="8" height="4" patternUnits="userSpaceOnUse"><rect class="on-cold" width="3" height="3"/></pattern>
</defs>
)svg";

}  // namespace noonhouse
