"""Designs for the process tests of the needle chart and the fabric picture: as a file, and as the second opinion has them.
Both are written here, side by side, so that a test compares the program with arithmetic that isn't its own."""

import random
import subprocess
import sys
from pathlib import Path

import naive_knitter as naive

YARNS = {"A": ("Oat", "#e8dcc2"), "B": ("Ink, dark", "#20304a"), "C": ('Brick "aran"', "#9c3b2a")}


def machine_named(name):
    return next(machine for machine in naive.BUILT_IN if machine.name == name)


def file_text(design, title, paper="a4", gauge=(16.0, 20.0)):
    lines = ["format = 1", f"title = '{title}'", "[machine]", f'profile = "{design.machine.name}"',
             "[gauge]", f"stitches = {gauge[0]}", f"rows = {gauge[1]}"]
    for key, (name, colour) in YARNS.items():
        lines += ["[[yarn]]", f'key = "{key}"', f"name = '{name}'", f'colour = "{colour}"']
    lines += ["[repeat]", f"width = {len(design.rows[0])}", "rows = ["]
    lines += [f'  "{row}",' for row in reversed(design.rows)] + ["]"]
    for band in design.bands:
        lines += ["[[band]]", f"rows = {band.rows}", f'main = "{band.main}"']
        lines += [f'contrast = "{band.contrast}"'] if band.contrast else []
    lines += ["[piece]", f"stitches = {design.stitches}",
              f'first_needle = "{naive.needle_name(design.first_needle)}"', f"times = {design.times}",
              f'carriage = "{design.carriage}"', "[rules]", f"plain_rows = {design.plain_rows}",
              f'change_side = "{design.change_side}"', "[card]", f'paper = "{paper}"']
    return "\n".join(lines) + "\n"


def harbour_design(machine, seed=7, rows=18):
    """Three bands, a plain and an all-contrast row among them, on 71 stitches that begin at L36."""
    dice = random.Random(seed)
    drawing = ["".join(dice.choice(".#") for _ in range(24)) for _ in range(rows)]
    drawing[3] = "." * 24
    drawing[7] = "#" * 24
    bands = [naive.BandOfRows(6, "A", "B"), naive.BandOfRows(6, "A", "C"), naive.BandOfRows(rows - 12, "A", "B")]
    return naive.Design(machine_named(machine), drawing, bands, stitches=71, first_needle=-36, times=2,
                        change_side="right")


def run(program, *arguments):
    """Faults (exit 1) don't stop an export; anything else does."""
    result = subprocess.run([program, *map(str, arguments)], capture_output=True, text=True)
    if result.returncode not in (0, 1):
        sys.exit(f"{arguments}: exit {result.returncode}: {result.stderr}")


def export(program, command, design, folder, name, title="Harbour band", paper="a4", gauge=(16.0, 20.0), options=()):
    source = Path(folder) / "design.repeat"
    source.write_text(file_text(design, title, paper, gauge), encoding="utf-8")
    output = Path(folder) / name
    run(program, command, source, "-o", output, *options)
    return output


def expect(found, wanted, what):
    if found != wanted:
        sys.exit(f"{what}: found {found!r}, expected {wanted!r}")


def runs_text(needles):
    """'L12–L9 R1' from names in order; L1 is next to R1."""
    runs = []
    for name in needles:
        position = -int(name[1:]) if name[0] == "L" else int(name[1:]) - 1
        if runs and runs[-1][1] + 1 == position:
            runs[-1][1] = position
        else:
            runs.append([position, position])
    names = [naive.needle_name(first) + ("" if first == last else "–" + naive.needle_name(last)) for first, last in runs]
    return " ".join(names) or "none"
