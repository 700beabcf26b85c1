// SPDX-License-Identifier: Apache-2.0
// Long because it is one search, stage by stage.
#include "tools/faults/fault_search.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "tools/compare/in_parallel.hpp"
#include "tools/faults/fault_catalogue.hpp"
#include "tools/faults/house_breaks.hpp"

namespace noonhouse {
namespace {

constexpr Tick kCoarseEvery = 3_h, kFineEvery = 10_min;
constexpr Tick kCostsFor = kDay;      ///< after the first harm
constexpr Tick kAdditionsFor = 12_h;  ///< at least, after the harm without them
constexpr Tick kBefore = 2_min;       ///< by which a failure is put in before it first makes a difference

/// The midnight of the day whose outdoor air is hottest, of all but one; kNever where there is no other.
Tick hottest_day(const SiteTable& table, Tick but = kNever) {
  double high = 0.0;
  Tick out = kNever;
  for (std::size_t k = 0; k + 1 < table.instants(); ++k) {
    const Tick when = table.grid().when(k);
    const Tick midnight{when.ms - when.ms % kDay.ms};
    if (midnight == but || table.instant(k).outdoor_k <= high) continue;
    high = table.instant(k).outdoor_k;
    out = midnight;
  }
  return out;
}

/// "day 4 14:20"; runs start at midnight.
std::string day_clock(Tick when) {
  const std::int64_t minute = when.ms / (1_min).ms;
  return fmt::format("day {} {:02}:{:02}", minute / 1440 + 1, minute / 60 % 24, minute % 60);
}

/// What is known of one failure while it is searched.
struct Case {
  FaultPoint point;
  std::map<Tick, FirstHarm> tried;  ///< by the instant put in; followed for the whole horizon
  Tick worst = kNever, worst_grace = kNever;
  std::vector<FaultBreak> breaks;
};

class Search {
 public:
  Search(const Assembly& assembly, const FaultSearch& how, const SiteTable& table,
         const std::vector<FaultPoint>& points, std::vector<Danger> dangers)
      : assembly_(assembly),
        how_(how),
        branches_(assembly, how.stop),
        day_(hottest_day(table)),
        next_hottest_(hottest_day(table, day_)),
        told_day_(how.told_day == kNever ? day_ : how.told_day),
        dangers_(std::move(dangers)) {
    for (const FaultPoint& point : points) cases_.push_back({point, {}, kNever, kNever, {}});
  }

  FaultSheet sheet() {
    report(0.1);
    hours(day_);
    report(0.45);
    if (told_day_ != day_) hours(told_day_);
    report(0.5);
    other_days(harmful_cases(true));
    report(0.65);
    const std::vector<std::size_t> later = harmful_cases(false);
    from_the_start();
    other_days(later);
    refine();
    report(0.75);
    break_the_house();
    report(0.8);
    FaultSheet out = tell();
    report(1.0);
    return out;
  }

 private:
  void report(double share) const {
    if (how_.progress) how_.progress(share);
  }

  /// When a failure at an instant is put in: just before it makes a difference; kNever where it makes none.
  Tick put_in_at(const Case& c, Tick when) const {
    const Tick bites = branches_.bites_at(c.point, when);
    return bites == kNever ? kNever : std::max(when, bites - kBefore);
  }

  struct Trial {
    std::size_t of = 0;
    Tick put_in, until;
    FirstHarm harm = {};
  };
  void run(std::vector<Trial>& trials) const {
    in_parallel(trials.size(), how_.threads, [&](std::size_t i) {
      Trial& t = trials[i];
      t.harm = branches_.first_harm(cases_[t.of].point, t.put_in, t.until);
    });
  }

  /// Takes notice of a failure at `when` that was put in later: the time left counts from the failure.
  void note(Case& c, Tick when, const FirstHarm& harm) {
    if (harm.when == kNever || harm.when - when > how_.horizon) return;
    if (harm.when - when < c.worst_grace) {
      c.worst_grace = harm.when - when;
      c.worst = when;
    }
  }

