#!/usr/bin/env bash
# Times whole processes: the card PDF of 60 rows, and the editor's first frame and frame building under Xvfb.
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

if [ -x "$build/punchwright-editor" ]; then
  /usr/bin/python3 - "$work/tall.repeat" <<'PYTHON'
import sys
rows = "\n".join('  "#..#..##..#..##..#..##..",' for _ in range(240))
open(sys.argv[1], "w").write('format = 1\n[[yarn]]\nkey = "A"\n[[yarn]]\nkey = "B"\n[repeat]\nwidth = 24\nrows = [\n'
    + rows + '\n]\n[[band]]\nrows = 240\nmain = "A"\ncontrast = "B"\n[piece]\nstitches = 71\n')
PYTHON
  xvfb-run -a -s '-screen 0 1440x900x24 -noreset' "$build/punchwright-editor" --frames-benchmark 500 "$work/tall.repeat"
fi
