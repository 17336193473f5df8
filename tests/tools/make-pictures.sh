#!/usr/bin/env bash
# Renews every picture in docs/pictures with the program itself: cloth, card, chart, sheets, and of the editor in a window
# on a private Xvfb those that are not kept in docs/screens (screens.py). Look at each before it is committed.
# Usage: make-pictures.sh [BUILD]    (default: build; the built program and editor)
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
build=$(cd "${1:-$here/build}" && pwd)
program=$build/punchwright
editor=$build/punchwright-editor
patterns=$here/patterns
pictures=$here/docs/pictures
largest=$((250 * 1000)) # bytes of a picture; the guide is read over slow lines as well

mkdir -p "$pictures"
work=$(mktemp -d)
server=
finish() {
  [ -z "$server" ] || kill "$server" 2>/dev/null || true
  rm -rf "$work"
}
trap finish EXIT

# Exit 1 says that the design has faults; the picture is made all the same.
run() { "$program" "$@" >/dev/null 2>"$work/complaint" || { [ $? -eq 1 ] || { cat "$work/complaint" >&2; exit 2; }; }; }

# A palette without dither keeps flat colours and makes a third of the bytes; -strip drops times and host names.
shrink() {
  local from=$1 name=$2
  shift 2
  convert "$from" "$@" -strip +dither -colors 200 "PNG8:$pictures/$name.png"
}

cloth() {
  local name=$1
  shift
  run fabric "$patterns/$name.repeat" -o "$work/$name.png"
  shrink "$work/$name.png" "cloth-$name" "$@"
}

# One page of a PDF, at about two thirds of a screen's density.
page() {
  local pdf=$1 number=$2 name=$3
  pdftoppm -r 75 -png -singlefile -f "$number" -l "$number" "$pdf" "$work/$name"
  shrink "$work/$name.png" "$name" -bordercolor '#b9b2a6' -border 1
}

window() {
  local name=$1
  shift
  timeout 60 "$editor" "$@" --picture "$work/$name.png"
  shrink "$work/$name.png" "$name"
}

cloth puffin-cove
cloth buoy-line
cloth tide-waves -crop 1250x672+0+0 +repage
cloth harbour-lanterns -crop 1130x660+0+0 +repage
cloth hood-border
cloth shore-crabs
cloth poncho-hem -crop 1168x870+0+0 +repage

run card "$patterns/puffin-cove.repeat" -o "$work/card.pdf"
page "$work/card.pdf" 1 card-first-page
page "$work/card.pdf" 2 card
run needles "$patterns/puffin-cove.repeat" -o "$work/chart.pdf"
page "$work/chart.pdf" 1 chart
run needles "$patterns/shore-crabs.repeat" -o "$work/by-hand.pdf"
page "$work/by-hand.pdf" 1 chart-by-hand
run leaflet "$patterns/puffin-cove.repeat" -o "$work/leaflet.pdf"
page "$work/leaflet.pdf" 1 leaflet
run measure bulky-card-24 -o "$work/measure.pdf"
page "$work/measure.pdf" 1 measure
run swatch bulky-card-24 -o "$work/swatch.pdf"
page "$work/swatch.pdf" 1 swatch

# Before and after mending; the table that it prints stands in docs/mending.md.
/usr/bin/python3 -B "$here/tests/tools/mend_gallery.py" "$program" "$work"
for mended in "$work"/mend-*.ppm; do
  shrink "$mended" "$(basename "$mended" .ppm)"
done

exec 3<>"$work/display"
Xvfb -displayfd 3 -screen 0 1600x1200x24 -noreset -nolisten tcp >/dev/null 2>&1 &
server=$!
for _ in $(seq 100); do
  [ -s "$work/display" ] && break
  sleep 0.1
done
DISPLAY=:$(tr -d '[:space:]' <"$work/display")
export DISPLAY LIBGL_ALWAYS_SOFTWARE=1
unset WAYLAND_DISPLAY

window editor "$patterns/puffin-cove.repeat" --size 1440x900
"$program" chart "$patterns/puffin-cove.repeat" -o "$work/pattern-chart.png" >/dev/null
shrink "$work/pattern-chart.png" pattern-chart -resize 50%
hood=$patterns/hood-border.repeat
window editor-bench "$hood" --size 1440x900 --dialog bench --done 22
window play-begin "$hood" --size 1280x800 --dialog play
window play-selected "$hood" --size 1280x800 --dialog play --done 2
window play-middle "$hood" --size 1280x800 --dialog play --done 10
window editor-wrong "$hood" --size 1280x800 --dialog wrong --done 8

window editor-yoke-new --size 1280x800 --dialog new-yoke
yoke=$patterns/harbour-pullover.yoke
window editor-yoke "$yoke" --size 1280x800
window editor-yoke-worn "$yoke" --size 1280x800 --yoke worn
window editor-yoke-bed "$yoke" --size 1280x800 --yoke bed

too_large=0
for picture in "$pictures"/*.png; do
  bytes=$(stat -c %s "$picture")
  printf '%8d  %s\n' "$bytes" "${picture#"$here"/}"
  [ "$bytes" -le "$largest" ] || too_large=1
done
if [ "$too_large" -ne 0 ]; then
  echo "make-pictures: a picture has more than $largest bytes" >&2
  exit 1
fi
