// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <fmt/format.h>

#include <string>
#include <string_view>
#include <type_traits>

#include "tools/text/markup.hpp"

namespace noonhouse {

/// JSON made safe inside a script element: every < becomes \u003c, which JSON reads as <.
std::string script_json(std::string_view json);

/// Adds markup written by us, its {} filled with text from anywhere, escaped. Numbers are formatted as they are.
template <std::size_t N, class... Values>
void add_html(std::string& out, const char (&markup)[N], const Values&... values) {
  const auto safe = [](const auto& value) {
    if constexpr (std::is_convertible_v<decltype(value), std::string_view>) {
      return html_escape(value);
    } else {
      return value;
    }
  };
  out += fmt::format(fmt::runtime(std::string_view(markup, N - 1)), safe(values)...);
}

}  // namespace noonhouse
