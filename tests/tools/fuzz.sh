#!/usr/bin/env bash
# Runs libFuzzer's program for readers of tests/fuzz, with AddressSanitizer and UndefinedBehaviorSanitizer, so many times each,
# and says what was found. What is new is kept in FOLDER/found/READER, whatever broke a promise in FOLDER/fault-READER-…;
# `keep` takes what adds to the coverage into the corpus, the shortest first.
# Usage: fuzz.sh COUNT [READER ...]      (such as fuzz.sh 1000000 yoke; none: all)
#        fuzz.sh keep [READER ...]
# FOLDER is build-fuzz, or what PUNCHWRIGHT_FUZZ_FOLDER names. With PUNCHWRIGHT_FUZZ_COMPARES=OFF comparisons aren't followed:
# for large counts once the corpus has what they lead to.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$here"
folder=${PUNCHWRIGHT_FUZZ_FOLDER:-$here/build-fuzz}
wish=${1:?how often?}
shift
readers=("$@")
[ ${#readers[@]} -gt 0 ] || mapfile -t readers < <(find tests/fuzz/corpus -mindepth 1 -maxdepth 1 -printf '%f\n' | sort)

tests/tools/install-packages.sh build test measure
cmake -S . -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_COMPILER=clang++-16 \
  -DPUNCHWRIGHT_FUZZ=ON -DPUNCHWRIGHT_FUZZ_COMPARES="${PUNCHWRIGHT_FUZZ_COMPARES:-ON}" -DPUNCHWRIGHT_EDITOR=OFF >/dev/null
cmake --build "$folder" --target "${readers[@]/#/fuzz_}" >/dev/null

found=0
for reader in "${readers[@]}"; do
  program=$folder/tests/fuzz/fuzz_$reader
  new=$folder/found/$reader
  mkdir -p "$new"
  if [ "$wish" = keep ]; then
    "$program" -merge=1 -max_len=4096 "tests/fuzz/corpus/$reader" "$new" 2>/dev/null
    continue
  fi
  # Texts are short where readers differ; pictures may claim to be large, and must be refused within this memory.
  began=$SECONDS
  words=$("$program" -runs="$wish" -entropic=0 -max_len=4096 -timeout=20 -rss_limit_mb=2048 -print_final_stats=1 \
    -artifact_prefix="$folder/fault-$reader-" "$new" "tests/fuzz/corpus/$reader" 2>&1) || found=1
  echo "$reader: $(awk '/number_of_executed_units/ { runs = $2 } END { printf "%d executions", runs }' <<<"$words"),"\
    "$(find "$folder" -maxdepth 1 -name "fault-$reader-*" | wc -l) findings, $((SECONDS - began)) seconds"
  grep -E "^(SUMMARY|==[0-9]+==ERROR|a |what |pixels )|runtime error" <<<"$words" || true
done
exit $found
