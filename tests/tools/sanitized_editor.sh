#!/usr/bin/env bash
# The editor itself under AddressSanitizer and UndefinedBehaviorSanitizer, driven by a sample of the window tests: any
# report ends the run with 1. Slow to build, so it belongs to the nightly run.
# Usage: sanitized_editor.sh [--keep FOLDER] [TEST...]    (default: drawing bench files yarns rows)
# --keep names a folder for the build, so that another run is quicker.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
build=
if [ "${1:-}" = --keep ]; then
  build=$2
  shift 2
  mkdir -p "$build"
fi
reports=$(mktemp -d)
trap 'rm -rf "$reports" ${scratch:-}' EXIT
[ -n "$build" ] || build=${scratch:=$(mktemp -d)}
[ $# -gt 0 ] || set -- drawing bench files yarns rows

cmake -S "$here" -B "$build" -G Ninja -DPUNCHWRIGHT_SANITIZE=ON >/dev/null
cmake --build "$build" --target punchwright punchwright-editor

# Leaks aren't looked for: a software renderer keeps what it allocated until the process ends, and tests kill the editor.
export ASAN_OPTIONS=detect_leaks=0:log_path=$reports/address UBSAN_OPTIONS=print_stacktrace=1:log_path=$reports/undefined
export PUNCHWRIGHT=$build/punchwright PUNCHWRIGHT_EDITOR=$build/punchwright-editor
export PUNCHWRIGHT_HANGS_AFTER=${PUNCHWRIGHT_HANGS_AFTER:-600} PYTHONDONTWRITEBYTECODE=1
failed=0
for job in "$@"; do
  echo "== $job"
  /usr/bin/python3 "$here/tests/editor/${job}_test.py" || failed=1
done
found=$(find "$reports" -type f | wc -l)
[ "$found" -eq 0 ] || cat "$reports"/*
echo "$found reports of the sanitizers in: $*"
[ "$found" -eq 0 ] && [ "$failed" -eq 0 ]
