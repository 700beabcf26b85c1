// SPDX-License-Identifier: Apache-2.0
#include "sim/contract/agent.hpp"

namespace noonhouse {

std::string_view event_kind_name(EventKind kind) {
  switch (kind) {
    case EventKind::action:
      return "action";
    case EventKind::weather:
      return "weather";
    case EventKind::people:
      return "people";
    case EventKind::warning:
      return "warning";
    case EventKind::failure:
      return "failure";
    case EventKind::harm:
      return "harm";
  }
  return "action";
}

}  // namespace noonhouse
