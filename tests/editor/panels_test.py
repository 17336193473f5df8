"""Panels and dialogs in the real window: fields, the keys alone, what is learnt about a machine."""
import pathlib
import tomllib

from driver import WindowTest, blank, design, main


class Panels(WindowTest):
    def open_dialog(self, editor, key, name):
        editor.settle()
        editor.key(key)
        editor.wait(lambda state: state["dialog"] == name and state["idle"], f"the dialog '{name}'")

    def fill(self, editor, place, text, leave="Tab"):
        editor.click(place)
        editor.wait(lambda state: state["keys_at"] == place and state["idle"], f"'{place}' with the keys")
        editor.key("ctrl+a")
        editor.type(text)
        editor.wait(lambda state: state["typed"].replace("\n", " ") == text and state["idle"], f"'{text}' typed")
        if leave:
            self.leave(editor, place, leave)

    def leave(self, editor, place, key):
        editor.key(key)
        editor.wait(lambda state: (state["keys_at"] != place or not state["typed"]) and state["idle"],
                    f"'{place}' left")


class Fields(Panels):
    def test_a_decimal_comma_is_a_point_and_a_field_is_one_step(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        self.fill(editor, "gauge stitches", "22,5")
        self.assertEqual(editor.state["steps"], 1)
        editor.save()
        self.assertEqual(tomllib.loads(path.read_text())["gauge"]["stitches"], 22.5)

    def test_escape_takes_the_typing_back_and_leaves_no_step(self):
        path = self.write("a.repeat", blank(title="Cove"))
        editor = self.start(path)
        editor.save()
        before = path.read_bytes()
        for place, text in (("title", "Gulls"), ("gauge rows", "31"), ("notes", "two words")):
            self.fill(editor, place, text, leave=None)
            self.assertEqual(editor.state["steps"], 1, place)
            editor.key("Escape")
            editor.wait(lambda state: state["steps"] == 0 and state["idle"], f"'{place}' as it was")
            self.assertTrue(editor.state["saved"])
        editor.save()
        self.assertEqual(path.read_bytes(), before)

    def test_undo_after_tab_undoes_the_field_that_was_left(self):
        path = self.write("a.repeat", blank(title="Cove"))
        editor = self.start(path)
        self.fill(editor, "title", "Gulls")
        self.assertEqual(editor.state["keys_at"], "notes")
        editor.key("ctrl+z")
        editor.wait(lambda state: state["steps"] == 0 and state["idle"], "undo")
        editor.save()
        self.assertIn('title = "Cove"', path.read_text())

    def test_two_visits_to_a_field_are_two_steps(self):
        editor = self.start(self.write("a.repeat", blank()))
        self.fill(editor, "title", "Gulls", leave="Return")
        self.fill(editor, "title", "Terns", leave="Return")
        self.assertEqual(editor.state["steps"], 2)

    def test_a_number_out_of_bounds_is_spoken_of(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        self.fill(editor, "gauge rows", "2000")
        editor.wait(lambda state: "at most 200" in state["message"] and state["idle"], "the bound")
        self.fill(editor, "gauge rows", "0,5")
        editor.wait(lambda state: "1 to 200" in state["message"] and state["idle"], "the bounds")
        editor.save()
        self.assertEqual(tomllib.loads(path.read_text())["gauge"]["rows"], 200)

    def test_long_notes_wrap_on_the_screen_only(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        text = "A line of notes that is far longer than the field is wide, so that it has to wrap more than once."
        self.fill(editor, "notes", text, leave="Tab")
        self.assertEqual(editor.state["steps"], 1)
        editor.save()
        self.assertEqual(tomllib.loads(path.read_text())["notes"], text)


class KeysAlone(Panels):
    def test_settings_are_reached_and_changed_without_a_mouse(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.key("F6")
        editor.wait(lambda state: state["keys_at"] == "tab Design" and state["idle"], "the settings")
        self.tab_until(editor, "tab Piece")
        editor.key("Return")
        editor.wait(lambda state: "carriage" in state["places"], "the piece's settings")
        editor.settle()
        self.tab_until(editor, "carriage")
        editor.key("space")
        editor.wait(lambda state: "carriage 0" in state["places"] and state["idle"], "the list open")
        self.tab_until(editor, "carriage 0", "Up")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "the side chosen")
        editor.save()
        self.assertEqual(tomllib.loads(path.read_text())["piece"]["carriage"], "left")
        editor.settle()
        self.tab_until(editor, "drawing", "F6")
        editor.key("Right")
        editor.wait(lambda state: state["cursor"] == [1, 0], "the drawing's own arrows")

    def test_menus_open_by_key(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("F10")
        editor.wait(lambda state: "menu new" in state["places"] and state["idle"], "the first menu")
        editor.key("Right")
        editor.wait(lambda state: "menu invert" in state["places"] and state["idle"], "the next menu")
        self.tab_until(editor, "menu invert", "Down")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "the command")

    def test_the_next_menu_is_in_sight_without_another_event_and_menus_begin_at_the_first_again(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("F10")
        editor.wait(lambda state: "menu new" in state["places"] and state["idle"], "the first menu")
        for entry in ("menu undo", "menu tool-pen", "menu insert-row"):
            editor.key("Right")
            editor.wait(lambda state: entry in state["places"] and state["idle"], f"the menu of {entry}")
            self.assertFalse(editor.state["unsettled"])  # drawn, and not only measured
        editor.key("Escape")
        editor.wait(lambda state: "menu insert-row" not in state["places"] and state["idle"], "no menu")
        editor.key("F10")
        editor.wait(lambda state: "menu new" in state["places"] and state["idle"], "the first menu once more")
        editor.key("Right")
        editor.wait(lambda state: "menu undo" in state["places"] and state["idle"], "the menu after it")

    def test_symmetry_is_a_menu_within_the_menu_of_the_drawing(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.click("menu Drawing")
        editor.wait(lambda state: "menu Symmetry while drawing" in state["places"] and state["idle"], "the menu")
        editor.click("menu Symmetry while drawing")
        editor.wait(lambda state: "menu symmetry-both" in state["places"] and state["idle"], "the groups")
        editor.click("menu symmetry-both")
        editor.wait(lambda state: "Every stroke is completed" in state["message"] and state["idle"], "the symmetry")

    def test_commands_by_keys_of_their_own_or_it_is_said_why_not(self):
        path = self.write("a.repeat", design(["#.#.#.#.#.#.#.#.#.#.#.#."] * 3 + ["#......................."] * 3))
        editor = self.start(path)
        editor.settle()
        for key, steps in (("c", 1), ("t", 2), ("shift+a", 3), ("ctrl+Delete", 4)):
            editor.key(key)
            editor.wait(lambda state: state["steps"] == steps and state["idle"], f"{key}: {steps} steps")
        editor.save()
        self.assertNotIn("#", "".join(tomllib.loads(path.read_text())["repeat"]["rows"]))
        for key, words in (("F11", "No yoke is open"), ("s", "Only at the bench"), ("shift+y", "take their yarns")):
            editor.key(key)
            editor.wait(lambda state: words in state["message"] and state["idle"], f"{key}: '{words}'")
        for key, dialog in (("shift+F7", "steps-sheet"), ("ctrl+shift+l", "leaflet"), ("shift+F4", "fabric"),
                            ("ctrl+shift+w", "swatch-page"), ("shift+F11", "new-yoke")):
            self.open_dialog(editor, key, dialog)
            editor.key("Escape")
            editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the drawing")

    def test_the_same_letters_are_text_in_a_field(self):
        editor = self.start(self.write("a.repeat", blank()))
        self.fill(editor, "title", "c6sat", leave="Return")
        self.assertEqual(editor.state["steps"], 1)

    def test_a_new_design_by_keys(self):
        editor = self.start(self.write("a.repeat", blank()))
        self.open_dialog(editor, "ctrl+n", "new")
        self.assertEqual(editor.state["keys_at"], "new machine")
        editor.key("space")
        editor.wait(lambda state: "new machine plastic-by-hand" in state["places"] and state["idle"], "the list")
        editor.wait(lambda state: state["keys_at"] == "new machine bulky-card-24", "the keys at the present machine")
        self.tab_until(editor, "new machine plastic-by-hand", "Down")
        editor.key("Return")
        editor.wait(lambda state: "new machine plastic-by-hand" not in state["places"] and state["idle"], "the choice")
        self.assertEqual(editor.state["dialog"], "new")
        self.tab_until(editor, "new width")
        editor.type("17")
        self.tab_until(editor, "begin")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["path"] == "" and state["idle"], "the design")
        path = self.folder / "new.repeat"
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the dialog")
        editor.fill_name(path)
        editor.wait(lambda state: state["saves"] == 1, "the file saved")
        written = tomllib.loads(path.read_text())
        self.assertEqual((written["machine"]["profile"], written["repeat"]["width"]), ("plastic-by-hand", 17))

    def test_escape_closes_a_list_before_its_dialog(self):
        editor = self.start(self.write("a.repeat", blank()))
        self.open_dialog(editor, "ctrl+n", "new")
        editor.key("space")
        editor.wait(lambda state: "new machine plastic-by-hand" in state["places"] and state["idle"], "the list")
        editor.key("Escape")
        editor.wait(lambda state: "new machine plastic-by-hand" not in state["places"] and state["idle"], "no list")
        self.assertEqual(editor.state["dialog"], "new")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none", "no dialog")


class Machines(Panels):
    def test_a_blank_is_measured_and_a_swatch_answered_on_an_unsaved_design(self):
        editor = self.start_blank()
        editor.click("tab Machine")
        for place, text in (("reading rows", "252,35"), ("reading width", "142,4"), ("reading offset", "5")):
            self.fill(editor, place, text)
        editor.click("use readings")
        editor.wait(lambda state: state["dialog"] == "keep-machine" and state["idle"], "where to keep it")
        editor.fill_name(self.folder / "loft")
        editor.wait(lambda state: "loft.machine" in state["message"] and state["idle"], "the machine kept")
        machine = tomllib.loads((self.folder / "loft.machine").read_text())
        self.assertAlmostEqual(machine["card"]["geometry"]["row_pitch_mm"], 5.047)
        self.assertAlmostEqual(machine["card"]["geometry"]["sheet_width_mm"], 142.4)
        self.assertEqual(machine["card"]["reader_offset"], 5)

        # 'As drawn' is an answer too: the values are certain from now on.
        editor.click("answer swatch")
        editor.wait(lambda state: state["dialog"] == "swatch" and state["idle"], "the pictures")
        editor.key("1")
        editor.wait(lambda state: state["dialog"] == "none" and "right" in state["message"], "the answer")
        machine = tomllib.loads((self.folder / "loft.machine").read_text())
        for key in ("card.face", "card.turned", "card.hole"):
            self.assertIn("swatch", str(machine["sources"][key]))

        # Beside the machine the design calls it by its name alone.
        editor.settle()
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the dialog")
        editor.fill_name(self.folder / "cove.repeat")
        editor.wait(lambda state: state["saves"] == 1, "the file saved")
        self.assertEqual(tomllib.loads((self.folder / "cove.repeat").read_text())["machine"]["profile"],
                         "loft.machine")

    def test_a_swatch_that_came_out_mirrored_turns_the_face(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.click("tab Machine")
        editor.click("answer swatch")
        editor.wait(lambda state: state["dialog"] == "swatch" and state["idle"], "the pictures")
        editor.click("swatch 2")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the answer")
        self.assertEqual(tomllib.loads((self.folder / "a.machine").read_text())["card"]["face"], "knit")

    def test_without_its_machine_a_design_opens_with_another(self):
        path = self.write("a.repeat", design(["#..#"]).replace("bulky-card-24", "gone.machine"))
        before = path.read_bytes()
        editor = self.start(path)
        editor.wait(lambda state: state["dialog"] == "trouble" and state["idle"], "the explanation")
        editor.key("Return")
        editor.wait(lambda state: state["path"] == str(path) and state["idle"], "the design")
        self.assertFalse(editor.state["saved"])
        self.assertEqual(path.read_bytes(), before)
        editor.save()
        self.assertIn('profile = "bulky-card-24"', path.read_text())

    def test_a_bed_without_a_reader_gets_the_needle_chart(self):
        path = self.write("a.repeat", blank().replace("bulky-card-24", "plastic-by-hand"))
        editor = self.start(path)
        self.open_dialog(editor, "ctrl+e", "chart")
        editor.fill_name(self.folder / "needles.txt")
        editor.wait(lambda state: "needles.txt" in state["message"], "the chart")

    def test_a_design_saved_elsewhere_still_finds_its_machine(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.click("tab Machine")
        editor.click("answer swatch")
        editor.wait(lambda state: state["dialog"] == "swatch" and state["idle"], "the pictures")
        editor.key("6")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the answer")
        elsewhere = self.folder / "elsewhere"
        elsewhere.mkdir()
        editor.key("ctrl+shift+s")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the dialog")
        editor.fill_name(elsewhere / "b.repeat")
        editor.wait(lambda state: state["saves"] == 1, "the file saved")
        named = tomllib.loads((elsewhere / "b.repeat").read_text())["machine"]["profile"]
        self.assertEqual(pathlib.Path(named), self.folder / "a.machine")


class FileDialog(Panels):
    def test_a_typed_name_survives_another_folder_and_a_new_one(self):
        (self.folder / "bands").mkdir()
        editor = self.start(self.write("a.repeat", blank()))
        self.open_dialog(editor, "ctrl+shift+s", "save")
        editor.key("ctrl+a")
        editor.type("gulls")
        editor.settle()
        editor.click("entry bands")
        editor.click("new folder")
        editor.click("folder name")
        editor.type("birds")
        editor.settle()
        editor.key("Return")
        editor.wait(lambda state: "folder name" not in state["places"] and state["idle"], "the folder made")
        editor.click("choose")
        editor.wait(lambda state: state["saves"] == 1, "the file saved")
        self.assertTrue((self.folder / "bands" / "birds" / "gulls.repeat").exists())


class Edges(Panels):
    def test_a_panel_is_dragged_wider(self):
        editor = self.start(self.write("a.repeat", blank()), "--size", "1200x800")
        before = editor.state["canvas"][0]
        left, top, right, bottom = editor.state["places"]["settings edge"]
        x, y = round((left + right) / 2), round((top + bottom) / 2)
        frame = editor.state["frame"]
        editor._xdotool("mousemove", "--window", editor.window, x, y)
        editor.wait(lambda state: state["frame"] > frame and state["idle"], "the pointer at the edge")
        editor._xdotool("mousedown", 1)
        editor._xdotool("mousemove", "--window", editor.window, x + 40, y)
        editor._xdotool("mousemove", "--window", editor.window, x + 80, y)
        editor.wait(lambda state: state["canvas"][0] > before + 60, "the wider panel")
        editor._xdotool("mouseup", 1)
        editor.settle()
        self.assertTrue(editor.state["saved"])

    def test_large_text_leaves_the_drawing_its_share(self):
        editor = self.start(self.write("a.repeat", blank()), "--size", "1440x900", "--scale", "2")
        left, _, right, _ = editor.state["canvas"]
        self.assertGreater(right - left, 0.28 * 1440)

    def test_with_text_at_250_percent_in_a_small_window_piece_and_findings_take_turns(self):
        editor = self.start(self.write("a.repeat", design(["#......................."] * 6)), "--size", "1280x720",
                            "--scale", "2.5")
        left, top, right, bottom = editor.state["places"]["cloth"]
        self.assertGreater(right - left, 250)
        self.assertGreater(bottom - top, 250)
        self.assertGreater(editor.state["canvas"][2] - editor.state["canvas"][0], 250)
        editor.key("F4")  # in the drawing's place it has more room than beside it
        editor.wait(lambda state: state["places"]["cloth"][2] - state["places"]["cloth"][0] > right - left
                    and state["idle"], "the piece in the drawing's place")
        _, larger_top, _, larger_bottom = editor.state["places"]["cloth"]
        self.assertGreaterEqual(larger_bottom - larger_top, bottom - top)
        editor.click("right side")
        editor.wait(lambda state: "purl side" in state["places"] and state["idle"], "the list")
        self.assertNotIn("right findings", editor.state["places"])  # they stand beside it
        editor.key("Escape", "F4")
        editor.wait(lambda state: state["places"]["cloth"][2] - state["places"]["cloth"][0] == right - left
                    and state["idle"], "the piece at the side")
        editor.click("right side")
        editor.wait(lambda state: "right findings" in state["places"] and state["idle"], "the list")
        editor.click("right findings")
        editor.wait(lambda state: "cloth" not in state["places"] and state["idle"], "the findings")
        editor.key("k")  # the other side of the cloth, which is to be seen then
        editor.wait(lambda state: "cloth" in state["places"] and state["face"] == "purl" and state["idle"], "the piece")
        editor.key("n")
        editor.wait(lambda state: "cloth" not in state["places"] and state["finding"] >= 0 and state["idle"],
                    "the finding's words")
        self.tab_until(editor, "right side", "F6")
        editor.key("space")
        editor.wait(lambda state: "knit side" in state["places"] and state["idle"], "the list by keys")
        self.tab_until(editor, "knit side", "Up")
        editor.key("Return")
        editor.wait(lambda state: "cloth" in state["places"] and state["face"] == "knit" and state["idle"],
                    "the piece by keys")


if __name__ == "__main__":
    main()
