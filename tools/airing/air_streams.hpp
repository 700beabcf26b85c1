// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "sim/integrate/junctions.hpp"
#include "tools/scenario/assemble.hpp"

/// The streams of air of a running house, read off its fluxes: what a recorder sees, no law of a run.
namespace noonhouse {

struct AirState {
  double temperature_k = 0.0, humidity_ratio = 0.0;
};

/// What one exchange carries on the whole, positive from a to b.
struct CarriedAir {
  double air_kg_s = 0.0, vapour_kg_s = 0.0, enthalpy_w = 0.0;
};

/// Dry air both ways through one exchange [kg/s], neither negative.
struct TwoWayAir {
  double a_to_b_kg_s = 0.0, b_to_a_kg_s = 0.0;
};

/// Both streams behind a net flow. Every law of air carries each stream with the state of where it comes from, so
///   q_air = m_ab - m_ba,   q = m_ab x_a - m_ba x_b   for x the enthalpy or the humidity ratio of a and b
/// and m_ba = (q - q_air x_a) / (x_a - x_b). Of the two, that is taken which differs more for its size. Where neither
/// differs by a billionth the streams cannot be told apart, and the net flow alone is returned.
TwoWayAir two_ways(const CarriedAir& net, const AirState& a, const AirState& b);

/// Whether two_ways() can tell streams between these states apart.
bool told_apart(const AirState& a, const AirState& b);

/// A body of air taken as well mixed: a layer of a bay, or the column that rises beside it.
struct AirZone {
  int bay = 0;
  std::size_t layer = 0;
  bool column = false;
  double dry_air_kg = 0.0;
};

enum class AirWayKind { opening, crack, inside };
inline constexpr int kOutdoorsZone = -1;

/// One exchange of air. Openings and cracks lead from a zone (a) to outdoors (b).
struct AirWay {
  std::string name;  ///< what the pieces of one way share: the opening's name, "cracks of the front wall of ..."
  AirWayKind kind = AirWayKind::inside;
  int a = 0, b = kOutdoorsZone;  ///< zones
};

/// Reads the streams of one assembled house; the assembly must outlive it.
class AirStreams {
 public:
  explicit AirStreams(const Assembly& assembly);

  const std::vector<AirZone>& zones() const { return zones_; }
  const std::vector<AirWay>& ways() const { return ways_; }

  /// Dry air through each way [kg/s], in the order of ways(), from all potentials of the house at an instant. Between
  /// the ends of a step pressures are only near to right, so they are settled first for the states given. What a
  /// column of rising air takes in or gives up on the whole is what its other ways leave over; valid until the next
  /// call.
  const std::vector<TwoWayAir>& flowing(std::span<const double> potentials);

  /// Whether at the last call both streams of every way were known, not the net flow alone.
  bool told_apart() const { return told_apart_; }

  /// The potentials of the last call with their settled pressures.
  std::span<const double> settled() const { return potentials_; }

  AirState state_of(int zone) const;  ///< at the last call; outdoors for kOutdoorsZone

 private:
  struct Source {  ///< where a way's numbers are found
    int air = -1, vapour = -1, energy = -1;
  };
  void find_zones();
  void find_ways();
  int zone_of(int amount) const;
  std::string way_name(const std::string& exchange, AirWayKind kind) const;
  void settle(std::span<const double> potentials);
  void fill_columns();

  const Assembly& assembly_;
  std::vector<AirZone> zones_;
  std::vector<int> zone_of_amount_;  ///< by state that counts a zone's vapour; -2 for any other
  std::vector<int> state_;           ///< per zone: where its temperature stands, its humidity behind it
  std::vector<AirWay> ways_;
  std::vector<Source> sources_;
  std::vector<std::size_t> batches_;  ///< that hold ways
  Junctions junctions_;
  std::vector<double> potentials_, amounts_, flux_, net_;
  std::vector<TwoWayAir> streams_;
  bool told_apart_ = true;
};

}  // namespace noonhouse
