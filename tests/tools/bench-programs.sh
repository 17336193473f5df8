#!/usr/bin/env bash
# Times whole processes: the card PDF of 60 rows, a mend beside glpsol's, the editor's first frame and frame building
# under Xvfb.
# BUILD names the build folder. Prints figures; judges nothing.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
build=${BUILD:-$here/build}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

rows=$(for _ in $(seq 60); do echo '  "#..#..##..#..##..#..##..",'; done)
cat > "$work/sixty.repeat" <<REPEAT
format = 1
[[yarn]]
key = "A"
[[yarn]]
key = "B"
[repeat]
width = 24
rows = [
$rows
]
[[band]]
rows = 60
main = "A"
contrast = "B"
REPEAT

/usr/bin/python3 - "$build/punchwright" "$work/sixty.repeat" "$work/card.pdf" <<'PYTHON'
import statistics, subprocess, sys, time
program, design, card = sys.argv[1:]
times = []
for run in range(31):
    begin = time.perf_counter()
    subprocess.run([program, "card", design, "-o", card], stdout=subprocess.DEVNULL, check=True)
    times.append((time.perf_counter() - begin) * 1000)
times = times[1:]
print(f"card PDF of 60 rows, whole process: median {statistics.median(times):.1f} ms, "
      f"fastest {min(times):.1f} ms, slowest {max(times):.1f} ms, of {len(times)}")
PYTHON

# The same kind of block as the benchmarks mend; theirs is the time of the mend alone, in µs.
alone=()
if [ -x "$build/tests/bench/benchmarks" ]; then
  alone=(--alone "$("$build/tests/bench/benchmarks" --benchmark_filter='mend_fewest/24/60$' --benchmark_format=csv 2>/dev/null |
    awk -F, '/^"mend_fewest/ { print $4 }')")
fi
/usr/bin/python3 -B "$here/tests/tools/bench_glpsol.py" "$build/punchwright" "${alone[@]}"

# How long frames take to build while a random hand edits a large design; the same program as a test looks at what comes of it.
if [ -x "$build/tests/test_editor_load" ]; then
  PUNCHWRIGHT_SECONDS=60 "$build/tests/test_editor_load" --no-intro --no-version
fi

# A fill that is held over a large drawing under all mirrors: within a patch, in and out of it, with all of it in sight.
if [ -x "$build/tests/bench/frames_held" ]; then
  "$build/tests/bench/frames_held" --benchmark_min_time=0.5
fi

if [ -x "$build/punchwright-editor" ]; then
  /usr/bin/python3 - "$work" <<'PYTHON'
import pathlib, random, sys
folder = pathlib.Path(sys.argv[1])
WORDS = """format = 1
[machine]
profile = "{machine}"
[[yarn]]
key = "A"
[[yarn]]
key = "B"
[repeat]
width = {width}
rows = [
{rows}
]
[[band]]
rows = {height}
main = "A"
contrast = "B"
[piece]
stitches = {stitches}
"""


def write(name, machine, rows, stitches):
    lines = "\n".join(f'  "{row}",' for row in rows)
    (folder / name).write_text(WORDS.format(machine=machine, width=len(rows[0]), rows=lines, height=len(rows),
                                            stitches=stitches))


def knittable(width, dice):
    """Runs of one to four stitches by turns, as a designer leaves a row; short round the edge too."""
    row = "".join(sign * dice.randint(1, 4) for _ in range(width) for sign in ".#")[:width - 1]
    return row[:-1] + ("#." if row[-2] == "." else ".#")


write("tall.repeat", "bulky-card-24", ["#..#..##..#..##..#..##.."] * 240, 71)
dice = random.Random(1926)
write("large.repeat", "plastic-by-hand", [knittable(200, dice) for _ in range(2000)], 150)
PYTHON
  frames() {
    echo "editor, $1:"
    xvfb-run -a -s '-screen 0 1440x900x24 -noreset' "$build/punchwright-editor" --frames-benchmark "$3" --size 1440x900 "${@:4}" "$2"
  }
  if [ -x "$build/tests/bench/bare_window" ]; then
    echo "an empty window, no editor:"
    xvfb-run -a -s '-screen 0 1440x900x24 -noreset' "$build/tests/bench/bare_window"
  fi
  # The drawing, the tools, the piece and the findings beside each other, with the purl side's floats.
  frames "24 x 240 and its piece" "$work/tall.repeat" 500
  frames "24 x 240, purl side and tools" "$work/tall.repeat" 500 --show purl --tab tools
  frames "200 x 2,000 and its piece" "$work/large.repeat" 300
  frames "200 x 2,000, purl side and tools" "$work/large.repeat" 300 --show purl --tab tools
  frames "the largest demo yoke, schematic" "$here/patterns/puffin-poncho.yoke" 500
  frames "the largest demo yoke, as worn" "$here/patterns/puffin-poncho.yoke" 500 --yoke worn
  frames "200 x 2,000, ten times as many strokes" "$work/large.repeat" 3000
fi
