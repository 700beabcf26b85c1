// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/fault_search.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "tools/compare/in_parallel.hpp"

namespace noonhouse {
namespace {

constexpr Tick kCoarseEvery = 3_h, kFineEvery = 10_min;
constexpr Tick kBefore = 2_min;  ///< by which a failure is put in before it first makes a difference

/// The hour of the run's grid whose outdoor air is hottest; its day's midnight.
Tick hottest_day(const SiteTable& table) {
  std::size_t hottest = 0;
  for (std::size_t k = 1; k + 1 < table.instants(); ++k)
    if (table.instant(k).outdoor_k > table.instant(hottest).outdoor_k) hottest = k;
  const Tick when = table.spacing() * static_cast<std::int64_t>(hottest);
  return Tick{when.ms - when.ms % kDay.ms};
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
  EventId worst_event = kNoEvent;
  bool shown_harmless = false;
};

class Search {
 public:
  Search(const Assembly& assembly, const FaultSearch& how, const SiteTable& table,
         const std::vector<FaultPoint>& points)
      : assembly_(assembly), how_(how), branches_(assembly, how.stop), day_(hottest_day(table)) {
    for (const FaultPoint& point : points) cases_.push_back({point, {}, kNever, kNever, kNoEvent, false});
  }

  FaultSheet sheet() {
    report(0.1);
    hours();
    report(0.5);
    other_days();
    report(0.65);
    from_the_start();
    refine();
    report(0.75);
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

  void hours() {
    std::vector<Trial> trials;
    for (std::size_t i = 0; i < cases_.size(); ++i) {
      std::set<Tick> wanted;
      for (int hour = 0; hour < 24; ++hour)
        if (const Tick at = put_in_at(cases_[i], day_ + 1_h * hour); at != kNever) wanted.insert(at);
      for (const Tick at : wanted) trials.push_back({i, at, at + how_.horizon});
    }
    run(trials);
    for (const Trial& t : trials) cases_[t.of].tried[t.put_in] = t.harm;
    for (Case& c : cases_)
      for (int hour = 0; hour < 24; ++hour) {
        const Tick when = day_ + 1_h * hour;
        if (const Tick at = put_in_at(c, when); at != kNever) note(c, when, c.tried.at(at));
      }
  }

  /// Moments elsewhere in the run, each followed no further than what is worst so far.
  void other_days() {
    std::vector<Trial> trials;
    for (std::size_t i = 0; i < cases_.size(); ++i) {
      if (cases_[i].worst == kNever) continue;
      for (Tick when{0}; when < branches_.length(); when = when + kCoarseEvery) {
        const Tick at = put_in_at(cases_[i], when);
        if (at != when || (when >= day_ && when < day_ + kDay)) continue;  // later moments stand for it
        trials.push_back({i, at, at + cases_[i].worst_grace});
      }
    }
    run(trials);
    for (const Trial& t : trials) note(cases_[t.of], t.put_in, t.harm);
  }

  /// What does no harm on the hottest day: one failure that lasts through the run, then the hours before its first
  /// harm.
  void from_the_start() {
    std::vector<Trial> trials;
    for (std::size_t i = 0; i < cases_.size(); ++i)
      if (cases_[i].worst == kNever)
        if (const Tick at = put_in_at(cases_[i], Tick{0}); at != kNever) trials.push_back({i, at, branches_.length()});
    run(trials);
    std::vector<Trial> closer;
    for (const Trial& t : trials) {
      Case& c = cases_[t.of];
      if (t.harm.when == kNever) {
        c.shown_harmless = true;
        continue;
      }
      c.worst = t.put_in;
      c.worst_grace = t.harm.when - t.put_in;
      for (Tick back = 3_h; back < c.worst_grace && back <= kDay; back = back + kCoarseEvery)
        closer.push_back({t.of, t.harm.when - back, t.harm.when + 1_h});
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

  FaultSheet tell() const {
    FaultSheet out;
    out.hottest_day_s = seconds(day_);
    out.horizon_s = seconds(how_.horizon);
    out.faults.resize(cases_.size());
    in_parallel(cases_.size(), how_.threads, [&](std::size_t i) { out.faults[i] = told(cases_[i]); });
    add_additions(out.faults);
    std::stable_sort(out.faults.begin(), out.faults.end(), [](const FaultOutcome& a, const FaultOutcome& b) {
      if (a.harms != b.harms) return a.harms;
      return a.harms && a.worst_grace_s < b.worst_grace_s;
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
      const Tick when = day_ + 1_h * hour;
      const Tick at = put_in_at(c, when);
      const FirstHarm harm = at == kNever ? FirstHarm{} : c.tried.at(at);
      const bool in_time = harm.when != kNever && harm.when - when <= how_.horizon;
      out.grace_by_hour_s[static_cast<std::size_t>(hour)] = in_time ? seconds(harm.when - when) : kNotHappened;
    }
    out.harms = c.worst != kNever;
    if (!out.harms) return out;
    out.worst_s = seconds(c.worst);
    out.worst_grace_s = seconds(c.worst_grace);
    put_costs(c, out);
    return out;
  }

  /// What a failure at its worst moment costs by the end of the run, and how its first harm came about.
  void put_costs(const Case& c, FaultOutcome& out) const {
    const std::vector<LogEntry> log = branches_.log_of(c.point, put_in_at(c, c.worst));
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

  void add_additions(std::vector<FaultOutcome>& faults) const {
    struct Fitting {
      std::size_t of = 0, spare = 0;
      FirstHarm harm = {};
    };
    std::vector<Fitting> fittings;
    for (std::size_t i = 0; i < cases_.size(); ++i)
      if (cases_[i].worst != kNever)
        for (std::size_t s = 0; s < assembly_.spares.size(); ++s) fittings.push_back({i, s});
    in_parallel(fittings.size(), how_.threads, [&](std::size_t k) {
      Fitting& f = fittings[k];
      const Case& c = cases_[f.of];
      const Tick at = put_in_at(c, c.worst);
      f.harm = branches_.first_harm(c.point, at, c.worst + std::max(how_.horizon, c.worst_grace + 6_h),
                                    &assembly_.spares[f.spare]);
    });
    for (const Fitting& f : fittings) {
      FaultOutcome& fault = faults[f.of];
      const Tick when = cases_[f.of].worst;
      fault.additions.push_back(
          {assembly_.spares[f.spare].name, f.harm.when == kNever ? kNotHappened : seconds(f.harm.when - when)});
    }
    const auto time = [](const FaultAddition& a) { return std::isnan(a.grace_s) ? 1e18 : a.grace_s; };
    for (FaultOutcome& fault : faults)
      std::stable_sort(fault.additions.begin(), fault.additions.end(),
                       [&](const FaultAddition& a, const FaultAddition& b) { return time(a) > time(b); });
  }

  const Assembly& assembly_;
  const FaultSearch& how_;
  FaultBranches branches_;
  Tick day_;
  std::vector<Case> cases_;
};

template <class T>
void readers(const std::vector<Named<T>>& controls, const PlanScenario& plan, std::set<std::string>& out) {
  for (const auto& control : controls)
    if (plan.uses(control.name)) out.insert(control.value.sensor);
}

}  // namespace

std::vector<FaultPoint> fault_catalogue(const PlanScenario& plan, const Assembly& assembly) {
  std::set<std::string> read;
  readers(plan.spec.thermostats, plan, read);
  readers(plan.spec.humidistats, plan, read);
  readers(plan.spec.deficit_controls, plan, read);
  readers(plan.spec.staged_controls, plan, read);
  readers(plan.spec.proportional_controls, plan, read);
  for (const auto& rule : plan.spec.rules) read.insert(rule.value.sensor);
  std::vector<FaultPoint> out;
  for (const FaultPoint& point : assembly.fault_points) {
    const bool sensor = std::any_of(assembly.sensors.begin(), assembly.sensors.end(),
                                    [&](const SensorParts& s) { return s.name == point.of; });
    if (sensor && !read.contains(point.of)) continue;
    if (point.what == FailureKind::stuck_as_it_stands) continue;  // open or shut, whichever is worse, stands for it
    out.push_back(point);
  }
  return out;
}

FaultSheet search_faults(const Scenario& scenario, const PlanScenario& plan, const WeatherSeries& weather,
                         const FaultSearch& search) {
  const auto table = site_table(plan, weather);
  const Assembly assembly = assemble(plan, table, weather, true);
  FaultSheet sheet = Search(assembly, search, *table, fault_catalogue(plan, assembly)).sheet();
  sheet.scenario = scenario.name;
  sheet.plan = plan.name;
  sheet.start =
      fmt::format("{:04}-{:02}-{:02} 00:00:00", static_cast<int>(plan.spec.run.start.year()),
                  static_cast<unsigned>(plan.spec.run.start.month()), static_cast<unsigned>(plan.spec.run.start.day()));
  return sheet;
}

}  // namespace noonhouse
