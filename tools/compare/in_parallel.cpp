// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/in_parallel.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <exception>
#include <thread>
#include <vector>

namespace noonhouse {

void in_parallel(std::size_t count, int threads, const std::function<void(std::size_t)>& job,
                 const std::function<void()>& watch) {
  std::atomic<std::size_t> next{0}, done{0};
  std::vector<std::exception_ptr> errors(count);
  {
    std::vector<std::jthread> pool;
    const auto workers = std::min(count, static_cast<std::size_t>(std::max(threads, 1)));
    for (std::size_t w = 0; w < workers; ++w)
      pool.emplace_back([&] {
        for (std::size_t i = next++; i < count; i = next++) {
          try {
            job(i);
          } catch (...) {
            errors[i] = std::current_exception();
          }
          ++done;
        }
      });
    while (done < count) {
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
      watch();
    }
  }
  for (const auto& error : errors)
    if (error) std::rethrow_exception(error);
}

}  // namespace noonhouse
