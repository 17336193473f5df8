"""Every screen beside its kept picture, light and dark; and that the tolerance lets no defect through."""
import os
import pathlib
import re
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "tools"))
import numpy as np
import screens

EDITOR = os.environ["PUNCHWRIGHT_EDITOR"]
CASES = {name: arguments for name, _, arguments in screens.SCREENS}


class Screens(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.desk = screens.Desk().__enter__()
        cls.differing, cls.dialogs = {}, set()
        for name, arguments in CASES.items():
            for theme in screens.THEMES:
                picture = cls.desk.picture(EDITOR, theme, arguments)
                path = screens.kept_path(name, theme)
                cls.differing[name, theme] = (screens.differences(picture, screens.kept_picture(name, theme))
                                              if path.exists() else None)
                cls.dialogs.add(cls.desk.state["dialog"])

    @classmethod
    def tearDownClass(cls):
        cls.desk.__exit__()

    def shown(self, name, theme="light"):
        return self.desk.picture(EDITOR, theme, CASES[name])

    def test_each_screen_is_as_it_was_kept(self):
        for (name, theme), squares in self.differing.items():
            with self.subTest(screen=name, theme=theme):
                self.assertIsNotNone(squares, "no kept picture, or one of another size")
                if squares:
                    self.fail(f"{screens.place_of(squares)}; when it is meant so: tests/tools/screens.py renew")

    def test_every_dialog_and_every_purpose_of_the_file_chooser_has_a_screen(self):
        source = screens.HERE / "src" / "editor"
        namer = re.search(r"struct Namer \{.*?\n\};", (source / "dialogs.cpp").read_text(), re.DOTALL).group(0)
        chooser = re.search(r"const PathDialog& dialog\) const \{.*?\n  \}", namer, re.DOTALL).group(0)
        purposes = re.search(r"enum class Purpose \{(.*?)\};", (source / "dialogs.hpp").read_text(), re.DOTALL).group(1)
        purposes = re.sub(r"//.*", "", purposes).replace(",", " ").split()
        name = re.compile(r'return "([a-z-]+)";')
        self.assertEqual(len(set(name.findall(chooser))), len(purposes), "each purpose has a name of its own")
        for dialog in sorted(set(name.findall(namer)) - self.dialogs):
            with self.subTest(dialog=dialog):
                self.fail("no screen shows it: tests/tools/screens.py")

    def test_the_page_shows_every_screen_in_both_themes(self):
        shown = re.findall(r"\(screens/([^)]+)\)", screens.PAGE.read_text())
        self.assertEqual(shown, [f"{name}-{theme}.png" for name in CASES for theme in screens.THEMES])
        self.assertEqual(sorted(shown), sorted(path.name for path in screens.KEPT.iterdir()))

    def planted(self, found, put, screen):
        """The squares that differ on a screen when its design is changed so."""
        path = self.desk.folder / "patterns" / CASES[screen][0]
        before = path.read_text()
        self.assertIn(found, before)
        path.write_text(before.replace(found, put, 1))
        try:
            return screens.differences(self.shown(screen), screens.kept_picture(screen, "light"))
        finally:
            path.write_text(before)

    def test_one_stitch_that_is_wrong_is_seen(self):
        top_row = '"' + re.search(r'rows = \[.*?\n  "([.#]+)"', (screens.PATTERNS / "puffin-cove.repeat").read_text(),
                                  re.DOTALL).group(1)
        other = top_row[:5] + ("." if top_row[5] == "#" else "#") + top_row[6:]
        self.assertGreater(len(self.planted(top_row, other, "drawing")), 3)

    def test_one_letter_that_is_wrong_is_seen(self):
        squares = self.planted('title = "Puffin cove"', 'title = "Puffin cave"', "drawing")
        self.assertTrue(squares)
        self.assertTrue(all(left < 300 and top < 250 for left, top in squares), squares)

    def test_a_yarn_of_another_shade_is_seen(self):
        self.assertGreater(len(self.planted('name = "Brass"\ncolour = "#b8760c"', 'name = "Brass"\ncolour = "#b84a0c"',
                                            "yarns")), 50)

    def test_text_one_part_in_fifty_larger_is_seen(self):
        arguments = [*CASES["settings"], "--scale", "1.02"]
        squares = screens.differences(self.desk.picture(EDITOR, "light", arguments),
                                      screens.kept_picture("settings", "light"))
        self.assertGreater(len(squares), 50)

    def test_faint_lines_that_are_gone_are_seen_by_their_area(self):
        ground = np.full((200, 200, 3), 222, dtype=np.uint8)
        grid = ground.copy()
        grid[::8] = grid[:, ::8] = 189  # 33 off, as the lines between single stitches are
        self.assertGreater(len(screens.differences(grid, ground)), 100)
        one = ground.copy()
        one[100] = 189
        self.assertEqual(screens.differences(one, ground), [], "one such line may be the edge of a letter")
        self.assertEqual(screens.differences(ground + np.uint8(12), ground), [], "a palette's rounding")

    def test_the_same_screen_twice_does_not_differ(self):
        self.assertEqual(screens.differences(self.shown("tools"), self.shown("tools")), [])


if __name__ == "__main__":
    unittest.main(argv=[sys.argv[0], "-v", *sys.argv[1:]])
