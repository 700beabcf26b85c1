// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <vector>

/// Ventilation as a tracer gas shows it. Zones are well mixed; concentrations are any one unit, ppm or kg/m3.
namespace noonhouse {

/// Air changes per second [1/s] of one well-mixed zone, from the concentration of a tracer before and after a time [s]:
///   n = ln((c_0 - c_out) / (c_1 - c_out)) / t   [decay method; Nederhoff, van de Vooren & Udink ten Cate 1985,
/// J. Agric. Eng. Res. 31, 309]. Negative if it rose. Throws UserError unless both lie on one side of the outdoor
/// air's.
double air_change_from_decay_1_s(double before, double after, double outdoors, double time_s);

/// A zone's own volume and what outdoor air does to it, volume flows [m3/s].
struct FlushedZone {
  double volume_m3 = 0.0;
  double from_outdoors_m3_s = 0.0;
  double to_outdoors_m3_s = 0.0;
};

/// Air that goes from one zone to another, by their places in the list of zones.
struct ZoneStream {
  std::size_t from = 0, to = 0;
  double flow_m3_s = 0.0;
};

/// Zones with constant flows between them and outdoors:  V dc/dt = -A (c - c_out), A of what leaves each zone on its
/// diagonal and less what comes from other zones beside it [Sandberg 1981, Build. Environ. 16, 123; Etheridge &
/// Sandberg 1996, Building Ventilation; from memory]. All air of one density; not modelled: short cuts within a zone.
/// Makes sense of given flows after a run, for its report; no law of a run.
class FlushedZones {
 public:
  /// Throws UserError, naming the zone, where volume or flow is out of range, a zone gets another flow than it gives,
  /// to 1e-6 of it, or no outdoor air reaches it.
  FlushedZones(std::vector<FlushedZone> zones, std::vector<ZoneStream> streams);

  /// Concentrations after a time [s] from these, one a zone:  c_out + exp(-V^-1 A t) (c - c_out).
  std::vector<double> after(double time_s, const std::vector<double>& before, double outdoors) const;

  /// Mean age of the air in each zone [s], the time since it came in:  tau = A^-1 V 1   [Sandberg 1981], which is the
  /// area under the zone's decay from a house filled evenly with one.
  std::vector<double> local_mean_age_s() const;

  /// Mean age over the whole volume [s].
  double mean_age_s() const;

  /// Volume over the flow of outdoor air [s]: also the mean age of the air that leaves, whatever the flows inside.
  double nominal_time_s() const;

  /// Nominal time over twice the mean age [-]: 0.5 if all is mixed, 1 for a piston, less where air short-circuits.
  ///   [Sandberg 1981]
  double air_change_efficiency() const { return nominal_time_s() / (2.0 * mean_age_s()); }

  /// Slowest rate of decay [1/s], that of the house as a whole once the fast ones are over: the least real part of the
  /// eigenvalues of V^-1 A. Above zero.
  double slowest_decay_1_s() const;

  /// Mean rate of decay of the house's mean concentration over a time [1/s], from a house filled evenly.
  double mean_decay_1_s(double time_s) const;

 private:
  std::vector<FlushedZone> zones_;
  std::vector<ZoneStream> streams_;
};

}  // namespace noonhouse
