"""A picture is traced in the real window: opened, its part and tones chosen, taken as a design, its card exported."""
import os
import pathlib
import subprocess
import sys

from driver import WindowTest, blank, main, rows_in
from desktop_messages import drop_file

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "tools"))
from screens import lighthouse

PUNCHWRIGHT = os.environ["PUNCHWRIGHT"]


class Trace(WindowTest):
    def begin(self, *arguments):
        picture = self.folder / "lighthouse.ppm"
        picture.write_bytes(lighthouse())
        editor = self.start(*arguments, picture)
        editor.wait(lambda state: state["dialog"] == "trace" and state["idle"], "the picture")
        return editor

    def fill(self, editor, place, text):
        editor.click(place)
        editor.wait(lambda state: state["keys_at"] == place and state["idle"], f"'{place}' with the keys")
        editor.key("ctrl+a")
        editor.type(text)
        editor.key("Tab")
        editor.wait(lambda state: state["keys_at"] != place and state["idle"], f"'{place}' left")

    def take_and_save(self, editor):
        editor.click("trace new")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the design")
        editor.key("ctrl+shift+s")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the dialog")
        editor.fill_name(self.folder / "traced")
        editor.wait(lambda state: state["saves"] == 1, "the file saved")

    def test_a_picture_becomes_the_design_that_the_command_makes_and_its_card_is_read_back(self):
        editor = self.begin()
        self.fill(editor, "trace rows", "30")
        self.fill(editor, "trace left", "0")
        self.fill(editor, "trace part", "240")
        self.fill(editor, "trace top", "20")
        self.fill(editor, "trace split", "55")
        self.take_and_save(editor)
        by_command = self.folder / "command.repeat"
        subprocess.run([PUNCHWRIGHT, "trace", self.folder / "lighthouse.ppm", "-o", by_command, "--rows", "30", "--part",
                        "0,20,240", "--split", "55"], check=False, capture_output=True, timeout=60)
        self.assertEqual(rows_in(self.folder / "traced.repeat"), rows_in(by_command))
        self.assertIn("#", "".join(rows_in(by_command)))
        editor.key("ctrl+e")
        editor.wait(lambda state: state["dialog"] == "card" and state["idle"], "the dialog")
        editor.fill_name(self.folder / "card.txt")
        editor.wait(lambda state: state["message"].startswith("Written"), "the card")
        self.assertIn("1", (self.folder / "card.txt").read_text())
        proved = subprocess.run([PUNCHWRIGHT, "prove", self.folder / "traced.repeat"], capture_output=True, text=True,
                                check=False, timeout=60)
        self.assertEqual(proved.returncode, 0, proved.stdout + proved.stderr)

    def test_dropped_on_a_design_it_hangs_over_it_and_escape_leaves_it(self):
        path = self.write("a.repeat", blank(height=60))
        editor = self.start(path)
        picture = self.folder / "lighthouse.ppm"
        picture.write_bytes(lighthouse())
        drop_file(self.server.environment["DISPLAY"], int(editor.window), picture)
        editor.wait(lambda state: state["dialog"] == "trace" and state["idle"], "the picture")
        editor.click("trace place")
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the drawing over the other")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "the drawing set down")
        editor.save()
        self.assertIn("#", "".join(rows_in(path)))
        drop_file(self.server.environment["DISPLAY"], int(editor.window), picture)
        editor.wait(lambda state: state["dialog"] == "trace" and state["idle"], "the picture")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the drawing")
        self.assertEqual(editor.state["steps"], 1)

    def test_the_part_is_dragged_and_the_best_place_is_found(self):
        editor = self.begin()
        left, top, right, bottom = editor.state["places"]["photo"]
        x, y = round((left + right) / 2), round((top + bottom) / 2)
        frame = editor.state["frame"]
        editor._xdotool("mousemove", "--window", editor.window, x, y, "mousedown", 1, "mousemove", "--window",
                        editor.window, x + 9, y + 5, "mouseup", 1)
        editor.wait(lambda state: state["frame"] > frame + 2 and state["idle"], "the part moved")
        editor.click("best place")
        editor.wait(lambda state: state["idle"], "the best place")
        editor.click("trace light")
        editor.click("trace new")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the design")
        self.assertTrue(editor.state["title"].startswith("Untitled") or "lighthouse" in editor.state["title"])

    def test_an_area_is_protected_by_dragging_over_the_result_as_the_command_protects_it(self):
        editor = self.begin()
        for place, number in (("trace rows", 30), ("trace left", 0), ("trace part", 240), ("trace top", 20)):
            self.fill(editor, place, str(number))
        self.tab_until(editor, "trace protect")  # the keys bring it into view
        editor.key("space")
        editor.wait(lambda state: "trace result" in state["places"] and state["idle"],
                    "the area")
        left, top, right, bottom = editor.state["places"]["trace result"]
        x, y = round((left + right) / 2), round((top + bottom) / 2)
        frame = editor.state["frame"]
        editor._xdotool("mousemove", "--window", editor.window, x, y, "mousedown", 1, "mousemove", "--window",
                        editor.window, x + 30, y - 20, "mouseup", 1)
        editor.wait(lambda state: state["frame"] > frame + 2 and state["idle"], "the area dragged")
        for place, number in (("kept column", 5), ("kept columns", 12), ("kept row", 9), ("kept rows", 8)):
            self.tab_until(editor, place)
            editor.key("ctrl+a")
            editor.type(str(number))
        editor.key("Tab")
        self.take_and_save(editor)
        drawings = []
        for options in (["--protect", "9-16:5-16"], []):
            path = self.folder / "command.repeat"
            subprocess.run([PUNCHWRIGHT, "trace", self.folder / "lighthouse.ppm", "-o", path, "--rows", "30",
                            "--part", "0,20,240", *options],
                           check=False, capture_output=True, timeout=60)
            drawings.append(rows_in(path))
        self.assertEqual(rows_in(self.folder / "traced.repeat"), drawings[0])
        self.assertNotEqual(drawings[0], drawings[1])


if __name__ == "__main__":
    main()
