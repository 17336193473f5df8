"""Random designs for comparing the program with the naive knitter: small, seeded, and rich in awkward cases.
Awkward: bands without a contrast, plain and all-contrast rows, repeats of repetitions, sides, odd widths and places."""

import random
import sys

from command import SOURCE

sys.path.insert(0, str(SOURCE / "tests" / "tools"))
import naive_knitter as naive  # noqa: E402

DIVIDING = [1, 2, 3, 4, 6, 8, 12, 24]
OTHERS = [5, 7, 9, 10, 11, 13, 14, 16, 17, 20, 22, 23, 25, 31, 48, 63, 64, 65, 128, 129, 200]

# One feeder, and the needles are selected in the pass that knits. Card column 1 in another place than on the built-in.
OWN_MACHINE = """format = 1
name = "harbour"
title = "the harbour room's own"

[bed]
needles = 100
pitch_mm = 6.5

[knitting]
feeders = 1
selects = "same-pass"
end_needles = false
longest_float = 4

[card]
repeat = 24
first_needle = "L12"
"""
OWN_BY_HAND = """format = 1
name = "shed"

[bed]
needles = 80
pitch_mm = 6.5

[knitting]
feeders = 1
selects = "by-hand"
end_needles = true
longest_float = 6
"""
OWN = [
    naive.Machine("harbour.machine", 100, "same pass", feeders=1, longest_float=4, card_repeat=24),
    naive.Machine("shed.machine", 80, "by hand", feeders=1, end_needles=True, longest_float=6),
]


def write_machines(folder):
    (folder / "harbour.machine").write_text(OWN_MACHINE)
    (folder / "shed.machine").write_text(OWN_BY_HAND)


def drawn_row(dice, width, plain):
    """Some rows of one colour, some with long runs, some with a short period, most of them anything."""
    kind = dice.random()
    if plain or kind < 0.2:
        return "." * width
    if kind < 0.28:
        return "#" * width
    if kind < 0.55:
        row = ""
        while len(row) < width:
            row += dice.choice(".#") * dice.randint(1, 9)
        return row[:width]
    if kind < 0.7:
        share = dice.choice([0.05, 0.95])
        return "".join("#" if dice.random() < share else "." for _ in range(width))
    return "".join(dice.choice(".#") for _ in range(width))


def bands_of(dice, height):
    bands = []
    left = height
    while left > 0:
        rows = min(left, dice.choice([1, 1, 1, 2, 2, 3, 5]))
        main = dice.choice("AAAAE")
        contrast = dice.choice([None, "B", "B", "C", "D"])
        plain_below = dice.choice([0, 1, 2, 3]) if dice.random() < 0.15 else None
        bands.append(naive.BandOfRows(rows, main, contrast, plain_below))
        left -= rows
    return bands


def design_from(seed):
    dice = random.Random(seed)
    machine = dice.choice(naive.BUILT_IN + OWN)
    width = dice.choice(DIVIDING if dice.random() < 0.6 else OTHERS)
    height = dice.randint(1, 10)
    bands = bands_of(dice, height)
    rows = [drawn_row(dice, width, band.contrast is None) for band in bands for _ in range(band.rows)]
    design = naive.Design(machine, rows, bands)
    design.stitches_per_10cm = dice.choice(["16.0", "14.0", "15.0", "12.5", "28.0", "30.0", "17.3"])
    place(dice, design)
    design.times = dice.choice([1, 1, 2, 3, 4])
    design.carriage = dice.choice(["left", "right"])
    design.end_needles = dice.choice(["profile", "profile", "always", "never"])
    limit(dice, design)
    design.plain_rows = dice.choice([0, 1, 1, 2, 2, 3, 4, 9])
    design.change_side = dice.choice(["any", "left", "right"])
    # A loop without a contrast stitch is one plain run for ever: there is nothing to count in it.
    design.loop = machine.card_repeat is not None and "#" in "".join(rows) and dice.random() < 0.35
    return design


def place(dice, design):
    """On the bed, always: what happens beyond it is another test's."""
    bed = design.machine.needles
    if dice.random() < 0.75:
        design.stitches = dice.choice([1, 2, 3, dice.randint(1, bed), dice.randint(1, bed), bed])
    stitches = design.stitches or design.width
    if stitches > bed:
        design.stitches = stitches = bed
    if dice.random() < 0.6:
        design.first_needle = dice.randint(-(bed // 2), bed - bed // 2 - stitches)
    if design.machine.card_repeat is None and dice.random() < 0.5:
        design.first_column = dice.randint(1, design.width)


def limit(dice, design):
    """Often a limit that some float has exactly: equal is allowed."""
    kind = dice.random()
    if kind < 0.3:
        design.longest_float = dice.randint(1, 12)
    elif kind < 0.7:
        stitches = dice.randint(1, 9)
        exact = naive.Fraction(stitches) * 100 / naive.Fraction(design.stitches_per_10cm)
        rounded = f"{float(exact):.1f}"
        design.longest_float_mm = dice.choice([rounded, "25.0", "20.0", "30.0", "50.0"])
