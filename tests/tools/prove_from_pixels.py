#!/usr/bin/env python3
"""Design to card PDF to poppler's pixels to holes to the machine: the program knits from a card that it never told of.

    prove_from_pixels.py PUNCHWRIGHT FILE.repeat

The holes are found by hole_finder in the pixels, written down as a punch list, and given to 'punchwright prove --card'.
The same list mirrored, with its rows upside down, and with one hole too many must not be proved."""

import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
import card_round_trip  # noqa: E402
import hole_finder  # noqa: E402


def punch_list(rows):
    """'row 3: 1, 2, 7', for rows of '.' and '#', row 1 and column 1 first."""
    lines = []
    for number, row in enumerate(rows, start=1):
        columns = ", ".join(str(column) for column, bit in enumerate(row, start=1) if bit == "#")
        lines.append(f"row {number}: {columns or 'no hole, a blank row'}\n")
    return "".join(lines)


def prove(program, design, rows, folder):
    path = Path(folder) / "holes.txt"
    path.write_text(punch_list(rows))
    done = subprocess.run([program, "prove", design, "--card", path], capture_output=True, text=True)
    return done.returncode, done.stdout + done.stderr


def main():
    program, source = sys.argv[1], Path(sys.argv[2])
    design = tomllib.loads(source.read_text())
    if design["machine"]["profile"] not in card_round_trip.CARDS:
        print(f"{source.name}: its machine reads no card")
        return 0
    good = True
    with tempfile.TemporaryDirectory() as folder:
        pdf = Path(folder) / "card.pdf"
        card_round_trip.run(program, "card", source, "-o", pdf)
        expected = card_round_trip.expected_card(program, source, design)
        _, problems, read = hole_finder.check_pdf(pdf, expected, card_round_trip.TOLERANCE)
        rows = [row for card in read for row in card]
        if problems or len(rows) != len(expected["circuit"]):
            print("the card's holes were not found where they belong:", *problems[:5], sep="\n  ")
            return 1
        first = rows[0]
        spoilt = ["".join("#" if column == first.index(".") else bit for column, bit in enumerate(first))] + rows[1:]
        for what, card, wanted in [("as printed", rows, 0), ("mirrored", [row[::-1] for row in rows], 1),
                                   ("upside down", rows[::-1], 1), ("one hole too many", spoilt, 1)]:
            code, said = prove(program, source, card, folder)
            print(f"{source.stem}, {what}: exit {code}")
            if code != wanted:
                print(said)
                good = False
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
