#!/usr/bin/env python3
"""Design to card to pixels to holes to bits to fabric, and the fabric is the design.

    card_round_trip.py PUNCHWRIGHT FILE.repeat     one design: both papers, roll, corrected scale, loop; PDF and SVG
    card_round_trip.py PUNCHWRIGHT --machines      the same drawing on cards of both faces, turned, and with holes for main

What a card should look like is worked out here from the design's file alone: which drawn column stands in which card
column (card column 1 selects the needle x = 0; the needle at x knits drawn column W - (x mod W)), and where it lies (the
sizes of the built-in profiles, written down again below)."""

import json
import re
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
import hole_finder  # noqa: E402

SIZES = {"sheet_width": 142, "row_pitch": 5, "hole_diameter": 3.5, "first_row": 12.5, "feed_diameter": 3, "feed_pitch": 5,
         "feed_from_side": 6, "clip_diameter": 3.5, "clips": [[6, 5], [13, 5]]}
BLANK_ROWS, LOOP_ROWS = 60, 36
CARDS = {  # columns, mm between them, mm from the edge to column 1
    "fine-card-24": (24, 4.5, 19.25),
    "standard-card-24": (24, 4.5, 19.25),
    "bulky-card-24": (24, 4.5, 19.25),
    "bulky-card-12": (12, 9.0, 21.5),
}
TOLERANCE = 0.1  # mm


def with_card(text, **values):
    """The design's text with another [card] table."""
    text = re.sub(r"(?ms)^\[card\]\n.*?(?=^\[|\Z)", "", text)
    lines = [f'{key} = {json.dumps(value)}' for key, value in values.items()]
    return text.rstrip("\n") + "\n\n[card]\n" + "\n".join(lines) + "\n"


def run(*command):
    done = subprocess.run([str(part) for part in command], capture_output=True, text=True)
    if done.returncode not in (0, 1):  # 1: faults in the design, which never stop an export
        sys.exit(f"{command}: {done.stderr}")
    return done.stdout


