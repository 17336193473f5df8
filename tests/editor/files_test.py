"""Opening, saving, exporting and the guard, in the real window."""
import os
import shutil
import subprocess

from driver import WindowTest, blank, design, main, rows_in
from desktop_messages import drop_file, press_close_button


class Files(WindowTest):
    def test_draw_save_reopen_undo_export(self):
        path = self.write("cove.repeat", blank(title="Cove"))
        editor = self.start(path)
        editor.stroke([(2, 2), (10, 2)])
        editor.key("ctrl+z")
        editor.wait(lambda state: state["steps"] == 0, "undo")
        editor.key("ctrl+y")
        editor.wait(lambda state: state["steps"] == 1, "redo")
        editor.save()
        self.assertEqual(editor.state["title"], "cove.repeat — Punchwright")
        written = path.read_bytes()
        editor.stop()

        editor = self.start(path)
        editor.key("ctrl+shift+s")
        editor.wait(lambda state: state["dialog"] == "save", "the dialog")
        editor.fill_name(self.folder / "copy")
        editor.wait(lambda state: state["message"].startswith("Saved copy.repeat"), "the copy saved")
        self.assertEqual((self.folder / "copy.repeat").read_bytes(), written)

        editor.key("ctrl+e")
        editor.wait(lambda state: state["dialog"] == "card", "the dialog")
        editor.fill_name(self.folder / "card.pdf")
        editor.wait(lambda state: state["message"].startswith("Written"), "the card")
        information = subprocess.run(["pdfinfo", self.folder / "card.pdf"], capture_output=True, text=True, check=True)
        self.assertIn("Pages:", information.stdout)

        editor.key("ctrl+shift+e")
        editor.wait(lambda state: state["dialog"] == "chart", "the dialog")
        editor.fill_name(self.folder / "needles.csv")
        editor.wait(lambda state: "needles.csv" in state["message"], "the chart")
        self.assertTrue((self.folder / "needles.csv").read_text())

    def test_a_design_never_saved_asks_for_its_place(self):
        editor = self.start_blank()
        self.assertTrue(editor.state["title"].startswith("Untitled"))
        editor.stroke([(1, 1)])
        self.assertEqual(editor.state["title"], "• Untitled — Punchwright")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "save", "the dialog")
        editor.fill_name(self.folder / "new one.repeat")
        editor.wait(lambda state: state["saved"] and state["dialog"] == "none", "the file saved")
        self.assertEqual(rows_in(self.folder / "new one.repeat")[1][1], "#")

    def test_an_export_never_replaces_unasked(self):
        path = self.write("a.repeat", blank())
        (self.folder / "card.txt").write_text("precious")
        editor = self.start(path)
        editor.key("ctrl+e")
        editor.wait(lambda state: state["dialog"] == "card", "the dialog")
        editor.fill_name(self.folder / "card.txt")
        editor.wait(lambda state: "replace" in state["places"], "the question")
        self.assertEqual((self.folder / "card.txt").read_text(), "precious")
        editor.click("replace")
        editor.wait(lambda state: state["message"].startswith("Written"), "the card")
        self.assertNotEqual((self.folder / "card.txt").read_text(), "precious")

    def test_quitting_with_changes_asks_first(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.stroke([(3, 3)])
        editor.key("ctrl+q")
        editor.wait(lambda state: state["dialog"] == "guard", "the guard")
        editor.settle()
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none", "the guard gone")
        self.assertFalse(editor.state["saved"])
        editor.settle()
        editor.key("ctrl+q")
        editor.wait(lambda state: state["dialog"] == "guard", "the guard")
        editor.settle()
        editor.key("Return")
        self.assertEqual(editor.ended(), 0)
        self.assertEqual(rows_in(path)[3][3], "#")

    def test_discarding_leaves_the_file_as_it_was(self):
        path = self.write("a.repeat", blank())
        before = path.read_bytes()
        editor = self.start(path)
        editor.stroke([(3, 3)])
        editor.key("ctrl+n")
        editor.wait(lambda state: state["dialog"] == "guard", "the guard")
        editor.click("guard discard")
        editor.wait(lambda state: state["dialog"] == "new", "the dialog for a new design")
        editor.settle()
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["path"] == "", "the new design")
        self.assertEqual(path.read_bytes(), before)

    def test_quitting_without_changes_asks_nothing(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)

    def test_the_close_button_of_the_window_asks_before_anything_is_lost(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        before = path.read_bytes()
        editor.stroke([(2, 2)])
        press_close_button(self.server.environment["DISPLAY"], int(editor.window))
        editor.wait(lambda state: state["dialog"] == "guard", "the guard")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none", "the guard gone")
        self.assertFalse(editor.state["saved"])
        press_close_button(self.server.environment["DISPLAY"], int(editor.window))
        editor.wait(lambda state: state["dialog"] == "guard", "the guard")
        editor.settle()
        editor.key("Return")
        self.assertEqual(editor.ended(), 0)
        self.assertNotEqual(path.read_bytes(), before)

    def test_a_file_dropped_on_the_window_is_opened_after_the_guard(self):
        first = self.write("first.repeat", blank())
        second = self.write("second two.repeat", design(["#..#", ".##."]))
        editor = self.start(first)
        drop_file(self.server.environment["DISPLAY"], int(editor.window), second)
        editor.wait(lambda state: state["dialog"] == "dropped" and state["idle"], "the question")
        editor.click("dropped open")
        editor.wait(lambda state: state["path"] == str(second), "the second design")
        editor.wait(lambda state: state["idle"], "rest")
        editor.stroke([(1, 1)])
        drop_file(self.server.environment["DISPLAY"], int(editor.window), first)
        editor.wait(lambda state: state["dialog"] == "dropped" and state["idle"], "the question")
        editor.click("dropped open")
        editor.wait(lambda state: state["dialog"] == "guard", "the guard")
        self.assertEqual(editor.state["path"], str(second))
        editor.click("guard save")
        editor.wait(lambda state: state["path"] == str(first), "the first design")
        self.assertEqual(rows_in(second)[1][1], "#")

    def test_a_dropped_design_is_placed_before_it_is_set_down(self):
        first = self.write("first.repeat", blank())
        second = self.write("second.repeat", design(["#..#", ".##."]))
        editor = self.start(first)
        drop_file(self.server.environment["DISPLAY"], int(editor.window), second)
        editor.wait(lambda state: state["dialog"] == "dropped" and state["idle"], "the question")
        editor.click("dropped place")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the drawing over the other")
        editor.key("Right", "Up", "Return")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "the drawing set down")
        editor.save()
        self.assertEqual(rows_in(first)[1][:6], "..##..")
        self.assertEqual(rows_in(first)[2][:6], ".#..#.")
        self.assertEqual(editor.state["path"], str(first))

    def test_the_start_page_has_the_keys_that_its_tips_name(self):
        path = self.write("good.repeat", blank())
        editor = self.start()
        for key, dialog in (("ctrl+o", "open"), ("ctrl+n", "new"), ("F1", "help")):
            editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
            editor.key(key)
            editor.wait(lambda state, dialog=dialog: state["dialog"] == dialog and state["idle"], dialog)
            editor.key("Escape")
            editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the drawing")
            editor.key("ctrl+shift+n")
        editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
        editor.key("ctrl+o")
        editor.wait(lambda state: state["dialog"] == "open" and state["idle"], "the file chooser")
        editor.fill_name(path)
        editor.wait(lambda state: state["path"] == str(path), "the file open")

    def test_a_broken_file_is_explained_and_nothing_is_lost(self):
        good = self.write("good.repeat", blank())
        broken = self.write("broken.repeat", blank().replace('main = "A"', 'main = "Z"'))
        editor = self.start(good)
        editor.key("ctrl+o")
        editor.wait(lambda state: state["dialog"] == "open", "the dialog")
        editor.fill_name(broken)
        editor.wait(lambda state: state["dialog"] == "trouble", "the explanation")
        self.assertEqual(editor.state["path"], str(good))
        editor.settle()
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none", "the explanation gone")
        editor.stroke([(0, 0)])
        editor.save()
        self.assertEqual(rows_in(good)[0][0], "#")

    def test_a_design_is_opened_by_its_name_alone_as_it_was_saved(self):
        three = self.write("drei.repeat", blank(title="Drei"))
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("ctrl+o")
        editor.wait(lambda state: state["dialog"] == "open", "the dialog")
        editor.fill_name("drei")
        editor.wait(lambda state: state["path"] == str(three) and state["dialog"] == "none", "the file open")

    def test_a_name_that_is_no_file_leaves_the_chooser_open_and_says_so_in_it(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("ctrl+o")
        editor.wait(lambda state: state["dialog"] == "open", "the dialog")
        editor.fill_name("vier")
        editor.wait(lambda state: state["dialog"] == "open" and "chooser trouble" in state["places"], "what is wrong")
        four = self.write("vier.repeat", blank())
        editor.key("Return")
        editor.wait(lambda state: state["path"] == str(four), "the file, now that it is there")

    def unsaved_on_a_pulled_stick(self):
        stick = self.folder / "stick"
        stick.mkdir()
        editor = self.start(self.write("stick/a.repeat", blank()))
        editor.stroke([(0, 0)])
        shutil.rmtree(stick)
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "trouble" and state["idle"], "what is wrong")
        return editor

    def test_what_cannot_be_saved_where_it_was_is_saved_elsewhere_by_one_click(self):
        editor = self.unsaved_on_a_pulled_stick()
        editor.click("save elsewhere")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the file chooser")
        editor.fill_name(self.folder / "safe")
        editor.wait(lambda state: state["saved"] and state["dialog"] == "none", "the file saved")
        self.assertEqual(rows_in(self.folder / "safe.repeat")[0][0], "#")

    def test_what_cannot_be_saved_is_tried_again_or_saved_elsewhere_by_keys(self):
        editor = self.unsaved_on_a_pulled_stick()
        self.tab_until(editor, "save again")
        (self.folder / "stick").mkdir()
        editor.key("space")
        editor.wait(lambda state: state["saved"] and state["dialog"] == "none" and state["idle"], "the file saved")
        self.assertEqual(rows_in(self.folder / "stick" / "a.repeat")[0][0], "#")
        editor.stroke([(1, 0)])
        shutil.rmtree(self.folder / "stick")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "trouble" and state["idle"], "what is wrong once more")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the file chooser")

    def test_typing_in_a_field_draws_nothing(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.click("title")
        editor.type("xbh 1 + n")
        editor.wait(lambda state: not state["saved"], "the first letter")
        editor.settle()
        editor.save()
        self.assertIn('title = "xbh 1 + n"', path.read_text())
        self.assertEqual(set("".join(rows_in(path))), {"."})
        self.assertEqual(editor.state["steps"], 1)
        editor.click("gauge stitches")
        editor.key("ctrl+a")
        editor.type("28")
        editor.key("Tab")
        editor.save()
        self.assertIn("stitches = 28.0", path.read_text())
        self.assertEqual(editor.state["steps"], 2)


class NoWindow(WindowTest):
    def test_without_a_display_it_names_the_command_line(self):
        environment = {key: value for key, value in os.environ.items() if key not in ("DISPLAY", "WAYLAND_DISPLAY")}
        done = subprocess.run([os.environ["PUNCHWRIGHT_EDITOR"]], env=environment, capture_output=True, text=True,
                              check=False)
        self.assertEqual(done.returncode, 2)
        self.assertIn("punchwright check", done.stderr)
        self.assertEqual(done.stdout, "")


if __name__ == "__main__":
    main()
