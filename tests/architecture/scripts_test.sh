#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# The scripts parse, answer --help, refuse a word they do not know, and a failing step fails.
set -uo pipefail
cd "${NOONHOUSE_SOURCE_DIR:-$(dirname "$0")/../..}" || exit 1
bad=0
expect() { # expect STATUS COMMAND...
  local wanted=$1 got=0
  shift
  "$@" >/dev/null 2>&1 || got=$?
  if ((got != wanted)); then echo "status $got where $wanted was expected: $*"; bad=1; fi
}
for script in tools/demo tools/check .ci/run tools/build/setup.sh; do expect 0 bash -n "$script"; done
for script in tools/demo tools/check; do
  expect 0 "$script" --help
  expect 2 "$script" nonsense
done

source tools/build/setup.sh
logs=$(mktemp -d)
trap 'rm -rf "$logs"' EXIT
step "a step that works" works true >/dev/null || { echo "a working step failed"; bad=1; }
shown=$(step "a step that fails" fails bash -c 'echo the reason; exit 7'; echo "status $?")
[[ $shown == *FAILED* && $shown == *"the reason"* && $shown == *"status 7"* ]] || { echo "a failing step: $shown"; bad=1; }
step "a step that fails" fails false >/dev/null
[[ ${failed_steps[*]} == "a step that fails" ]] || { echo "failed steps: ${failed_steps[*]}"; bad=1; }
if command -v dpkg-query >/dev/null; then
  [[ $(missing_packages bash no-such-package-name) == no-such-package-name ]] || { echo "missing_packages is wrong"; bad=1; }
fi
exit "$bad"