def expected_card(program, file, design, knit_face=False, turned=False, hole_is_main=False):
    """What hole_finder needs: sizes, sides, and the bits of every card's rows."""
    profile = design["machine"]["profile"]
    columns, pitch, column_1 = CARDS[profile]
    drawing = design["repeat"]["rows"][::-1]  # row 1 first
    width = design["repeat"]["width"]
    rows = json.loads(run(program, "rows", file, "--json"))["rows"]
    circuit = [row["drawn"] for row in rows]
    if design.get("card", {}).get("loop", False):
        length = max(row["card_row"] for row in rows)
        circuit = circuit[:length] * max(1, -(-LOOP_ROWS // length))
    bits = []
    for drawn in circuit:
        line = "." * width if drawn is None else drawing[drawn - 1]
        text = "".join(line[width - 1 - (x % width)] for x in range(columns))
        bits.append(text.translate(str.maketrans(".#", "#.")) if hole_is_main else text)
    card = design.get("card", {})
    return {"geometry": {**SIZES, "stitch_pitch": pitch, "column_1": column_1}, "columns": columns,
            "column_1_left": not knit_face, "turned": turned,
            "scale_x": card.get("scale_x", 1), "scale_y": card.get("scale_y", 1),
            "cards": [bits[first:first + BLANK_ROWS] for first in range(0, len(bits), BLANK_ROWS)], "circuit": circuit}


def fabric_of(bits, width, hole_is_main):
    """The knit side of a row of the cloth, drawn column 1 first, knitted by the needles of one card repeat."""
    knitted = [(bit == "#") != hole_is_main for bit in bits]
    return "".join("#" if knitted[width - 1 - column] else "." for column in range(width))


def compare(what, output, expected, design, hole_is_main=False):
    check = hole_finder.check_pdf if output.suffix == ".pdf" else hole_finder.check_svg
    worst, problems, read = check(output, expected, TOLERANCE)
    seen = [bits for card in read for bits in card]
    if len(seen) != len(expected["circuit"]):
        problems.append(f"{len(seen)} rows on the cards instead of {len(expected['circuit'])}")
    drawing = design["repeat"]["rows"][::-1]
    width = design["repeat"]["width"]
    if expected["columns"] % width == 0:
        for row, (bits, drawn) in enumerate(zip(seen, expected["circuit"]), start=1):
            wanted = "." * width if drawn is None else drawing[drawn - 1]
            if fabric_of(bits, width, hole_is_main) != wanted:
                problems.append(f"row {row}: knits {fabric_of(bits, width, hole_is_main)}, drawn is {wanted}")
    print(f"{what}: {len(seen)} rows, largest distance {worst:.3f} mm" + ("" if not problems else ": WRONG"))
    for problem in problems[:10]:
        print("  " + problem)
    return not problems


def check_pdf_file(file, width, height):
    """What other programs say about the PDF."""
    subprocess.run(["qpdf", "--check", file], check=True, capture_output=True)
    catalogue = json.loads(subprocess.run(["qpdf", "--json=2", "--json-key=qpdf", file], check=True, capture_output=True,
                                          text=True).stdout)
    objects = catalogue["qpdf"][1]
    root = objects["obj:" + objects["trailer"]["value"]["/Root"]]["value"]
    preferences = root["/ViewerPreferences"]
    information = run("pdfinfo", file)
    fonts = run("pdffonts", file)
    page = [float(number) for number in re.search(r"Page size: +([\d.]+) x ([\d.]+)", information).groups()]
    good = preferences.get("/PrintScaling") == "/None"
    good = good and all(" yes yes yes " in line for line in fonts.splitlines()[2:]) and "DejaVuSans" in fonts
    if width:
        good = good and abs(page[0] - width / 25.4 * 72) < 0.01 and abs(page[1] - height / 25.4 * 72) < 0.01
    good = good and "100 %" in run("pdftotext", "-l", "1", file, "-")
    if not good:
        print(f"{file.name}: viewer's preferences {preferences}, {information}, {fonts}")
    return good


def round_trips(program, source):
    text = source.read_text()
    if tomllib.loads(text)["machine"]["profile"] not in CARDS:
        print(f"{source.name}: its machine reads no card")
        return True
    variants = {
        "a4": ({"paper": "a4"}, 210, 297),
        "letter": ({"paper": "letter"}, 215.9, 279.4),
        "roll": ({"paper": "roll"}, None, None),
        "scaled": ({"paper": "a4", "scale_x": 0.985, "scale_y": 1.012}, 210, 297),
        "loop": ({"paper": "letter", "loop": True, "scale_x": 1.02, "scale_y": 0.99}, 215.9, 279.4),
    }
    good = True
    with tempfile.TemporaryDirectory() as folder:
        for name, (card, width, height) in variants.items():
            file = Path(folder) / f"{name}.repeat"
            file.write_text(with_card(text, **card))
            design = tomllib.loads(file.read_text())
            expected = expected_card(program, file, design)
            pdf = file.with_suffix(".pdf")
            run(program, "card", file, "-o", pdf)
            again = file.with_name("again.pdf")
            run(program, "card", file, "-o", again)
            if again.read_bytes() != pdf.read_bytes():
                print(f"{source.stem}, {name}: the same design gives other bytes the second time")
                good = False
            good &= check_pdf_file(pdf, width, height)
            good &= compare(f"{source.stem}, {name}, PDF", pdf, expected, design)
            if name in ("a4", "loop"):
                svg = file.with_suffix(".svg")
                run(program, "card", file, "-o", svg)
                for number in range(1, len(expected["cards"]) + 1):
                    one = hole_finder.svg_of_card(svg, number, len(expected["cards"]))
                    subprocess.run(["xmllint", "--noout", one], check=True)
                good &= compare(f"{source.stem}, {name}, SVG", svg, expected, design)
    return good


DESIGN = """format = 1
[machine]
profile = "{profile}"
[[yarn]]
key = "A"
[[yarn]]
key = "B"
[repeat]
width = 6
rows = ["######", ".....#", "##....", "###.#.", "#.#.#.", "#....."]
[[band]]
rows = 6
main = "A"
contrast = "B"
"""


def machines(program):
    """Every answer to the orientation swatch gives a profile; its cards lie as that profile says."""
    good = True
    with tempfile.TemporaryDirectory() as folder:
        for profile in ("bulky-card-24", "bulky-card-12"):
            for number in range(1, 9):
                bits = number - 1
                mirrored, upside_down, inverted = bits & 1, bits >> 1 & 1, bits >> 2 & 1
                machine = Path(folder) / f"m{number}.machine"
                run(program, "machine", profile, "--swatch", number, "-o", machine)
                file = Path(folder) / f"{profile}-{number}.repeat"
                file.write_text(DESIGN.format(profile=machine.name))
                design = tomllib.loads(DESIGN.format(profile=profile))
                expected = expected_card(program, file, design, knit_face=mirrored != upside_down,
                                         turned=bool(upside_down), hole_is_main=bool(inverted))
                for suffix in (".pdf", ".svg"):
                    output = file.with_suffix(suffix)
                    run(program, "card", file, "-o", output)
                    good &= compare(f"{profile}, swatch like {number}, {suffix}", output, expected, design, bool(inverted))
    return good


def main():
    program = Path(sys.argv[1])
    good = machines(program) if sys.argv[2] == "--machines" else round_trips(program, Path(sys.argv[2]))
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
