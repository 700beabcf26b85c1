// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "models/control/chance.hpp"
#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// What is wrong with an instrument, as its fault channel says it by number.
enum class InstrumentFault { none = 0, frozen = 1, radio_lost = 2 };

/// The electronics of a polled instrument: what controllers are told of a reading that itself has no steps and no gaps.
/// Polls at the start of the run and every `every` after it, and tells   zero + step * round((reading - zero) / step),
/// halves away from zero. A poll may fail to come through: by chance, each with the same, apart from the others, or
/// because the radio is lost. The first one comes through unless the radio is lost: whoever hung it up looked.
/// When none has come through for `lost_after` it counts as lost: `good` goes from 1 to 0, a failure, until one does.
/// Not modelled: polls that come late, failures that come in bunches, noise.
class Instrument final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input reading;
    ChannelId told;              ///< set at polls; the reading's own unit
    ChannelId good;              ///< 1: what is told is fresh; 0: lost
    Tick every;                  ///< above zero
    double step = 0.0;           ///< of what is told; 0: none
    double zero = 0.0;           ///< what the steps count from: 273.15 K for a display in degC
    double dropout_share = 0.0;  ///< of all polls, 0 to 1
    Tick lost_after = kNever;    ///< since the last that came through; at least `every`
    std::uint64_t seed = 0;
    ChannelId fault{};  ///< an InstrumentFault; may be none
  };
  static constexpr bool kDecides = true;  // so that what it tells is there before devices act
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit Instrument(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kPoll, kLost };
  InstrumentFault fault_now(const Situation& situation) const;
  EventId fault_change(const Situation& situation) const;
  void poll(const Situation& situation, Actions& actions);
  void tell(const Situation& situation, Actions& actions);
  void miss(const Situation& situation, Actions& actions);
  void lose(const Situation& situation, Actions& actions);
  void note_fault(const Situation& situation, Actions& actions);

  Parameters p_;
  SeededChance chance_;
  std::uint64_t polls_ = 0;
  Tick next_poll_, heard_;
  InstrumentFault fault_ = InstrumentFault::none;
  EventId loss_ = kNoEvent;  ///< the entry that says so
  bool has_told_ = false;
  bool lost_ = false;
};

}  // namespace noonhouse
