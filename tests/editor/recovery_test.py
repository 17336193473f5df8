"""Work that is not saved, in the real window: the editor is killed, and starts again. What was drawn is offered, its
file untouched; and what was done to a saved one can still be undone."""
import os
import pathlib
import random
import shutil
import subprocess
import time

from driver import WindowTest, blank, main, rows_in

PATTERNS = pathlib.Path(__file__).resolve().parents[2] / "patterns"
KEPT_WITHIN = 4.0  # seconds: nothing older may be lost
KILLS = int(os.environ.get("PUNCHWRIGHT_KILLS", "20"))
SEED = int(os.environ.get("PUNCHWRIGHT_SEED", "17"))


class Recovery(WindowTest):
    def setUp(self):
        super().setUp()
        self.journals = self.folder / "home" / "state" / "punchwright" / "journals"

    def names(self, kind=".journal"):
        return sorted(path.name for path in self.journals.glob("*" + kind)) if self.journals.exists() else []

    def wait_kept(self, count=1, kind=".journal"):
        end = time.monotonic() + 60
        while len(self.names(kind)) != count:
            self.assertLess(time.monotonic(), end, f"{count} of {kind}: {self.names(kind)}")
            time.sleep(0.02)

    def stroke_and_keep(self, editor, cells):
        """Draws, and waits until a journal of that stroke is on the disk."""
        before = {path: path.read_bytes() for path in self.journals.glob("*.journal")}
        editor.stroke(cells)
        end = time.monotonic() + 60
        while {path: path.read_bytes() for path in self.journals.glob("*.journal")} == before:
            self.assertLess(time.monotonic(), end, "the stroke is kept")
            time.sleep(0.02)

    def offered(self, *arguments):
        editor = self.start(*arguments)
        editor.wait(lambda state: state["dialog"] == "recovery" and state["idle"], "the question")
        return editor

    def crashed(self, path, *cells):
        editor = self.start(path)
        for cell in cells:
            self.stroke_and_keep(editor, [cell])
        editor.stop()

    def test_what_was_drawn_is_offered_and_its_file_untouched(self):
        path = self.write("cove.repeat", blank())
        before = path.read_bytes()
        self.crashed(path, (2, 2), (5, 3))
        editor = self.offered()
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["path"] == str(path), "the design")
        self.assertFalse(editor.state["saved"])
        self.assertEqual(editor.state["steps"], 2)
        self.assertEqual(path.read_bytes(), before)
        editor.settle()
        editor.key("ctrl+z")
        editor.wait(lambda state: state["steps"] == 1, "undo of what was done before")
        editor.key("ctrl+y")
        editor.wait(lambda state: state["steps"] == 2, "redo")
        editor.save()
        self.assertEqual(rows_in(path)[2][2] + rows_in(path)[3][5], "##")
        self.wait_kept(0)
        editor.settle()
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)
        self.assertEqual(list(self.journals.iterdir()), [], "nothing is left")

    def test_a_yoke_is_offered_too_and_its_undo_goes_on_after_closing(self):
        shutil.copytree(PATTERNS, self.folder / "patterns")
        path = self.folder / "patterns" / "puffin-poncho.yoke"
        before = path.read_bytes()

        def deeper(editor, cm):
            editor.click("yoke depth")
            editor.wait(lambda state: state["keys_at"] == "yoke depth" and state["idle"], "the field")
            editor.key("ctrl+a")
            editor.type(cm)
            editor.key("Tab")
            editor.wait(lambda state: state["yoke"]["depth_cm"] == float(cm) and state["idle"], "the new depth")

        editor = self.start(path)
        deeper(editor, "31.5")
        self.wait_kept()
        editor.stop()
        self.assertEqual(path.read_bytes(), before)
        editor = self.offered()
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["yoke"]["depth_cm"] == 31.5, "the yoke")
        self.assertFalse(editor.state["yoke"]["saved"])
        self.assertEqual(path.read_bytes(), before)
        editor.settle()
        editor.key("ctrl+s")
        editor.wait(lambda state: state["yoke"]["saved"] and state["idle"], "the file saved")
        self.assertIn(b"31.5", path.read_bytes())
        self.wait_kept(0)
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)
        editor = self.start(path)
        editor.wait(lambda state: state["yoke"]["steps"] == 1 and state["idle"], "the steps of before")
        editor.key("ctrl+z")
        editor.wait(lambda state: state["yoke"]["depth_cm"] != 31.5 and state["idle"], "undo")

    def test_a_design_never_saved_and_a_file_asked_for(self):
        editor = self.start_blank()
        self.stroke_and_keep(editor, [(1, 1), (4, 1)])
        editor.stop()
        other = self.write("other.repeat", blank())
        editor = self.offered(other)
        editor.click("recovery open")
        editor.wait(lambda state: state["path"] == "" and not state["saved"], "the design")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "save", "the dialog")
        editor.fill_name(self.folder / "found.repeat")
        editor.wait(lambda state: state["saved"], "the file saved")
        self.assertEqual(rows_in(self.folder / "found.repeat")[1][:6], ".####.")

    def test_later_and_aside(self):
        path = self.write("cove.repeat", blank())
        self.crashed(path, (2, 2))
        editor = self.offered()
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the blank drawing")
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)
        editor = self.offered()
        editor.click("recovery aside")
        editor.wait(lambda state: state["dialog"] == "start", "the start page")
        aside = list((self.journals / "set-aside").iterdir())
        self.assertEqual(len(aside), 1)
        self.assertEqual(rows_in(aside[0])[2][2], "#")
        self.assertIn(str(aside[0]), editor.state["message"])
        self.assertEqual(self.names(), [])
        self.assertEqual(rows_in(path)[2][2], ".")

    def test_two_crashes_are_asked_about_one_by_one_and_a_living_window_is_not(self):
        first = self.write("first.repeat", blank())
        second = self.write("second.repeat", blank())
        third = self.write("third.repeat", blank())
        living = self.start(third)
        self.stroke_and_keep(living, [(1, 1)])
        for path in (first, second):
            editor = self.start(path)
            if editor.state["dialog"] == "recovery":
                editor.click("recovery later")
                editor.wait(lambda state: state["dialog"] == "none", "the design")
            self.stroke_and_keep(editor, [(2, 2)])
            editor.stop()
        self.wait_kept(3)
        editor = self.offered()
        editor.click("recovery later")
        editor.wait(lambda state: state["dialog"] == "recovery" and state["idle"], "the other one")
        editor.click("recovery open")
        editor.wait(lambda state: state["path"] == str(first), "the earlier one")
        self.assertEqual(living.state["path"], str(third))

    def test_damaged_and_foreign_journals_are_set_aside_with_a_message(self):
        path = self.write("cove.repeat", blank())
        self.crashed(path, (2, 2))
        good = self.journals / self.names()[0]
        whole = good.read_bytes()
        (self.journals / "foreign.journal").write_text("a diary\n")
        (self.journals / "empty.journal").write_bytes(b"")
        (self.journals / "folder.journal").mkdir()
        good.write_bytes(whole[:-40])
        editor = self.start()
        editor.wait(lambda state: state["dialog"] == "start" and "could not be read" in state["message"], "the message")
        self.assertEqual(self.names(".broken"), sorted(
            name + ".broken" for name in ("foreign.journal", "empty.journal", good.name)))
        self.assertEqual((self.journals / (good.name + ".broken")).read_bytes(), whole[:-40])

    def test_a_state_folder_that_cannot_be_written(self):
        path = self.write("cove.repeat", blank())
        self.journals.parent.mkdir(parents=True)
        self.journals.write_text("no folder")
        editor = self.start(path)
        editor.stroke([(2, 2)])
        editor.wait(lambda state: "can't be kept" in state["message"] and state["idle"], "the message")
        editor.stroke([(3, 3)])
        editor.save()
        self.assertEqual(rows_in(path)[3][3], "#")

    def test_a_full_state_folder(self):
        self.journals.mkdir(parents=True)
        done = subprocess.run(["mount", "-t", "tmpfs", "-o", "size=16k", "none", self.journals], check=False,
                              capture_output=True)
        if done.returncode != 0:
            self.skipTest("mounting is not allowed here")
        try:
            (self.journals / "filler").write_bytes(b"x" * 12288)
            path = self.write("cove.repeat", blank(24, 400))
            editor = self.start(path)
            editor.stroke([(2, 2)])
            editor.wait(lambda state: "No space left" in state["message"] and state["idle"], "the message")
            editor.stroke([(3, 3)])
            editor.save()
            self.assertEqual(rows_in(path)[3][3], "#")
            editor.stop()
        finally:
            subprocess.run(["umount", self.journals], check=True)

    def test_a_kill_while_it_is_recovered_loses_nothing(self):
        path = self.write("cove.repeat", blank())
        self.crashed(path, (2, 2), (5, 3))
        for _ in range(6):
            editor = self.offered()
            editor.key("Return")
            time.sleep(random.uniform(0, 0.4))
            editor.stop()
            self.assertGreaterEqual(len(self.names()), 1, "it is still kept")
        editor = self.offered()
        editor.key("Return")
        editor.wait(lambda state: state["path"] == str(path), "the design")
        editor.settle()
        editor.save()
        self.assertEqual(rows_in(path)[2][2] + rows_in(path)[3][5], "##")


