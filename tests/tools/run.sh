#!/usr/bin/env bash
# The first README command: installs what is missing, builds, and does the main job on a demo: card, needle chart and
# picture of the cloth into a folder; then opens the editor on the demo where there is a display.
# Usage: run.sh [FOLDER]    (default: demo, beside the README)
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$here"
folder=${1:-$here/demo}
design=patterns/puffin-cove.repeat

tests/tools/install-packages.sh build
cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DPUNCHWRIGHT_TESTS=OFF >/dev/null
cmake --build build

mkdir -p "$folder"
program=build/punchwright
faults=0
# Exit 1 says that the design has faults: worth a word, no reason to stop.
run() { "$program" "$@" || { [ $? -eq 1 ] && faults=1; }; }
echo
run check "$design"
run card "$design" -o "$folder/puffin-cove card.pdf"
run card "$design" -o "$folder/puffin-cove card.svg"
run card "$design" -o "$folder/puffin-cove card.txt"
run needles "$design" -o "$folder/puffin-cove needles.pdf"
run needles "$design" -o "$folder/puffin-cove needles.html"
run fabric "$design" -o "$folder/puffin-cove fabric.png"
echo
echo "The card template, the needle chart and the picture of the cloth are in"
echo "  $folder"
[ "$faults" -eq 0 ] || echo "The design has faults; they are named above."
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  echo "Opening the editor on $design; close its window to end."
  "$program" "$design" || echo "The editor could not be opened; everything else is done."
else
  echo "There is no display here, so the editor is not opened. Where there is one:"
  echo "  $here/$program $design"
fi
