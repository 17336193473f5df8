#!/usr/bin/env python3
"""Every screen of the editor as a kept picture, light and dark, in docs/screens, and the page that shows them.

    screens.py renew EDITOR [NAME …]    makes the pictures (or only those named) and docs/screens.md anew: look at each
                                        before it is committed
    screens.py check EDITOR             compares the editor as it is with the kept pictures, and names the places that differ

The tolerance is for another processor's rounding in the edges of letters, and for the palette of the kept pictures: a
pixel differs where a channel is off by more than PIXEL, and a screen differs where a square of 8 x 8 pixels has more
than SQUARE of them. A stitch, a letter or a yarn's colour that is wrong is far beyond that (tests/editor/screens_test.py).
What is faint but everywhere, such as the lines between stitches, is seen by its area: a screen also differs where more
than SHARE of a square of 64 x 64 pixels is off by more than FAINT. Over all kept pictures the palette and the edges of
letters come to 0.023 of such a square at most."""
import fcntl
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys

import numpy as np
from PIL import Image

HERE = pathlib.Path(__file__).resolve().parents[2]
PATTERNS = HERE / "patterns"
KEPT = HERE / "docs" / "screens"
PAGE = HERE / "docs" / "screens.md"
SIZE = "1280x800"
THEMES = ("light", "dark")
PIXEL = 40
SQUARE = 6
FAINT = 20
SHARE = 0.06

# Name, what it shows, and how the editor is started for it. Files of the desk's own: the puffin band with a float that is too
# long, a yoke with so little tolerance that nothing fits, a picture of two colours, and one of shades.
OWN_FILES = {"FLOAT": "puffin-in-a-gap.repeat", "GULL": "gull.pbm", "LIGHTHOUSE": "lighthouse.ppm",
             "TORN": "torn.repeat", "STRANGE": "strange-machine.repeat", "NO FIT": "no-fit.yoke"}
