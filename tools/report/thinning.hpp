// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <span>
#include <vector>

namespace noonhouse {

/// Which samples of several lines on one time axis a chart needs: in rising order, the first and the last
/// among them. All of them when there are at most `most`; else the samples are cut into equal groups and
/// of every group each line's lowest and highest are kept (as true samples, with all lines at that
/// instant), so that no extreme is lost. At most `most` plus two; `most` is at least two a line.
/// Values that are no number are passed over.
std::vector<std::size_t> thin_samples(const std::vector<std::span<const double>>& lines, std::size_t count,
                                      std::size_t most);

/// The highest of each group of samples; groups of equal length in samples, the last may be shorter.
/// No number where the group holds none.
std::vector<double> group_highest(std::span<const double> values, std::size_t group);

}  // namespace noonhouse
