#!/usr/bin/env python3
"""Finds the punched holes in an exported card by its pixels, and compares them with where they should be.

Independent of the program: it rasterises the PDF with poppler (pdftoppm) or the SVG with librsvg (rsvg-convert) at
508 dpi, 20 pixels to the millimetre, finds rings as connected components, and works out the nominal places itself from
the numbers in a JSON file:

    {"geometry": {"sheet_width": 142, "stitch_pitch": 4.5, "row_pitch": 5, "hole_diameter": 3.5, "column_1": 19.25,
                  "first_row": 12.5, "feed_diameter": 3, "feed_pitch": 5, "feed_from_side": 6,
                  "clip_diameter": 3.5, "clips": [[6, 5], [13, 5]]},
     "columns": 24, "column_1_left": true, "turned": false, "scale_x": 1, "scale_y": 1,
     "cards": [["....##", ...], ...]}          rows of each card, row 1 first, one letter a card column, '#' is a hole

    hole_finder.py FILE EXPECTED.json [--tolerance 0.1]

Exit 0: every ring lies within the tolerance of a nominal place, every nominal place has its ring, and the bits that were
read are those expected. Prints the largest distance."""

import argparse
import json
import math
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
from PIL import Image
from scipy import ndimage

PIXELS_PER_MM = 20
Image.MAX_IMAGE_PIXELS = None


def rasterised(path):
    """The pages as grey arrays."""
    with tempfile.TemporaryDirectory() as folder:
        if path.suffix == ".pdf":
            subprocess.run(["pdftoppm", "-r", "508", "-gray", str(path), folder + "/page"], check=True)
        elif path.suffix == ".svg":
            subprocess.run(["rsvg-convert", "--unlimited", "-d", "508", "-p", "508", "-b", "white", "-o",
                            folder + "/page-1.png", str(path)], check=True)
        else:
            sys.exit(f"{path}: neither .pdf nor .svg")
        files = sorted(Path(folder).glob("page*"), key=lambda p: int(re.findall(r"\d+", p.stem)[-1]))
        return [np.asarray(Image.open(file).convert("L")) for file in files]


class Components:
    """The connected dark parts of a page: a label for each pixel, and the box of each label. Found once a page, since that
    takes longer than all the rest."""

    def __init__(self, page):
        self.labels, _ = ndimage.label(page < 128, structure=np.ones((3, 3)))
        self.boxes = list(enumerate(ndimage.find_objects(self.labels), start=1))


def rings_among(components, diameters):
    """Centres (mm from the page's top left corner) and outer diameters of the rings on a page.

    A ring is a dark component, as wide as high, with nothing dark but a small cross inside, whose place on the page is
    taken from the darkness of its pixels, so that it is exact to a fraction of a pixel."""
    labels = components.labels
    found = []
    smallest = (min(diameters) - 0.4) * PIXELS_PER_MM
    largest = (max(diameters) + 0.6) * PIXELS_PER_MM
    for index, (ys, xs) in components.boxes:
        height, width = ys.stop - ys.start, xs.stop - xs.start
        if not (smallest <= height <= largest and smallest <= width <= largest and abs(width - height) <= 3):
            continue
        ring = labels[ys, xs] == index
        filled = ndimage.binary_fill_holes(ring)
        area = filled.sum()
        radius = (width + height) / 4
        if abs(area / (math.pi * radius * radius) - 1) > 0.06 or ring.sum() > 0.5 * area:
            continue  # no round shape, or no ring: a letter, an arrow
        # The weight of the filled disc's pixels, half-covered ones at its rim counting half.
        centre_y, centre_x = ndimage.center_of_mass(filled)
        found.append(((xs.start + centre_x + 0.5) / PIXELS_PER_MM, (ys.start + centre_y + 0.5) / PIXELS_PER_MM,
                      2 * radius / PIXELS_PER_MM))
    return found


