// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <functional>

namespace noonhouse {

/// Runs job(0) .. job(count - 1), each once, on several threads, while `watch` is called from this one. The first
/// exception in the order of the jobs is thrown once all have ended.
void in_parallel(
    std::size_t count, int threads, const std::function<void(std::size_t)>& job,
    const std::function<void()>& watch = [] {});

}  // namespace noonhouse
