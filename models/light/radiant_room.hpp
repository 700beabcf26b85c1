// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "models/light/grid.hpp"

namespace noonhouse {

/// A part of a surface as thermal radiation meets it: its share of the surface's area, what it emits, what it lets
/// through to outdoors; it reflects the rest, diffusely.
struct RadiantPart {
  int surface = 0;
  double share = 1.0, emissivity = 0.9, transmittance = 0.0;
};

/// Effective areas A_e [m2] of net exchange of thermal radiation, all reflections counted:
///   Q_pq = A_e,pq sigma (T_p^4 - T_q^4),  A_e,pq = e_p A_p B_pq = A_e,qp
///   B_pq = F_pq e_q + sum_k F_pk (1 - e_k - t_k) B_kq      [Gebhart 1961; Siegel & Howell, sec. 7; from memory]
/// and, in the same way with t_q in place of e_q, what reaches outdoors through q.
struct RadiantRoom {
  Grid between;  ///< [part][part], symmetric to the bit; the diagonal is a part's exchange with itself
  Grid through;  ///< [part][part]: from the first to outdoors through the second
};

/// Of a closed room: each part's row of both grids sums to what it emits, e_p A_p.
RadiantRoom radiant_room(const Grid& exchange_m2, const std::vector<double>& areas_m2,
                         const std::vector<RadiantPart>& parts);

/// An exchange between a few pairs, and between all and one common centre.
struct ThinnedExchange {
  struct Pair {
    std::size_t a = 0, b = 0;
    double area_m2 = 0.0;
  };
  std::vector<Pair> pairs;
  std::vector<double> to_centre_m2;
};

/// Keeps every pair that makes up at least this share of the exchange of one of its two, and hands the others to a
/// centre that holds no heat, each with an area S_i that gives it the sum D_i of what was handed over,
///   S_i (1 - S_i / sum S) = D_i            [Carroll 1980, an MRT method of computing radiant exchange in rooms]
/// So at any temperatures nothing is lost, at equal ones nothing flows; only which of the small partners gets how much
/// is changed. The diagonal is left out.
ThinnedExchange thin_exchange(const Grid& between, double least_share);

}  // namespace noonhouse
