// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <string_view>

namespace noonhouse {

/// Text made safe between tags and inside quoted attributes, of HTML and of XML: & < > " ' become entities, control
/// characters other than tab and newline are dropped.
std::string html_escape(std::string_view text);

}  // namespace noonhouse
