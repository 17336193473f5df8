#!/usr/bin/env bash
# Checks of style: clang-format, the shell scripts, and (with --tidy, for it is slow) clang-tidy over every source file.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$here"
mapfile -t sources < <(find src tests -name '*.cpp' -o -name '*.hpp' | sort)
echo "== clang-format over ${#sources[@]} files"
clang-format-16 --dry-run --Werror "${sources[@]}"
echo "== shellcheck"
find tests .ci \( -name '*.sh' -o -name run \) -print0 | xargs -0 shellcheck
if [ "${1:-}" = --tidy ]; then
  build=${2:-build-test}
  echo "== clang-tidy over src, with the commands of $build"
  find src -name '*.cpp' -print0 | sort -z | xargs -0 -n 4 -P "$(nproc)" \
    clang-tidy-16 -p "$build" --quiet --extra-arg=-Wno-unknown-warning-option
fi
