"""A second opinion: the rows to knit, the needles and the floats of a small design, worked out stitch by stitch.
Written from the description of the file form alone, for clarity and not for speed, to compare the program with."""

from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Optional


@dataclass
class Machine:
    """What the comparison needs to know of a bed. Needles are positions: L1 is -1, R1 is 0."""

    name: str  # as a .repeat file names it
    needles: int
    selects: str  # "next pass", "same pass", "by hand"
    feeders: int = 2
    end_needles: bool = False
    longest_float: int = 5
    card_repeat: Optional[int] = None  # None: reads no card
    card_first_needle: int = -12


# Bed sizes and end needles as the description of the built-in profiles has them.
BUILT_IN = [
    Machine("fine-card-24", 250, "next pass", end_needles=True, card_repeat=24, card_first_needle=-12),
    Machine("standard-card-24", 200, "next pass", end_needles=True, card_repeat=24, card_first_needle=-12),
    Machine("bulky-card-24", 112, "next pass", end_needles=True, card_repeat=24, card_first_needle=-12),
    Machine("bulky-card-12", 112, "next pass", end_needles=True, card_repeat=12, card_first_needle=-6),
    Machine("plastic-by-hand", 150, "by hand"),
]


@dataclass
class BandOfRows:
    rows: int
    main: str
    contrast: Optional[str] = None
    plain_below: Optional[int] = None


@dataclass
class Design:
    """A design as its file gives it; `rows` has row 1 first, unlike the file."""

    machine: Machine
    rows: list
    bands: list
    stitches_per_10cm: str = "16.0"
    stitches: Optional[int] = None
    first_needle: Optional[int] = None  # position
    first_column: Optional[int] = None
    times: int = 1
    carriage: str = "right"
    end_needles: str = "profile"
    longest_float: Optional[int] = None
    longest_float_mm: Optional[str] = None
    plain_rows: int = 1
    change_side: str = "any"
    loop: bool = False
    yarns: list = field(default_factory=lambda: ["A", "B", "C", "D", "E"])

    @property
    def width(self):
        return len(self.rows[0])

    def text(self):
        """The .repeat file."""
        colours = ["#e8dcc2", "#20304a", "#9c3b2a", "#2f4f3a", "#4b5560"]
        out = ["format = 1", "", "[machine]", f'profile = "{self.machine.name}"', "", "[gauge]"]
        out += [f"stitches = {self.stitches_per_10cm}", "rows = 20.0", ""]
        for key, colour in zip(self.yarns, colours):
            out += ["[[yarn]]", f'key = "{key}"', f'colour = "{colour}"', ""]
        out += ["[repeat]", f"width = {self.width}", "rows = ["]
        out += [f'  "{row}",' for row in reversed(self.rows)]
        out += ["]", ""]
        for band in self.bands:
            out += ["[[band]]", f"rows = {band.rows}", f'main = "{band.main}"']
            if band.contrast:
                out.append(f'contrast = "{band.contrast}"')
            if band.plain_below is not None:
                out.append(f"plain_below = {band.plain_below}")
            out.append("")
        out += ["[piece]"]
        if self.stitches is not None:
            out.append(f"stitches = {self.stitches}")
        if self.first_needle is not None:
            out.append(f'first_needle = "{needle_name(self.first_needle)}"')
        if self.first_column is not None:
            out.append(f"first_column = {self.first_column}")
        out += [f"times = {self.times}", f'carriage = "{self.carriage}"', f'end_needles = "{self.end_needles}"', ""]
        out += ["[rules]"]
        if self.longest_float is not None:
            out.append(f"longest_float = {self.longest_float}")
        if self.longest_float_mm is not None:
            out.append(f"longest_float_mm = {self.longest_float_mm}")
        out += [f"plain_rows = {self.plain_rows}", f'change_side = "{self.change_side}"', ""]
        out += ["[card]", f"loop = {'true' if self.loop else 'false'}", ""]
        return "\n".join(out)


def needle_name(position):
    """There is no needle 0: … L2 L1 | R1 R2 …"""
    return f"L{-position}" if position < 0 else f"R{position + 1}"


