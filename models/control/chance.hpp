// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <string_view>

namespace noonhouse {

/// A chance from 0 up to but not including 1, the same for ever for the same seed, name and number, on every machine:
/// the order in which a run asks does not matter, and one agent more changes nothing for the others.
/// FNV-1a, 64 bits, of the name [Fowler, Noll & Vo], then the mixing steps of a split generator [Steele, Lea
/// & Flood 2014, Proc. OOPSLA, 453, sec. 3]; constants from memory.
class SeededChance {
 public:
  SeededChance(std::uint64_t seed, std::string_view name) : start_(mixed(seed ^ hashed(name))) {}
  double of(std::uint64_t number) const {
    return static_cast<double>(mixed(start_ + kGolden * (number + 1)) >> 11) * 0x1p-53;
  }

 private:
  static constexpr std::uint64_t kGolden = 0x9e3779b97f4a7c15U;
  static constexpr std::uint64_t hashed(std::string_view name) {
    std::uint64_t out = 0xcbf29ce484222325U;
    for (const char c : name) out = (out ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
    return out;
  }
  static constexpr std::uint64_t mixed(std::uint64_t z) {
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31);
  }
  std::uint64_t start_;
};

}  // namespace noonhouse
