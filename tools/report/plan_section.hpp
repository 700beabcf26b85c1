// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/compare/comparison.hpp"
#include "tools/record/run_record.hpp"
#include "tools/report/chart_data.hpp"
#include "tools/report/event_list.hpp"
#include "tools/report/heat_picture.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// One plan with what the page shows of it. The record outlives it.
struct PlanPage {
  const RunRecord* record = nullptr;
  RankedPlan place;
  std::vector<Chart> charts;
  ShownEvents events;
  double start_hour = 0.0;  ///< hour of the day at second 0
  HeatScale heat;           ///< of all plans together
};

/// Hour of the day at which the run starts.
double start_hour(const RunRecord& record);

/// One plan: what went wrong, its plants, how long its stores carry, charts and their tables, its book of heat, its
/// events. `number` counts from 0.
void add_plan_section(std::string& out, const PlanPage& plan, std::size_t number, UnitSystem units);

}  // namespace noonhouse
