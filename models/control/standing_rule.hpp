// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/clock.hpp"
#include "models/control/limits.hpp"

namespace noonhouse {

/// A rule that holds while all of its tests do: no mist on wet leaves after dusk, vents shut in rain, cloth drawn on a
/// day forecast hot. Its channel is 1 while it holds, so it can forbid as well as call. Each test has its own two
/// limits and is followed all the time; the rule begins when all have held, in time, for `after`, and keeps on for its
/// least time, but never outside its hours or its spells, nor without its reading. Without tests it holds whenever
/// those let it.
class StandingRule final : public Agent {
 public:
  struct Test {
    Input what;
    TwoLimits limits;
    bool is_reading_there = false;  ///< asks whether there is a reading at all: the rule ends with it, at once
  };
  /// [from, until), since the run began.
  struct Spell {
    Tick from, until;
  };
  struct Parameters {
    std::string name;
    ChannelId holds;
    std::vector<Test> tests;
    DailyWindow hours{};
    bool only_in_spells = false;
    std::vector<Spell> spells{};  ///< in time order, apart from each other; read where it holds only in them
    Tick after{}, least_hold{};
    std::string begins = "holds", ends = "holds no longer";  ///< in words, for the log
    EventKind kind = EventKind::action;
  };
  static constexpr bool kDecides = true;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit StandingRule(Parameters parameters) : p_(std::move(parameters)), latches_(p_.tests.size()) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  static constexpr int kClock = 0;                                      ///< its only wake
  static int slot(std::size_t test) { return static_cast<int>(test); }  ///< of a test's watch
  void look_at_tests(const Situation& situation, const Trigger& trigger, Actions& actions);
  bool in_time(Tick now) const;
  bool reads() const;
  Tick next_edge(Tick now) const;
  void put(bool holds, const Situation& situation, Actions& actions);

  Parameters p_;
  std::vector<LimitLatch> latches_;
  bool all_ = false, holding_ = false;
  Tick all_since_, began_;
  EventId because_ = kNoEvent;  ///< what turned the newest test
};

}  // namespace noonhouse
