#!/usr/bin/env python3
"""Shows that the proof doesn't rest on what it proves: a mirror is planted in the source of a copy, once in the conversion from
needle to drawn column, once in that from card column, and once in the plan that uses them; 'prove' has to refuse each on demos
that a mirror changes. Without one it proves them all.

    plant_mirrors.py    a table of what was seen; ends with 1 where a mirror went unseen

It builds the command line four times (all of it once, then a file), so it belongs to the nightly run."""
import pathlib
import subprocess
import sys
import tempfile

import planting

BY_CARD = ["puffin-cove", "buoy-line"]
BY_HAND = ["shore-crabs"]
# What is planted, where, the words in the source and what they become, and the demos whose proof has to fail.
MIRRORS = [
    ("in the conversion from needle to drawn column", "src/machine/placement.cpp",
     "round_edge(first_column_ - x_of(needle), width_)", "round_edge(first_column_ + x_of(needle), width_)", BY_HAND),
    ("in the conversion from card column to drawn column", "src/machine/placement.cpp",
     "round_edge(first_column_ - (card_column - 1), width_)", "round_edge(card_column - 1, width_)", BY_CARD),
    ("in the plan of the card", "src/plan/needles.cpp", "placement.column_on_card(column)",
     "placement.column_on_card(document.grid.width() + 1 - column)", BY_CARD),
]


def proved(program, demo):
    done = subprocess.run([program, "prove", planting.HERE / "patterns" / f"{demo}.repeat"], capture_output=True, check=False)
    if done.returncode not in (0, 1):
        raise SystemExit(f"plant_mirrors.py: 'prove' could not be carried out: {done.stderr.decode()}")
    return done.returncode == 0


def main():
    wrong = []
    with tempfile.TemporaryDirectory(prefix="punchwright-planted-") as name:
        folder = pathlib.Path(name)
        planting.copy_of_source(folder)
        program = planting.build(folder, "punchwright", "2", "-DPUNCHWRIGHT_EDITOR=OFF")
        for demo in BY_CARD + BY_HAND:
            print(f"no mirror: {demo} {'proved' if proved(program, demo) else 'refused'}", flush=True)
            if not proved(program, demo):
                wrong.append(f"no mirror is planted, and {demo} is refused")
        for what, path, found, put, demos in MIRRORS:
            with planting.planted(folder, path, found, put):
                program = planting.build(folder, "punchwright", "2", "-DPUNCHWRIGHT_EDITOR=OFF")
                for demo in demos:
                    seen = not proved(program, demo)
                    print(f"a mirror {what}: {demo} {'refused' if seen else 'proved'}", flush=True)
                    if not seen:
                        wrong.append(f"a mirror {what} is not seen on {demo}")
    for line in wrong:
        print("plant_mirrors.py: " + line, file=sys.stderr)
    return 1 if wrong else 0


if __name__ == "__main__":
    raise SystemExit(main())
