"""Settings, the start page, recent files, the file chooser's preview and the guide, in the real window."""
import os
import subprocess

from driver import WindowTest, blank, design, main, rows_in


class Settings(WindowTest):
    def test_dark_inches_and_large_text_by_mouse_are_there_again_at_the_next_start(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        self.assertEqual(editor.state["theme"], "light")
        before = editor.state["scale"]
        editor.key("ctrl+comma")
        editor.wait(lambda state: state["dialog"] == "settings" and state["idle"], "the settings")
        editor.click("theme dark")
        editor.wait(lambda state: state["theme"] == "dark", "the dark theme, at once")
        editor.click("lengths inches")
        editor.wait(lambda state: state["lengths"] == "inches", "inches")
        editor.click("text percent")
        editor.key("ctrl+a")
        editor.type("150")
        editor.wait(lambda state: abs(state["scale"] - 1.5 * before) < 0.01, "larger text")
        editor.click("close")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "no dialog")
        kept = self.settings()
        self.assertEqual((kept["theme"], kept["lengths"], kept["text_percent"]), ("dark", "inches", 150))
        self.assertEqual(kept["recent"], [str(path)])
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)

        editor = self.start(path)
        self.assertEqual(editor.state["theme"], "dark")
        self.assertEqual(editor.state["lengths"], "inches")
        self.assertAlmostEqual(editor.state["scale"], 1.5 * before, places=2)

    def test_where_inches_are_chosen_the_bench_and_a_yoke_are_asked_for_in_feet_and_inches(self):
        self.write_settings('lengths = "inches"\n')
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("ctrl+comma")
        editor.wait(lambda state: state["dialog"] == "settings" and state["idle"], "the settings")
        for place, typed in (("bench distance", "10"), ("screen width", "20")):
            editor.click(place)
            editor.key("ctrl+a")
            editor.type(typed)
            editor.wait(lambda state, typed=typed: state["typed"] == typed and state["idle"], f"'{typed}' typed")
            editor.key("Tab")
            editor.settle()
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "no dialog")
        bench = self.settings()["bench"]
        self.assertAlmostEqual(bench["distance_m"], 3.048)  # ten feet of 0.3048 m
        self.assertEqual(bench["screen_width_mm"], 508)  # twenty inches of 25.4 mm

    def test_by_keyboard_alone(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("ctrl+comma")
        editor.wait(lambda state: state["dialog"] == "settings" and state["idle"], "the settings")
        self.tab_until(editor, "lengths inches")
        editor.key("Return")
        editor.wait(lambda state: state["lengths"] == "inches" and state["idle"], "inches")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "no dialog")
        self.assertEqual(self.settings()["lengths"], "inches")

    def test_german_is_spoken_at_once_and_at_the_next_start(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.key("ctrl+comma")
        editor.wait(lambda state: state["dialog"] == "settings" and state["idle"], "the settings")
        editor.click("language de")
        editor.settle()
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "no dialog")
        self.assertEqual(self.settings()["language"], "de")
        editor.key("space")
        editor.save()
        self.assertEqual(editor.state["message"], "a.repeat gespeichert")
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)

        editor = self.start(path)
        editor.key("space")
        editor.save()
        self.assertEqual(editor.state["message"], "a.repeat gespeichert")

    def test_the_command_line_s_language_goes_before_the_settings(self):
        self.write_settings('language = "de"\n')
        editor = self.start(self.write("a.repeat", blank()), "--language", "en")
        editor.key("space")
        editor.save()
        self.assertEqual(editor.state["message"], "Saved a.repeat")

    def test_a_tip_shown_for_the_keys_covers_nothing_of_the_panel(self):
        editor = self.start(self.write("a.repeat", blank()), "--size", "1200x800")
        seen = {}
        for place in ["tab Tools", "tab Yarns"]:
            self.tab_until(editor, place)
            tabs = editor.state["places"]["tab Tools"]
            below, foot = int(tabs[3]) + 6, 800 - 28
            seen[place] = [
                subprocess.run(["import", "-window", editor.window, "-crop", f"300x{high}+0+{top}", "rgb:-"],
                               env=editor.environment, stdout=subprocess.PIPE, check=True).stdout
                for top, high in [(below, 200), (foot, 26)]]
        self.assertTrue(seen["tab Tools"][0] == seen["tab Yarns"][0], "the panel, whatever has the keys")
        self.assertFalse(seen["tab Tools"][1] == seen["tab Yarns"][1], "each says its own tip at the foot")

    def test_a_tip_shown_for_the_keys_leaves_the_state_line_s_facts_in_sight(self):
        editor = self.start(self.write("a.repeat", blank()), "--size", "1200x800")
        def facts():
            return subprocess.run(["import", "-window", editor.window, "-crop", "330x26+870+772", "rgb:-"],
                                  env=editor.environment, stdout=subprocess.PIPE, check=True).stdout
        before = facts()
        for place in ["tab Tools", "title"]:
            self.tab_until(editor, place)
            self.assertTrue(facts() == before, f"the group, the cursor and what is saved, while the keys are at {place}")

    def test_titles_of_menus_without_room_stand_in_one_more_menu(self):
        editor = self.start(self.write("a.repeat", blank()), "--size", "1024x700", "--language", "de", "--scale", "2.5")
        titles = [name for name in editor.state["places"] if name.startswith("menu ")]
        self.assertEqual(titles[-1], "menu more")
        self.assertNotIn("menu Help", titles)
        self.assertLess(editor.state["places"]["menu more"][2], 1024)
        editor.click("menu more")
        editor.wait(lambda state: "menu Help" in state["places"] and state["idle"], "the menus in it")
        editor.click("menu Help")
        editor.wait(lambda state: "menu keys" in state["places"] and state["idle"], "their entries")

    def test_a_gauge_typed_over_four_inches_is_kept_over_ten_centimetres(self):
        self.write_settings('lengths = "inches"\n')
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.click("gauge stitches")
        editor.key("ctrl+a")
        editor.type("18")
        editor.key("Tab")
        editor.save()
        self.assertIn("stitches = 17.7165", path.read_text())

    def test_a_broken_settings_file_is_set_aside_with_a_note(self):
        broken = self.write_settings("theme = [[[ no\n")
        editor = self.start(self.write("a.repeat", blank()))
        self.assertEqual(editor.state["title"], "a.repeat — Punchwright")
        aside = broken.parent / "settings.broken"
        self.assertEqual(aside.read_text(), "theme = [[[ no\n")
        said = editor.state["message"]
        self.assertTrue(said.startswith("Opened a.repeat. The settings could not be read ("), said)
        self.assertTrue(said.endswith(f"; they lie in {aside} now"), said)
        editor.key("ctrl+plus")
        editor.wait(lambda state: state["message"] == "Text at 110 %" and state["idle"], "larger text")
        self.assertEqual(self.settings()["text_percent"], 110)

    def test_the_note_is_there_whatever_is_wrong_and_on_the_start_page_too(self):
        path = self.write("a.repeat", blank())
        for wrong, what in ((b'theme = "pink"\n', "theme"), (b"text_percent = true\n", "text_percent"),
                            (b'language = "\xff"\n', "UTF-8")):
            broken = self.write_settings("")
            broken.write_bytes(wrong)
            editor = self.start(path)
            self.assertIn("The settings could not be read (", editor.state["message"], wrong)
            self.assertIn(what, editor.state["message"])
            editor.key("space")
            editor.wait(lambda state: state["saved"] is False and state["idle"], "a stitch")
            self.assertNotIn("settings", editor.state["message"], "after the next action it is gone")
            editor.stop()
        self.write_settings('theme = "pink"\n')
        editor = self.start()
        editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
        self.assertIn("trouble at the start", editor.state["places"])
        self.assertIn("The settings could not be read (", editor.state["message"])

    def test_a_home_that_is_a_file_hinders_nothing(self):
        (self.folder / "home").write_text("")
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.wait(lambda state: "can't be kept" in state["message"] and state["idle"], "the note")
        before = editor.state["scale"]
        editor.key("ctrl+plus")
        editor.wait(lambda state: state["scale"] > before and state["idle"], "larger text")
        editor.stroke([(1, 1)])
        editor.save()
        editor.key("ctrl+plus")
        editor.wait(lambda state: state["message"].startswith("Text at 120") and state["idle"], "no second note")
        self.assertEqual(rows_in(path)[1][1], "#")


