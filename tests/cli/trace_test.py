"""punchwright trace: a picture becomes a repeat that can be knitted; what it says, writes and refuses."""

import json
import subprocess
import tomllib

import command
from command import CANNOT, DONE, FAULTS, SOURCE, CommandTest, run


def rows_of(path):
    """The drawing's lines, the highest first."""
    inside = path.read_text().split("rows = [", 1)[1].split("]", 1)[0]
    return [line.strip().strip('",') for line in inside.splitlines() if '"' in line]


def floats_in(row):
    """The longest run of one sign as the row tiles; a row of one sign has none."""
    if len(set(row)) == 1:
        return 0
    start = next(place for place in range(len(row)) if row[place] != row[place - 1])
    turned = row[start:] + row[:start]
    longest = run_length = 1
    for one, other in zip(turned, turned[1:], strict=False):
        run_length = run_length + 1 if one == other else 1
        longest = max(longest, run_length)
    return longest


class Trace(CommandTest):
    def picture(self, name, *arguments):
        path = self.folder / name
        subprocess.run(["convert", *arguments, path], check=True, timeout=60)
        return path

    def trace(self, picture, *options, code=DONE):
        out = self.folder / "traced.repeat"
        ended = run("trace", picture, "-o", out, *options)
        self.assert_ended(ended, code)
        return ended.text, out

    def test_a_chart_of_one_pixel_a_stitch_comes_back_stitch_by_stitch(self):
        lines = ["#..#..#.", ".##..##.", "#.#.#.#.", "...#...#"]
        pgm = "P2\n8 4\n1\n" + "\n".join(" ".join("0" if sign == "#" else "1" for sign in line) for line in lines) + "\n"
        path = self.folder / "chart.pgm"
        subprocess.run(["convert", "pgm:-", self.folder / "chart.png"], input=pgm.encode(), check=True, timeout=60)
        text, out = self.trace(self.folder / "chart.png", "--width", "8", "--rows", "4", "--gauge", "20,20")
        self.assertEqual(rows_of(out), lines)
        self.assertIn("part of the picture: 8.0 × 4.0 pixels from 0.0, 0.0\n", text)
        self.assertIn("0 stitches otherwise than in the picture", text)
        self.assertIn('title = "chart"', out.read_text())
        self.assertFalse(path.exists())

    def test_no_float_is_too_long_whatever_the_picture(self):
        shades = self.picture("waves.jpg", "-size", "800x600", "-seed", "4", "plasma:fractal", "-blur", "0x9")
        for options in [[], ["--shading", "diffusion"], ["--shading", "dither"], ["--emphasis", "80"],
                        ["--light-is-contrast", "--mirror"], ["--float", "3"], ["--best-place"]]:
            with self.subTest(options=options):
                _, out = self.trace(shades, *options)
                longest = 3 if "--float" in options else 5
                self.assertLessEqual(max(floats_in(row) for row in rows_of(out)), longest)
                self.assertEqual((len(rows_of(out)), len(rows_of(out)[0])), (60, 24))
                self.assert_ended(run("check", out), DONE)

    def test_a_width_that_does_not_fit_the_card_is_written_and_reported(self):
        picture = self.picture("a.png", "-size", "70x70", "pattern:checkerboard")
        _, out = self.trace(picture, "--width", "7", "--rows", "7", code=FAULTS)
        self.assertEqual(len(rows_of(out)[0]), 7)
        self.trace(picture, "--width", "7", "--rows", "7", "--machine", "plastic-by-hand")

    def test_without_a_gauge_the_bed_s_usual_one(self):
        picture = self.picture("a.png", "-size", "60x60", "pattern:checkerboard")
        # Stitches and rows over 10 cm: common practice.
        for machine, usual in [("standard-card-24", (28, 40)), ("bulky-card-24", (16, 20))]:
            with self.subTest(machine=machine):
                sheet = ["--width", "12", "--rows", "12", "--machine", machine]
                _, out = self.trace(picture, *sheet)
                gauge = tomllib.loads(out.read_text())["gauge"]
                self.assertEqual((gauge["stitches"], gauge["rows"]), usual)
                _, out = self.trace(picture, *sheet, "--gauge", "20,21")
                gauge = tomllib.loads(out.read_text())["gauge"]
                self.assertEqual((gauge["stitches"], gauge["rows"]), (20, 21))

    def test_a_part_an_ignored_colour_and_the_mirror(self):
        # A dark square at the left of a blue sheet, and white elsewhere.
        picture = self.picture("a.png", "-size", "80x40", "xc:white", "-fill", "#4060ff", "-draw", "rectangle 0,0 39,39",
                               "-fill", "black", "-draw", "rectangle 0,0 9,39")
        square = ["--width", "4", "--rows", "4", "--gauge", "20,20", "--part", "0,0,40"]
        _, out = self.trace(picture, *square, "--ignore", "#4060ff")
        self.assertEqual(rows_of(out), ["#..."] * 4)
        _, out = self.trace(picture, *square, "--ignore", "#4060ff,0", "--mirror")
        self.assertEqual(rows_of(out), ["...#"] * 4)
        _, out = self.trace(picture, *square, "--split", "20")
        self.assertEqual(rows_of(out), ["####"] * 4)

    def test_a_machine_file_is_named_from_here_and_found_from_the_design(self):
        own = self.folder / "own.machine"
        self.assert_ended(run("machine", "bulky-card-12", "-o", own), DONE)
        (self.folder / "designs").mkdir()
        out = self.folder / "designs" / "traced.repeat"
        picture = self.picture("a.png", "-size", "60x60", "pattern:checkerboard")
        done = run("trace", picture, "-o", out, "--width", "12", "--rows", "12", "--machine", "own.machine",
                   cwd=self.folder)
        self.assertIn(done.code, (DONE, FAULTS), done.err)
        self.assertIn('profile = "../own.machine"', out.read_text())
        self.assertIn(run("check", out).code, (DONE, FAULTS))

    def test_as_json_fits_its_schema(self):
        import jsonschema

        described = json.loads((SOURCE / "docs" / "trace.schema.json").read_text())
        jsonschema.Draft202012Validator.check_schema(described)
        picture = self.picture("a.png", "-size", "240x200", "-seed", "4", "plasma:fractal")
        text, _ = self.trace(picture, "--json", "--rows", "20", "--split", "40")
        answer = json.loads(text)
        jsonschema.validate(answer, described)
        self.assertEqual((answer["limit"], answer["split"]), (5, 40))
        text, _ = self.trace(picture, "--json", "--rows", "1", "--part", "0,0,24", "--protect", "1",
                             "--ignore", "#000000,441", "--light-is-contrast")
        self.assertEqual(json.loads(text)["unmendable"], [])

    def test_says_what_it_cannot_read_and_leaves_nothing(self):
        out = self.folder / "traced.repeat"
        missing = run("trace", self.folder / "none.png", "-o", out)
        self.assert_refused(missing, "none.png")
        text = self.folder / "words.png"
        text.write_text("no picture")
        self.assert_refused(run("trace", text, "-o", out), "words.png", "no picture", "PNG, JPEG")
        picture = self.picture("a.png", "-size", "20x20", "xc:black")
        self.assert_refused(run("trace", picture, "-o", self.folder / "a.pdf"), ".repeat")
        self.assert_refused(run("trace", picture, "-o", out, "--width", "0"), "--width", "1 to 200")
        self.assert_refused(run("trace", picture, "-o", out, "--split", "dark"), "--split", "1 to 99")
        self.assert_refused(run("trace", picture, "-o", out, "--part", "1,2"), "--part")
        self.assert_refused(run("trace", picture, "-o", out, "--machine", "loom"), "loom")
        self.assert_refused(run("trace", picture, "-o", out, "--protect", "61"), "61")
        self.assertFalse(out.exists())


if __name__ == "__main__":
    command.main()
