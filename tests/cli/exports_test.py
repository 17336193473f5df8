"""What stands in the exported files, against the naive knitter: the card's holes, and the chart's needles.
SVG and CSV, since other scripts read those; where the holes lie to a tenth of a millimetre is tested elsewhere."""

import csv
import io
import xml.etree.ElementTree as xml

import command
from command import SAMPLE, CommandTest, run
from random_designs import OWN, OWN_MACHINE, design_from, naive, write_machines

SVG = "{http://www.w3.org/2000/svg}"
LOOP_ROWS = 36  # punched rows that a joined loop needs, in the built-in profiles


def card_designs(count, looped):
    """On machines with a card, with a width that the card can hold."""
    seed = 20_000
    while count > 0:
        seed += 1
        design = design_from(seed)
        if design.machine.card_repeat is None or design.machine.card_repeat % design.width or design.loop != looped:
            continue
        count -= 1
        yield seed, design


class Hole:
    def __init__(self, circle):
        self.row, self.column = int(circle.get("data-row")), int(circle.get("data-column"))
        self.x, self.y = float(circle.get("cx")), float(circle.get("cy"))


class TheCard(CommandTest):
    def setUp(self):
        super().setUp()
        write_machines(self.folder)

    def cards(self, text):
        """The pattern holes of each card."""
        file = self.file("design.repeat", text)
        ended = run("card", file, "-o", self.folder / "card.svg")
        self.assertIn(ended.code, (command.DONE, command.FAULTS), ended.err)
        cards = []
        for name in ended.text.splitlines():
            root = xml.parse(name).getroot()
            self.assertEqual(root.tag, f"{SVG}svg")
            groups = {group.get("id"): group for group in root.iter(f"{SVG}g")}
            self.assertLessEqual({"cut-outline", "cut-holes", "marks"}, set(groups))
            circles = list(groups["cut-holes"].iter(f"{SVG}circle"))
            self.assertLessEqual({"overlap", "feed"}, {circle.get("class") for circle in circles})
            self.assertLessEqual({circle.get("class") for circle in circles}, {"pattern", "overlap", "feed", "clip"})
            for group in ["cut-outline", "marks"]:
                self.assertEqual([one for one in groups[group].iter() if one.get("data-row")], [])
            cards.append([Hole(circle) for circle in circles if circle.get("class") == "pattern"])
        return cards

    def punched(self, text):
        holes = [(hole.row, hole.column) for card in self.cards(text) for hole in card]
        self.assertEqual(len(holes), len(set(holes)), "no hole twice")
        return set(holes)

    def expected(self, design):
        """Card column 1 selects the needle where x is 0."""
        repeat, first = design.machine.card_repeat, design.machine.card_first_needle
        return {
            (row.card_row, column)
            for row in naive.rows_to_knit(design)
            if row.drawn is not None
            for column in range(1, repeat + 1)
            if design.rows[row.drawn - 1][naive.drawn_column(design, first + column - 1) - 1] == "#"
        }

    def test_has_the_holes_of_the_rows_to_knit(self):
        for seed, design in card_designs(30, looped=False):
            with self.subTest(seed=seed):
                self.assertEqual(self.punched(design.text()), self.expected(design), design.text())

    def test_in_a_loop_has_whole_circuits_enough_to_be_joined(self):
        for seed, design in card_designs(12, looped=True):
            with self.subTest(seed=seed):
                circuit = len(naive.circuit_of_loop(design))
                circuits = max(1, -(-LOOP_ROWS // circuit))
                once = self.expected(design)
                often = {(row + turn * circuit, column) for turn in range(circuits) for row, column in once}
                self.assertEqual(self.punched(design.text()), often, design.text())

    def test_of_the_sample(self):
        # Drawn columns 7, 8, 15, 16 stand where x mod 24 is 17, 16, 9, 8; end needles are no matter of the card.
        self.assertEqual(self.punched(SAMPLE.read_text()), {(1, 9), (1, 10), (1, 17), (1, 18)})

    def test_row_1_is_lowest_and_column_1_at_the_left_on_a_purl_face(self):
        _, design = next(card_designs(1, looped=False))
        design.machine = OWN[0]
        design.rows = ["#." * (design.width // 2) + "#" * (design.width % 2)] * len(design.rows)
        design.bands = [naive.BandOfRows(len(design.rows), "A", "B")]
        for face, direction in {"purl": 1, "knit": -1}.items():
            (self.folder / "harbour.machine").write_text(OWN_MACHINE + f'face = "{face}"\n')
            holes = self.cards(design.text())[0]
            self.assertGreater(len(holes), 5)
            for one in holes:
                for other in holes:
                    if one.row == other.row and one.column < other.column:
                        self.assertGreater((other.x - one.x) * direction, 1)
                    if one.row < other.row:
                        self.assertGreater(one.y - other.y, 1, "y grows downwards")

    def test_where_a_hole_means_main_is_the_opposite(self):
        _, design = next(card_designs(1, looped=False))
        design.machine = OWN[0]
        contrast = self.punched(design.text())
        (self.folder / "harbour.machine").write_text(OWN_MACHINE + 'hole = "main"\n')
        rows = len(naive.rows_to_knit(design))
        everywhere = {(row, column) for row in range(1, rows + 1) for column in range(1, 25)}
        self.assertEqual(self.punched(design.text()), everywhere - contrast)

    def test_longer_than_a_blank_goes_over_several_cards(self):
        design = naive.Design(naive.BUILT_IN[0], ["#..#", ".##."], [naive.BandOfRows(2, "A", "B")], times=70)
        cards = self.cards(design.text())
        self.assertEqual(len(cards), 3, "140 rows, 60 on a blank")
        self.assertEqual({(hole.row, hole.column) for card in cards for hole in card}, self.expected(design))
        rows = [{hole.row for hole in card} for card in cards]
        self.assertTrue(max(rows[0]) < min(rows[1]) and max(rows[1]) < min(rows[2]), "cut between rows")


class TheChart(CommandTest):
    def setUp(self):
        super().setUp()
        write_machines(self.folder)

    def test_has_the_needles_of_the_rows_to_knit(self):
        for seed in range(30_000, 30_030):
            design = design_from(seed)
            with self.subTest(seed=seed):
                out = self.folder / "chart.csv"
                ended = run("needles", self.file("design.repeat", design.text()), "-o", out)
                self.assertIn(ended.code, (command.DONE, command.FAULTS), ended.err)
                lines = list(csv.DictReader(io.StringIO(out.read_text(encoding="utf-8"))))
                expected = naive.rows_as_json(design)
                self.assertEqual(len(lines), len(expected))
                for line, row in zip(lines, expected):
                    self.assertEqual(line["row"], str(row["row"]))
                    self.assertEqual(line["drawn"], str(row["drawn"] or ""))
                    self.assertEqual(line["travel"], row["travel"])
                    self.assertEqual((line["main"], line["contrast"]), (row["main"], row["contrast"] or ""))
                    self.assertEqual(line["all_needles"].split(), row["needles"], design.text())
                    self.assertEqual(line["count"], str(len(row["needles"])))
                    self.assertEqual(line["card_row"], str(row["card_row"] or ""))
                    self.assertEqual(self.spelt_out(line["needles"]), row["needles"])

    def spelt_out(self, runs):
        """L12–L9 back to L12 L11 L10 L9."""

        def position(name):
            return -int(name[1:]) if name[0] == "L" else int(name[1:]) - 1

        names = []
        for one in runs.replace("none", "").split():
            first, _, last = one.partition("–")
            names += [naive.needle_name(at) for at in range(position(first), position(last or first) + 1)]
        return names


class TheSteps(CommandTest):
    def test_are_headed_by_the_title_or_by_nothing_else(self):
        titled = SAMPLE.read_text(encoding="utf-8")
        title = titled.split('title = "')[1].split('"')[0]
        for text, heading in ((titled, f"{title}: steps"), (titled.replace(f'title = "{title}"', 'title = ""'), "Steps")):
            out = self.folder / "out.html"
            ended = run("steps", self.file("design.repeat", text), "-o", out)
            self.assertIn(ended.code, (command.DONE, command.FAULTS), ended.err)
            self.assertIn(f"<title>{heading}</title>", out.read_text(encoding="utf-8"))


if __name__ == "__main__":
    command.main()
