// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/control_terms.hpp"
#include "models/control/limits.hpp"
#include "models/properties/figure_text.hpp"

namespace noonhouse {

/// Control in stages on one reading: stages join in order and the last to join is the first to leave.
/// Only the next stage in line asks: from the reading's reaching its first limit until its return to its second. It
/// joins when it has asked for its delay without a break and has been off for its least time; so a delay gives the
/// stages before it their time to work. The last stage leaves when the reading has come back to its second limit and
/// its least time on is over; the stages under it wait for that. Hours' end, death and a lost reading (where that
/// stops) end all at once; a lost reading that calls fully lets one stage after another join, with their delays.
/// Output: each stage's demand channel, 0 or 1.
class StagedControl final : public Agent {
 public:
  struct Stage {
    std::string calls_for;  ///< "the first fan"
    ChannelId demand;
    TwoLimits limits;  ///< those of later stages no nearer to the reading's rest than those of earlier ones
    Tick delay{}, least_on{}, least_off{};
  };
  struct Parameters {
    std::string name, sensor_name;
    Input sensor;
    std::vector<Stage> stages;
    ControlTerms terms{};
    std::string (*words)(double) = celsius_text;  ///< the reading as the log shows it
  };
  static constexpr bool kDecides = true;
  static std::vector<ChannelId> follows(const Parameters& p) { return p.terms.follows(p.sensor); }

  explicit StagedControl(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kJoin, kLeave, kWindow, kWait };
  struct Past {
    bool has_switched = false;
    Tick switched;
  };
  void die(Actions& actions);
  bool must_end(Tick now) const;
  bool all_running() const { return running_ == p_.stages.size(); }
  Tick may_join(Tick now) const;
  Tick may_leave() const;
  void look_at_ask(const Situation& situation, bool crossed_join);
  void decide(const Situation& situation, const Trigger& trigger, Actions& actions);
  void leave(const Situation& situation, Actions& actions, const char* why);
  void join(const Situation& situation, Actions& actions);
  void look_ahead(Tick now, Actions& actions);
  std::string reading_text(const Situation& situation) const;

  Parameters p_;
  ControlHealth health_;
  std::size_t running_ = 0;
  std::vector<Past> past_;
  LimitLatch ask_;  ///< of the next stage in line
  Tick asked_;      ///< since when it asks
};

}  // namespace noonhouse
