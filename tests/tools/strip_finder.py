#!/usr/bin/env python3
"""Measures the decrease strips in a PDF of a yoke by their pixels.

Independent of the program: poppler rasterises the pages at 508 dpi, 20 pixels to the millimetre, and tells the words with
their boxes. A strip's part is an upper edge line with ticks hanging from it, each above the name of its needle; a thick
tick is a needle to bring forward. Nothing is known of where they stand on the page.

    strip_finder.py FILE PITCH      prints the largest distance of a tick from its place, mm"""

import re
import subprocess
import sys
import tempfile
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
from PIL import Image

PER_MM = 20
DARK = 110
NEEDLE = re.compile(r"[LR][1-9][0-9]*$")


def position(needle):
    """L2 is -2, L1 is -1, R1 is 0."""
    return -int(needle[1:]) if needle[0] == "L" else int(needle[1:]) - 1


def words_on(pdf, page):
    """(word, left, top, right, bottom) in mm."""
    text = subprocess.run(["pdftotext", "-bbox", "-f", str(page), "-l", str(page), str(pdf), "-"], check=True,
                          stdout=subprocess.PIPE).stdout
    root = ElementTree.fromstring(text)
    mm = 25.4 / 72
    return [(word.text, *(float(word.get(side)) * mm for side in ("xMin", "yMin", "xMax", "yMax")))
            for word in root.iter("{http://www.w3.org/1999/xhtml}word")]


def pixels_of(pdf, page):
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["pdftoppm", "-r", "508", "-gray", "-f", str(page), "-l", str(page), "-singlefile", str(pdf),
                        folder + "/page"], check=True)
        return np.array(Image.open(folder + "/page.pgm")) < DARK


def runs_in(line):
    """(first, behind the last) of the dark runs."""
    steps = np.diff(np.concatenate(([0], line.astype(np.int8), [0])))
    return list(zip(np.flatnonzero(steps == 1), np.flatnonzero(steps == -1)))


def edges_in(pixels):
    """Middles, left and right ends of level lines longer than 30 mm, in pixels."""
    edges = []
    for y in np.flatnonzero(pixels.sum(axis=1) > 30 * PER_MM):
        longest = max(runs_in(pixels[y]), key=lambda run: run[1] - run[0])
        if longest[1] - longest[0] > 30 * PER_MM and not (edges and y - edges[-1][0] < 6):
            edges.append((y, *longest))
    return edges


def parts_on(pixels, words):
    """Of each part: {needle: (x in mm, thick)}, from the left."""
    parts = []
    for y, left, right in edges_in(pixels):
        below = pixels[y + int(2.5 * PER_MM)]
        ticks = {}
        for first, end in runs_in(below):
            middle = (first + end) / 2 / PER_MM
            if end - first > 2 * PER_MM or not left / PER_MM + 0.5 < middle < right / PER_MM - 0.5:
                continue
            for word, word_left, top, word_right, bottom in words:
                if (NEEDLE.match(word) and abs((word_left + word_right) / 2 - middle) < 0.6
                        and 3 < top - y / PER_MM < 8 and bottom - y / PER_MM < 10.5):
                    ticks[word] = (middle, (end - first) / PER_MM > 0.6)
        if len(ticks) >= 3:
            parts.append(ticks)
    return parts


def largest_error(ticks, pitch):
    """Of the distances between any two ticks, mm."""
    places = [x - position(needle) * pitch for needle, (x, _) in ticks.items()]
    return max(places) - min(places)


def check_line(pixels, words):
    """Length in mm of the line beside which stands 'this line is 100.0 mm', between the middles of its ends."""
    top = next(word for word in words if word[0] == "100.0")
    y = int((top[2] + top[4]) / 2 * PER_MM)
    left = min(word[1] for word in words if abs(word[2] - top[2]) < 1)
    ends = [run for run in runs_in(pixels[y - PER_MM]) if run[1] < left * PER_MM and run[1] - run[0] < 0.5 * PER_MM]
    return (ends[-1][0] + ends[-1][1] - ends[0][0] - ends[0][1]) / 2 / PER_MM


def pages_with_strips(pdf):
    text = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, stdout=subprocess.PIPE).stdout.decode()
    return [number for number, words in enumerate(text.split("\f"), 1) if "this line is 100.0 mm" in words]


def main():
    pdf, pitch = Path(sys.argv[1]), float(sys.argv[2])
    worst = 0.0
    for page in pages_with_strips(pdf):
        pixels, words = pixels_of(pdf, page), words_on(pdf, page)
        parts = parts_on(pixels, words)
        errors = [largest_error(ticks, pitch) for ticks in parts]
        print(f"page {page}: {len(parts)} parts, line of {check_line(pixels, words):.3f} mm, "
              f"{max(errors, default=0):.3f} mm")
        worst = max([worst, *errors])
    print(f"largest: {worst:.3f} mm")
    return 0 if worst <= 0.1 else 1


if __name__ == "__main__":
    sys.exit(main())