SCREENS = [
    ("drawing", "The drawing, the piece and the findings", ["puffin-cove.repeat"]),
    ("stitches", "Large cells become stitches", ["buoy-line.repeat", "--zoom", "9"]),
    ("growing", "Cells on the way to stitches, each in its yarn's colour", ["buoy-line.repeat", "--zoom", "6"]),
    ("finding", "A float that is too long, marked where it is", ["FLOAT", "--finding"]),
    ("mend", "A mend that is shown before it is taken", ["FLOAT", "--finding", "--dialog", "mend"]),
    ("afar", "The band from afar, over 60 cm", ["puffin-cove.repeat", "--dialog", "afar"]),
    ("menu", "A menu", ["puffin-cove.repeat", "--dialog", "menu"]),
    ("lettering", "Lettering over the drawing, before it is set down",
     ["buoy-line.repeat", "--tab", "tools", "--dialog", "lettering"]),
    ("tools", "Tools: shapes, symmetry, lettering, motifs", ["puffin-cove.repeat", "--tab", "tools"]),
    ("yarns", "Yarns and bands", ["buoy-line.repeat", "--tab", "yarns"]),
    ("machine", "The machine and its card's measures", ["puffin-cove.repeat", "--tab", "machine"]),
    ("piece", "The piece on the bed, by hand", ["shore-crabs.repeat", "--tab", "piece", "--show", "purl"]),
    ("card", "The card: paper, correction, loop", ["puffin-cove.repeat", "--tab", "card"]),
    ("purl", "The purl side with its floats, in the drawing's place",
     ["buoy-line.repeat", "--show", "purl", "--large-piece"]),
    ("sight", "Colours as they look without the green receptor", ["buoy-line.repeat", "--sight", "deutan"]),
    ("start", "The start page", ["--dialog", "start"]),
    ("new", "A new design", ["--dialog", "new"]),
    ("open", "Opening a file", ["puffin-cove.repeat", "--dialog", "open"]),
    ("new-folder", "Saving into a new folder", ["puffin-cove.repeat", "--dialog", "new-folder"]),
    ("replace", "Saving where there is a file already", ["puffin-cove.repeat", "--dialog", "replace"]),
    ("import", "Choosing a picture", ["puffin-cove.repeat", "--dialog", "import"]),
    ("machine-file", "Choosing a machine's file", ["puffin-cove.repeat", "--dialog", "machine-file"]),
    ("keep-machine", "Keeping what the swatch told of the machine", ["--dialog", "keep-machine"]),
    ("size", "Changing the size", ["puffin-cove.repeat", "--dialog", "size"]),
    ("pairs", "Other pairs of yarns", ["puffin-cove.repeat", "--dialog", "pairs"]),
    ("palette", "The palette", ["puffin-cove.repeat", "--dialog", "palette"]),
    ("layout", "Laid out as brick, half-drop, or turned and mirrored", ["tide-waves.repeat", "--dialog", "layout"]),
    ("yarns-here", "Yarns changed at the place", ["buoy-line.repeat", "--dialog", "yarns-here"]),
    ("keep-motif", "The marked area kept as a motif", ["puffin-cove.repeat", "--dialog", "keep-motif", "--motifs", "motifs"]),
    ("picture", "A two-colour picture, a stitch for each pixel", ["GULL"]),
    ("trace", "A picture traced", ["LIGHTHOUSE"]),
    ("preview-card", "Print preview: the card", ["puffin-cove.repeat", "--dialog", "preview", "--sheet", "card"]),
    ("preview-chart", "Print preview: the needle chart",
     ["shore-crabs.repeat", "--dialog", "preview", "--sheet", "chart"]),
    ("preview-steps", "Print preview: the steps", ["puffin-cove.repeat", "--dialog", "preview", "--sheet", "steps"]),
    ("preview-leaflet", "Print preview: the leaflet",
     ["puffin-cove.repeat", "--dialog", "preview", "--sheet", "leaflet"]),
    ("preview-pattern", "Print preview: the pattern chart",
     ["puffin-cove.repeat", "--dialog", "preview", "--sheet", "pattern"]),
    ("preview-swatch", "Print preview: the orientation swatch",
     ["puffin-cove.repeat", "--dialog", "preview", "--sheet", "swatch"]),
    ("preview-measure", "Print preview: the page for measuring a blank",
     ["puffin-cove.repeat", "--dialog", "preview", "--sheet", "measure"]),
    ("export-card", "Exporting the card", ["puffin-cove.repeat", "--dialog", "card"]),
    ("export-chart", "Exporting the needle chart", ["puffin-cove.repeat", "--dialog", "chart"]),
    ("export-steps", "Exporting the steps", ["puffin-cove.repeat", "--dialog", "export-steps"]),
    ("export-leaflet", "Exporting the leaflet", ["puffin-cove.repeat", "--dialog", "export-leaflet"]),
    ("export-fabric", "Exporting a picture of the piece", ["puffin-cove.repeat", "--dialog", "export-fabric"]),
    ("export-pattern", "Exporting the pattern chart", ["puffin-cove.repeat", "--dialog", "export-pattern"]),
    ("export-measure", "Exporting the page for measuring a blank",
     ["puffin-cove.repeat", "--dialog", "measure-page"]),
    ("export-swatch", "Exporting the orientation swatch", ["puffin-cove.repeat", "--dialog", "swatch-page"]),
    ("export-yoke", "Exporting a yoke's sheets", ["harbour-pullover.yoke", "--dialog", "export-yoke"]),
    ("everything", "Exporting everything into a folder", ["puffin-cove.repeat", "--dialog", "everything"]),
    ("swatch", "The question after the orientation swatch", ["puffin-cove.repeat", "--dialog", "swatch"]),
    ("commands", "All commands, found by typing", ["puffin-cove.repeat", "--dialog", "commands"]),
    ("steps-done", "What was done", ["puffin-cove.repeat", "--dialog", "steps"]),
    ("bench", "At the bench", ["hood-border.repeat", "--dialog", "bench"]),
    ("step-list", "All steps", ["hood-border.repeat", "--dialog", "step-list"]),
    ("play", "The knitting played", ["hood-border.repeat", "--dialog", "play"]),
    ("wrong", "What went wrong?", ["hood-border.repeat", "--dialog", "wrong"]),
    ("recovery", "Work that a window left behind when it ended unasked", ["puffin-cove.repeat", "--dialog", "recovery"]),
    ("changed", "A file that somebody else has written meanwhile", ["puffin-cove.repeat", "--dialog", "changed"]),
    ("noticed", "The same, noticed when the window is gone to again", ["puffin-cove.repeat", "--dialog", "noticed"]),
    ("guard", "Changes that aren't saved", ["puffin-cove.repeat", "--dialog", "guard"]),
    ("dropped", "A design dropped on one that is worked on", ["tide-waves.repeat", "--dialog", "dropped"]),
    ("not-saved", "Work that could not be saved", ["puffin-cove.repeat", "--dialog", "not-saved"]),
    ("trouble", "A file that can't be read", ["TORN"]),
    ("no-machine", "A design whose machine isn't there", ["STRANGE"]),
    ("bench-changed", "At the bench again after the design was changed",
     ["hood-border.repeat", "--dialog", "bench-changed"]),
    ("yoke-new", "A yoke from measurements", ["--dialog", "new-yoke"]),
    ("yoke-save", "Saving a yoke", ["harbour-pullover.yoke", "--dialog", "save-yoke"]),
    ("yoke-tier", "Choosing a repeat for a yoke's tier", ["harbour-pullover.yoke", "--dialog", "yoke-tier"]),
    ("yoke-schematic", "A yoke: the schematic", ["harbour-pullover.yoke"]),
    ("yoke-flat", "A yoke laid flat", ["puffin-poncho.yoke", "--yoke", "flat"]),
    ("yoke-wished", "A size in which nothing fits, as it is wished", ["NO FIT", "--yoke", "flat"]),
    ("yoke-worn", "A yoke from above, as it is worn", ["harbour-pullover.yoke", "--yoke", "worn"]),
    ("yoke-bed", "A piece of a yoke on its bed", ["anchor-yoke.yoke", "--yoke", "bed"]),
    ("settings", "Settings", ["puffin-cove.repeat", "--dialog", "settings"]),
    ("guide", "The guide in the window", ["--dialog", "help"]),
    ("keys", "Keys and mouse", ["--dialog", "keys"]),
]

