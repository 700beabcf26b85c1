// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/clock.hpp"
#include "models/control/hand_move.hpp"
#include "models/control/limits.hpp"

namespace noonhouse {

/// What the grower does about a sign: a reading, a tank, a charge over or under a limit, a fault, an alarm.
/// Present, the grower sees it at once and acts after the reaction time. Absent: with an alarm, is called and acts on
/// arrival, or after the next habitual presence if that is sooner; without, sees it at the next presence and acts a
/// reaction time later. If the sign is gone by then nothing is done. What was done is undone, if so wished, once the
/// sign is gone and the grower is there, after the reaction time; if the sign comes back first it is left as it is.
/// Undone means as it was found, or as the grower has left it for good since. Where another response that is to be
/// undone holds the same thing, the later one's setting stands until it is undone too.
/// Who is away neither sees nor comes. Someone who has seen the sign stays for the reaction time; someone who came
/// because called stays for `stays` from the arrival, and all responses that share `stays_until` reckon with it: a sign
/// that is there or comes meanwhile is seen, and nobody is called.
/// Not modelled: an alarm that is not heard, help by others, a sign that is misread, a call to somebody under way.
class GrowerResponse final : public Agent {
 public:
  struct Parameters {
    std::string name = "grower";
    Input sign;
    TwoLimits limits;
    std::string sees, does, undoes;  ///< in words, for the log
    std::vector<HandMove> moves{};
    bool undo = false;
    std::vector<DailyWindow> presence{};  ///< by habit; none: never there
    ChannelId away{};                     ///< above one half: away, whatever the habit; may be none
    ChannelId not_fitted{};               ///< above one half: there is no such alarm, and no answer; may be none
    Tick reaction{};
    bool alarm = false;
    Tick returns_within{};              ///< from the call to the arrival
    Tick stays{};                       ///< from that arrival
    ChannelId stays_until{};            ///< when the last of such stays ends, since the start [s]; may be none
    std::vector<std::string> blames{};  ///< agents whose standing failure explains a sign that no event set
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit GrowerResponse(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kSign, kAct };
  enum class Stage : std::uint8_t { rests, will_act, acted, will_undo };
  bool is_fitted(const Situation& situation) const;
  bool is_away(const Situation& situation) const;
  bool present(const Situation& situation) const;
  Tick next_presence(const Situation& situation) const;
  Tick acts_at(const Situation& situation) const;
  void sign_turned(const Situation& situation, Actions& actions);
  void call(const Situation& situation, Actions& actions);
  void book(Tick when, Actions& actions);
  void act(const Situation& situation, Actions& actions);
  void undo(const Situation& situation, Actions& actions);
  EventId cause(const Situation& situation) const;

  Parameters p_;
  LimitLatch sign_;
  Stage stage_ = Stage::rests;
  bool was_away_ = false;
  Tick arrives_ = kNever;      ///< of who is called
  Tick acts_ = kNever;         ///< as booked
  double heard_until_ = 0.0;   ///< the stay that was reckoned with [s]
  EventId event_ = kNoEvent;   ///< the call or the deed that what follows goes back to
  std::vector<double> found_;  ///< per move, before the deed
};

}  // namespace noonhouse
