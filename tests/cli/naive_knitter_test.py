"""The program against a second, naive working-out of the same designs: rows to knit, needles, passes and floats.
A difference prints the design, so that it can be tried by hand; PUNCHWRIGHT_DESIGNS sets how many are compared."""

import json
import os
import pathlib
import tempfile
import unittest

import command
from command import run
from random_designs import design_from, naive, write_machines

DESIGNS = int(os.environ.get("PUNCHWRIGHT_DESIGNS", "300"))
FIRST_SEED = int(os.environ.get("PUNCHWRIGHT_FIRST_SEED", "1"))


class Compared:
    """A design with what the program said of it, asked once for all tests."""

    def __init__(self, seed, folder):
        self.seed = seed
        self.design = design_from(seed)
        path = folder / f"design {seed}.repeat"
        path.write_text(self.design.text())
        self.rows = run("rows", path, "--json")
        self.check = run("check", path, "--json")

    @property
    def rows_said(self):
        return json.loads(self.rows.out)

    @property
    def findings(self):
        return json.loads(self.check.out)["findings"]


def main_first(row):
    """The row with its passes as if main went first: which of two passes has which yarn is left open."""
    travels = [one["travel"] for one in row["passes"]]
    yarns = sorted((one["yarns"] for one in row["passes"]), key=lambda yarn: yarn != row["main"])
    return {**row, "passes": [{"yarns": yarn, "travel": travel} for yarn, travel in zip(yarns, travels)]}


class TheProgramAgreesWithTheNaiveKnitter(unittest.TestCase):
    maxDiff = None

    @classmethod
    def setUpClass(cls):
        with tempfile.TemporaryDirectory(prefix="punchwright-test-") as name:
            folder = pathlib.Path(name)
            write_machines(folder)
            cls.compared = [Compared(seed, folder) for seed in range(FIRST_SEED, FIRST_SEED + DESIGNS)]

    def for_each(self, examine):
        for one in self.compared:
            with self.subTest(seed=one.seed):
                try:
                    examine(one)
                except (AssertionError, KeyError, ValueError) as difference:
                    raise AssertionError(f"{difference}\n{one.check.err}\n{one.design.text()}") from None

    def test_all_were_read(self):
        def examine(one):
            self.assertIn(one.rows.code, (command.DONE, command.FAULTS), one.rows.err)
            self.assertEqual(one.rows.code, one.check.code)

        self.for_each(examine)

    def test_rows_to_knit(self):
        inserted = 0
        two_passes = 0

        def examine(one):
            nonlocal inserted, two_passes
            expected = naive.rows_as_json(one.design)
            rows = one.rows_said["rows"]
            self.assertEqual([main_first({key: row[key] for key in expected[0]}) for row in rows], expected)
            for row in rows:
                self.assertEqual(row["why"] == "drawn", row["drawn"] is not None)
                self.assertTrue(row["why"])
            inserted += sum(row["drawn"] is None for row in expected)
            two_passes += sum(len(row["passes"]) == 2 for row in expected)

        self.for_each(examine)
        self.assertGreater(inserted, DESIGNS, "the designs must have plenty of inserted rows")
        self.assertGreater(two_passes, DESIGNS // 4, "and of rows in two passes")

    def test_with_one_feeder_a_yarn_starts_where_it_hangs(self):
        """From one row in two passes to the next: the yarn that went last hangs on the carriage's side, and goes first
        (common practice; else it would lie across the whole piece)."""
        seen = 0

        def examine(one):
            nonlocal seen
            rows = one.rows_said["rows"]
            for row, after in zip(rows, rows[1:]):
                same = (row["main"], row["contrast"]) == (after["main"], after["contrast"])
                if len(row["passes"]) == 2 and len(after["passes"]) == 2 and same:
                    self.assertEqual(after["passes"][0]["yarns"], row["passes"][1]["yarns"], f"row {after['row']}")
                    seen += 1

        self.for_each(examine)
        self.assertGreater(seen, DESIGNS // 10)

    def test_setting_up_ends_where_the_carriage_is_to_stand(self):
        def examine(one):
            setup = [(row["travel"], row["main"], row["selects"]) for row in one.rows_said["setup"]]
            expected = naive.setup_rows(one.design)
            if expected is not None:
                self.assertEqual(setup, expected)
            elif setup:
                self.assertEqual(setup[-1][0], "rightwards" if one.design.carriage == "right" else "leftwards")

        self.for_each(examine)

    def test_floats(self):
        seen = {"repeat": 0, "piece": 0, "round the edge": 0}

        def examine(one):
            floats = [finding for finding in one.findings if finding["id"] == "float-too-long"]
            on_repeat = [lies for lies in floats if lies["on"] == "repeat"]
            on_piece = [lies for lies in floats if lies["on"] == "piece"]
            self.assertEqual(len(on_repeat) + len(on_piece), len(floats))
            self.assertEqual(
                sorted((lies["row"], lies["yarn"], *lies["columns"], lies["stitches"]) for lies in on_repeat),
                naive.floats_on_repeat(one.design),
            )
            self.assertEqual(
                sorted(
                    (lies["row"], lies["yarn"], *lies["needles"], lies["stitches"], lies["times"]) for lies in on_piece
                ),
                naive.floats_on_piece(one.design),
            )
            for lies in floats:
                self.assertEqual(lies["severity"], "fault")
                width = lies["stitches"] * 100 / float(one.design.stitches_per_10cm)
                self.assertAlmostEqual(lies["mm"], width, delta=0.0051)  # told in hundredths
            seen["repeat"] += len(on_repeat)
            seen["piece"] += len(on_piece)
            seen["round the edge"] += sum(lies["columns"][0] > lies["columns"][1] for lies in on_repeat)

        self.for_each(examine)
        for what, count in seen.items():
            self.assertGreater(count, DESIGNS // 4, what)

    def test_a_width_that_does_not_divide_the_cards_is_a_fault(self):
        def examine(one):
            repeat = one.design.machine.card_repeat
            wrong = repeat is not None and repeat % one.design.width != 0
            found = [finding for finding in one.findings if finding["id"].startswith("repeat-width")]
            self.assertEqual([finding["severity"] for finding in found], ["fault"] if wrong else [], found)

        self.for_each(examine)

    def test_the_exit_code_tells_whether_there_are_faults(self):
        def examine(one):
            faulty = any(finding["severity"] == "fault" for finding in one.findings)
            self.assertEqual(one.check.code, command.FAULTS if faulty else command.DONE)

        self.for_each(examine)
        codes = [one.check.code for one in self.compared]
        self.assertGreater(min(codes.count(command.FAULTS), codes.count(command.DONE)), DESIGNS // 20, "both happen")


if __name__ == "__main__":
    command.main()