  /// Whether what a failure does depends on what it meets at its instant. Of any other that does no harm from midnight
  /// on it is taken that it does none later in the day.
  static bool depends_on_its_instant(const FaultPoint& point) {
    return point.what == FailureKind::reads_frozen || point.what == FailureKind::reboots;
  }

  void hours(Tick day) {
    std::vector<bool> harmful(cases_.size(), false);  // on that day
    for (const bool all : {false, true}) {
      std::vector<Trial> trials;
      for (std::size_t i = 0; i < cases_.size(); ++i) {
        Case& c = cases_[i];
        if (all && !harmful[i]) continue;
        std::set<Tick> wanted;
        const auto want = [&](int hour) {
          const Tick at = put_in_at(c, day + 1_h * hour);
          if (at != kNever && !c.tried.contains(at)) wanted.insert(at);
        };
        const int hours = all || depends_on_its_instant(c.point) ? 24 : 1;
        for (int hour = 0; hour < hours; ++hour) want(hour);
        for (const Tick at : wanted) trials.push_back({i, at, at + how_.horizon});
      }
      run(trials);
      for (const Trial& t : trials) {
        cases_[t.of].tried[t.put_in] = t.harm;
        if (t.harm.when != kNever) harmful[t.of] = true;
      }
    }
    for (Case& c : cases_)
      for (int hour = 0; hour < 24; ++hour) note(c, day + 1_h * hour, harm_of(c, day + 1_h * hour));
  }

  /// What a failure at one of the hours tried comes to; nothing where it was not tried.
  FirstHarm harm_of(const Case& c, Tick when) const {
    const Tick at = put_in_at(c, when);
    const auto found = at == kNever ? c.tried.end() : c.tried.find(at);
    return found == c.tried.end() ? FirstHarm{} : found->second;
  }

  /// Other days at about the same hour, each followed no further than what is worst so far.
  void other_days(const std::vector<std::size_t>& of) {
    std::vector<Trial> trials;
    for (const std::size_t i : of) {
      if (cases_[i].worst == kNever) continue;
      const Tick clock{cases_[i].worst.ms % kDay.ms};
      for (Tick day{0}; day < branches_.length(); day = day + kDay)
        for (const Tick off : {Tick{0} - kCoarseEvery, Tick{0}, kCoarseEvery}) {
          const Tick when = day + clock + off;
          if (day == day_ || day == told_day_ || when < Tick{0} || when >= branches_.length()) continue;
          if (put_in_at(cases_[i], when) != when) continue;  // a later moment stands for it
          trials.push_back({i, when, when + std::min(cases_[i].worst_grace, how_.horizon)});
        }
    }
    run(trials);
    for (const Trial& t : trials) note(cases_[t.of], t.put_in, t.harm);
  }

  /// The cases that are known to do harm by now, or those that are not.
  std::vector<std::size_t> harmful_cases(bool known) const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < cases_.size(); ++i)
      if ((cases_[i].worst != kNever) == known) out.push_back(i);
    return out;
  }

  /// Whether what a failure does stays in a store or with people, so that days of it add up; a vent, a cloth, a control
  /// or a thermometer that is wet by mist do all they do within the day.
  bool adds_up(const FaultPoint& point) const {
    if (point.what == FailureKind::reboots || point.what == FailureKind::in_the_spray) return false;
    const auto device = std::find_if(assembly_.devices.begin(), assembly_.devices.end(),
                                     [&](const DeviceParts& d) { return d.name == point.of; });
    return device == assembly_.devices.end() || (device->sort != "opening" && device->sort != "shade");
  }

