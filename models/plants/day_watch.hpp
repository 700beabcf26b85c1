// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Watches the light of a plant group day by day: days in a row with less or more of it than its kind wants strain it
/// at a third of the days that harm it. A day within the range takes one day off the count. Light does not kill here.
/// Day length is not harm: whoever looks at the readings says whether a day was as long as wanted.
class DayWatch final : public Agent {
 public:
  struct Parameters {
    std::string name;                          ///< of the plant group
    Input light_sum;                           ///< since the start [J/m2]
    double least_j_m2 = 0.0, most_j_m2 = 0.0;  ///< of one day
    double mol_per_j = 0.0;                    ///< photosynthetic light of a joule, to say it
    int harmed_after_days = 14;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit DayWatch(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  struct Count {
    int days = 0, said = 0;  ///< said: 0 nothing, 1 strained, 2 harmed
  };
  void count(Count& it, bool beyond, const char* what, double limit_j_m2, double day_j_m2, Actions& actions) const;

  Parameters p_;
  double last_j_m2_ = 0.0;
  Count dim_, bright_;
};

}  // namespace noonhouse
