"""The mend of blocks whose stitches have prices, some of which must stay, against glpsol: the least price in rows of 17 to 40
stitches, and in small blocks all three criteria one after the other: price, pairs, squares of the runs."""

import os
import pathlib
import random
import subprocess
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "tools"))

from glpsol import optimum
from integer_program import flips, longest_run, pairs_of, random_row, runs_of, windows

MENDER = os.environ["PUNCHWRIGHT_MENDER"]
ROUNDS = int(os.environ.get("PUNCHWRIGHT_ROUNDS", 12))
SEED = int(os.environ.get("PUNCHWRIGHT_SEED", random.SystemRandom().randrange(1_000_000)))


class Block:
    def __init__(self, dice, width, height, limit, stays):
        self.width, self.limit, self.stacked = width, limit, dice.random() < 0.5
        self.rows = [random_row(dice, width) for _ in range(height)]
        self.prices = [[-1 if dice.random() < stays else dice.randint(0, 6) for _ in row] for row in self.rows]

    def text(self):
        return "\n".join([f"{self.width} {len(self.rows)} {self.limit} {int(self.stacked)}",
                          *("".join(".#"[stitch] for stitch in row) for row in self.rows),
                          *(" ".join(map(str, row)) for row in self.prices), ""])

    def mended(self):
        done = subprocess.run([MENDER], input=self.text(), capture_output=True, text=True, check=True)
        price, pairs, squares, proved, *left = map(int, done.stdout.split())
        return {"price": price, "pairs": pairs, "squares": squares}, bool(proved), set(left)


class Program:
    """What all criteria have in common: rows that need it have no run that is too long, stitches that stay don't change."""

    def __init__(self, block, left):
        self.names, self.constraints, self.price, self.wanted = [], [], [], []
        for number, row in enumerate(block.rows):
            name = f"r{number}"
            changes = [f"{name}c_{column}" for column in range(block.width)]
            self.names += changes + [f"{name}x_{column}" for column in range(block.width)]
            self.constraints += flips(name, row)
            wanted = longest_run(row) > block.limit and number not in left
            self.wanted += [number] if wanted else []
            self.constraints += list(windows(name + "x", block.width, block.limit)) if wanted else []
            for change, price in zip(changes, block.prices[number]):
                if price < 0 or not wanted:
                    self.constraints.append(f" {change} = 0")
                else:
                    self.price.append((price, change))

    def fix(self, terms, value):
        self.constraints.append(" " + " + ".join(f"{factor} {name}" for factor, name in terms) + f" = {value}")

    def least(self, terms, folder):
        best = optimum("Minimize\n cost: " + " + ".join(f"{factor} {name}" for factor, name in terms) + "\nSubject To\n"
                       + "\n".join(self.constraints) + "\nBinary\n" + "\n".join(" " + name for name in self.names)
                       + "\nEnd\n", folder, timeout=280)
        return None if best is None else round(best)


class WithPrices(unittest.TestCase):
    def setUp(self):
        self.dice = random.Random(SEED)
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="punchwright-prices-"))
        self.addCleanup(lambda: subprocess.run(["rm", "-rf", self.folder]))

    def test_the_least_price_of_long_rows(self):
        mended = refused = 0
        for _ in range(6 * ROUNDS):
            block = Block(self.dice, self.dice.randint(17, 40), 1, self.dice.randint(1, 9), self.dice.choice((0, 0.1, 0.6)))
            if longest_run(block.rows[0]) <= block.limit:
                continue
            answer, _, left = block.mended()
            program = Program(block, set())
            best = program.least(program.price or [(0, "r0c_0")], self.folder)
            with self.subTest(block=block.text()):
                self.assertEqual(left, {0} if best is None else set())
                self.assertEqual(answer["price"], best or 0)
            mended += best is not None
            refused += best is None
        self.assertGreater(mended, ROUNDS)
        self.assertGreater(refused, 0)

    def test_price_then_pairs_then_squares_of_small_blocks(self):
        proved_blocks = 0
        for _ in range(ROUNDS):
            block = Block(self.dice, self.dice.randint(6, 11), self.dice.randint(2, 4), self.dice.randint(2, 4), 0.05)
            if self.dice.random() < 0.6:  # every stitch alike: many choices of the same price
                block.prices = [[1] * block.width for _ in block.rows]
            answer, proved, left = block.mended()
            program = Program(block, left)
            if not program.wanted:
                continue
            pairs, side_by_side = pairs_of(len(block.rows), block.width, block.stacked)
            squares = []
            program.constraints += side_by_side
            program.names += pairs
            for number in program.wanted:
                runs, tied = runs_of(f"r{number}", block.width, block.limit)
                program.constraints += tied
                program.names += [name for _, name in runs]
                squares += [(length * length, name) for length, name in runs]
            with self.subTest(block=block.text()):
                for what, terms in (("price", program.price), ("pairs", [(1, pair) for pair in pairs]), ("squares", squares)):
                    best = program.least(terms, self.folder)
                    if not proved and what != "price":
                        self.assertGreaterEqual(answer[what], best)
                        break
                    self.assertEqual(answer[what], best, what)
                    program.fix(terms, best)
            proved_blocks += proved
        self.assertGreater(proved_blocks, ROUNDS // 2)


if __name__ == "__main__":
    print(f"seed {SEED}", file=sys.stderr)
    unittest.main(verbosity=1)
