"""Whole jobs in the real window, from a new design to the sheets in a folder: once by mouse, once by keyboard alone. Both
ways lead to the same bytes, and the sheets are those that the command writes from the saved file."""
import os
import subprocess

from driver import WindowTest, main, rows_in

PUNCHWRIGHT = os.environ["PUNCHWRIGHT"]
# Drawn across the join under the mirrors of both directions: four strokes from one.
STROKE = {(column, row) for column in (22, 23, 0, 1) for row in (1, 28)}


def cells(path):
    return {(column, row) for row, text in enumerate(rows_in(path)) for column, sign in enumerate(text) if sign == "#"}


class Job(WindowTest):
    def dialog(self, editor, name):
        editor.wait(lambda state: state["dialog"] == name and state["idle"], f"the dialog '{name}'")

    def type_into(self, editor, place, text):
        editor.wait(lambda state: state["keys_at"] == place and state["idle"], f"'{place}' with the keys")
        editor.key("ctrl+a")
        editor.type(text)
        editor.wait(lambda state: state["typed"] == text and state["idle"], f"'{text}' typed")

    def hanging(self, editor):
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the name over the drawing")

    def set_down_at(self, editor, before):
        editor.wait(lambda state: state["steps"] > before and state["idle"], "the name set down")

    def save_as(self, editor, home):
        self.dialog(editor, "save")
        editor.fill_name(home / "band")
        editor.wait(lambda state: state["saves"] == 1 and state["dialog"] == "none", "the file saved")

    def export_into(self, editor, home):
        self.dialog(editor, "everything")
        editor.fill_name(home / "sheets" / "band")
        editor.wait(lambda state: state["message"].startswith("Written"), "the sheets")
        editor.stop()

    def check_drawing(self, path):
        """Strokes at both ends of the band, the name between them, and no float too long."""
        drawn = cells(path)
        self.assertLessEqual(STROKE, drawn)
        self.assertTrue(any(8 < row < 20 for _, row in drawn), "the name")
        done = subprocess.run([PUNCHWRIGHT, "check", path], capture_output=True, text=True, check=False)
        self.assertEqual(done.returncode, 0, done.stdout)
        self.assertIn('name = "Kelp"', path.read_text())

    def check_sheets(self, path, folder):
        """What the window wrote is what the command writes."""
        again = self.folder / "again"
        subprocess.run([PUNCHWRIGHT, "export", path, "-o", again, "--replace"], check=True, capture_output=True)
        written = {file.name: file.read_bytes() for file in folder.iterdir()}
        self.assertEqual(sorted(file.name for file in again.iterdir()), sorted(written))
        for name, content in written.items():
            self.assertEqual((again / name).read_bytes(), content, name)
        subprocess.run(["qpdf", "--check", folder / "band-1-card.pdf"], check=True, capture_output=True)

    @staticmethod
    def page(state):
        """The number of the page that the preview shows."""
        return next((name.split()[1] for name in state["places"] if name.startswith("page ") and " of " in name), None)

    def reopened_by_keys(self, path):
        """From the start page: it is as it was saved, goes on, and comes back to the same bytes."""
        before = path.read_bytes()
        drawn = cells(path)
        editor = self.start("--size", "1440x900")
        self.dialog(editor, "start")
        self.tab_until(editor, "start open")
        editor.key("Return")
        self.dialog(editor, "open")
        editor.fill_name(path)
        editor.wait(lambda state: state["path"] == str(path) and state["dialog"] == "none" and state["idle"], "the band")
        self.assertTrue(editor.state["saved"])
        self.assertEqual(editor.state["faults"], 0)
        editor.save()
        self.assertEqual(path.read_bytes(), before)
        steps = editor.state["steps"]
        self.assertGreater(steps, 0, "what was done before can be undone")
        editor.key("Right", "Up", "space")
        editor.wait(lambda state: state["steps"] == steps + 1 and state["idle"], "a stitch turned")
        here = tuple(editor.state["cursor"])
        editor.save()
        self.assertEqual(cells(path) ^ drawn, {here})
        editor.key("ctrl+z")
        editor.wait(lambda state: state["steps"] == steps and state["idle"], "undo")
        editor.save()
        self.assertEqual(path.read_bytes(), before)
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)

    def named_by_mouse(self, editor, folder, name):
        """In the chooser: into the folder by a click, the name typed, and taken by its button."""
        editor.click(f"entry {folder}")
        editor.click("path name")
        self.type_into(editor, "path name", name)
        editor.click("choose")

    def reopened_by_mouse(self, path):
        """From the start page by clicks alone: as it was saved, it goes on, and comes back to the same bytes."""
        before = path.read_bytes()
        drawn = cells(path)
        editor = self.start("--size", "1440x900")
        self.dialog(editor, "start")
        editor.click("start open")
        self.dialog(editor, "open")
        editor.click(f"entry {path.parent.name}")
        editor.click(f"entry {path.name}")
        editor.click("choose")
        editor.wait(lambda state: state["path"] == str(path) and state["dialog"] == "none" and state["idle"], "the band")
        self.assertTrue(editor.state["saved"])
        self.assertEqual(editor.state["faults"], 0)
        self.save_by_mouse(editor)
        self.assertEqual(path.read_bytes(), before)
        steps = editor.state["steps"]
        self.assertGreater(steps, 0, "what was done before can be undone")
        editor.stroke([(12, 25)])
        self.save_by_mouse(editor)
        self.assertEqual(cells(path) ^ drawn, {(12, 25)})
        editor.click("menu Edit")
        editor.click("menu undo")
        editor.wait(lambda state: state["steps"] == steps and state["idle"], "undo")
        self.save_by_mouse(editor)
        self.assertEqual(path.read_bytes(), before)
        editor.stop()

    def save_by_mouse(self, editor):
        saves = editor.state["saves"]
        editor.click("menu File")
        editor.click("menu save")
        editor.wait(lambda state: state["saves"] == saves + 1 and state["idle"], "the file saved")

    def by_mouse(self, home):
        editor = self.start("--size", "1440x900")
        self.dialog(editor, "start")
        editor.click("start bulky-card-24")
        self.dialog(editor, "new")
        editor.click("new rows")
        self.type_into(editor, "new rows", "30")
        editor.click("begin")
        self.dialog(editor, "none")
        editor.click("title")
        self.type_into(editor, "title", "Slipway")
        # Under mirrors across the join.
        editor.click("tab Tools")
        editor.click("frieze p2mm")
        editor.stroke([(22, 1), (25, 1)])
        editor.click("frieze p1")
        # A name, dragged to its place and set down by a click beside it.
        editor.click("lettering")
        self.type_into(editor, "lettering", "LOU")
        editor.click("set lettering down")
        self.hanging(editor)
        steps = editor.state["steps"]
        editor.stroke([(3, 3), (6, 13)])
        editor.click_stitch(1, 25)
        self.set_down_at(editor, steps)
        # What is marked is mended.
        self.assertGreater(editor.state["faults"], 0)
        editor.click("finding 0")
        editor.click("mend")
        editor.click("take mend")
        editor.wait(lambda state: state["faults"] == 0 and state["idle"], "no fault")
        # Other yarns.
        editor.click("tab Yarns")
        editor.click("try pairs 1")
        self.dialog(editor, "pairs")
        editor.type("kelp")
        editor.wait(lambda state: "pair Kelp" in state["places"] and "pair Crab" not in state["places"], "the search")
        editor.click("pair Kelp")
        self.dialog(editor, "none")
        editor.click("save")
        self.dialog(editor, "save")
        self.named_by_mouse(editor, home.name, "band")
        editor.wait(lambda state: state["saves"] == 1 and state["dialog"] == "none" and state["idle"], "the file saved")
        # Looked at, and exported.
        editor.click("menu File")
        editor.click("menu preview")
        self.dialog(editor, "preview")
        editor.click("sheet chart")
        editor.click("page after")
        editor.click("export-everything")
        self.dialog(editor, "everything")
        self.named_by_mouse(editor, "sheets", "band")
        editor.wait(lambda state: state["message"].startswith("Written"), "the sheets")
        editor.stop()

    def by_keys(self, home):
        editor = self.start("--size", "1440x900")
        self.dialog(editor, "start")
        self.tab_until(editor, "start bulky-card-24")
        editor.key("Return")
        self.dialog(editor, "new")
        self.tab_until(editor, "new rows")
        self.type_into(editor, "new rows", "30")
        editor.key("Return")
        self.dialog(editor, "none")
        self.tab_until(editor, "tab Design", "F6")
        self.tab_until(editor, "title")
        self.type_into(editor, "title", "Slipway")
        self.tab_until(editor, "tab Design", "shift+Tab")
        self.tab_until(editor, "tab Tools", "Right")
        editor.key("Return")
        editor.wait(lambda state: "frieze p2mm" in state["places"], "the tools")
        self.tab_until(editor, "frieze p2mm")
        editor.key("space", "Escape")
        editor.key("Home", "Left", "Left", "Up", "space", "shift+Right", "shift+Right", "shift+Right")
        editor.wait(lambda state: state["cursor"] == [1, 1] and state["idle"], "the stroke across the join")
        self.tab_until(editor, "tab Design", "F6")
        self.tab_until(editor, "frieze p1")
        editor.key("space")
        self.tab_until(editor, "lettering")
        self.type_into(editor, "lettering", "LOU")
        self.tab_until(editor, "set lettering down")
        editor.key("Return")
        self.hanging(editor)
        steps = editor.state["steps"]
        editor.key(*["Right"] * 3, *["Up"] * 10, "Return")
        self.set_down_at(editor, steps)
        self.assertGreater(editor.state["faults"], 0)
        editor.key("ctrl+m")
        editor.wait(lambda state: "would be changed" in state["message"] and state["idle"], "the mend shown")
        editor.key("Return")
        editor.wait(lambda state: state["faults"] == 0 and state["idle"], "no fault")
        editor.key("y")
        self.dialog(editor, "pairs")
        editor.type("kelp")
        editor.wait(lambda state: "pair Kelp" in state["places"] and "pair Crab" not in state["places"], "the search")
        editor.key("Return")
        self.dialog(editor, "none")
        editor.key("ctrl+s")
        self.save_as(editor, home)
        # Looked at page by page, and exported.
        editor.key("ctrl+p")
        self.dialog(editor, "preview")
        self.tab_until(editor, "sheet chart")
        editor.key("Return")
        editor.wait(lambda state: self.page(state) == "1" and state["idle"], "the chart's first page")
        editor.key("Next")
        editor.wait(lambda state: self.page(state) == "2" and state["idle"], "the page turned over")
        editor.key("Prior")
        editor.wait(lambda state: self.page(state) == "1" and state["idle"], "the page turned back")
        self.tab_until(editor, "export-everything")
        editor.key("Return")
        self.export_into(editor, home)

    def test_by_mouse_and_by_keyboard_alone_to_the_same_files(self):
        for way in (self.by_mouse, self.by_keys):
            home = self.folder / way.__name__
            (home / "sheets").mkdir(parents=True)
            way(home)
            self.check_drawing(home / "band.repeat")
            self.check_sheets(home / "band.repeat", home / "sheets")
        self.assertEqual((self.folder / "by_mouse" / "band.repeat").read_bytes(),
                         (self.folder / "by_keys" / "band.repeat").read_bytes())
        self.reopened_by_keys(self.folder / "by_keys" / "band.repeat")
        self.reopened_by_mouse(self.folder / "by_mouse" / "band.repeat")


if __name__ == "__main__":
    main()
