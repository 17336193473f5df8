"""Bands and inserted rows that are low on the screen, in the real window: what they are made of can still be told, by
letters and by the yarn's own colour."""
import subprocess

from driver import WindowTest, design, main

OAT = bytes.fromhex("e8dcc2")
BANDS = design(["#.#." * 6] * 8).replace("""[[band]]
rows = 8
main = "A"
contrast = "B"
""", "".join(f'[[band]]\nrows = 2\nmain = "A"\ncontrast = "{key}"\n' for key in "BCBC")).replace("[repeat]", """[[yarn]]
key = "C"
name = "Brick"
colour = "#9c3b2a"

[repeat]""")


class LowBands(WindowTest):
    def seen(self, editor, left, top, right, bottom):
        """The lines of that part of the window, three bytes a pixel."""
        editor.settle()
        wide, high = round(right) - round(left), round(bottom) - round(top)
        pixels = subprocess.run(
            ["import", "-window", editor.window, "-crop", f"{wide}x{high}+{round(left)}+{round(top)}", "-depth", "8",
             "rgb:-"], env=editor.environment, stdout=subprocess.PIPE, check=True).stdout
        return [pixels[line * 3 * wide:(line + 1) * 3 * wide] for line in range(high)]

    def share_of(self, colour, line):
        return sum(line[place:place + 3] == colour for place in range(0, len(line), 3)) * 3 / len(line)

    def at(self, zoom, text=BANDS):
        return self.start(self.write("low.repeat", text), "--size", "1200x800", "--zoom", zoom)

    def test_a_strip_too_low_for_words_shows_a_thread_of_its_yarn(self):
        for zoom in ("0.5", "1.2", "1.9"):
            editor = self.at(zoom)
            columns, rows = editor.state["columns"], editor.state["rows"]
            lines = self.seen(editor, columns["0"], rows["7"], columns["23"], rows["0"])
            threads = [line for line in lines if self.share_of(OAT, line) > 0.6]  # drawn rows have half of it
            self.assertGreaterEqual(len(threads), 3, f"between each two bands, at {zoom} px a mm")
            editor.stop()

    def test_the_letters_of_yarns_stay_where_bands_are_low(self):
        others = BANDS
        for one, another in zip("ABC", "MWK"):
            others = others.replace(f'"{one}"', f'"{another}"')
        for zoom in ("0.5", "1.2", "1.9", "4"):
            strips = []
            for text in (BANDS, others):
                editor = self.at(zoom, text)
                strips.append(self.seen(editor, *editor.state["places"]["yarn strip"]))
                editor.stop()
            self.assertTrue(strips[0] != strips[1], f"the same yarns under other letters look the same at {zoom} px a mm")


if __name__ == "__main__":
    main()
