"""Menus in the real window: whatever the language and the size of text, all of each name and key is to be read."""
import json
import os

from driver import WindowTest, blank, main


class Menus(WindowTest):
    def check_menu(self, editor, width, command):
        """The menu that is open: words and keys lie whole in the window, and keep apart. Whether that command is in it."""
        boxes = editor.state["places"]
        texts = [name for name in boxes if name.startswith("menu ") and name.endswith((" words", " key"))]
        for name in texts:
            left, _, right, _ = boxes[name]
            self.assertTrue(0 <= left and right <= width, f"{name}: {left} to {right}")
            entry, part = name.rsplit(" ", 1)
            if part == "key":
                words = boxes[f"{entry} words"]
                apart = words[2] < left or words[3] <= boxes[name][1]
                self.assertTrue(apart, f"{name}: {boxes[name]} beside {words}")
        self.assertIn(f"menu {command} words", boxes)

    def test_no_name_and_no_key_in_any_menu_is_cut(self):
        path = self.write("a.repeat", blank())
        recent = [self.write(f"{name}.repeat", blank()) for name in ("short", "a-name-that-goes-on-" * 8)]
        firsts = {"File": "new", "Edit": "undo", "Drawing": "tool-pen", "Rows and columns": "insert-row",
                  "Knitting": "at-the-bench", "View": "show-yoke", "Help": "all-commands"}
        for language in ("en", "de"):
            for size, percent in (("720x480", 250), ("1024x640", 250), ("1024x640", 80), ("1280x720", 200)):
                self.write_settings(f"text_percent = {percent}\nrecent = {json.dumps([str(file) for file in recent])}\n")
                editor = self.start(path, "--size", size, "--language", language)
                width = int(size.split("x")[0])
                for menu, first in firsts.items():
                    with self.subTest(language=language, size=size, percent=percent, menu=menu):
                        self.open_menu(editor, f"menu {menu}")
                        editor.wait(lambda state, first=first: f"menu {first} words" in state["places"]
                                    and state["idle"], "the menu")
                        self.check_menu(editor, width, first)
                        for within, entry in (("Symmetry while drawing", "symmetry-none"), ("recent", "recent 1")):
                            if menu == ("Drawing" if entry == "symmetry-none" else "File"):
                                self.open_within(editor, f"menu {within}", f"menu {entry} words")
                                self.check_menu(editor, width, entry)
                        # From beside them, since a menu within a menu opens again where the pointer rests.
                        editor._xdotool("mousemove", "--window", editor.window, 2, int(size.split("x")[1]) - 2)
                        for _ in range(3):
                            editor.settle()
                            editor.key("Escape")
                        editor.wait(lambda state, first=first: f"menu {first} words" not in state["places"]
                                    and state["idle"], "no menu")
                editor.stop()

    def open_menu(self, editor, title):
        if title in editor.state["places"]:
            return editor.click(title)
        editor.click("menu more")
        editor.wait(lambda state: title in state["places"] and state["idle"], "the menus without room in the bar")
        return self.rest_on(editor, title)  # it opens where the pointer rests

    def rest_on(self, editor, title):
        """Where the pointer is then."""
        left, top, _, bottom = editor.state["places"][title]
        frame = editor.state["frame"]
        x, y = round(left) + 60, round((top + bottom) / 2)
        editor._xdotool("mousemove", "--window", editor.window, x, y)
        editor.wait(lambda state: state["frame"] > frame, "the pointer's arrival")
        return x, y

    def open_within(self, editor, title, first):
        """A menu within the open one, which the window may have no room to show without scrolling: by the keys."""
        for _ in range(60):
            if editor.state["keys_at"] == title:
                break
            before = editor.state["frame"]
            editor.key("Down")
            editor.wait(lambda state, before=before: state["frame"] > before and state["idle"], "the next entry")
        editor.key("Right")
        editor.wait(lambda state: first in state["places"] and state["idle"], "the menu within")

    def test_a_click_where_a_menu_opened_under_the_pointer_chooses_nothing_until_the_pointer_moves(self):
        path, other = self.write("a.repeat", blank()), self.write("a-name-that-goes-on-" * 8 + ".repeat", blank(8, 8))
        self.write_settings(f"text_percent = 250\nrecent = {json.dumps([str(other), str(path)])}\n")
        editor = self.start(path, "--size", "1024x640", "--language", "de")  # without room beside a menu for another one
        for opened_from, title, first in (("menu more", "menu View", "menu zoom-in"),
                                          ("menu File", "menu recent", "menu recent 1")):
            with self.subTest(title=title):
                editor.click(opened_from)
                editor.wait(lambda state, title=title: title in state["places"] and state["idle"], "the menu")
                x, y = self.rest_on(editor, title)
                editor.wait(lambda state, first=first: first in state["places"] and state["idle"], "the menu within")
                boxes = editor.state["places"]
                self.assertTrue(any(boxes[name][0] <= x <= boxes[name][2] and boxes[name][1] <= y <= boxes[name][3]
                                    for name in boxes if name.startswith("menu ") and name != title), "it lies there")
                before = {what: editor.state[what] for what in ("cell", "opening", "face", "dialog", "message")}
                for _ in range(2):
                    frame = editor.state["frame"]
                    editor._xdotool("click", 1)
                    editor.wait(lambda state, frame=frame: state["frame"] > frame + 1 and state["idle"], "the click")
                self.assertEqual(before, {what: editor.state[what] for what in before})
                editor.click(first)
                self.assertNotIn(first, editor.state["places"])
                self.assertNotEqual((before["cell"], before["opening"]), (editor.state["cell"], editor.state["opening"]))

    def test_the_list_at_the_right_says_the_whole_of_what_it_shows(self):
        path = self.write("a.repeat", blank())
        for language in ("en", "de"):
            for size, percent in (("1024x640", 250), ("1024x700", 250), ("1024x640", 200)):
                with self.subTest(language=language, size=size, percent=percent):
                    self.write_settings(f"text_percent = {percent}\n")
                    editor = self.start(path, "--size", size, "--language", language)
                    self.assertIn("right side", editor.state["places"])
                    self.assertIn("right side whole", editor.state["places"])
                    editor.stop()


if __name__ == "__main__":
    os.environ.pop("GTK_THEME", None)
    main()