def needles_in_work(design):
    """Positions from left to right. Centred when no first needle is named, an odd one on the right."""
    stitches = design.stitches if design.stitches is not None else design.width
    first = design.first_needle if design.first_needle is not None else -(stitches // 2)
    return list(range(first, first + stitches))


def drawn_column(design, position):
    """Counted from 1, leftmost on the knit side. The knitter sees the purl side, so columns fall as needles rise."""
    width = design.width
    if design.machine.card_repeat is None and design.first_column is not None:
        x = position - needles_in_work(design)[0]
        column = design.first_column
        for _ in range(x % width):
            column = width if column == 1 else column - 1
        return column
    origin = design.machine.card_first_needle if design.machine.card_repeat is not None else -(width // 2)
    return width - ((position - origin) % width)


def ends_knit_contrast(design):
    return {"profile": design.machine.end_needles, "always": True, "never": False}[design.end_needles]


def contrast_needles(design, drawn):
    """Positions that knit contrast in drawn row `drawn` (from 1), left to right."""
    row = design.rows[drawn - 1]
    if "#" not in row:
        return []
    in_work = needles_in_work(design)
    chosen = {position for position in in_work if row[drawn_column(design, position) - 1] == "#"}
    if ends_knit_contrast(design):
        chosen |= {in_work[0], in_work[-1]}
    return sorted(chosen)


# --- rows to knit ---------------------------------------------------------------------------------------------


@dataclass
class Knitted:
    """One row to knit. `drawn` counts from 1; None: an inserted row."""

    drawn: Optional[int]
    main: str
    contrast: Optional[str]  # None: the row has no contrast stitch
    single_main: bool
    passes: list = field(default_factory=list)  # (yarns, travel)
    card_row: Optional[int] = None


def band_of(design, drawn):
    top = 0
    for band in design.bands:
        top += band.rows
        if drawn <= top:
            return band
    raise ValueError("the bands don't cover the drawing")


def starts_band(design, drawn):
    """The band that begins with this drawn row, or None."""
    bottom = 1
    for band in design.bands:
        if bottom == drawn:
            return band
        bottom += band.rows
    return None


def knit_drawn(design, drawn):
    row = design.rows[drawn - 1]
    band = band_of(design, drawn)
    return Knitted(drawn, band.main, band.contrast if "#" in row else None, "#" not in row)


def count_passes(design, knitted):
    """One feeder knits a row of two yarns in two passes."""
    if knitted.drawn is None or design.machine.feeders != 1:
        return 1
    row = design.rows[knitted.drawn - 1]
    return 2 if "#" in row and "." in row else 1


def side_after(design, side, rows):
    for knitted in rows:
        for _ in range(count_passes(design, knitted)):
            side = "left" if side == "right" else "right"
    return side


def plain_row(design, drawn_below):
    return Knitted(None, band_of(design, drawn_below).main, None, True)


def run_of_plain(rows):
    """How many rows from the beginning are all main."""
    count = 0
    for knitted in rows:
        if not knitted.single_main:
            break
        count += 1
    return count


def threads_after(design, upcoming):
    """The rows that are knitted between a change at a boundary and the first row that has a stitch of the new
    contrast; None where that contrast is changed again, or the work ends, before a stitch of it.
    `upcoming`: drawn rows from the boundary upwards."""
    contrast = band_of(design, upcoming[0]).contrast
    if contrast is None:
        return None
    between = []
    for index, drawn in enumerate(upcoming):
        if band_of(design, drawn).contrast != contrast:
            return None
        below = starts_band(design, drawn)
        if index > 0 and below is not None and below.plain_below is not None:
            between += [plain_row(design, upcoming[index - 1])] * below.plain_below
        if "#" in design.rows[drawn - 1]:
            return between
        between.append(knit_drawn(design, drawn))
    return None


def rows_at_boundary(design, below, already, above, upcoming):
    """The rows inserted between drawn row `below` and the drawn row `upcoming[0]`.
    `already`: all rows to knit up to the boundary; `above`: the rows known to lie on it."""
    next_band = starts_band(design, upcoming[0])
    if next_band is not None and next_band.plain_below is not None:
        return [plain_row(design, below) for _ in range(next_band.plain_below)]
    if band_of(design, below).contrast == band_of(design, upcoming[0]).contrast:
        return []
    adjacent = run_of_plain(list(reversed(already))) + run_of_plain(above)
    inserted = [plain_row(design, below) for _ in range(max(0, design.plain_rows - adjacent))]
    if design.change_side != "any":
        between = threads_after(design, upcoming)
        if between is not None:
            side = side_after(design, design.carriage, already + inserted + between)
            if side != design.change_side:
                inserted.append(plain_row(design, below))
    return inserted


def known_above(design, upcoming):
    """The rows that lie on a boundary whatever is derived there: drawn ones, and those that a band asks for below."""
    rows = []
    for index, drawn in enumerate(upcoming):
        below = starts_band(design, drawn)
        if index > 0 and below is not None and below.plain_below is not None:
            rows += [plain_row(design, upcoming[index - 1])] * below.plain_below
        rows.append(knit_drawn(design, drawn))
    return rows


def straight_rows(design, drawn_rows, then=()):
    """`then`: the drawn rows that come after the last one, seen from below but not knitted here."""
    rows = []
    for index, drawn in enumerate(drawn_rows):
        if index > 0:
            upcoming = [*drawn_rows[index:], *then[:index]]
            rows += rows_at_boundary(design, drawn_rows[index - 1], rows, known_above(design, upcoming), upcoming)
        rows.append(knit_drawn(design, drawn))
    return rows


def circuit_of_loop(design):
    """Above the last row of a circuit lies the first row of the next, which is alike."""
    height = len(design.rows)
    once = list(range(1, height + 1))
    rows = straight_rows(design, once, then=once)
    rows += rows_at_boundary(design, height, rows, rows, once)
    if design.change_side != "any" and sum(count_passes(design, row) for row in rows) % 2 == 1:
        rows.append(plain_row(design, height))
    return rows


def rows_to_knit(design):
    height = len(design.rows)
    looped = design.loop and design.machine.card_repeat is not None
    if looped:
        circuit = circuit_of_loop(design)
        rows = [replace(row, passes=[]) for _ in range(design.times) for row in circuit]
    else:
        rows = straight_rows(design, list(range(1, height + 1)) * design.times)
    side = design.carriage
    for index, row in enumerate(rows):
        if design.machine.card_repeat is not None:
            row.card_row = index % len(circuit) + 1 if looped else index + 1
        for yarns in yarns_of_passes(design, row):
            row.passes.append((yarns, "leftwards" if side == "right" else "rightwards"))
            side = "left" if side == "right" else "right"
    return rows


def yarns_of_passes(design, knitted):
    """With one feeder which of the two goes first is left open: main first here."""
    if knitted.contrast is None:
        return [knitted.main]
    if "." not in design.rows[knitted.drawn - 1]:
        return [knitted.contrast]
    if design.machine.feeders == 1:
        return [knitted.main, knitted.contrast]
    return [knitted.main + knitted.contrast]


def setup_rows(design):
    """(travel, main, selects); the last one ends where the carriage is to stand."""
    last = "rightwards" if design.carriage == "right" else "leftwards"
    before = "leftwards" if design.carriage == "right" else "rightwards"
    main = band_of(design, 1).main
    if design.machine.selects == "next pass":
        return [(before, main, False), (last, main, True)]
    return None  # the description names none for other machines


def rows_as_json(design):
    out = []
    for number, row in enumerate(rows_to_knit(design), 1):
        needles = contrast_needles(design, row.drawn) if row.drawn else []
        out.append(
            {
                "row": number,
                "drawn": row.drawn,
                "travel": row.passes[0][1],
                "main": row.main,
                "contrast": row.contrast,
                "needles": [needle_name(position) for position in needles],
                "card_row": row.card_row,
                "passes": [{"yarns": yarns, "travel": travel} for yarns, travel in row.passes],
            }
        )
    return out


# --- floats ----------------------------------------------------------------------------------------------------


def too_long(design, stitches):
    """Longer than the limit; equal is allowed. Exact: no rounding on the way to millimetres."""
    if design.longest_float_mm is not None:
        return Fraction(stitches) * 100 / Fraction(design.stitches_per_10cm) > Fraction(design.longest_float_mm)
    return stitches > (design.longest_float if design.longest_float is not None else design.machine.longest_float)


def floating_yarn(band, colour):
    """Behind a run of contrast lies main, and the other way round."""
    return band.main if colour == "#" else band.contrast


def floats_on_repeat(design):
    """(drawn row, yarn, first column, last column, stitches) of each float that is too long."""
    found = []
    width = design.width
    for drawn, row in enumerate(design.rows, 1):
        if "#" not in row or "." not in row:
            continue
        for start in range(width):
            if row[start] == row[start - 1]:
                continue
            length = 1
            while row[(start + length) % width] == row[start]:
                length += 1
            if too_long(design, length):
                last = (start + length - 1) % width
                found.append((drawn, floating_yarn(band_of(design, drawn), row[start]), start + 1, last + 1, length))
    return sorted(found)


def floats_on_piece(design):
    """(drawn row, yarn, first needle, last needle, stitches, how often across the piece): each distinct run once, at
    its leftmost place. Runs are alike when they pass behind the same stitches of the drawing."""
    found = {}
    in_work = needles_in_work(design)
    for drawn, row in enumerate(design.rows, 1):
        if "#" not in row or "." not in row:
            continue
        contrast = set(contrast_needles(design, drawn))
        colours = ["#" if position in contrast else "." for position in in_work]
        start = 0
        while start < len(colours):
            end = start
            while end + 1 < len(colours) and colours[end + 1] == colours[start]:
                end += 1
            inside = start > 0 and end < len(colours) - 1
            if inside and too_long(design, end - start + 1):
                yarn = floating_yarn(band_of(design, drawn), colours[start])
                columns = (drawn_column(design, in_work[start]), drawn_column(design, in_work[end]))
                key = (drawn, yarn, columns, end - start + 1)
                first, times = found.get(key, ((in_work[start], in_work[end]), 0))
                found[key] = (first, times + 1)
            start = end + 1
    return sorted(
        (drawn, yarn, needle_name(first[0]), needle_name(first[1]), stitches, times)
        for (drawn, yarn, _, stitches), (first, times) in found.items()
    )
