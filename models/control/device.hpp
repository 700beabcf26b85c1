// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Which of several calls a device heeds, of the callers that are on duty: the largest, the smallest, or that of the
/// first in its list.
enum class Heeds { any, all, first };

/// What is wrong with a device, as its fault channel says it by number.
/// The last two are what wind does: a cover is gone, a vent torn open.
enum class DeviceFault { none = 0, stuck_off = 1, stuck_on = 2, stuck_as_is = 3, taken_off = 4, torn_on = 5 };

/// A device that is off, on or, if graded, in between: a vent, a fan, a pump with its nozzles, a shade.
/// How far it is called is weighed in this order, the later winning:
///   calls    of its callers; nobody on duty: not called
///   forbids  hold it back whatever calls; that is no failure
///   faults   leave it where it is stuck, whatever calls or forbids
///   needs    without one of them it is off at once, or stays where it stands, unless wind takes it; that is a failure
///            where it would be elsewhere
/// One that is held back would be off, so it lacks nothing. Each change is logged with what brought it about. That it
/// is held back is said when a forbid has set in, and again only where that moves it; a lack when it is first felt and
/// when it is over, not again at each call between; that a stuck one is called in vain is said once for each fault.
/// With `takes` it moves at an even pace, told in steps of at most kLongestStep as it has come so far; a change of mind
/// on the way turns it round where it stands. Not modelled: a start that fails, wear, a pace that differs by load or
/// way.
class Device final : public Agent {
 public:
  /// Implicit from its demand, so that wiring lists stay readable.
  struct Caller {
    ChannelId demand;   ///< 0 to 1
    ChannelId on_duty;  ///< above one half: heeded; none: always
    ChannelId spare,
        has_spare;        ///< a second contact beside its own, and above one half where it is fitted; may be none
    bool beside = false;  ///< moves the device beside all others, however those are heeded
    Caller(ChannelId calls, ChannelId duty = {}) : demand(calls), on_duty(duty) {}
  };
  struct Need {
    ChannelId permit;         ///< above one half: there
    std::string lacking;      ///< "no water"
    bool on_purpose = false;  ///< withheld as it was set up to be: a warning, no failure
  };
  struct Forbid {
    ChannelId channel;  ///< above one half: held back
    std::string words;  ///< "it rains"
  };
  struct Output {
    ChannelId channel;
    double when_on = 1.0, when_off = 0.0;  ///< in between on the straight line
  };
  struct Parameters {
    std::string name;
    std::string starts = "starts", stops = "stops";  ///< in words, for the log
    std::vector<Caller> callers{};
    std::vector<Need> needs{};
    std::vector<Output> outputs{};
    Heeds heeds = Heeds::any;
    bool graded = false;       ///< follows the share called; else on above one half
    double share_step = 0.05;  ///< of a graded one, so that it does not follow every flutter; 0: none
    std::vector<Forbid> forbids{};
    Tick takes{};                     ///< from one end to the other; zero: at once
    ChannelId fault{};                ///< a DeviceFault; may be none
    ChannelId hand{};                 ///< while above nothing it is the only call that counts; may be none
    bool stays_when_lacking = false;  ///< a motor without power leaves its shade where it stands; a fan stops
  };
  static constexpr bool kDecides = false;
  static constexpr double kLongestStep = 1.0 / 6.0;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit Device(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  /// What it is asked for at one instant.
  struct Orders {
    double called = 0.0;  ///< share
    const Forbid* forbid = nullptr;
    const Need* missing = nullptr;
    bool held() const { return forbid != nullptr && called > 0.0; }
    bool wanted() const { return forbid == nullptr && called > 0.0; }
  };
  Orders orders_of(const Situation& situation) const;
  static double call_of(const Caller& caller, const Situation& situation);
  double called_share(const Situation& situation) const;
  DeviceFault fault_now(const Situation& situation) const;
  double meant(const Orders& orders) const;

  EventId note_fault(const Situation& situation, const Orders& orders, Actions& actions);
  const Need* end_lacks(const Situation& situation);
  void say_over(const Need* over, const Situation& situation, Actions& actions) const;
  void fail(const Situation& situation, const Need& missing, double goal, Actions& actions);
  void follow(const Situation& situation, const Orders& orders, EventId fresh_fault, const Trigger& trigger,
              Actions& actions);
  std::string going_to(double share) const;

  double place_at(Tick now) const;
  void leave(double at, EventId because, Actions& actions);
  void go(double goal, EventId because, Tick now, Actions& actions);
  void step_on(Actions& actions);
  void put(double share, EventId because, Actions& actions);

  Parameters p_;
  double share_ = 0.0;  ///< as told to the outputs
  double goal_ = 0.0;
  DeviceFault fault_ = DeviceFault::none;
  EventId fault_set_ = kNoEvent;  ///< by what
  EventId fault_entry_ = kNoEvent;
  double stuck_at_ = 0.0;
  bool lacking_ = false;                 ///< is not where it would be
  bool held_ = false, in_vain_ = false;  ///< said already
  /// What was said of each need's lack and has not ended since: what took it away, and the entry.
  struct Lack {
    EventId taken = kNoEvent, entry = kNoEvent;
  };
  std::vector<Lack> lacks_;
  /// What was last said of being held back: by what, what set that in, and the entry.
  struct Hold {
    ChannelId by;
    EventId since = kNoEvent, entry = kNoEvent;
  };
  Hold said_;

  /// The way it is on, while goal_ differs from share_.
  double from_ = 0.0;
  Tick since_;
  int step_ = 0, steps_ = 0;
  EventId because_ = kNoEvent;
};

}  // namespace noonhouse