  /// What does no harm on the hottest day: where its days add up, one failure that lasts through the run, then the
  /// moments before its first harm; else the day that is next hottest.
  void from_the_start() {
    std::vector<Trial> trials;
    for (std::size_t i = 0; i < cases_.size(); ++i) {
      if (cases_[i].worst != kNever) continue;
      const bool through = adds_up(cases_[i].point);
      if (!through && next_hottest_ == kNever) continue;
      const Tick from = through ? Tick{0} : next_hottest_;
      if (const Tick at = put_in_at(cases_[i], from); at != kNever)
        trials.push_back({i, at, through ? branches_.length() : at + how_.horizon});
    }
    run(trials);
    std::vector<Trial> closer;
    for (const Trial& t : trials) {
      Case& c = cases_[t.of];
      if (t.harm.when == kNever) continue;
      c.worst = t.put_in;
      c.worst_grace = t.harm.when - t.put_in;
      for (Tick back = 3_h; back < c.worst_grace && back <= kDay; back = back + kCoarseEvery)
        closer.push_back({t.of, t.harm.when - back, t.harm.when + kCoarseEvery});
    }
    run(closer);
    for (const Trial& t : closer)
      if (t.harm.when != kNever && t.harm.when - t.put_in < cases_[t.of].worst_grace) {
        cases_[t.of].worst = t.put_in;
        cases_[t.of].worst_grace = t.harm.when - t.put_in;
      }
  }

  void refine() {
    std::vector<Trial> trials;
    for (std::size_t i = 0; i < cases_.size(); ++i) {
      const Case& c = cases_[i];
      if (c.worst == kNever) continue;
      for (int step = -5; step <= 5; ++step) {
        const Tick when{c.worst.ms + kFineEvery.ms * step};
        if (step == 0 || when.ms < 0 || put_in_at(c, when) != when) continue;
        trials.push_back({i, when, when + c.worst_grace});
      }
    }
    run(trials);
    for (const Trial& t : trials) note(cases_[t.of], t.put_in, t.harm);
  }

  void break_the_house() {
    in_parallel(cases_.size(), how_.threads,
                [&](std::size_t i) { cases_[i].breaks = house_breaks(branches_, cases_[i].point, dangers_); });
  }

  FaultSheet tell() const {
    FaultSheet out;
    out.told_day_s = seconds(told_day_);
    out.house_in_danger = !dangers_.empty();
    out.hottest_day_s = seconds(day_);
    out.horizon_s = seconds(how_.horizon);
    out.faults.resize(cases_.size());
    in_parallel(cases_.size(), how_.threads, [&](std::size_t i) { out.faults[i] = told(cases_[i]); });
    add_additions(out.faults);
    std::stable_sort(out.faults.begin(), out.faults.end(), [](const FaultOutcome& a, const FaultOutcome& b) {
      if (a.harms != b.harms) return a.harms;
      if (!a.harms) return !a.breaks.empty() && b.breaks.empty();
      return a.worst_grace_s < b.worst_grace_s;
    });
    std::set<std::string> lost;
    for (const LogEntry& entry : branches_.log())
      if (harm_gravity(entry) > 0) lost.insert(entry.subject);
    out.lost_anyway.assign(lost.begin(), lost.end());
    out.runs = branches_.runs();
    return out;
  }

  FaultOutcome told(const Case& c) const {
    FaultOutcome out;
    out.of = c.point.of;
    out.words = c.point.words;
    for (int hour = 0; hour < 24; ++hour) {
      const Tick when = told_day_ + 1_h * hour;
      const FirstHarm harm = harm_of(c, when);
      const bool in_time = harm.when != kNever && harm.when - when <= how_.horizon;
      out.grace_by_hour_s[static_cast<std::size_t>(hour)] = in_time ? seconds(harm.when - when) : kNotHappened;
    }
    out.breaks = c.breaks;
    out.harms = c.worst != kNever;
    if (!out.harms) return out;
    out.worst_s = seconds(c.worst);
    out.worst_grace_s = seconds(c.worst_grace);
    put_costs(c, out);
    return out;
  }