class Card:
    """Nominal places, in mm from the card's lower left corner; x to the right, y upwards."""

    def __init__(self, expected, rows):
        g = expected["geometry"]
        self.geometry, self.rows, self.columns = g, rows, expected["columns"]
        self.width = g["sheet_width"]
        self.lines = len(rows) + 4
        self.height = 2 * g["first_row"] + (self.lines - 1) * g["row_pitch"]
        self.turned, self.column_1_left = expected["turned"], expected["column_1_left"]

    def place(self, column, line):
        """Card column from 1; line 0 is the lowest overlap row."""
        g = self.geometry
        x = g["column_1"] + (column - 1) * g["stitch_pitch"]
        y = g["first_row"] + line * g["row_pitch"]
        if not self.column_1_left:
            x = self.width - x
        return (self.width - x, self.height - y) if self.turned else (x, y)

    def holes(self):
        """(kind, x, y, diameter)"""
        g = self.geometry
        result = []
        for line in range(self.lines):
            overlap = line < 2 or line >= self.lines - 2
            for column in range(1, self.columns + 1):
                if overlap or self.rows[line - 2][column - 1] == "#":
                    result.append(("overlap" if overlap else "pattern", *self.place(column, line), g["hole_diameter"]))
        clips = [(x, y) for side, end in g["clips"] for x in (side, self.width - side) for y in (end, self.height - end)]
        result += [("clip", x, y, g["clip_diameter"]) for x, y in clips]
        reach = (g["clip_diameter"] + g["feed_diameter"]) / 2
        rim = g["feed_diameter"] / 2 + 0.5
        first = g["first_row"]
        while first - g["feed_pitch"] >= rim - 1e-9:
            first -= g["feed_pitch"]
        y = first
        while y <= self.height - rim + 1e-9:
            for x in (g["feed_from_side"], self.width - g["feed_from_side"]):
                level = self.height - y if self.turned else y
                if all(math.hypot(x - cx, level - cy) >= reach for cx, cy in clips):
                    result.append(("feed", x, level, g["feed_diameter"]))
            y += g["feed_pitch"]
        return result

    def bits(self, centres, tolerance):
        """Rows of '.' and '#', row 1 first, from the hole centres alone."""
        rows = []
        for line in range(2, self.lines - 2):
            text = ""
            for column in range(1, self.columns + 1):
                x, y = self.place(column, line)
                near = np.hypot(centres[:, 0] - x, centres[:, 1] - y).min() <= tolerance if len(centres) else False
                text += "#" if near else "."
            rows.append(text)
        return rows


def match(card, rings, tolerance, what):
    """Largest distance between a ring and its nominal place; complains about every ring and place left over."""
    nominal = card.holes()
    centres = np.array([[x, y] for _, x, y, _ in nominal])
    used = np.zeros(len(nominal), bool)
    worst, problems = 0.0, []
    for x, y, diameter in rings:
        distance = np.hypot(centres[:, 0] - x, centres[:, 1] - y)
        nearest = int(distance.argmin())
        worst = max(worst, float(distance[nearest]))
        if distance[nearest] > tolerance or used[nearest]:
            problems.append(f"{what}: a ring at {x:.2f}, {y:.2f} mm belongs nowhere (nearest {distance[nearest]:.3f} mm)")
        used[nearest] = True
        if abs(diameter - nominal[nearest][3]) > 0.35:
            problems.append(f"{what}: the ring at {x:.2f}, {y:.2f} mm is {diameter:.2f} mm wide")
    for kind, x, y, _ in (hole for hole, was_used in zip(nominal, used) if not was_used):
        problems.append(f"{what}: no ring for the {kind} hole at {x:.2f}, {y:.2f} mm")
    return worst, problems


def lines_of(page):
    """Long straight dark lines: (horizontal ys, vertical xs) in mm with their extents, by runs of dark pixels."""
    dark = page < 140
    result = {"across": [], "up": []}
    for name, picture in (("across", dark), ("up", dark.T)):
        for index in np.flatnonzero(picture.sum(axis=1) > 10 * PIXELS_PER_MM):
            row = np.concatenate(([0], picture[index].astype(np.int8), [0]))
            edges = np.flatnonzero(np.diff(row))
            for start, end in zip(edges[::2], edges[1::2]):
                if end - start > 10 * PIXELS_PER_MM:
                    result[name].append((index / PIXELS_PER_MM, start / PIXELS_PER_MM, end / PIXELS_PER_MM))
    return result


def centre_of_lines(places, near):
    """A line is some pixels thick: the middle of those within 0.4 mm of one of them, in mm."""
    return sum(p for p in places if abs(p - near) < 0.4) / sum(abs(p - near) < 0.4 for p in places) + 0.5 / PIXELS_PER_MM


