// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <vector>

#include "sim/core/tick.hpp"
#include "tools/scenario/scenario_spec.hpp"

namespace noonhouse {

/// The instants at which a run's sun and weather are computed, with straight lines between: every `sun_every` from the
/// start to the first not before the end, and between them where a cloudburst bends and where gusts begin and cease. So
/// short weather is whole in a run, at its own cost alone.
class RunGrid {
 public:
  explicit RunGrid(const ScenarioSpec& spec);

  std::size_t size() const { return instants_.size(); }
  Tick when(std::size_t k) const { return instants_[k]; }
  Tick spacing() const { return spacing_; }  ///< of the regular instants
  bool is_regular(std::size_t k) const { return instants_[k].ms % spacing_.ms == 0; }
  /// The interval between instants that an instant lies in; one that bounds two is in the later. The last interval
  /// for all that is later.
  std::size_t interval_at(Tick t) const;

 private:
  Tick spacing_;
  std::vector<Tick> instants_;
};

}  // namespace noonhouse