  /// What a failure at its worst moment costs by the end of the run, and how its first harm came about.
  void put_costs(const Case& c, FaultOutcome& out) const {
    const std::vector<LogEntry> log =
        branches_.log_of(c.point, put_in_at(c, c.worst), c.worst + c.worst_grace + kCostsFor);
    EventId first = kNoEvent;
    for (const LogEntry& entry : log) {
      if (!branches_.is_new_harm(entry)) continue;
      if (first == kNoEvent) first = entry.id;
      const auto colon = entry.what.find(':');
      const FaultCost cost{entry.subject, entry.what.substr(0, colon),
                           colon == std::string::npos ? entry.what : entry.what.substr(colon + 2), seconds(entry.when)};
      const auto same = std::find_if(out.costs.begin(), out.costs.end(),
                                     [&](const FaultCost& known) { return known.plants == cost.plants; });
      if (same == out.costs.end())
        out.costs.push_back(cost);
      else if (cost.state == "lost" && same->state != "lost")
        *same = cost;
    }
    for (EventId id = first; id != kNoEvent; id = log[static_cast<std::size_t>(id)].cause) {
      const LogEntry& link = log[static_cast<std::size_t>(id)];
      out.chain.push_back(fmt::format("{} {}, {}", link.subject, link.what, day_clock(link.when)));
    }
  }

  /// Until when an addition is followed: through the horizon, and well beyond the harm without it, while the run lasts.
  Tick additions_until(const Case& c) const {
    return std::min(branches_.length(), c.worst + std::max(how_.horizon, c.worst_grace + kAdditionsFor));
  }

  void add_additions(std::vector<FaultOutcome>& faults) const {
    struct Fitting {
      std::size_t of = 0, spare = 0;
      Tick until = {};
      FirstHarm harm = {};
    };
    std::vector<Fitting> fittings;
    for (std::size_t i = 0; i < cases_.size(); ++i)
      if (cases_[i].worst != kNever)
        for (std::size_t s = 0; s < assembly_.spares.size(); ++s)
          if (cases_[i].point.what != FailureKind::grower_away || assembly_.spares[s].fitted > 0.5)
            fittings.push_back({i, s, additions_until(cases_[i])});  // nobody who is away hears an alarm
    in_parallel(fittings.size(), how_.threads, [&](std::size_t k) {
      Fitting& f = fittings[k];
      const Case& c = cases_[f.of];
      const Tick at = put_in_at(c, c.worst);
      f.harm = branches_.first_harm(c.point, at, f.until, &assembly_.spares[f.spare]);
    });
    for (const Fitting& f : fittings) {
      FaultOutcome& fault = faults[f.of];
      const Tick when = cases_[f.of].worst;
      fault.additions.push_back({assembly_.spares[f.spare].name,
                                 f.harm.when == kNever ? kNotHappened : seconds(f.harm.when - when),
                                 seconds(f.until - when)});
    }
    const auto time = [](const FaultAddition& a) { return std::isnan(a.grace_s) ? 1e18 : a.grace_s; };
    for (FaultOutcome& fault : faults)
      std::stable_sort(fault.additions.begin(), fault.additions.end(),
                       [&](const FaultAddition& a, const FaultAddition& b) { return time(a) > time(b); });
  }

  const Assembly& assembly_;
  const FaultSearch& how_;
  FaultBranches branches_;
  Tick day_, next_hottest_, told_day_;
  std::vector<Danger> dangers_;
  std::vector<Case> cases_;
};

}  // namespace

FaultSheet search_faults(const Scenario& scenario, const PlanScenario& plan, const WeatherSeries& weather,
                         const FaultSearch& search) {
  const auto table = site_table(plan, weather);
  const Assembly assembly = assemble(plan, table, weather, true);
  FaultSheet sheet =
      Search(assembly, search, *table, fault_catalogue(plan, assembly), dangers(plan, assembly, *table)).sheet();
  sheet.scenario = scenario.name;
  sheet.plan = plan.name;
  sheet.start =
      fmt::format("{:04}-{:02}-{:02} 00:00:00", static_cast<int>(plan.spec.run.start.year()),
                  static_cast<unsigned>(plan.spec.run.start.month()), static_cast<unsigned>(plan.spec.run.start.day()));
  return sheet;
}

}  // namespace noonhouse