def crosses_among(components, scale_x, scale_y):
    """Heights (mm from the page's top) of the registration crosses, from the lowest up: one for each pair."""
    labels = components.labels
    ys = []
    for index, (rows, columns) in components.boxes:
        height, width = rows.stop - rows.start, columns.stop - columns.start
        if abs(height - 4.4 * PIXELS_PER_MM / scale_y) > 6 or abs(width - 4.4 * PIXELS_PER_MM / scale_x) > 6:
            continue
        cross = labels[rows, columns] == index
        # Two strokes: the middle row and column are full, the corners empty.
        if cross.sum() < 0.15 * cross.size and cross[height // 2 - 2:height // 2 + 3].any(axis=0).mean() > 0.9:
            weight = cross.sum(axis=1)
            strokes = np.flatnonzero(weight > width / 2)
            ys.append(rows.start + strokes.mean() + 0.5)
    ys.sort(reverse=True)
    if len(ys) % 2 or any(abs(a - b) > 2 for a, b in zip(ys[::2], ys[1::2])):
        raise ValueError(f"registration crosses don't stand in pairs: {ys}")
    return [(a + b) / 2 / PIXELS_PER_MM * scale_y for a, b in zip(ys[::2], ys[1::2])]


def placed(page, rings, expected):
    """Rings of a page in true mm (print correction undone), x from the card's left edge, y from the page's top; and the
    height of the lowest line as wide as the card: its lower edge, or where a further page joins.

    The card's edges on the page: the two vertical lines that are a sheet width apart."""
    sx, sy = expected["scale_x"], expected["scale_y"]
    width = expected["geometry"]["sheet_width"]
    lines = lines_of(page)
    ups = [x for x, _, _ in lines["up"]]
    for left in sorted(ups):
        rights = [right for right in ups if abs((right - left) * sx - width) < 0.4]
        if rights:
            middle = (centre_of_lines(ups, left) + centre_of_lines(ups, rights[0])) / 2
            across = [y for y, start, end in lines["across"] if abs((end - start) * sx - width) < 0.8]
            bottom = centre_of_lines(across, max(across)) * sy
            return [((x - middle) * sx + width / 2, y * sy, d * math.sqrt(sx * sy)) for x, y, d in rings], bottom
    return None


def check_pdf(path, expected, tolerance):
    geometry = expected["geometry"]
    sx, sy = expected["scale_x"], expected["scale_y"]
    diameters = {geometry[key] / math.sqrt(sx * sy) for key in ("hole_diameter", "feed_diameter", "clip_diameter")}
    pages = []
    for page in rasterised(path):
        components = Components(page)
        rings = rings_among(components, diameters)
        found = placed(page, rings, expected) if len(rings) > 10 else None
        if found:
            pages.append((*found, crosses_among(components, sx, sy)))
    worst, problems, read = 0.0, [], []
    for number, rows in enumerate(expected["cards"], start=1):
        card = Card(expected, rows)
        rings = []
        # The first page stands on the card's lower edge; each further one is laid with its lower crosses upon the upper
        # crosses of the page before, as the knitter does it. `zero` is the card's lower edge on the page.
        part, zero, crosses = pages.pop(0)
        rings += [(x, zero - y, d) for x, y, d in part]
        while crosses:
            upper = zero - crosses[-1]
            part, _, crosses = pages.pop(0)
            zero = crosses[0] + upper
            rings += [(x, zero - y, d) for x, y, d in part]
            crosses = crosses[1:]
        distance, wrong = match(card, rings, tolerance, f"{path.name}, card {number}")
        worst, problems = max(worst, distance), problems + wrong
        read.append(card.bits(np.array([[x, y] for x, y, _ in rings]), 0.5))
    if pages:
        problems.append(f"{path.name}: {len(pages)} pages with rings too many")
    return worst, problems, read


def svg_of_card(path, number, cards):
    """Several cards are numbered at the end of their names, in so many digits as the last one needs."""
    return path if cards == 1 else path.with_name(f"{path.stem}-{number:0{len(str(cards))}}{path.suffix}")


def check_svg(path, expected, tolerance):
    """One card a file, read from its pixels: no number in the file is used."""
    worst, problems, read = 0.0, [], []
    plain = {**expected, "scale_x": 1, "scale_y": 1}
    geometry = expected["geometry"]
    diameters = {geometry[key] for key in ("hole_diameter", "feed_diameter", "clip_diameter")}
    for number, rows in enumerate(expected["cards"], start=1):
        file = svg_of_card(path, number, len(expected["cards"]))
        page = rasterised(file)[0]
        card = Card(plain, rows)
        rings, bottom = placed(page, rings_among(Components(page), diameters), plain)
        rings = [(x, bottom - y, d) for x, y, d in rings]
        distance, wrong = match(card, rings, tolerance, file.name)
        worst, problems = max(worst, distance), problems + wrong
        read.append(card.bits(np.array([[x, y] for x, y, _ in rings]), 0.5))
    return worst, problems, read


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("file", type=Path)
    parser.add_argument("expected", type=Path)
    parser.add_argument("--tolerance", type=float, default=0.1)
    options = parser.parse_args()
    expected = json.loads(options.expected.read_text())
    check = check_pdf if options.file.suffix == ".pdf" else check_svg
    worst, problems, read = check(options.file, expected, options.tolerance)
    for number, (rows, wanted) in enumerate(zip(read, expected["cards"]), start=1):
        for row, (found, want) in enumerate(zip(rows, wanted), start=1):
            if found != want:
                problems.append(f"card {number}, row {row}: read {found}, should be {want}")
    print(f"{options.file}: {len(expected['cards'])} cards, largest distance {worst:.3f} mm, {len(problems)} problems")
    for problem in problems[:20]:
        print("  " + problem)
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
