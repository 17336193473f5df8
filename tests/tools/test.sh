#!/usr/bin/env bash
# The second README command: installs what is missing, builds, and runs every test: the suite in a release build, the core
# and the command line again under AddressSanitizer and UndefinedBehaviorSanitizer, and the checks of style.
# Usage: test.sh [--nightly]    (with the larger counts)
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$here"
leave_out=(-LE nightly)
[ "${1:-}" = --nightly ] && leave_out=()

tests/tools/install-packages.sh build test check
tests/tools/check-style.sh

echo "== release build, all tests"
cmake -S . -B build-test -G Ninja -DCMAKE_BUILD_TYPE=Release -DPUNCHWRIGHT_BENCH=ON >/dev/null
cmake --build build-test
ctest --test-dir build-test --output-on-failure -j "$(nproc)" "${leave_out[@]}"

echo "== core tests under AddressSanitizer and UndefinedBehaviorSanitizer"
cmake -S . -B build-sanitized -G Ninja -DPUNCHWRIGHT_SANITIZE=ON -DPUNCHWRIGHT_EDITOR=OFF >/dev/null
cmake --build build-sanitized
ctest --test-dir build-sanitized --output-on-failure -j "$(nproc)" "${leave_out[@]}" -L core
