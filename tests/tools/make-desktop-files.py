#!/usr/bin/python3
"""Writes the manual pages, completions and icons of src/desktop anew, or says which differ from what would be written.
Usage: make-desktop-files.py renew|check PROGRAM"""

import pathlib
import subprocess
import sys

import completions
import manuals

DESKTOP = pathlib.Path(__file__).resolve().parents[2] / "src/desktop"
SIZES = {"punchwright-small": [16, 22, 24, 32], "punchwright": [48, 64, 96, 128, 256, 512]}


def texts(program):
    return {name: text.encode() for name, text in {**completions.made(program), **manuals.made(program)}.items()}


def icons():
    for name, sizes in SIZES.items():
        for size in sizes:
            drawn = subprocess.run(["rsvg-convert", "-w", str(size), "-h", str(size), DESKTOP / f"icons/{name}.svg"],
                                   check=True, capture_output=True).stdout
            yield f"icons/png/punchwright-{size}.png", drawn


def main():
    if len(sys.argv) != 3 or sys.argv[1] not in ("renew", "check"):
        sys.exit(__doc__)
    wish, program = sys.argv[1:]
    different = []
    for name, wanted in [*texts(program).items(), *(icons() if wish == "renew" else [])]:
        file = DESKTOP / name
        if wish == "renew":
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(wanted)
        elif not file.is_file() or file.read_bytes() != wanted:
            different.append(name)
    if different:
        sys.exit("to be made anew (make-desktop-files.py renew): " + ", ".join(different))


if __name__ == "__main__":
    main()