class Kills(WindowTest):
    """The editor is killed under a hand that draws, at random moments."""

    def test_nothing_older_than_four_seconds_is_lost(self):
        dice = random.Random(SEED)
        oldest = 0.0
        for number in range(KILLS):
            with self.subTest(kill=number):
                shutil.rmtree(self.folder / "home", ignore_errors=True)
                path = self.write("cove.repeat", blank(24, 24))
                before = path.read_bytes()
                editor = self.start(path)
                drawn = []  # when each stitch was seen in the editor's own state, and where
                end = time.monotonic() + dice.uniform(0.5, 7.5)
                cells = [(column, row) for row in range(24) for column in range(24)]
                dice.shuffle(cells)
                while time.monotonic() < end and cells:
                    cell = cells.pop()
                    editor.stroke([cell])
                    drawn.append((time.monotonic(), cell))
                    time.sleep(dice.choice([0, 0, 0.05, 0.4]))
                killed = time.monotonic()
                editor.stop()
                self.assertEqual(path.read_bytes(), before)
                kept = self.recovered(path)
                for when, (column, row) in drawn:
                    if kept[row][column] != "#":
                        oldest = max(oldest, killed - when)
                        self.assertLess(killed - when, KEPT_WITHIN, f"stitch {column}, {row}")
                self.assertLessEqual(sum(line.count("#") for line in kept), len(drawn), "nothing that nobody drew")
        print(f"{KILLS} kills; the oldest stitch that was lost was {oldest:.2f} s old")

    def recovered(self, path):
        """The drawing as it is offered and then saved; as the file has it where nothing is offered."""
        editor = self.start()
        editor.wait(lambda state: state["dialog"] in ("recovery", "start") and state["idle"], "the first question")
        if editor.state["dialog"] == "start":
            editor.stop()
            return rows_in(path)
        editor.key("Return")
        editor.wait(lambda state: state["path"] == str(path) and state["idle"], "the design")
        editor.save()
        editor.stop()
        return rows_in(path)


