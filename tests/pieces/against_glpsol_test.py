"""Stitch counts of whole yokes against glpsol, the solver of the GNU Linear Programming Kit: four pieces, four tiers, three
sizes, with seams that bind: continuous ones, and centred ones that are alike. The integer program is written here from the
rules alone, and the straight cone is worked out here from the file's numbers."""

import json
import math
import os
import pathlib
import random
import subprocess
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "tools"))

from glpsol import optimum

PROGRAM = os.environ["PUNCHWRIGHT"]
ROUNDS = int(os.environ.get("PUNCHWRIGHT_ROUNDS", 3))
SEED = int(os.environ.get("PUNCHWRIGHT_SEED", random.SystemRandom().randrange(1_000_000)))
EDGE = 1
TOLERANCE = {"continuous": 0.06, "centred": 0.15}  # where a middle is asked for, every other count is left out
BED = 112
CARD = 24


def tier(width, rows):
    lines = "".join('  "' + "".join(".#"[(column + row) % 2] for column in range(width)) + '",\n' for row in range(rows))
    return f"""format = 1
[[yarn]]
key = "A"
[[yarn]]
key = "B"
[repeat]
width = {width}
rows = [
{lines}]
[[band]]
rows = {rows}
main = "A"
contrast = "B"
"""


class Yoke:
    """Random measures, and the file that says them."""

    def __init__(self, dice, seams):
        self.seams = seams
        self.sizes = ["small", "medium", "large"]
        self.gauge = dice.choice([12.0, 14.0, 14.5, 16.0])
        self.widths = [dice.choice([24, 12]), dice.choice([24, 12, 8]), dice.choice([12, 8, 6]), dice.choice([8, 6, 4])]
        self.rows = [dice.randint(4, 14) for _ in range(4)]
        self.plain = [dice.randint(4, 6) for _ in range(3)] + [2]
        # Bottom and top of the pieces that have widths; now and then a top so narrow that a row of decreases would take
        # more than one stitch in two.
        self.alike = dice.random() < 0.5
        self.names = ["front", "left sleeve", "back", "right sleeve"]
        own = 2 if self.alike else 4
        steep = dice.random() < 0.3
        self.measures = []
        for piece in range(own):
            bottom = dice.uniform(40, 48) if piece % 2 == 0 else dice.uniform(26, 32)
            top = bottom * (dice.uniform(0.08, 0.2) if steep else dice.uniform(0.35, 0.6))
            self.measures.append(
                [(round(bottom + 3.5 * size, 1), round(top + 1.2 * size, 1)) for size in range(3)]
            )

    def own(self, piece):
        return piece % 2 if self.alike else piece

    def text(self):
        pieces = ""
        for number, name in enumerate(self.names):
            pieces += f'[[piece]]\nname = "{name}"\n'
            if self.own(number) != number:
                pieces += f'like = "{self.names[self.own(number)]}"\n'
            else:
                pieces += f"bottom_cm = {[bottom for bottom, _ in self.measures[number]]}\n"
                pieces += f"top_cm = {[top for _, top in self.measures[number]]}\n"
        tiers = "".join(f'[[tier]]\nrepeat = "{number}.repeat"\nplain_above = {self.plain[number]}\n' for number in range(4))
        return f"""format = 1
sizes = ["small", "medium", "large"]
edge = {EDGE}
[machine]
profile = "bulky-card-24"
[gauge]
stitches = {self.gauge}
rows = 18.0
{pieces}[depth]
cm = 22.0
{tiers}[fit]
tolerance = {TOLERANCE[self.seams]}
seams = "{self.seams}"
"""

    def ideal(self, piece, size, number):
        """At the height of the tier's first row, in rows of the whole yoke; tier 4 is the top."""
        whole = sum(self.rows) + sum(self.plain)
        height = sum(self.rows[:number]) + sum(self.plain[:number])
        bottom, top = self.measures[self.own(piece)][size]
        return (bottom + (top - bottom) * height / whole) * self.gauge / 10 + 2 * EDGE


