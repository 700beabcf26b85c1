// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/field_visitor.hpp"

namespace noonhouse {

std::vector<std::string> FieldVisitor::numbered(std::size_t count) {
  std::vector<std::string> labels;
  for (std::size_t i = 1; i <= count; ++i) labels.push_back(std::to_string(i));
  return labels;
}

}  // namespace noonhouse
