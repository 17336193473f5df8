"""The fabric picture, measured: the middle of each cell against the second opinion, size and density against the gauge.
usage: check_fabric.py PUNCHWRIGHT"""

import sys
import tempfile

from PIL import Image

import naive_knitter as naive
from chart_designs import YARNS, expect, export, harbour_design


def colours_wanted(design, side):
    """Yarn colours by row, uppermost first; on the knit side the piece's leftmost needle is at the right."""
    bed = [naive.needle_name(needle) for needle in naive.needles_in_work(design)]
    rows = []
    for row in naive.rows_as_json(design):
        colours = [YARNS[row["contrast"] if needle in row["needles"] else row["main"]][1] for needle in bed]
        rows.append(colours[::-1] if side == "knit" else colours)
    return rows[::-1]


def check(program, machine, side, gauge, folder):
    design = harbour_design(machine)
    wanted = colours_wanted(design, side)
    picture = export(program, "fabric", design, folder, "cloth.png", gauge=gauge, options=["--side", side])
    image = Image.open(picture)
    columns, rows = len(wanted[0]), len(wanted)
    for row in range(rows):
        for column in range(columns):
            place = ((2 * column + 1) * image.width // (2 * columns), (2 * row + 1) * image.height // (2 * rows))
            expect("#%02x%02x%02x" % image.getpixel(place)[:3], wanted[row][column],
                   f"{machine}, {side} side, line {row + 1}, column {column + 1}")
    width_mm, height_mm = columns * 100 / gauge[0], rows * 100 / gauge[1]
    expect(abs(image.width / image.height - width_mm / height_mm) * image.height <= 1.5, True, "proportion")
    dots = image.info["dpi"]  # Pillow turns pixels a metre into dots an inch
    expect(abs(image.width / dots[0] * 25.4 - width_mm) < width_mm * 0.001, True, "true width")
    expect(abs(image.height / dots[1] * 25.4 - height_mm) < height_mm * 0.001, True, "true height")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as place:
        for bed in ["bulky-card-24", "plastic-by-hand"]:
            for face in ["knit", "purl"]:
                for stitches_and_rows in [(16.0, 20.0), (21.5, 28.0), (14.0, 50.0), (30.0, 12.0)]:
                    check(sys.argv[1], bed, face, stitches_and_rows, place)