GULL = """P1
12 7
000000000000
011000000110
001100001100
000110011000
000011110000
000001100000
000000000000
"""


def lighthouse():
    """A lighthouse at dusk, drawn here: a sky that darkens upwards, rock, two dark belts, a light with its beam."""
    height, width = 300, 240
    y, x = np.mgrid[0:height, 0:width].astype(float)
    grey = 150 + 80 * y / height
    beam = (np.abs(y - 62) < 0.22 * np.abs(x - 120)) & (x < 120)
    grey[beam] = 250
    tower = np.abs(x - 120) < 14 + 0.09 * (y - 60)
    grey[tower & (y > 70) & (y < 250)] = 235
    for top, bottom in ((105, 140), (175, 210)):
        grey[tower & (y > top) & (y < bottom)] = 60
    grey[(np.abs(x - 120) < 17) & (y > 48) & (y <= 76)] = 90
    grey[(np.abs(x - 120) < 9) & (y > 54) & (y <= 70)] = 255
    grey[y > 250 + 16 * np.sin(x / 21) - 0.1 * np.abs(x - 120)] = 40
    pixels = np.repeat(np.clip(grey, 0, 255).astype(np.uint8)[:, :, None], 3, axis=2)
    return b"P6\n%d %d\n255\n" % (width, height) + pixels.tobytes()


