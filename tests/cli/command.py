"""What all tests of the command line share: running the real program, and a folder of its own for each test.
The program's path comes as PUNCHWRIGHT in the environment; the tests know nothing else of it."""

import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unittest

SOURCE = pathlib.Path(__file__).resolve().parents[2]
SAMPLE = SOURCE / "tests" / "data" / "sample.repeat"
PROGRAM = os.environ.get("PUNCHWRIGHT", "punchwright")
NOBODY = "65534"

DONE, FAULTS, CANNOT = 0, 1, 2

# A design without a fault or a warning: floats of at most three, a repeat that divides the card's.
GOOD = """format = 1
title = "Buoys"

[machine]
profile = "bulky-card-24"

[[yarn]]
key = "A"
name = "Oat"
colour = "#e8dcc2"
[[yarn]]
key = "B"
name = "Ink"
colour = "#20304a"

[repeat]
width = 4
rows = [
  ".##.",
  "#..#",
]

[[band]]
rows = 2
main = "A"
contrast = "B"

[piece]
stitches = 24
"""

# Five stitches in a row are allowed; here B passes behind seven.
FAULTY = GOOD.replace("width = 4", "width = 8").replace('".##."', '"......##"').replace('"#..#"', '"#..#.#.#"')

BY_HAND = GOOD.replace("bulky-card-24", "plastic-by-hand")

# Every kind of file that can be taken away.
EXPORTS = [
    ("card", "pdf"),
    ("card", "svg"),
    ("card", "png"),
    ("card", "txt"),
    ("needles", "pdf"),
    ("needles", "html"),
    ("needles", "csv"),
    ("needles", "txt"),
    ("fabric", "png"),
    ("leaflet", "pdf"),
    ("chart", "png"),
    ("chart", "svg"),
    ("steps", "pdf"),
    ("steps", "html"),
    ("steps", "txt"),
]


def first_file(what, out):
    """A card and a swatch of the tests' designs have two to nine pages; in pixels each page is a file of its own."""
    return out.with_name(f"{out.stem}-1{out.suffix}") if what in ("card", "swatch") and out.suffix == ".png" else out


COMMANDS = ["check", "mend", "trace", "card", "needles", "rows", "steps", "prove", "explain", "fabric", "leaflet", "chart", "thumbnail", "yoke",
            "import", "machine", "measure", "swatch"]


class Ended:
    """How a run of the program ended."""

    def __init__(self, finished):
        self.code = finished.returncode
        self.out = finished.stdout or b""
        self.err = finished.stderr.decode("utf-8")

    @property
    def text(self):
        return self.out.decode("utf-8")


def run(*arguments, program=PROGRAM, prefix=(), **how):
    """Runs the program to its end. Locale and time zone are the caller's business."""
    how.setdefault("timeout", 60)
    if "stdout" not in how:
        how["stdout"] = subprocess.PIPE
    if "input" not in how and "stdin" not in how:
        how["stdin"] = subprocess.DEVNULL
    finished = subprocess.run([*prefix, program, *map(str, arguments)], stderr=subprocess.PIPE, **how)
    return Ended(finished)


def as_nobody():
    """The words before a command that take root's rights away: for root, no folder is read-only."""
    return ["setpriv", f"--reuid={NOBODY}", f"--regid={NOBODY}", "--clear-groups"] if os.geteuid() == 0 else []


class CommandTest(unittest.TestCase):
    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="punchwright-test-"))
        self.folder.chmod(0o755)
        self.addCleanup(shutil.rmtree, self.folder, ignore_errors=True)
        self.good = self.file("buoys.repeat", GOOD)
        self.faulty = self.file("long floats.repeat", FAULTY)
        self.by_hand = self.file("by hand.repeat", BY_HAND)

    def file(self, name, content):
        path = self.folder / name
        path.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
        return path

    def names(self, folder=None):
        return sorted(path.name for path in (folder or self.folder).iterdir())

    def assert_ended(self, ended, code):
        self.assertEqual(ended.code, code, f"\nstdout: {ended.out[:500]!r}\nstderr: {ended.err}")

    def assert_refused(self, ended, *words):
        """Exit 2, nothing on standard output, and one clear message, which holds the words."""
        self.assert_ended(ended, CANNOT)
        self.assertFalse(ended.out, "nothing but data belongs on standard output")
        self.assertRegex(ended.err, re.compile(r"\Apunchwright: [^\n]{8,}\n\Z"), "one line on standard error")
        for word in words:
            self.assertIn(str(word), ended.err)
        for inner in ["CLI::", "std::", "terminate", "exception", "nullptr"]:
            self.assertNotIn(inner, ended.err)


def main():
    """Shuffled, with the seed said; PUNCHWRIGHT_SEED repeats an order."""
    import random

    seed = int(os.environ.get("PUNCHWRIGHT_SEED", random.SystemRandom().randrange(1_000_000)))
    print(f"seed {seed}", file=sys.stderr)
    order = random.Random(seed)

    class Shuffled(unittest.TestLoader):
        def getTestCaseNames(self, case):
            names = super().getTestCaseNames(case)
            order.shuffle(names)
            return names

    unittest.main(testLoader=Shuffled(), verbosity=1)
