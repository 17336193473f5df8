"""A file that somebody else writes while it is open, in the real window: noticed, asked about, never replaced unasked."""
import pathlib
import shutil

from desktop_messages import take_keys_away
from driver import WindowTest, blank, design, main, rows_in

PATTERNS = pathlib.Path(__file__).resolve().parents[2] / "patterns"


class TwoAtOnce(WindowTest):
    def test_a_file_that_another_program_wrote(self):
        path = self.write("cove.repeat", blank(24, 12))
        editor = self.start(path)
        editor.stroke([(2, 2)])
        other = design(["." * 24] * 10 + ["#" + "." * 23] + ["." * 24])
        path.write_text(other)
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "changed" and state["idle"], "the question")
        self.assertEqual(path.read_text(), other)
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "no question")
        self.assertFalse(editor.state["saved"])
        self.assertEqual(path.read_text(), other)
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "changed" and state["idle"], "the question")
        editor.click("changed elsewhere")
        editor.wait(lambda state: state["dialog"] == "save", "the dialog")
        editor.fill_name(self.folder / "mine.repeat")
        editor.wait(lambda state: state["saved"], "the other file")
        self.assertEqual(path.read_text(), other)
        self.assertEqual(rows_in(self.folder / "mine.repeat")[2][2], "#")

    def test_a_design_open_in_two_windows(self):
        path = self.write("cove.repeat", blank())
        one = self.start(path)
        two = self.start(path)
        one.focus()
        one.stroke([(1, 1)])
        one.save()
        two.focus()
        two.wait(lambda state: state["dialog"] == "changed" and state["idle"], "the other window's saving noticed")
        two.key("Escape")
        two.wait(lambda state: state["dialog"] == "none" and not state["saved"] and state["idle"], "it stays open")
        two.stroke([(2, 2)])
        two.key("ctrl+q")
        two.wait(lambda state: state["dialog"] == "guard" and state["idle"], "the guard")
        two.key("Return")
        two.wait(lambda state: state["dialog"] == "changed" and state["idle"], "the question")
        self.assertEqual(rows_in(path)[1][1], "#")
        self.tab_until(two, "changed over")
        two.key("Return")
        self.assertEqual(two.ended(), 0)
        self.assertEqual(rows_in(path)[1][1] + rows_in(path)[2][2], ".#")
        one.focus()
        one.wait(lambda state: state["dialog"] == "changed" and state["idle"], "the question in the other window")
        one.click("changed theirs")
        one.wait(lambda state: state["dialog"] == "none" and state["steps"] == 0 and state["idle"], "the file as it is")
        one.stroke([(3, 3)])
        one.save()
        self.assertEqual([rows_in(path)[cell][cell] for cell in (1, 2, 3)], [".", "#", "#"])

    def work_elsewhere(self, editor, change):
        """Another program has the keys, and does that."""
        editor.settle()
        frame = editor.state["frame"]
        take_keys_away(self.server.environment["DISPLAY"])
        editor.wait(lambda state: state["frame"] > frame and state["idle"], "the keys are gone")
        change()
        self.assertEqual(editor.state["dialog"], "none", "nothing is looked at meanwhile")
        frame = editor.state["frame"]
        editor.focus()
        editor.wait(lambda state: state["frame"] > frame and state["idle"], "the keys again")

    def test_a_change_is_noticed_when_the_window_has_the_keys_again(self):
        path = self.write("cove.repeat", blank())
        other = design(["." * 24] * 10 + ["#" + "." * 23] + ["." * 24])
        editor = self.start(path)
        self.work_elsewhere(editor, lambda: path.write_text(path.read_text()))
        self.assertEqual(editor.state["dialog"], "none", "the same bytes, written again")
        self.work_elsewhere(editor, lambda: path.write_text(other))
        self.assertEqual(editor.state["dialog"], "changed")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and not state["saved"] and state["idle"], "mine stays")
        self.work_elsewhere(editor, lambda: None)
        self.assertEqual(editor.state["dialog"], "none", "it is asked once")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "changed" and state["idle"], "the question before it is replaced")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "no question")
        editor.stroke([(5, 5)])
        self.work_elsewhere(editor, lambda: path.write_text(other + "# later\n"))
        editor.click("changed theirs")
        editor.wait(lambda state: state["dialog"] == "guard" and state["idle"], "the guard of what was drawn")
        self.tab_until(editor, "guard discard")
        editor.key("Return")
        editor.wait(lambda state: state["saved"] and state["steps"] == 0 and state["idle"], "the file as it is")
        editor.stroke([(3, 3)])
        editor.save()
        self.assertEqual(rows_in(path)[1][0] + rows_in(path)[3][3] + rows_in(path)[5][5], "##.")
        self.assertIn("# later", path.read_text())

    def test_a_file_that_is_gone_is_said_and_written_again(self):
        path = self.write("cove.repeat", blank())
        editor = self.start(path)
        self.work_elsewhere(editor, path.unlink)
        self.assertIn("no longer where it was", editor.state["message"])
        self.assertFalse(editor.state["saved"])
        editor.save()
        self.assertEqual(rows_in(path), ["." * 24] * 12)

    def test_a_yoke_that_another_program_wrote_is_noticed_too(self):
        shutil.copytree(PATTERNS, self.folder / "patterns")
        path = self.folder / "patterns" / "harbour-pullover.yoke"
        editor = self.start(path)
        self.work_elsewhere(editor, lambda: path.write_text(path.read_text().replace("= 0.06", "= 0.07")))
        self.assertEqual(editor.state["dialog"], "changed")
        self.tab_until(editor, "changed theirs")
        editor.key("Return")
        editor.wait(lambda state: state["yoke"]["opening"] == 2 and state["idle"], "the yoke as it is")
        self.assertTrue(editor.state["yoke"]["saved"])


if __name__ == "__main__":
    main()
