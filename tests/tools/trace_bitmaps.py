#!/usr/bin/env python3
"""Traces every XBM picture of Debian's package xbitmaps at 24 stitches, and writes the table in docs/traced-bitmaps.md.

    trace_bitmaps.py PROGRAM            prints the table
    trace_bitmaps.py PROGRAM --write    into docs

A cell is square here (gauge 20,20), and the rows follow from the picture's proportion, so that all of it is traced."""
import json
import pathlib
import re
import subprocess
import sys
import tempfile

BITMAPS = pathlib.Path("/usr/include/X11/bitmaps")
PAGE = pathlib.Path(__file__).resolve().parents[2] / "docs" / "traced-bitmaps.md"
HEAD = """# The bitmaps of the X Window System, traced

Every XBM picture of Debian's package xbitmaps at 24 stitches, with floats of five at most (`tests/tools/trace_bitmaps.py`; a
test compares this table with the program as it is). *Moved* are the stitches that are otherwise than they would be without the
limit for floats; *error* is the mean over the stitches of the squared difference between picture and stitch.

| Picture | Pixels | Repeat | Moved | Error |
|---|---|---|---|---|
"""


def longest_float(row):
    """As the row tiles; none in a row of one sign."""
    if len(set(row)) == 1:
        return 0
    start = next(place for place in range(len(row)) if row[place] != row[place - 1])
    return max(len(run) for run in re.findall(r"\.+|#+", row[start:] + row[:start]))


def table(program):
    lines = []
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "traced.repeat"
        for path in sorted(BITMAPS.iterdir(), key=lambda path: path.name.lower()):
            text = path.read_text(errors="replace")
            width, height = (int(re.search(rf"_{side}\s+(\d+)", text).group(1)) for side in ("width", "height"))
            rows = max(1, round(24 * height / width))
            done = subprocess.run([program, "trace", path, "-o", out, "--rows", str(rows), "--gauge", "20,20", "--part",
                                   f"0,0,{width}", "--json"], capture_output=True, text=True, check=False)
            if done.returncode == 2:
                raise SystemExit(f"{path}: {done.stderr}")
            answer = json.loads(done.stdout)
            drawn = re.findall(r'^  "([.#]+)",$', out.read_text(), re.MULTILINE)
            if len(drawn) != rows or max(map(longest_float, drawn)) > 5:
                raise SystemExit(f"{path}: a float is too long")
            lines.append(f"| {path.name} | {width} × {height} | 24 × {rows} | {answer['moved']} | {answer['error']:.3f} |")
    return HEAD + "\n".join(lines) + "\n"


if __name__ == "__main__":
    made = table(sys.argv[1])
    if "--write" in sys.argv:
        PAGE.write_text(made)
    else:
        print(made, end="")
