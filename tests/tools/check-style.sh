#!/usr/bin/env bash
# Checks of style: clang-format, the shell scripts, and (with --tidy, for it is slow) clang-tidy over sources and tests.
# Usage: check-style.sh [--tidy [BUILD [SINCE]]]   (with SINCE, a commit: only what changed since, and what includes that)
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$here"
mapfile -t sources < <(find src tests -name '*.cpp' -o -name '*.hpp' | sort)
echo "== clang-format over ${#sources[@]} files"
clang-format-16 --dry-run --Werror "${sources[@]}"
echo "== shellcheck"
find tests .ci \( -name '*.sh' -o -name run \) -print0 | xargs -0 shellcheck
[ "${1:-}" = --tidy ] || exit 0

build=${2:-build-test}
# Only what was built has its commands there: the editor and the benchmarks are left out where they were.
to_check=()
for source in "${sources[@]}"; do
  if [[ $source == *.cpp ]] && grep -qF "$here/$source\"" "$build/compile_commands.json"; then
    to_check+=("$source")
  fi
done
if [ -n "${3:-}" ]; then
  mapfile -t changed < <(git diff --name-only "$3" -- src tests)
  wanted=()
  for source in "${to_check[@]}"; do
    for file in "${changed[@]}"; do
      # Its own name, or a header as it stands in '#include "room/name.hpp"'.
      if [ "$source" = "$file" ] || { [[ $file == *.hpp ]] && grep -qF "\"${file#*/}\"" "$source"; }; then
        wanted+=("$source")
        break
      fi
    done
  done
  to_check=("${wanted[@]}")
fi
echo "== clang-tidy over ${#to_check[@]} files, with the commands of $build"
[ ${#to_check[@]} -eq 0 ] ||
  printf '%s\0' "${to_check[@]}" | xargs -0 -n 1 -P "$(nproc)" \
    clang-tidy-16 -p "$build" --quiet --extra-arg=-Wno-unknown-warning-option
