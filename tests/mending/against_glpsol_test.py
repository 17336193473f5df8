"""The mend of whole files against glpsol, the solver of the GNU Linear Programming Kit: as few changes as the integer
program's optimum, and in small blocks as few pairs of changes in neighbouring rows. The program is written here from the
rule alone: of any limit + 1 stitches side by side, round the edge, one is main and one is contrast."""

import json
import os
import pathlib
import random
import subprocess
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "tools"))

from glpsol import optimum
from integer_program import design, flips, longest_run, pairs_of, parts_within, random_row, windows

PROGRAM = os.environ["PUNCHWRIGHT"]
ROUNDS = int(os.environ.get("PUNCHWRIGHT_ROUNDS", 12))
SEED = int(os.environ.get("PUNCHWRIGHT_SEED", random.SystemRandom().randrange(1_000_000)))


def solve(objective, constraints, binaries, folder):
    best = optimum(
        "Minimize\n cost: " + " + ".join(objective) + "\nSubject To\n" + "\n".join(constraints)
        + "\nBinary\n" + "\n".join(" " + name for name in binaries) + "\nEnd\n", folder, timeout=120)
    return None if best is None else round(best)


class Against(unittest.TestCase):
    def setUp(self):
        self.dice = random.Random(SEED)
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="punchwright-mend-"))
        self.addCleanup(lambda: subprocess.run(["rm", "-rf", self.folder]))

    def mend(self, rows, limit, *options, times=1):
        path = self.folder / "drawn.repeat"
        path.write_text(design(rows, limit, times))
        out = self.folder / "mended.repeat"
        ended = subprocess.run([PROGRAM, "mend", path, "-o", out, "--json", *options], capture_output=True, text=True)
        self.assertIn(ended.returncode, (0, 1), ended.stderr)
        return json.loads(ended.stdout)

    def check_rows(self, rows, limit, answer, kept=()):
        """Each row's number of changes is the optimum; `kept` are (row, column) from 0 that stay."""
        refused = {entry["row"] - 1 for entry in answer["unmendable"]}
        for number, row in enumerate(rows):
            changed = sum(entry["row"] - 1 == number for entry in answer["changed"])
            if longest_run(row) <= limit:
                self.assertEqual(changed, 0)
                self.assertNotIn(number, refused)
                continue
            names = [f"x_{column}" for column in range(len(row))]
            changes = [f"c_{column}" for column in range(len(row))]
            constraints = list(windows("x", len(row), limit)) + flips("", row)
            constraints += [f" c_{column} = 0" for place, column in kept if place == number]
            best = solve(changes, constraints, names + changes, self.folder)
            with self.subTest(row="".join(map(str, row)), limit=limit):
                if best is None:
                    self.assertIn(number, refused)
                else:
                    self.assertEqual(changed, best)

    def test_as_few_changes_as_the_optimum(self):
        for _ in range(ROUNDS):
            width, limit = self.dice.randint(17, 40), self.dice.randint(1, 9)
            rows = [random_row(self.dice, width) for _ in range(6)]
            self.check_rows(rows, limit, self.mend(rows, limit))

    def test_as_few_changes_around_stitches_that_stay(self):
        for _ in range(ROUNDS):
            width, limit = self.dice.randint(17, 32), self.dice.randint(2, 7)
            rows = [random_row(self.dice, width) for _ in range(4)]
            kept, options = [], []
            for number in range(4):
                first = self.dice.randint(1, width)
                last = min(width, first + self.dice.randint(0, 9))
                kept += [(number, column) for column in range(first - 1, last)]
                options += ["--protect", f"{number + 1}:{first}-{last}"]
            self.check_rows(rows, limit, self.mend(rows, limit, *options), kept)

    def test_as_few_pairs_in_neighbouring_rows_as_the_optimum(self):
        proved = 0
        for _ in range(ROUNDS):
            width, limit, height = self.dice.randint(8, 14), self.dice.randint(3, 5), self.dice.randint(2, 5)
            stacked = self.dice.random() < 0.5
            rows = [random_row(self.dice, width) for _ in range(height)]
            answer = self.mend(rows, limit, times=2 if stacked else 1)
            proved += answer["proved"]
            constraints, names = [], []
            for number, row in enumerate(rows):
                name = f"r{number}"
                changes = [f"{name}c_{column}" for column in range(width)]
                names += changes + [f"{name}x_{column}" for column in range(width)]
                constraints += flips(name, row)
                changed = sum(entry["row"] - 1 == number for entry in answer["changed"])
                constraints.append(" " + " + ".join(changes) + f" = {changed}")
                if changed:
                    constraints += windows(name + "x", width, limit)
            pairs, side_by_side = pairs_of(height, width, stacked)
            constraints += side_by_side
            with self.subTest(rows=rows, limit=limit, stacked=stacked):
                best = solve(pairs, constraints, names + pairs, self.folder)
                if answer["proved"]:
                    self.assertEqual(answer["neighbours"], best)
                else:
                    self.assertGreaterEqual(answer["neighbours"], best)
        self.assertGreater(proved, ROUNDS // 2)

    def test_as_few_catches_and_pairs_of_them_as_the_optimum(self):
        proved = 0
        for _ in range(ROUNDS):
            width, limit, height = self.dice.randint(8, 16), self.dice.randint(2, 5), self.dice.randint(2, 5)
            stacked = self.dice.random() < 0.5
            rows = [random_row(self.dice, width) for _ in range(height)]
            answer = self.mend(rows, limit, "--catch", "all", times=2 if stacked else 1)["caught"]
            names, within = [], []
            for number, row in enumerate(rows):
                stitches = [f"r{number}c_{column}" for column in range(width)]
                names += stitches
                within += parts_within(stitches, row, limit)
            pairs, side_by_side = pairs_of(height, width, stacked)
            with self.subTest(rows=rows, limit=limit, stacked=stacked):
                fewest = solve(names, within, names, self.folder)
                self.assertEqual(answer["count"], fewest)
                least = solve(pairs, within + side_by_side + [" " + " + ".join(names) + f" = {fewest}"], names + pairs,
                              self.folder)
                proved += answer["proved"]
                if answer["proved"]:
                    self.assertEqual(answer["neighbours"], least)
                else:
                    self.assertGreaterEqual(answer["neighbours"], least)
        self.assertGreater(proved, ROUNDS // 2)


if __name__ == "__main__":
    print(f"seed {SEED}", file=sys.stderr)
    unittest.main(verbosity=1)
