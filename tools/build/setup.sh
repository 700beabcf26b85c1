# SPDX-License-Identifier: Apache-2.0
# What tools/demo and tools/check share: what has to be installed, steps with their logs, the build.
# Sourced by bash, from the root of the project.

# Debian 12 names. For the program; beside it for the tests; beside both for the checks of the source text.
program_packages=(g++ cmake ninja-build pkg-config libboost-dev libyaml-cpp-dev libhdf5-dev libcli11-dev libeigen3-dev
  libfmt-dev nlohmann-json3-dev)
test_packages=(libgtest-dev libgmock-dev libbenchmark-dev libsundials-dev libsuitesparse-dev python3
  python3-xarray python3-netcdf4 python3-h5netcdf netcdf-bin python3-jsonschema python3-yaml python3-ephem chromium)
source_packages=(clang-format clang-tidy-16) # clang-tidy 14 does not parse all of C++20

jobs=$(nproc)
logs=build/logs
failed_steps=()

# missing_packages NAME...: the names that are not installed, one a line.
missing_packages() {
  local name
  for name in "$@"; do
    [[ $(dpkg-query -W -f='${db:Status-Status}' "$name" 2>/dev/null) == installed ]] || echo "$name"
  done
}

# install_missing NAME...: installs what is missing, as root or by sudo; says what to install when it cannot.
install_missing() {
  local as_root=() missing
  if ! command -v dpkg-query >/dev/null; then
    echo "This is no Debian system: nothing is installed for you. Needed, by their Debian 12 names:"
    echo "  $*"
    return 0
  fi
  mapfile -t missing < <(missing_packages "$@")
  if ((${#missing[@]} == 0)); then
    echo "all there"
    return 0
  fi
  if ((EUID != 0)); then
    if ! command -v sudo >/dev/null; then
      echo "Missing, and neither root nor sudo at hand to install it. Ask someone who may to run:"
      echo "  apt-get install --no-install-recommends ${missing[*]}"
      return 3
    fi
    as_root=(sudo)
  fi
  echo "installing: ${missing[*]}"
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -o Acquire::Retries=3 update -q &&
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -o Acquire::Retries=3 install -q -y \
      --no-install-recommends "${missing[@]}"
}

# step TITLE NAME COMMAND...: runs COMMAND with its output in build/logs/NAME.log; shows the end of it on failure.
step() {
  local title=$1 log=$logs/$2.log started=$SECONDS code=0
  shift 2
  mkdir -p "$logs"
  printf '%s ... ' "$title"
  "$@" >"$log" 2>&1 </dev/null || code=$?
  if ((code == 0)); then
    echo "ok ($((SECONDS - started)) s)"
  else
    echo "FAILED with status $code after $((SECONDS - started)) s; the end of $log:"
    tail -n 80 "$log" | sed 's/^/    /'
    failed_steps+=("$title")
  fi
  return "$code"
}

# build_preset PRESET: configures and builds one of the presets in CMakePresets.json.
build_preset() {
  cmake --preset "$1" && cmake --build --preset "$1" -j "$jobs"
}