class KeptSteps(WindowTest):
    def test_undo_goes_on_after_closing_where_the_file_is_the_same(self):
        path = self.write("cove.repeat", blank())
        editor = self.start(path)
        editor.stroke([(1, 1)])
        editor.stroke([(2, 2)])
        editor.save()
        editor.settle()
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)
        editor = self.start(path)
        editor.wait(lambda state: state["steps"] == 2 and state["saved"], "the steps of before")
        editor.key("ctrl+z")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "undo")
        editor.save()
        self.assertEqual(rows_in(path)[1][1] + rows_in(path)[2][2], "#.")
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)
        path.write_text(path.read_text() + "# by another program\n")
        editor = self.start(path)
        self.assertEqual(editor.state["steps"], 0)

    def test_undo_goes_on_after_saving(self):
        path = self.write("cove.repeat", blank())
        editor = self.start(path)
        editor.stroke([(1, 1)])
        editor.save()
        editor.stroke([(2, 2)])
        editor.save()
        editor.settle()
        editor.key("ctrl+z", "ctrl+z")
        editor.wait(lambda state: state["steps"] == 0 and not state["saved"], "undo beyond two savings")
        editor.settle()
        editor.key("ctrl+y")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "redo")
        editor.save()
        self.assertEqual(rows_in(path)[1][1] + rows_in(path)[2][2], "#.")


if __name__ == "__main__":
    main()
