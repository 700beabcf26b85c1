// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <gtest/gtest.h>

#include <string>

namespace noonhouse {

/// A row's name in the list of tests: its words, with marks that are no letters as lines.
inline constexpr auto kRowName = [](const auto& tested) {
  std::string name = tested.param.what;
  for (char& c : name)
    if (c == ' ' || c == ',') c = '_';
  return name;
};

}  // namespace noonhouse
