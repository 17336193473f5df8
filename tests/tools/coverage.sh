#!/usr/bin/env bash
# Measures which lines of everything below the editor the tests run: an instrumented build of its own, the core tests and those
# of the command line, and a table of the files with the least, the least first; then the whole.
# Usage: coverage.sh [FILES]      (how many files to name; 25)
# It builds in build-coverage, or where PUNCHWRIGHT_COVERAGE_FOLDER says.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$here"
folder=${PUNCHWRIGHT_COVERAGE_FOLDER:-$here/build-coverage}
files=${1:-25}

tests/tools/install-packages.sh build test measure
# Without exceptions' hidden branches and without optimizing: lines are what is counted.
cmake -S . -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS="--coverage -O1 -fno-inline" -DCMAKE_CXX_FLAGS_DEBUG= \
  -DPUNCHWRIGHT_EDITOR=OFF >/dev/null
cmake --build "$folder" -j "$(nproc)" >/dev/null
find "$folder" -name '*.gcda' -delete
PUNCHWRIGHT_DOCUMENTS=1000 ctest --test-dir "$folder" -L core -LE nightly -j "$(nproc)" >"$folder/tests.log" 2>&1 || true
tail -n 12 "$folder/tests.log" | grep -E "tests passed|Failed|Timeout" || true
# Where a test forbids the program to write, it can't write its counts either and complains: these two fail here alone.
failed=0
awk '/\((Failed|Timeout)\)$/ && $3 != "cli_input" && $3 != "cli_output" { exit 1 }' "$folder/tests.log" || failed=1
gcovr --root "$here" --filter "$here/src/" --exclude "$here/src/editor/" --object-directory "$folder" --csv "$folder/lines.csv" \
  "$folder" >/dev/null
# file, lines, run, of one
awk -F, 'NR > 1 { printf "%5.1f %% of %4d  %s\n", $2 ? 100 * $3 / $2 : 100, $2, $1; all += $2; run += $3 }
  END { printf "%5.1f %% of %d lines in all\n", 100 * run / all, all > "/dev/stderr" }' "$folder/lines.csv" 2>"$folder/whole.txt" |
  sort -n | head -n "$files"
cat "$folder/whole.txt"
exit $failed