# What the tolerance was tried out with; the figures are those of the last run of that script that was looked at.
PLANTED = """\
What its tolerance lets through was tried out with faults planted in the source of a copy
(`tests/tools/plant_screen_faults.py`, nightly); squares of 8 × 8 pixels that differed then, light theme:

| planted | drawing | finding | yarns |
|---|---|---|---|
| nothing | 0 | 0 | 0 |
| the floats' bars in another colour | 0 | 44 | 0 |
| the floats' bars displaced by a stitch | 0 | 64 | 0 |
| no strips of plain rows between the bands | 437 | 437 | 567 |
| no thin lines between single stitches | 160 | 128 | 0 |
"""


class Desk:
    """A folder with the demos, settings of both themes, and an X server; the same wherever it runs."""

    def __enter__(self):
        # Always the same place, since the dialogs for files show it; one at a time.
        self.lock = open("/tmp/punchwright-screens.lock", "w", encoding="utf-8")
        fcntl.flock(self.lock, fcntl.LOCK_EX)
        self.folder = pathlib.Path("/tmp/punchwright-screens")
        shutil.rmtree(self.folder, ignore_errors=True)
        self.folder.mkdir()
        shown = self.folder / "patterns"
        shown.mkdir()
        for pattern in PATTERNS.glob("*.repeat"):
            shutil.copy(pattern, shown)
        for yoke in PATTERNS.glob("*.yoke"):
            shutil.copy(yoke, shown)
        shutil.copytree(PATTERNS / "tiers", shown / "tiers")
        puffin = (PATTERNS / "puffin-cove.repeat").read_text()
        float_too_long = puffin.replace('"...#.####.....####...#.."', '".....####.....####......"', 1)
        if float_too_long == puffin:
            raise SystemExit("screens.py: row 36 of puffin-cove has changed; choose another row for the example")
        (shown / "puffin-in-a-gap.repeat").write_text(float_too_long)
        (shown / "torn.repeat").write_text(puffin.replace("width = 24", "width = twenty-four", 1))
        (shown / "strange-machine.repeat").write_text(puffin.replace('"bulky-card-24"', '"the-old-one.machine"', 1))
        pullover = (PATTERNS / "harbour-pullover.yoke").read_text()
        tight = re.sub(r"^tolerance = .*$", "tolerance = 0.001", pullover, flags=re.M)
        if tight == pullover:
            raise SystemExit("screens.py: the tolerance of harbour-pullover has changed its form")
        (shown / "no-fit.yoke").write_text(tight)
        (shown / "gull.pbm").write_text(GULL)
        (shown / "lighthouse.ppm").write_bytes(lighthouse())
        for theme in THEMES:
            (self.folder / theme).write_text(f'theme = "{theme}"\n')
        reading, writing = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(writing), "-screen", "0", "1600x1200x24", "-noreset", "-nolisten", "tcp"],
            pass_fds=[writing], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(writing)
        with os.fdopen(reading) as pipe:
            number = pipe.readline().strip()
        self.environment = {**os.environ, "DISPLAY": ":" + number, "LC_ALL": "C.UTF-8", "LIBGL_ALWAYS_SOFTWARE": "1",
                            "HOME": str(self.folder), "TZ": "UTC"}
        for name in ("CONFIG", "STATE", "DATA"):
            self.environment[f"XDG_{name}_HOME"] = str(self.folder / name.lower())
        self.environment.pop("WAYLAND_DISPLAY", None)
        return self

    def __exit__(self, *_):
        self.server.terminate()
        self.server.wait()
        shutil.rmtree(self.folder, ignore_errors=True)
        self.lock.close()

    def picture(self, editor, theme, arguments, size=SIZE):
        """The screen as an array of rows, columns and channels; `state` then is what the editor says of it."""
        out = self.folder / "out.png"
        named = [OWN_FILES.get(argument, argument) for argument in arguments]
        settings = self.folder / "settings"
        state = self.folder / "state"
        shutil.copy(self.folder / theme, settings)
        subprocess.run([editor, *named, "--settings", str(settings), "--size", size, "--picture", str(out), "--state-to", str(state)],
                       cwd=self.folder / "patterns", env=self.environment, check=True, timeout=120)
        self.state = json.loads(state.read_text())
        return np.asarray(Image.open(out).convert("RGB"))