class Start(WindowTest):
    def test_a_demo_opens_as_a_copy_that_asks_where_to_be_saved(self):
        editor = self.start()
        editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
        editor.click("demo puffin-cove")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the demo")
        self.assertEqual(editor.state["path"], "")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the dialog")
        self.assertEqual(editor.state["typed"], "puffin-cove.repeat")
        editor.key("Return")
        editor.wait(lambda state: state["saves"] == 1, "the file saved")
        self.assertEqual(len(rows_in(self.folder / "puffin-cove.repeat")[0]), 24)

    def test_by_keyboard_a_repeat_for_the_chosen_machine(self):
        editor = self.start()
        editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
        self.assertTrue(editor.state["keys_at"].startswith("start "))
        self.tab_until(editor, "start plastic-by-hand")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "new" and state["idle"], "the dialog for a new design")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the new design")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the dialog")
        editor.fill_name(self.folder / "mine")
        editor.wait(lambda state: state["saves"] == 1, "the file saved")
        self.assertIn('profile = "plastic-by-hand"', (self.folder / "mine.repeat").read_text())

    def test_recent_files_are_offered_and_missing_ones_taken_off(self):
        here = self.write("here.repeat", blank())
        gone = self.folder / "gone.repeat"
        self.write_settings(f'recent = ["{gone}", "{here}"]\n')
        editor = self.start()
        editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
        editor.click("recent 1")  # greyed: nothing happens
        self.assertEqual(editor.state["dialog"], "start")
        editor.click("forget 1")
        editor.wait(lambda state: "forget 2" not in state["places"] and state["idle"], "the shorter list")
        self.assertEqual(self.settings()["recent"], [str(here)])
        editor.click("recent 1")
        editor.wait(lambda state: state["path"] == str(here) and state["dialog"] == "none", "the file")

    def test_the_menu_has_the_recent_files(self):
        first = self.write("first.repeat", blank())
        second = self.write("second.repeat", design(["#..#", ".##."]))
        self.write_settings(f'recent = ["{second}", "{self.folder / "gone.repeat"}"]\n')
        editor = self.start(first)
        editor.click("menu File")
        editor.click("menu recent")
        editor.click("menu forget missing")
        editor.wait(lambda state: state["idle"], "rest")
        self.assertEqual(self.settings()["recent"], [str(first), str(second)])
        editor.click("menu File")
        editor.click("menu recent")
        editor.click("menu recent 2")
        editor.wait(lambda state: state["path"] == str(second), "the second file")

    def test_the_start_page_lies_still_once_it_is_there(self):
        editor = self.start_blank()
        editor.key("ctrl+shift+s")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the dialog")
        editor.fill_name("another.repeat")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "saved")
        editor.key("ctrl+shift+n")  # a line taller than before
        editor.wait(lambda state: "recent 1" in state["places"] and state["idle"], "the start page")
        before = editor.state["places"]["start yoke"]
        editor._xdotool("mousemove", "--window", editor.window, 30, 300, "mousemove", "--window", editor.window, 32, 300)
        editor.wait_next(lambda state: state["idle"], "the pointer's arrival")
        self.assertEqual(editor.state["places"]["start yoke"], before)

    def test_unsaved_work_is_asked_for_before_a_demo_takes_its_place(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.stroke([(2, 2)])
        editor.key("ctrl+shift+n")
        editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
        editor.click("demo buoy-line")
        editor.wait(lambda state: state["dialog"] == "guard", "the guard")
        self.assertFalse(editor.state["saved"])


class Chooser(WindowTest):
    def test_the_design_under_the_keys_or_the_pointer_is_shown(self):
        path = self.write("a.repeat", blank())
        self.write("b.repeat", design(["#..#", ".##."], title="Quay"))
        self.write("c.repeat", "no design")
        editor = self.start(path)
        editor.key("ctrl+o")
        editor.wait(lambda state: state["dialog"] == "open" and state["idle"], "the dialog")
        editor.key("shift+Tab")  # from the name to the last entry
        editor.wait(lambda state: "preview c.repeat" in state["places"] and state["idle"], "the entry under the keys")
        editor.key("shift+Tab")
        editor.wait(lambda state: "preview b.repeat" in state["places"] and state["idle"], "the one above")
        editor.click("entry a.repeat")
        editor.wait(lambda state: "preview a.repeat" in state["places"] and state["idle"], "the one under the pointer")


class Help(WindowTest):
    def scrolled(self, editor):
        return next(float(name.split()[-1]) for name in editor.state["places"] if name.startswith("help scrolled"))

    def test_the_guide_is_searched_by_typing_and_scrolled_by_keys(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("F1")
        editor.wait(lambda state: state["dialog"] == "help" and state["idle"], "the guide")
        self.assertEqual(self.scrolled(editor), 0)
        editor.key("Next")
        editor.wait(lambda state: self.scrolled(editor) > 100 and state["idle"], "a page further down")
        editor.key("Prior")
        editor.wait(lambda state: self.scrolled(editor) == 0 and state["idle"], "the top")
        editor.type("swatch")
        editor.wait(lambda state: state["typed"] == "swatch" and state["idle"], "the word")
        editor.settle()
        first = self.scrolled(editor)
        self.assertGreater(first, 0)
        editor.key("Return")
        editor.wait(lambda state: self.scrolled(editor) != first and state["idle"], "the next place")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none", "the drawing")

    def test_the_contents_lead_to_a_job(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("F1")
        editor.wait(lambda state: state["dialog"] == "help" and state["idle"], "the guide")
        editor.click("help 5")
        editor.wait(lambda state: self.scrolled(editor) > 1000, "a job far down")


class SmallWindows(WindowTest):
    """At 80 to 250 % nothing of what is pressed lies outside the window."""

    def test_the_chosen_tool_and_pen_stand_in_the_toolbar_at_any_size_of_text(self):
        path = self.write("a.repeat", blank())
        for size, percent in (("1440x900", 80), ("1280x800", 100), ("1440x900", 100), ("1280x800", 200),
                              ("1024x640", 250)):
            self.write_settings(f"text_percent = {percent}\n")
            editor = self.start(path, "--size", size)
            width = int(size.split("x")[0])
            for key, tool in (("l", "tool-line"), ("r", "tool-rectangle"), ("m", "tool-mark"), ("p", "tool-pen")):
                with self.subTest(size=size, percent=percent, tool=tool):
                    editor.key(key)
                    editor.wait(lambda state, tool=tool: tool in state["places"] and state["idle"], "the chosen tool")
                    left, _, right, bottom = editor.state["places"][tool]
                    self.assertTrue(0 <= left and right <= width, (left, right))
                    self.assertLess(bottom, editor.state["canvas"][1])
                    self.assertIn("pen-opposite", editor.state["places"])
            editor.stop()

    def test_in_a_small_window_dialogs_keep_their_buttons_in_sight_and_scroll_above_them(self):
        path = self.write("a.repeat", blank())
        for size, percent in (("1280x800", 200), ("1024x640", 200), ("1024x640", 250)):
            self.write_settings(f"text_percent = {percent}\n")
            width, height = map(int, size.split("x"))
            editor = self.start(path, "--size", size)
            for key, dialog, pressed in (("ctrl+n", "new", "begin"), ("shift+F11", "new-yoke", "begin yoke")):
                with self.subTest(size=size, percent=percent, dialog=dialog):
                    editor.key(key)
                    editor.wait(lambda state, dialog=dialog: state["dialog"] == dialog and state["idle"], dialog)
                    for place in (pressed, "cancel"):
                        left, top, right, bottom = editor.state["places"][place]
                        self.assertTrue(0 <= left and right <= width and 0 <= top and bottom <= height, place)
                    # Of what scrolls there is a third of the window in sight at least.
                    first = "new machine" if dialog == "new" else "new pullover"
                    self.assertGreater(editor.state["places"][pressed][1] - editor.state["places"][first][1], height / 3)
                    for place, box in editor.state["places"].items():
                        self.assertTrue(box[2] <= width + 1, f"{place} goes beyond the right edge")
                    editor.key("Escape")
                    editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "no dialog")
            editor.key("ctrl+p")
            editor.wait(lambda state: state["dialog"] == "preview" and state["idle"], "the preview")
            for place in ("sheets", "page before", "page after", "page whole", "page width"):
                if place in editor.state["places"]:
                    self.assertLessEqual(editor.state["places"][place][2], width - 20 - 16 * percent / 100, place)
            editor.stop()

    def large(self, path, language, *more):
        return self.start(path, "--size", "1024x640", "--scale", "2.5", "--language", language, *more)

    def test_at_250_percent_the_swatch_s_words_lie_beside_its_pictures_and_not_over_them(self):
        path = self.write("a.repeat", blank())
        for language in ("en", "de"):
            editor = self.large(path, language, "--tab", "machine")
            self.tab_until(editor, "answer swatch")
            editor.key("Return")
            editor.wait(lambda state: state["dialog"] == "swatch" and state["idle"], "the question")
            places = editor.state["places"]
            boxes = [places[f"swatch {number} {part}"] for number in range(1, 9) for part in ("words", "picture")]
            for place, one in enumerate(boxes):
                for other in boxes[place + 1:]:
                    self.assertTrue(one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1],
                                    (language, one, other))
            editor.stop()

    def test_at_250_percent_the_guide_has_the_window_s_height(self):
        path = self.write("a.repeat", blank())
        for language in ("en", "de"):
            editor = self.large(path, language)
            editor.key("F1")
            editor.wait(lambda state: state["dialog"] == "help" and state["idle"], "the guide")
            [lines] = [name for name in editor.state["places"] if name.startswith("help lines ")]
            self.assertGreaterEqual(int(lines.split()[-1]), 6, language)
            editor.stop()

    def test_keys_and_what_they_do_lie_whole_in_their_columns_however_large_the_text(self):
        path = self.write("a.repeat", blank())
        for language in ("en", "de"):
            for size, percent in (("1024x640", 250), ("1024x640", 80), ("1440x900", 100)):
                with self.subTest(language=language, size=size, percent=percent):
                    self.write_settings(f"text_percent = {percent}\n")
                    editor = self.start(path, "--size", size, "--language", language)
                    editor.key("shift+F1")
                    places = editor.wait(lambda state: state["dialog"] == "keys" and state["idle"], "the keys")["places"]
                    count = sum(name.startswith("keys ") and name.endswith(" key") for name in places)
                    self.assertGreater(count, 30)
                    for line in range(count):
                        key, words = places[f"keys {line} key"], places[f"keys {line} words"]
                        self.assertLess(key[2], words[0], line)
                        beside = [places[f"keys {other} key"][0] for other in range(count)
                                  if places[f"keys {other} key"][0] > words[0]]
                        self.assertLess(words[2], min([*beside, int(size.split("x")[0])]), line)
                    editor.stop()

    def test_at_250_percent_the_foot_names_the_symmetry_and_messages_keep_their_end(self):
        for language in ("en", "de"):
            path = self.write("a-band-with-a-name-that-is-as-long-as-names-of-files-are.repeat", blank())
            editor = self.large(path, language)
            for key in (None, "ctrl+s", "ctrl+5", "ctrl+l"):
                if key:
                    editor.key(key)
                    editor.settle()
                self.assertIn("foot: symmetry", editor.state["places"], (language, key))
                self.assertIn("foot whole", editor.state["places"], (language, key, editor.state["message"]))
                self.assertLessEqual(editor.state["places"]["foot whole"][2], editor.state["places"]["foot: symmetry"][0])
            editor.stop()

    def test_every_button_lies_in_the_window_or_its_panel_scrolls(self):
        path = self.write("a.repeat", blank())
        for size, percent in (("1440x900", 80), ("1440x900", 200), ("1024x640", 160), ("1024x640", 250)):
            with self.subTest(size=size, percent=percent):
                self.write_settings(f"text_percent = {percent}\n")
                editor = self.start(path, "--size", size)
                width, height = map(int, size.split("x"))
                by_turns = "right side" in editor.state["places"]  # a list then says what is shown at the right
                self.assertEqual(by_turns, percent >= 200 or size == "1024x640")
                sights = ("right side",) if by_turns else ("knit side", "purl side", "from afar")
                for place in (*sights, "new", "save"):
                    left, top, right, bottom = editor.state["places"][place]
                    self.assertTrue(0 <= left and right <= width and 0 <= top and bottom <= height, place)
                for place, box in editor.state["places"].items():
                    self.assertTrue(box[2] <= width + 1, f"{place} goes beyond the right edge")
                left, top, right, bottom = editor.state["canvas"]
                self.assertGreater(min(right - left, bottom - top), 60)
                editor.stop()


if __name__ == "__main__":
    os.environ.pop("GTK_THEME", None)
    main()
