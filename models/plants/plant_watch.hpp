// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <limits>
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// How far a plant has gone: bands of what it has borne.
enum class PlantState { fine, strained, harmed, lost };

/// One thing that harms a plant, told by a dose that the house integrates (dose.hpp).
struct Hazard {
  std::string what;  ///< in words, "%" where the dose stands: "heat, in all as harmful as % at 38 degC"
  Input dose;        ///< [s]
  /// Doses [s] at which the plant is strained, harmed, lost; kNever where it does not come to that.
  static constexpr double kNever = std::numeric_limits<double>::infinity();
  std::array<double, 3> at{kNever, kNever, kNever};
  /// What kills, in words and in time of its own, where the dose counts by a milder limit.
  struct Loss {
    std::string what;
    double dose_s = 0.0;
  };
  Loss when_lost;
  Input temperature;                      ///< said with it [K]
  std::vector<std::string> failed_by;     ///< agents whose failure lets it come to that
  std::string otherwise;                  ///< why it can come to that although none of them failed
  std::string temperature_of = "tissue";  ///< whose temperature it is
};

/// Watches what one plant group has borne. Each hazard takes the group a step down when its dose passes a mark, each
/// step once; it is logged as harm, and its cause is the newest failure that stands at that moment among the agents
/// whose failure can bring it, or a warning that says why it came without one.
/// Does not model: healing of harm that is done, hazards that make one another worse.
class PlantWatch final : public Agent {
 public:
  struct Parameters {
    std::string name;
    std::vector<Hazard> hazards;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit PlantWatch(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  void arm_next(std::size_t hazard, Actions& actions) const;
  int next_step(std::size_t hazard) const;
  void say(std::size_t hazard, const Situation& situation, Actions& actions) const;

  Parameters p_;
  std::vector<int> step_;  ///< per hazard: 0 fine to 3 lost
};

}  // namespace noonhouse
