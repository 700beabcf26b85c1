// SPDX-License-Identifier: Apache-2.0
// Speed of the stepping methods at equal accuracy, over whole weeks.
#include <benchmark/benchmark.h>
#include <fmt/core.h>

#include <cstdio>
#include <cstdlib>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "sim/core/errors.hpp"
#include "tests/bench/equal_accuracy.hpp"
#include "tests/support/demo_plan.hpp"
#include "tests/support/synthetic_house.hpp"

namespace noonhouse::bench {
namespace {

void print_help() {
  fmt::print(
      "Simulated days a core-second, steps a day and microseconds a step, ours against CVODE with KLU, each at the\n"
      "loosest tolerance that keeps node temperatures at hourly marks within the accuracy asked for at the 99th\n"
      "percentile; the reference is CVODE at a relative tolerance of 1e-9. Times are of one core's own work.\n\n"
      "  cmake --build build --target noonhouse_bench && build/tests/benchmarks\n\n"
      "  --house=NAME     free      the synthetic house without thermostats (default)\n"
      "                   switched  the synthetic house with thermostats\n"
      "                   demo:PLAN a plan of scenarios/heatwave/heatwave.yaml; demo-free:PLAN without its agents\n"
      "  --accuracy_k=X   the accuracy asked for [K], 0.02 by default\n"
      "  --days=N         length of the run where it is not the whole week\n"
      "  --table          show every tolerance tried\n"
      "  --benchmark_...  Google Benchmark's own, such as --benchmark_min_time=5 or --benchmark_repetitions=5\n");
}

struct Wish {
  std::string house = "free";
  double accuracy_k = 0.02;
  int days = 0;
  bool table = false;
};

/// The value of an argument of the form NAME=VALUE, or nothing.
const char* value_of_argument(std::string_view argument, std::string_view name) {
  const bool has =
      argument.size() > name.size() && argument.substr(0, name.size()) == name && argument[name.size()] == '=';
  return has ? argument.data() + name.size() + 1 : nullptr;
}

Wish read_wish(int argc, char** argv) {
  Wish wish;
  for (int i = 1; i < argc; ++i) {
    const std::string_view argument = argv[i];
    if (const char* house = value_of_argument(argument, "--house")) {
      wish.house = house;
    } else if (const char* accuracy = value_of_argument(argument, "--accuracy_k")) {
      wish.accuracy_k = std::strtod(accuracy, nullptr);
    } else if (const char* days = value_of_argument(argument, "--days")) {
      wish.days = static_cast<int>(std::strtol(days, nullptr, 10));
    } else if (argument == "--table") {
      wish.table = true;
    } else {
      throw UserError(ErrorKind::usage, fmt::format("'{}' is no option of the benchmarks; see --help", argument));
    }
  }
  if (!(wish.accuracy_k > 0.0) || wish.days < 0)
    throw UserError(ErrorKind::usage, "--accuracy_k wants a number above 0, --days a whole number of days");
  return wish;
}

RunPlan make_plan(const Wish& wish) {
  const auto named = [&](std::string_view prefix) { return wish.house.rfind(prefix, 0) == 0; };
  RunPlan plan;
  if (wish.house == "free" || wish.house == "switched") {
    plan = synthetic::make_plan({.thermostats = wish.house == "switched"});
  } else if (named("demo:") || named("demo-free:")) {
    plan = demo_plan(wish.house.substr(wish.house.find(':') + 1));
    if (named("demo-free:")) plan.agents.clear();
  } else {
    throw UserError(ErrorKind::usage, fmt::format("there is no house '{}': free, switched, demo:PLAN or "
                                                  "demo-free:PLAN, such as --house=switched",
                                                  wish.house));
  }
  if (wish.days > 0) plan.length = std::min(plan.length, kDay * wish.days);
  return plan;
}

/// Google Benchmark's own table, and the processor time of each method's run kept for the ratios.
class Reporter final : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override {
    for (const Run& run : runs)
      if (run.run_type == Run::RT_Iteration || run.aggregate_name == "median")
        run_s_[run.run_name.function_name] = run.cpu_accumulated_time / static_cast<double>(run.iterations);
    ConsoleReporter::ReportRuns(runs);
  }
  /// Processor time of one run [s]: the median where repetitions were asked for.
  double run_s(const std::string& name) const { return run_s_.at(name); }
  bool has(const std::string& name) const { return run_s_.count(name) > 0; }

