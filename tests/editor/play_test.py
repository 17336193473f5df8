"""The knitting played thing by thing, and what went wrong in a piece found from its looks, in the real window."""
import pathlib

from driver import WindowTest, design, main

PATTERNS = pathlib.Path(__file__).resolve().parents[2] / "patterns"


class Play(WindowTest):
    def test_tab_goes_round_and_return_presses_what_has_the_keys(self):
        path = self.write("hood.repeat", (PATTERNS / "hood-border.repeat").read_text())
        editor = self.start(path)
        editor.key("F8")
        editor.wait(lambda state: state["dialog"] == "play" and state["idle"], "the play")
        self.assertEqual(editor.state["keys_at"], "play forward")
        for moves in range(1, 8):  # six things by hand, and the first pass
            editor.key("Return")
            editor.wait(lambda state, moves=moves: f"moves {moves}" in state["places"] and state["idle"], "a thing done")
        self.assertIn("played 1", editor.state["places"])
        self.tab_until(editor, "play back")
        editor.key("Return")
        editor.wait(lambda state: "played 0" in state["places"] and state["idle"], "a pass back")

    def test_arrows_and_space_do_one_thing_and_page_keys_ten_passes(self):
        path = self.write("hood.repeat", (PATTERNS / "hood-border.repeat").read_text())
        editor = self.start(path)
        editor.key("F8")
        editor.wait(lambda state: state["dialog"] == "play" and state["idle"], "the play")
        for key, moves, passes in (("Right", 1, 0), ("space", 2, 0), ("Left", 1, 0), ("Next", 21, 10), ("Prior", 6, 0),
                                   ("space", 7, 1), ("Home", 0, 0), ("End", 30, 15)):
            editor.key(key)
            editor.wait(lambda state, moves=moves, passes=passes: f"moves {moves}" in state["places"]
                        and f"played {passes}" in state["places"] and state["idle"], f"{key}: {moves}, {passes}")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none", "the drawing")


class Wrong(WindowTest):
    def test_tab_comes_to_the_marks_while_the_arrows_move_the_cursor(self):
        path = self.write("hood.repeat", (PATTERNS / "hood-border.repeat").read_text())
        editor = self.start(path)
        editor.key("F9")
        editor.wait(lambda state: state["dialog"] == "wrong" and state["idle"], "the picture")
        self.tab_until(editor, "mark twice")
        for key in ("Down", "Down", "Down", "Return"):
            editor.key(key)
            editor.settle()
        self.tab_until(editor, "ask")
        editor.key("Return")
        editor.wait(lambda state: "asked" in state["places"] and state["idle"], "an answer")
        self.assertTrue(any("card" in words for words in self.explained(editor)), self.explained(editor))

    def explained(self, editor):
        return [name for name in editor.state["places"] if name.startswith("explained: ")]

    def test_a_row_that_stands_twice_is_a_card_that_was_stuck(self):
        path = self.write("hood.repeat", (PATTERNS / "hood-border.repeat").read_text())
        editor = self.start(path)
        editor.key("F9")
        editor.wait(lambda state: state["dialog"] == "wrong" and state["idle"], "the picture")
        for key in ("Down", "Down", "Down", "t"):
            editor.key(key)
            editor.settle()
        editor.key("Return")
        editor.wait(lambda state: "asked" in state["places"] and state["idle"], "an answer")
        self.assertTrue(any("card" in words for words in self.explained(editor)), self.explained(editor))

    def test_a_motif_that_is_shifted_is_work_that_hung_beside_its_needles(self):
        path = self.write("hood.repeat", (PATTERNS / "hood-border.repeat").read_text())
        editor = self.start(path)
        editor.key("F9")
        editor.wait(lambda state: state["dialog"] == "wrong" and state["idle"], "the picture")
        editor.key(*["Down"] * 12)
        editor.settle()
        editor.click("mark right")
        editor.click("ask")
        editor.wait(lambda state: "asked" in state["places"] and state["idle"], "an answer")
        self.assertTrue(any("hung 1 needle too far to the left" in words for words in self.explained(editor)),
                        self.explained(editor))

    def test_by_mouse(self):
        path = self.write("a.repeat", design(["#...#...", "..#...#.", "#...#...", "..#...#."]))
        editor = self.start(path)
        editor.key("F9")
        editor.wait(lambda state: state["dialog"] == "wrong" and state["idle"], "the picture")
        editor.click("mark missing")
        editor.click("ask")
        editor.wait(lambda state: "asked" in state["places"] and state["idle"], "an answer")


if __name__ == "__main__":
    main()
