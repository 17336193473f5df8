"""punchwright chart: the pattern chart as a picture. Its cells are read back, once from the SVG by librsvg and once from
our own PNG, and compared with the drawing."""

import re
import subprocess
import tomllib
import xml.etree.ElementTree as tree

import numpy

import command
from command import DONE, FAULTS, GOOD, SOURCE, CommandTest, run

SVG = "{http://www.w3.org/2000/svg}"
PIXELS_PER_MM = 10


def pixels_of(png):
    ppm = subprocess.run(["pngtopnm"], input=png, stdout=subprocess.PIPE, check=True).stdout
    head = re.match(rb"P6\s(\d+)\s(\d+)\s255\s", ppm)
    width, height = int(head[1]), int(head[2])
    return numpy.frombuffer(ppm[head.end():], numpy.uint8).reshape(height, width, 3).astype(int)


def colours_drawn(design):
    """The colour of each stitch, row 1 first."""
    yarns = {yarn["key"]: tuple(bytes.fromhex(yarn["colour"][1:])) for yarn in design["yarn"]}
    rows = list(reversed(design["repeat"]["rows"]))
    colours = []
    for band in design["band"]:
        for row in rows[len(colours) : len(colours) + band["rows"]]:
            colours.append([yarns[band["contrast" if sign == "#" else "main"]] for sign in row])
    return colours


class ThePatternChart(CommandTest):
    def chart(self, design, kind):
        out = self.folder / f"chart.{kind}"
        ended = run("chart", design, "-o", out)
        self.assertIn(ended.code, (DONE, FAULTS), ended.err)
        return out

    def frame_in(self, svg):
        """The chart's cells in mm: the frame is the one rectangle in its group that is not filled."""
        group = next(part for part in tree.parse(svg).getroot().iter(SVG + "g") if part.get("id") == "chart")
        frames = [part for part in group.iter(SVG + "rect") if part.get("fill") == "none"]
        self.assertEqual(len(frames), 1)
        return [float(frames[0].get(name)) for name in ("x", "y", "width", "height")]

    def assert_cells(self, picture, frame, colours):
        left, top, width, height = (value * PIXELS_PER_MM for value in frame)
        rows, columns = len(colours), len(colours[0])
        for row, line in enumerate(colours):
            for column, colour in enumerate(line):
                # Near the cell's corner, where neither its symbol nor a line of the grid lies.
                x = left + width * (column + 0.13) / columns
                y = top + height * (rows - 1 - row + 0.87) / rows
                seen = picture[int(y), int(x)]
                self.assertLess(abs(seen - numpy.array(colour)).max(), 3, f"row {row + 1}, column {column + 1}: {seen}")

    def test_shows_each_stitch_in_its_yarn(self):
        for path in sorted((SOURCE / "patterns").glob("*.repeat")):
            with self.subTest(design=path.stem):
                design = tomllib.loads(path.read_text())
                svg = self.chart(path, "svg")
                frame = self.frame_in(svg)
                drawn = subprocess.run(["rsvg-convert", "--dpi-x", "254", "--dpi-y", "254", "--background-color", "white", svg],
                                       stdout=subprocess.PIPE, check=True).stdout
                self.assert_cells(pixels_of(drawn), frame, colours_drawn(design))
                self.assert_cells(pixels_of(self.chart(path, "png").read_bytes()), frame, colours_drawn(design))

    def test_has_title_numbers_and_a_legend(self):
        path = SOURCE / "patterns" / "puffin-cove.repeat"
        root = tree.parse(self.chart(path, "svg")).getroot()
        text = {group.get("id"): ["".join(part.itertext()) for part in group.iter(SVG + "text")]
                for group in root.iter(SVG + "g")}
        self.assertEqual(text["words"][0], "Puffin cove")
        self.assertIn("24 stitches × 42 rows", " ".join(text["words"]))
        self.assertEqual(text["chart"].count("42"), 2, "at both ends of the row")
        self.assertEqual(text["chart"].count("24"), 3, "of the row, and of the column")
        self.assertEqual(text["legend"], ["main: Oat", "contrast: Slack Water", "contrast: Rowanberry", "contrast: Ink"])

    def test_of_one_stitch_and_of_the_largest_drawing(self):
        small = self.file("one.repeat", GOOD.replace("width = 4", "width = 1").replace('".##."', '"."').replace('"#..#"', '"#"'))
        self.assertGreater(pixels_of(self.chart(small, "png").read_bytes()).shape[1], 400, "its words have room")
        rows = "".join(f'  "{("#." * 100)}",\n' for _ in range(2000))
        large = self.file("large.repeat", re.sub(r'(?s)  "\.##\.",\n  "#\.\.#",\n', rows, GOOD).replace("width = 4", "width = 200")
                          .replace("[[band]]\nrows = 2", "[[band]]\nrows = 2000"))
        out = self.chart(large, "png")
        self.assertLess(out.stat().st_size, 30_000_000)
        self.assertLess(self.chart(large, "svg").stat().st_size, 60_000_000)

    def test_refuses_other_forms(self):
        for name in ["chart.pdf", "chart"]:
            self.assert_refused(run("chart", self.good, "-o", self.folder / name), ".png, .svg")


if __name__ == "__main__":
    command.main()
