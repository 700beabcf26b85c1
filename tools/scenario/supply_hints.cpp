// SPDX-License-Identifier: Apache-2.0
// What is odd, though allowed, in tank, battery and gutters.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <optional>

#include "tools/scenario/as_written.hpp"
#include "tools/scenario/each_draw.hpp"
#include "tools/scenario/house_hints.hpp"
#include "tools/scenario/house_shape.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

std::string litres(double m3) { return format_quantity(m3, Dimension::volume, UnitSystem::metric); }
std::string share_text(double share) { return format_quantity(share, Dimension::share, UnitSystem::metric); }

class SupplyHints {
 public:
  explicit SupplyHints(const PlanScenario& plan) : plan_(plan), s_(plan.spec) {}
  std::vector<std::string> all() {
    sheds();
    for (const auto& refill : s_.refills) called(refill);
    gutters();
    return std::move(out_);
  }

 private:
  void sheds() {
    each_draw(s_, [this](const std::string&, const std::string& name, const DrawSpec& draw, bool) {
      if (!plan_.uses(name) || draw.sheds_at <= 0.0 || draw.sheds_at > s_.power.cut_off) return;
      out_.push_back(
          fmt::format("{} sheds at {}, but all loads are cut off at {} already{}: it is never shed before "
                      "them",
                      name, share_text(draw.sheds_at), share_text(s_.power.cut_off),
                      is_given(plan_.places, "power.cut_off_at") ? "" : " (assumed)"));
    });
  }

  /// The content down to which something in service draws; nothing draws below the pump's low mark.
  double drawn_down_to_m3() const {
    std::optional<double> lowest;
    each_draw(s_, [&](const std::string&, const std::string& name, const DrawSpec& draw, bool water) {
      if (water && plan_.uses(name)) lowest = std::min(lowest.value_or(draw.keeps_back_m3), draw.keeps_back_m3);
    });
    return std::max(lowest.value_or(0.0), s_.tank.low_m3);
  }

  void called(const Named<RefillSpec>& refill) {
    const double down_to = drawn_down_to_m3(), at = refill.value.called_at_m3;
    if (at < down_to)
      out_.push_back(
          fmt::format("{} is called at {}, but {}: only watering by hand, drying up or a leak take the tank "
                      "that far",
                      refill.name, litres(at),
                      down_to > s_.tank.low_m3 ? "all in service leave at least " + litres(down_to)
                                               : "at the low mark, " + litres(down_to) + ", all draws stop"));
  }

  void gutters() {
    using Slope = GutterSpec::Slope;
    const HouseShape shape = shape_of(s_.house);
    const auto of = [&](Slope slope) {
      std::vector<std::string> names;
      for (const auto& gutter : s_.gutters)
        if (gutter.value.drains == slope) names.push_back(gutter.name);
      return names;
    };
    const auto tell = [&](Slope twice, const char* name, Slope bare, WallSide bare_side, const char* bare_name) {
      const bool is_there = std::any_of(shape.facets.begin(), shape.facets.end(),
                                        [&](const Facet& facet) { return facet.side == bare_side; });
      const auto sharing = of(twice);
      if (sharing.size() > 1 && of(bare).empty() && is_there)
        out_.push_back(fmt::format("{} all drain the {} and share its rain; what falls on the {} is lost",
                                   fmt::join(sharing, ", "), name, bare_name));
    };
    tell(Slope::front, "front roof", Slope::back, WallSide::roof_back, "back roof");
    tell(Slope::back, "back roof", Slope::front, WallSide::roof_front, "front roof");
  }

  const PlanScenario& plan_;
  const ScenarioSpec& s_;
  std::vector<std::string> out_;
};

}  // namespace

std::vector<std::string> supply_hints(const PlanScenario& plan) { return SupplyHints(plan).all(); }

}  // namespace noonhouse
