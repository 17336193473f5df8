"""punchwright leaflet: one PDF for somebody who owns another machine, read back with other programs: qpdf says whether
it is sound, pdfinfo its pages and paper, pdftotext what stands on them."""

import re
import subprocess

import command
from command import BY_HAND, DONE, FAULTS, GOOD, SOURCE, CommandTest, run

DEMOS = sorted((SOURCE / "patterns").glob("*.repeat"))
# Points; A4: ISO 216, Letter: ANSI Y14.1.
PAPERS = {"a4": (595.276, 841.89), "letter": (612, 792)}


def told(*words):
    return subprocess.run([*map(str, words)], check=True, stdout=subprocess.PIPE, timeout=60).stdout.decode("utf-8")


def pages_in(pdf):
    """The words of each page, as they stand on it."""
    return told("pdftotext", "-layout", pdf, "-").split("\f")[:-1]


class Leaflet(CommandTest):
    def leaflet(self, design, *more, code=None):
        out = self.folder / "leaflet.pdf"
        ended = run("leaflet", design, "-o", out, *more)
        if code is None:
            self.assertIn(ended.code, (DONE, FAULTS), ended.err)
        else:
            self.assert_ended(ended, code)
        self.assertEqual(ended.text.splitlines(), [str(out)])
        return out

    def words_of(self, design, *more):
        return re.sub(r"\s+", " ", told("pdftotext", self.leaflet(design, *more), "-"))

    def test_of_every_demo_is_sound_on_both_papers(self):
        for design in DEMOS:
            for paper, (width, height) in PAPERS.items():
                with self.subTest(design=design.name, paper=paper):
                    pdf = self.leaflet(design, "--paper", paper)
                    told("qpdf", "--check", pdf)
                    facts = told("pdfinfo", "-l", "-1", pdf)
                    count = int(re.search(r"^Pages: +(\d+)$", facts, re.M)[1])
                    sizes = re.findall(r"^Page +\d+ size: +([\d.]+) x ([\d.]+) pts", facts, re.M)
                    self.assertEqual(len(sizes), count)
                    for across, upwards in sizes:
                        self.assertAlmostEqual(float(across), width, delta=0.1)
                        self.assertAlmostEqual(float(upwards), height, delta=0.1)
                    for number, words in enumerate(pages_in(pdf), 1):
                        self.assertIn(f"page {number} of {count}", words)

    def test_has_all_that_somebody_else_needs(self):
        words = self.words_of(self.good)
        for part in ["Buoys", "Yarns", "Oat", "Ink", "Gauge", "16 stitches and 20 rows to 10 cm", "The knit side",
                     "Chart", "main: Oat", "contrast: Ink", "By card", "By hand", "The card", "Needles", "Cautions",
                     "The maker's manual goes before this leaflet"]:
            self.assertIn(part, words)

    def test_the_first_page_says_where_the_parts_begin(self):
        pages = pages_in(self.leaflet(SOURCE / "patterns" / "puffin-cove.repeat"))
        named = re.findall(r"(Chart|By card|By hand|Needles|Cautions) +(\d+)$", pages[0], re.M)
        self.assertEqual([part for part, _ in named], ["Chart", "By card", "By hand", "Needles", "Cautions"])
        for part, page in named:
            self.assertRegex(pages[int(page) - 1], rf"(?m)^ *{part}$", f"{part} on page {page}")

    def test_has_both_kinds_of_machine_whichever_is_the_designs_own(self):
        for text in [GOOD, BY_HAND]:
            words = self.words_of(self.file("one.repeat", text))
            self.assertIn("Set the carriage to select from the card", words)
            self.assertIn("Bring the needles of the list forward before each row", words)
        own = "The machine that the design was made for: "
        self.assertIn("By card " + own, self.words_of(self.good))
        self.assertIn("By hand " + own, self.words_of(self.by_hand))

    def test_has_the_steps_of_the_steps_command(self):
        words = self.words_of(self.good)
        steps = [line for line in run("steps", self.good).text.splitlines() if re.match(r" *\d+\. ", line)]
        self.assertGreater(len(steps), 8)
        for line in steps:
            self.assertIn(re.sub(r"\s+", " ", line).strip(), words)

    def test_a_width_that_no_card_holds_is_said_and_the_other_way_stays(self):
        rows = '  "' + "#." * 3 + '#",\n'
        text = BY_HAND.replace("width = 4", "width = 7").replace('  ".##.",\n  "#..#",\n', rows * 2)
        words = self.words_of(self.file("seven.repeat", text))
        self.assertIn("The drawing can't be knitted on this machine as it is", words)
        self.assertNotIn("Set the carriage to select from the card", words)
        self.assertIn("Needles by hand", words)

    def test_says_what_the_check_finds(self):
        self.assertIn("What a check of the design says", self.words_of(self.faulty))
        self.assertNotIn("What a check of the design says", self.words_of(self.good))

    def test_the_paper_is_the_designs_unless_another_is_wished(self):
        letter = self.file("letter.repeat", GOOD + '\n[card]\npaper = "letter"\n')
        for more, width in [([], "612 x 792"), (["--paper", "a4"], "595.276 x 841.89")]:
            self.assertIn(width, told("pdfinfo", self.leaflet(letter, *more)))

    def test_another_form_is_refused(self):
        self.assert_refused(run("leaflet", self.good, "-o", self.folder / "leaflet.txt"), ".txt", ".pdf")
        self.assert_refused(run("leaflet", self.good, "-o", self.folder / "leaflet.pdf", "--paper", "a3"), "a3", "letter")

    def test_more_rows_than_a_leaflet_holds_are_refused(self):
        text = GOOD.replace("stitches = 24", "stitches = 24\ntimes = 1000")
        text = text.replace('  ".##.",\n', '  ".##.",\n' * 2).replace("rows = 2", "rows = 3")
        tall = self.file("tall.repeat", text)
        ended = run("leaflet", tall, "-o", self.folder / "leaflet.pdf")
        self.assertEqual(ended.code, command.CANNOT)
        self.assertIn("too many for a leaflet", ended.err)


if __name__ == "__main__":
    command.main()
