// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "sim/calendar/calendar.hpp"
#include "sim/contract/agent.hpp"
#include "sim/contract/forcing.hpp"
#include "sim/contract/observer.hpp"
#include "sim/graph/house.hpp"
#include "sim/integrate/stepper.hpp"
#include "sim/run/crossings.hpp"

namespace noonhouse {

/// What is run: const, shared by runs on any number of threads.
struct RunPlan {
  House house;
  std::unique_ptr<Forcing> forcing;
  std::vector<std::unique_ptr<AgentPlan>> agents;
  Tick length = kDay;
  StepControl steps;
  Tick isolation{10};      ///< width to which crossings are located
  int chatter_limit = 30;  ///< firings of one watch within chatter_window that count as chattering
  Tick chatter_window = 60_s;
  /// Another method than the project's own Stepper; empty for that one.
  std::function<std::unique_ptr<SteppingMethod>(const House&)> method;
};

struct RunResult {
  HouseState state;
  std::vector<double> channels;
  std::int64_t steps = 0, rejected = 0, events = 0;
};

/// The hybrid loop. One Run is one run; it owns all that moves.
///
///   prepare
///     draw lines       ask the forcing for straight lines from the start to its first break
///     start agents     a fresh agent for each plan, with its followed channels; books Trigger::start at 0
///     settle           as below, at 0
///     draw lines       again, from what the agents set
///     show start       observers see instant 0
///   while now < length
///     1. reach         bring the channels' values along their lines to this instant; at a break, draw lines
///     2. settle        take every calendar entry due now, by (tick, phase, sequence), until none is left;
///                      agents react, set channels, arm watches, move water; followers hear at this instant
///     3. draw lines    if an agent set a channel: the forcing's lines, to the same break, may depend on it
///     4. horizon       the next break, the next calendar entry, or the end, whichever comes first
///     5. advance       one accepted step, at the longest to the horizon
///     6. cross         the earliest crossing in (t0, t1]: cut the step there, disarm all watches that pass there
///                      and book their crossings, which the next settle delivers
///     7. show          observers see the stretch, cut or whole; they cannot steer
///   reach and settle once more at the end; no lines are drawn from there
///
/// A run can be carried to an instant and branched there: the branch goes on by itself from the same state, with agents
/// that remember the same, so one run serves many "what if this failed now" (`impose`). What is due at the very instant
/// is still due in both. A branch begins with a short step, so it agrees with its origin within the tolerance, and two
/// branches of one instant to the byte.
///
/// Two limits end a run that would not end by itself: the deliveries in one settle (10 000), and the firings of one
/// watch within RunPlan::chatter_window, counted in cross and where a watch is armed beyond its limit.
///
/// Throws UserError: chatter (either limit, with the agent's name), step_collapse.
class Run {
 public:
  explicit Run(const RunPlan& plan);
  ~Run();
  Run(const Run&) = delete;
  Run& operator=(const Run&) = delete;

  /// Observers must outlive the run.
  void add_observer(Observer& observer) { observers_.push_back(&observer); }
  /// Share of the run that is done, for a progress bar; called now and then.
  void on_progress(std::function<void(double)> report) { progress_ = std::move(report); }
  /// Runs from start to end; once only.
  RunResult go();

  /// Carries the run to an instant, at most its length; or to the end of the step after which `enough` says so. A step
  /// ends there, so a run that stops where no break is takes other steps than one that does not.
  void run_to(Tick when, const std::function<bool()>& enough = {});
  Tick now() const { return state_.now; }
  /// A run of the same plan that goes on from here, without observers; the error it allows a step is `coarser` times
  /// the plan's. Every agent's plan must be able to copy its agent.
  std::unique_ptr<Run> branch(double coarser = 1.0) const;
  /// Sets a channel of the agents' from outside at this instant, logged under `subject`; returns that event. A failure
  /// stands under that name, as an agent's would, until something else is imposed under it.
  EventId impose(ChannelId channel, double value, EventKind kind, std::string subject, std::string what);
  /// All potentials as they stand now, nodes' first, then channels'.
  std::span<const double> potentials();

  const std::vector<LogEntry>& log() const { return log_; }

 private:
  class Desk;  // the Situation and Actions one agent sees
  class View;  // the Stretch that observers see
  struct AgentRecord;
  struct Due {
    AgentId agent;
    Trigger trigger;
  };

  void one_step(Tick limit);
  void set_channel(ChannelId channel, double value, EventId because);
  void tell_followers(ChannelId channel, EventId because);
  void prepare();
  void start_agents();
  void reach();
  void settle();
  void draw_lines();
  Tick horizon(Tick limit) const;
  void cross(const Step& step);
  void show(Tick begin, Tick end);
  void deliver(const Due& due);
  CalendarKey book(AgentId agent, const Trigger& trigger, Tick when, Phase phase);
  void fire(ArmedWatch& watch, EventId cause);
  Phase phase_of(AgentId agent) const;
  void count_firing(const ArmedWatch& watch);
  double value(const Input& input);

  const RunPlan* plan_;
  const House* house_;
  HouseState state_;
  ChannelLine line_;
  std::vector<double> line_end_;
  Tick line_until_;
  bool begun_ = false;
  bool redraw_ = true;
  std::unique_ptr<SteppingMethod> stepper_;
  CrossingFinder finder_;
  Calendar<Due> calendar_;
  std::vector<AgentRecord> agents_;
  std::vector<std::vector<AgentId>> followers_;  ///< per channel
  std::vector<EventId> last_change_;             ///< per channel
  std::map<std::string, EventId, std::less<>> imposed_failures_;
  std::vector<ArmedWatch> watches_;
  std::vector<std::size_t> fired_;
  std::vector<LogEntry> log_;
  std::vector<double> settled_potentials_;
  bool settled_fresh_ = false;
  int instant_deliveries_ = 0;
  std::vector<Observer*> observers_;
  std::unique_ptr<View> view_;
  std::function<void(double)> progress_;
};

}  // namespace noonhouse
