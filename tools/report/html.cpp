// SPDX-License-Identifier: Apache-2.0
#include "tools/report/html.hpp"

namespace noonhouse {

std::string script_json(std::string_view json) {
  std::string out;
  out.reserve(json.size());
  for (const char c : json) out += c == '<' ? std::string("\\u003c") : std::string(1, c);
  return out;
}

}  // namespace noonhouse
