"""The gallery of mends in docs/mending.md: each drawing before and after, side by side, the changed stitches ringed; as
PPM pictures in a folder, and the gallery's table on standard output.
Usage: mend_gallery.py PROGRAM FOLDER"""
import json
import pathlib
import re
import subprocess
import sys

import numpy as np

from screens import lighthouse

ROOT = pathlib.Path(__file__).resolve().parents[2]
WIDE, TALL, GAP = 12, 9, 24  # px of a stitch, and between before and after
MAIN, CONTRAST, RING, PAPER = (240, 234, 220), (38, 54, 84), (214, 64, 40), (255, 255, 255)
# Demos under a shorter limit than they are drawn for, as small fingers want it.
DEMOS = (("puffin-cove", 4), ("harbour-lanterns", 3), ("tide-waves", 3), ("shore-crabs", 3), ("hood-border", 3))


def boat():
    """A sailing boat before a low sun, drawn here: shades, slanting edges, and a hull wider than any float may be."""
    height, width = 240, 240
    y, x = np.mgrid[0:height, 0:width].astype(float)
    grey = 235 - 60 * y / height
    grey[np.hypot(x - 180, y - 120) < 34] = 255
    grey[(x > 112) & (x < 118) & (y > 30) & (y < 180)] = 40
    grey[(x > 122) & (y < 165) & (y > 40 + 1.4 * (x - 122)) & (x < 210)] = 110
    grey[(x < 108) & (y < 165) & (y > 60 + 1.2 * (108 - x)) & (x > 30)] = 70
    grey[(y >= 176) & (y < 205) & (np.abs(x - 118) < 92 - 0.9 * (y - 176))] = 30
    grey[y > 206 + 6 * np.sin(x / 19)] = 90
    pixels = np.repeat(np.clip(grey, 0, 255).astype(np.uint8)[:, :, None], 3, axis=2)
    return b"P6\n%d %d\n255\n" % (width, height) + pixels.tobytes()


def run(*command):
    """Exit 1 says that there are faults left; the file is written all the same."""
    done = subprocess.run([str(part) for part in command], capture_output=True, text=True, check=False)
    if done.returncode > 1:
        raise SystemExit(done.stderr)
    return done.stdout


def rows_in(path):
    """True: contrast; the uppermost row first."""
    lines = re.search(r"^rows = \[\n(.*?)^\]", path.read_text(), re.S | re.M)[1]
    return np.array([[sign == "#" for sign in row] for row in re.findall(r'"([.#]+)"', lines)])


def drawn(rows, changed):
    colours = np.where(rows[:, :, None], np.array(CONTRAST), np.array(MAIN)).repeat(TALL, 0).repeat(WIDE, 1)
    for row, column in zip(*np.nonzero(changed)):
        top, left = row * TALL, column * WIDE
        cell = colours[top:top + TALL, left:left + WIDE]
        inner = cell[2:-2, 2:-2].copy()
        cell[:] = RING
        cell[2:-2, 2:-2] = inner
    return colours


def side_by_side(before, after, path):
    changed = before != after
    gap = np.broadcast_to(np.array(PAPER), (before.shape[0] * TALL, GAP, 3))
    picture = np.concatenate([drawn(before, changed & False), gap, drawn(after, changed)], 1).astype(np.uint8)
    path.write_bytes(b"P6\n%d %d\n255\n" % (picture.shape[1], picture.shape[0]) + picture.tobytes())


def with_limit(text, limit):
    text = re.sub(r"^longest_float = .*\n", "", text, flags=re.M)
    if "[rules]\n" in text:
        return text.replace("[rules]\n", f"[rules]\nlongest_float = {limit}\n")
    return text + f"\n[rules]\nlongest_float = {limit}\n"


def entry(name, what, limit, changed, said, alt):
    print(f"| ![{alt}](pictures/mend-{name}.png) | {what}; floats of {limit} at most: {changed} stitches changed, {said} |")


def main():
    program, folder = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2])
    print("| before and after | |\n|---|---|")
    for name, limit in DEMOS:
        before, after = folder / f"{name}.repeat", folder / f"{name}-mended.repeat"
        before.write_text(with_limit((ROOT / "patterns" / f"{name}.repeat").read_text(), limit))
        said = json.loads(run(program, "mend", before, "-o", after, "--json"))
        side_by_side(rows_in(before), rows_in(after), folder / f"mend-{name}.ppm")
        entry(name, f"`{name}`", limit, len(said["changed"]), "proved best" if said["proved"] else "good",
              f"{name} before and after its mend")
    for name, picture in (("lighthouse", lighthouse()), ("boat", boat())):
        (folder / f"{name}.ppm").write_bytes(picture)
        rows = {}
        for limit in (5, 200):
            traced = folder / f"{name}-{limit}.repeat"
            run(program, "trace", folder / f"{name}.ppm", "-o", traced, "--width", "24", "--rows", "40",
                "--float", limit)
            rows[limit] = rows_in(traced)
        side_by_side(rows[200], rows[5], folder / f"mend-{name}.ppm")
        entry(name, f"a picture of a {name}, traced without and with the limit", 5,
              int((rows[200] != rows[5]).sum()), "where it matters least to the picture", f"a {name}, traced")


if __name__ == "__main__":
    main()