def kept_path(name, theme):
    return KEPT / f"{name}-{theme}.png"


def kept_picture(name, theme):
    return np.asarray(Image.open(kept_path(name, theme)).convert("RGB"))


def counted(off, size):
    """How many pixels are off in each square of so many pixels, those over the picture's edge counted as right."""
    height, width = off.shape
    off = np.pad(off, ((0, -height % size), (0, -width % size)))
    return off.reshape(off.shape[0] // size, size, off.shape[1] // size, size).sum(axis=(1, 3))


def differences(one, another):
    """The squares of 8 x 8 pixels that differ, as (left, top), those of a faint difference over a large area among them;
    None where even the sizes do."""
    if one.shape != another.shape:
        return None
    off = np.abs(one.astype(np.int16) - another.astype(np.int16)).max(axis=2)
    wrong = counted(off > PIXEL, 8) > SQUARE
    over_areas = np.kron(counted(off > FAINT, 64) > SHARE * 64 * 64, np.ones((8, 8), dtype=bool))
    faint = (counted(off > FAINT, 8) > 0) & over_areas[:wrong.shape[0], :wrong.shape[1]]
    return [(int(column) * 8, int(row) * 8) for row, column in np.argwhere(wrong | faint)]


def place_of(squares):
    """The rectangle round all of them, in words."""
    left, top = min(x for x, _ in squares), min(y for _, y in squares)
    right, bottom = max(x for x, _ in squares) + 8, max(y for _, y in squares) + 8
    return f"{len(squares)} squares differ, between {left},{top} and {right},{bottom}"


def renew(editor, names):
    KEPT.mkdir(exist_ok=True)
    wanted = {kept_path(name, theme) for name, _, _ in SCREENS for theme in THEMES}
    for old in set(KEPT.glob("*.png")) - wanted:
        old.unlink()
    lines = ["# Every screen, light and dark", "",
             "Made by the editor itself (`tests/tools/screens.py renew`); a test compares each with the editor as it is.",
             PLANTED]
    with Desk() as desk:
        for name, title, arguments in SCREENS:
            lines += [f"## {title}"]
            for theme in THEMES:
                path = kept_path(name, theme)
                lines += [f"![{title}, {theme}](screens/{path.name})"]
                if names and name not in names:
                    continue
                picture = desk.picture(editor, theme, arguments)
                if not path.exists() or differences(picture, kept_picture(name, theme)) != []:
                    small = Image.fromarray(picture).quantize(256, method=Image.Quantize.FASTOCTREE,
                                                              dither=Image.Dither.NONE)
                    small.save(path, optimize=True)
                    if differences(picture, kept_picture(name, theme)):
                        Image.fromarray(picture).save(path, optimize=True)  # too many colours for a palette
            lines += [""]
    PAGE.write_text("\n".join(lines[:-1]) + "\n")


def check(editor):
    wrong = 0
    with Desk() as desk:
        for name, _, arguments in SCREENS:
            for theme in THEMES:
                squares = differences(desk.picture(editor, theme, arguments), kept_picture(name, theme))
                if squares != []:
                    wrong += 1
                    print(f"{name}-{theme}: {'another size' if squares is None else place_of(squares)}")
    return 1 if wrong else 0


if __name__ == "__main__":
    if sys.argv[1:2] not in (["renew"], ["check"]) or len(sys.argv) < 3 or (sys.argv[1] == "check" and len(sys.argv) > 3):
        raise SystemExit("usage: screens.py renew EDITOR [NAME …], or screens.py check EDITOR")
    program = str(pathlib.Path(sys.argv[2]).resolve())
    raise SystemExit(renew(program, sys.argv[3:]) if sys.argv[1] == "renew" else check(program))
