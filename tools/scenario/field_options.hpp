// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>
#include <utility>
#include <vector>

namespace noonhouse {

/// Limits and default of a quantity; limits in SI, the default as a person would write it ("100 %"). Without a
/// default the field is required.
struct QuantityOptions {
  double minimum = -std::numeric_limits<double>::infinity();
  bool exclusive_minimum = false;
  double maximum = std::numeric_limits<double>::infinity();
  bool exclusive_maximum = false;
  const char* default_text = nullptr;
  const char* about = nullptr;
  const char* unit = nullptr;  ///< that people write it in, where neither the default nor usual_unit says so
};

struct IntegerOptions {
  std::int64_t minimum = std::numeric_limits<std::int64_t>::min();
  std::int64_t maximum = std::numeric_limits<std::int64_t>::max();
  const char* default_text = nullptr;
  const char* about = nullptr;
};

struct PlainOptions {
  const char* default_text = nullptr;
  const char* about = nullptr;
};

/// A key and what its value reads like, such as "measures" and "temperature"; empty: anything.
using KeyAndText = std::pair<std::string, std::string>;

/// A text that names an item of a mapping elsewhere in the scenario.
struct NameOptions {
  std::vector<const char*> of;         ///< dotted paths from the root, such as {"house.bays"}
  std::vector<const char*> also = {};  ///< further words allowed, such as {"outside"}
  KeyAndText having = {};              ///< of the items, only those with this value
  const char* default_text = nullptr;
  const char* about = nullptr;
};

struct GroupOptions {
  const char* about = nullptr;
  const char* example = nullptr;  ///< the least of it that can be run, to copy where it is missing altogether
};

/// Without `required`, an absent list or mapping of named items is an empty one.
struct ListOptions {
  bool required = false;
  std::size_t minimum_count = 0;  ///< checked where the list is present
  std::size_t maximum_count = 10'000;
  const char* about = nullptr;
};

/// A word in the file and what it means.
template <class T>
struct Choice {
  const char* word;
  T value;
};

/// An item of a mapping of named items; a std::vector<Named<T>> keeps the file's order.
template <class T>
struct Named {
  std::string name;
  T value;
};

}  // namespace noonhouse