 private:
  std::map<std::string, double> run_s_;
};

struct Contest {
  RunPlan plan;
  double days = 0.0;
  std::vector<std::pair<Method, Quality>> entries;
};

/// Gives every method its tolerance.
Contest prepare(const Wish& wish) {
  Contest out;
  out.plan = make_plan(wish);
  out.days = seconds(out.plan.length) / seconds(kDay);
  const MarkedRun reference = reference_of(out.plan);
  const House& house = out.plan.house;
  fmt::print("house '{}': {} states, {} exchanges, {} matrix entries; {:.0f} days, {:.1f} events a day\n", wish.house,
             house.states, house.exchanges.size(), house.pattern.entries(), out.days,
             static_cast<double>(reference.result.events) / out.days);
  for (const Method& method : methods()) {
    const auto show = [&](const Quality& q) {
      if (wish.table)
        fmt::print(
            "  {:<22} tolerance {:8.4f}: median {:.5f} K, 99 % {:.5f} K, worst {:.4f} K; events {:.3f} s; "
            "{:.0f} steps a day\n",
            method.name, q.tolerance, q.median_k, q.p99_k, q.worst_k, q.median_event_s, q.steps_a_day);
    };
    if (const auto quality = loosest(out.plan, method, reference, wish.accuracy_k, show))
      out.entries.emplace_back(method, *quality);
    else
      fmt::print("{} does not reach {} K at any tolerance tried\n", method.name, wish.accuracy_k);
  }
  return out;
}

void enrol(Contest& contest) {
  for (const auto& [method, quality] : contest.entries) {
    const auto run = [&contest, method = method, quality = quality](benchmark::State& state) {
      method.choose(contest.plan, quality.tolerance);
      for (auto _ : state) {
        Run whole(contest.plan);
        benchmark::DoNotOptimize(whole.go());
      }
      state.counters["days/core-s"] =
          benchmark::Counter(contest.days * static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
    };
    benchmark::RegisterBenchmark(method.name.c_str(), run)->Unit(benchmark::kMillisecond);
  }
}

void print_ratios(const Contest& contest, const Reporter& reporter, double accuracy_k) {
  fmt::print("\nat {} K (99th percentile of node temperatures at hourly marks):\n", accuracy_k);
  for (const auto& [method, quality] : contest.entries) {
    if (!reporter.has(method.name)) continue;
    const double run_s = reporter.run_s(method.name), steps = quality.steps_a_day * contest.days;
    fmt::print(
        "  {:<22} {:7.1f} days a core-second, {:6.0f} steps a day ({:.0f} rejected), {:5.2f} us a step, "
        "tolerance {:.3g}, median {:.5f} K, 99 % {:.5f} K, events {:.2f} s (median), {:.1f} a day\n",
        method.name, contest.days / run_s, quality.steps_a_day, quality.rejected_a_day, 1e6 * run_s / steps,
        quality.tolerance, quality.median_k, quality.p99_k, quality.median_event_s, quality.events_a_day);
  }
  const std::string own = contest.entries.empty() ? "" : contest.entries.front().first.name;
  for (const auto& [method, quality] : contest.entries)
    if (method.name != own && reporter.has(method.name) && reporter.has(own))
      fmt::print("  {} is {:.2f} times as fast as {} ({})\n", own, reporter.run_s(method.name) / reporter.run_s(own),
                 method.name, method.about);
}

int run(int argc, char** argv) {
  benchmark::Initialize(&argc, argv, print_help);
  const Wish wish = read_wish(argc, argv);
  Contest contest = prepare(wish);
  enrol(contest);
  Reporter reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  print_ratios(contest, reporter, wish.accuracy_k);
  return 0;
}

}  // namespace
}  // namespace noonhouse::bench

int main(int argc, char** argv) {
  try {
    return noonhouse::bench::run(argc, argv);
  } catch (const noonhouse::UserError& error) {
    fmt::print(stderr, "benchmarks: {}\n", error.what());
    return error.exit_status();
  }
}
