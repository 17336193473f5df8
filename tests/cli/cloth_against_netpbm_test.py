"""The cloth picture against netpbm's own mirror, shift and tile, as an outside reference.
On the knit side the leftmost needle in work is at the right; the purl side, which faces the knitter, is its mirror."""

import random

import command
from command import DONE, CommandTest, run
from random_designs import DIVIDING, naive

import netpbm_reference as netpbm  # beside naive_knitter

OAT, INK = (0xE8, 0xDC, 0xC2), (0x20, 0x30, 0x4A)
BY_HAND = next(machine for machine in naive.BUILT_IN if machine.card_repeat is None)
BY_CARD = next(machine for machine in naive.BUILT_IN if machine.name == "standard-card-24")


def random_drawing(dice, width):
    height = dice.randint(1, 6)
    while True:
        rows = ["".join(dice.choice(".#") for _ in range(width)) for _ in range(height)]
        if width < 4 or rows != [row[::-1] for row in rows]:
            return rows


class TheCloth(CommandTest):
    def cloth(self, design, side):
        path = self.file("drawing.repeat", design.text())
        out = self.folder / f"{side}.png"
        ended = run("fabric", path, "-o", out, "--side", side)
        self.assertIn(ended.code, (DONE, command.FAULTS), ended.err)
        height = len(design.rows) * design.times
        return netpbm.cells_of_cloth(out.read_bytes(), design.stitches, height, OAT, INK)

    def compare(self, design, last_column):
        """`last_column`: the drawn column on the leftmost needle, which is the rightmost stitch of the knit side."""
        drawing = netpbm.pbm_of(design.rows)
        turned = netpbm.shifted_to_end_with(drawing, design.width, last_column, self.folder)
        repeats = -(-design.stitches // design.width)
        height = len(design.rows) * design.times
        whole = netpbm.tiled(turned, repeats * design.width, height)
        knit = netpbm.cut(whole, repeats * design.width - design.stitches, design.stitches)
        self.assertEqual(self.cloth(design, "knit"), netpbm.rows_of(knit), design.text())
        self.assertEqual(self.cloth(design, "purl"), netpbm.rows_of(netpbm.mirrored(knit)), design.text())

    def design(self, dice, machine, width):
        rows = random_drawing(dice, width)
        design = naive.Design(machine, rows, [naive.BandOfRows(len(rows), "A", "B")])
        design.end_needles = "never"
        design.times = dice.randint(1, 3)
        design.stitches = dice.randint(1, 60)
        return design

    def test_by_hand_from_any_column(self):
        dice = random.Random(1)
        for seed in range(12):
            with self.subTest(seed=seed):
                design = self.design(dice, BY_HAND, dice.randint(1, 30))
                design.first_needle = dice.randint(-75, 75 - design.stitches)
                design.first_column = dice.randint(1, design.width)
                self.compare(design, last_column=design.first_column)

    def test_on_a_card_machine_from_any_needle(self):
        dice = random.Random(2)
        for seed in range(12):
            with self.subTest(seed=seed):
                design = self.design(dice, BY_CARD, dice.choice(DIVIDING))
                steps = dice.randint(0, 40)  # to the right of L12, where the last drawn column stands
                design.first_needle = -12 + steps
                self.compare(design, last_column=design.width - steps % design.width)

    def test_one_repeat_on_the_knit_side_is_the_drawing(self):
        dice = random.Random(3)
        design = self.design(dice, BY_CARD, 24)
        design.stitches, design.first_needle, design.times = 24, -12, 1
        self.assertEqual(self.cloth(design, "knit"), design.rows)
        path = self.file("drawing.repeat", design.text())
        default = self.folder / "default.png"
        run("fabric", path, "-o", default)
        self.assertEqual(default.read_bytes(), (self.folder / "knit.png").read_bytes(), "the knit side unless asked")


if __name__ == "__main__":
    command.main()