def can_be_centred(count, width):
    """Whether the piece's middle can lie on the middle of one of the card's copies of the repeat, with all of it on the bed.
    The card of 24 has its middle at the bed's; all in half stitches from there, and a whole piece either way."""
    return any(
        (2 * first + count + CARD - width) % (2 * width) == 0 for first in range(-(BED // 2), BED // 2 - count + 1)
    )


def program(yoke, size):
    """Least squares as an integer program: a binary for each count that each piece may have in each tier."""
    cost, rules, bounds, binaries, whole = [], [], [], [], []
    for piece in range(4):
        for number in range(5):
            ideal = yoke.ideal(piece, size, number)
            counts = range(
                max(2 * EDGE + 1, math.ceil(ideal * (1 - TOLERANCE[yoke.seams]) - 1e-9)),
                min(BED, math.floor(ideal * (1 + TOLERANCE[yoke.seams]) + 1e-9)) + 1,
            )
            if yoke.seams == "centred" and number < 4:
                counts = [count for count in counts if can_be_centred(count, yoke.widths[number])]
            if not counts:
                return None
            names = [f"x_{piece}_{number}_{count}" for count in counts]
            binaries += names
            cost += [f"{(count - ideal) ** 2:.9f} {name}" for count, name in zip(counts, names)]
            rules.append(" " + " + ".join(names) + " = 1")
            rules.append(
                " " + " + ".join(f"{count} {name}" for count, name in zip(counts, names)) + f" - n_{piece}_{number} = 0"
            )
        for number in range(4):  # twice what is decreased is no more than the visible stitches
            rules.append(f" n_{piece}_{number} - 2 n_{piece}_{number + 1} <= {-2 * EDGE}")
            rules.append(f" n_{piece}_{number + 1} - 2 n_{piece}_{number} <= {-2 * EDGE - 1}")
        if yoke.own(piece) != piece:
            rules += [f" n_{piece}_{number} - n_{yoke.own(piece)}_{number} = 0" for number in range(5)]
    for number in range(4):
        if yoke.seams == "continuous":
            ring = " + ".join(f"n_{piece}_{number}" for piece in range(4))
            rules.append(f" {ring} - {yoke.widths[number]} k_{number} = {8 * EDGE}")
            whole.append(f"k_{number}")
            continue
        for piece in range(2):  # the first column of a piece and of the next but one are the same
            for each in (piece, piece + 2):
                rules.append(
                    f" n_{each}_{number} - {2 * yoke.widths[number]} k_{each}_{number} - r_{piece}_{number} = 0"
                )
                whole.append(f"k_{each}_{number}")
            bounds.append(f" r_{piece}_{number} <= {2 * yoke.widths[number] - 1}")
            whole.append(f"r_{piece}_{number}")
    return (
        "Minimize\n cost: " + " + ".join(cost) + "\nSubject To\n" + "\n".join(rules)
        + "\nBounds\n" + "\n".join(bounds)
        + "\nGeneral\n" + "\n".join(" " + name for name in whole)
        + "\nBinary\n" + "\n".join(" " + name for name in binaries) + "\nEnd\n"
    )


class Against(unittest.TestCase):
    def setUp(self):
        self.dice = random.Random(SEED)
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="punchwright-yoke-"))
        self.addCleanup(lambda: subprocess.run(["rm", "-rf", self.folder]))

    def solve(self, text):
        """The least cost, or None."""
        return None if text is None else optimum(text, self.folder, "--cuts")

    def test_the_counts_are_the_optimum(self):
        self.check("continuous")

    def test_so_are_those_of_centred_pieces(self):
        self.check("centred")

    def check(self, seams):
        fitted, rounds = 0, 0
        while rounds < ROUNDS or (fitted == 0 and rounds < 10 * ROUNDS):
            rounds += 1
            yoke = Yoke(self.dice, seams)
            for number in range(4):
                (self.folder / f"{number}.repeat").write_text(tier(yoke.widths[number], yoke.rows[number]))
            path = self.folder / "random.yoke"
            path.write_text(yoke.text())
            ended = subprocess.run([PROGRAM, "yoke", path, "--json"], capture_output=True, text=True)
            best = [self.solve(program(yoke, size)) for size in range(3)]
            with self.subTest(yoke=yoke.text()):
                if None in best:
                    self.assertEqual(ended.returncode, 2, ended.stdout)
                    self.assertIn("no stitch counts of size " + yoke.sizes[best.index(None)], ended.stderr)
                    continue
                self.assertEqual(ended.returncode, 0, ended.stderr)
                for size, answer in enumerate(json.loads(ended.stdout)["sizes"]):
                    fitted += 1
                    self.assertAlmostEqual(answer["squares"], best[size], delta=1e-4)
                    self.assertAlmostEqual(answer["bound"], best[size], delta=1e-4)
                    counted = 0
                    for piece, entry in enumerate(answer["pieces"]):
                        counts = [level["stitches"] for level in entry["tiers"]] + [entry["tiers"][-1]["after"]]
                        counted += sum((count - yoke.ideal(piece, size, number)) ** 2 for number, count in enumerate(counts))
                    self.assertAlmostEqual(counted, best[size], delta=1e-4)
        self.assertGreater(fitted, 0)


if __name__ == "__main__":
    print(f"seed {SEED}", file=sys.stderr)
    unittest.main(verbosity=1)
