"""The tools in the real window: shapes by keys and by mouse, copies, symmetry, lettering, motifs; files compared."""
import subprocess

from driver import WindowTest, blank, design, main, rows_in


def cells_of(path):
    return {(column, row) for row, text in enumerate(rows_in(path)) for column, sign in enumerate(text) if sign == "#"}


class Tools(WindowTest):
    def test_a_rectangle_by_keys_alone(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.key("r", "space", "Right", "Right", "Right", "Up", "Up", "space")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "one step")
        editor.save()
        outline = {(column, row) for column in range(4) for row in range(3)} - {(1, 1), (2, 1)}
        self.assertEqual(cells_of(path), outline)

    def test_a_line_across_the_join_and_escape_from_another(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.key("l")
        editor.stroke([(22, 4), (25, 4)])
        self.assertEqual(editor.state["steps"], 1)
        editor.key("space", "Right", "Right", "Escape")
        editor.settle()
        editor.save()
        self.assertEqual(cells_of(path), {(22, 4), (23, 4), (0, 4), (1, 4)})

    def test_copied_through_the_clipboard_and_set_down_elsewhere(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.stroke([(1, 1), (3, 1)])
        editor.key("m")
        editor.stroke([(1, 1), (3, 2)])
        editor.key("ctrl+c", "Escape", "p", "Home", "Page_Up", "ctrl+v")
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the copy over the drawing")
        editor.key("Right", "Return")
        editor.wait(lambda state: state["steps"] == 2 and state["idle"], "the copy set down")
        editor.save()
        row = 11 if (1, 11) in cells_of(path) else None
        self.assertEqual(row, 11)
        self.assertEqual(cells_of(path), {(1, 1), (2, 1), (3, 1), (1, 11), (2, 11), (3, 11)})

    def test_a_stroke_under_a_symmetry_chosen_by_its_picture(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.click("tab Tools")
        editor.wait(lambda state: "frieze p2mm" in state["places"] and state["idle"], "the pictures")
        editor.click("frieze p2mm")
        editor.settle()
        editor.stroke([(2, 1), (4, 1)])
        editor.save()
        wanted = {(column, row) for column in (2, 3, 4, 19, 20, 21) for row in (1, 10)}
        self.assertEqual(cells_of(path), wanted)

    def test_a_symmetry_by_key_and_the_drawing_made_so_or_it_is_said_what_is_missing(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.key("shift+s")
        editor.wait(lambda state: "Choose a symmetry first" in state["message"], "why not")
        editor.stroke([(2, 1), (4, 1)])
        editor.stroke([(2, 2), (2, 3)])
        editor.key("shift+h", "shift+s")
        editor.wait(lambda state: state["steps"] == 3 and state["idle"], "the drawing made so")
        editor.key("shift+v")
        editor.stroke([(10, 0)])
        editor.key("shift+o")
        editor.stroke([(12, 0)])
        editor.save()
        cells = cells_of(path)
        # What was left stands upright over rows 2 to 4, and upside down it is the same about the one between.
        self.assertEqual(cells & {(column, row) for column in range(24) for row in (0, 4, 11)},
                         {(10, 0), (10, 4), (12, 0)})

    def test_lettering_and_motifs_are_gone_to_by_a_key_and_typed_at_once(self):
        path = self.write("a.repeat", blank(height=24))
        editor = self.start(path)
        editor.key("shift+i")
        editor.wait(lambda state: "Type the words first" in state["message"], "why not")
        editor.key("F2")  # the panel is closed: the command opens it
        editor.wait(lambda state: "tab Tools" not in state["places"] and state["idle"], "no panel")
        editor.key("i")
        editor.wait(lambda state: state["keys_at"] == "lettering" and state["idle"], "the field")
        editor.type("Harbour")
        editor.wait(lambda state: state["typed"] == "Harbour" and state["idle"], "the words, and no letter of the key")
        editor.key("Return")
        self.tab_until(editor, "drawing", "F6")
        editor.key("shift+w")
        editor.wait(lambda state: "The repeat is 48 stitches wide" in state["message"], "room for the words")
        editor.key("shift+w")
        editor.wait(lambda state: "has room in the repeat as it is" in state["message"], "why not once more")
        editor.key("shift+i")
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the words over the drawing")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 2 and state["idle"], "set down")
        editor.key("d")
        editor.wait(lambda state: state["keys_at"] == "motif search" and state["idle"], "the search")
        editor.type("puffin")
        editor.wait(lambda state: state["typed"] == "puffin" and state["idle"], "the word")

    def test_one_more_yarn_by_key(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.key("shift+u")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "the yarn")
        self.assertIn("add yarn", editor.state["places"])  # among the yarns, where it is named
        editor.save()
        self.assertEqual(path.read_text().count("[[yarn]]"), blank().count("[[yarn]]") + 1)

    def test_a_word_is_lettered_and_a_motif_set_down(self):
        path = self.write("a.repeat", blank(height=24))
        editor = self.start(path)
        editor.click("tab Tools")
        editor.wait(lambda state: "lettering" in state["places"] and state["idle"], "the tools")
        editor.click("lettering")
        editor.wait(lambda state: state["keys_at"] == "lettering" and state["idle"], "the field with the keys")
        editor.type("II")
        editor.wait(lambda state: "set lettering down" in state["places"] and state["idle"], "the letters' picture")
        editor.click("set lettering down")
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the letters over the drawing")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "the letters set down")
        editor.save()
        letters = cells_of(path)
        self.assertEqual(max(row for _, row in letters), 6)
        self.assertEqual(len({column for column, _ in letters}) % 2, 0)
        editor.click("lettering")
        editor.wait(lambda state: state["keys_at"] == "lettering" and state["idle"], "the field with the keys")
        editor.key("ctrl+a", "BackSpace")
        editor.wait(lambda state: "set lettering down" not in state["places"] and state["idle"], "no letters")
        motif = next(name for name in editor.state["places"] if name.startswith("motif ") and name != "motif search")
        editor.click(motif)
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the motif over the drawing")
        editor.key("Escape")
        editor.settle()
        self.assertEqual(editor.state["steps"], 1)
        editor.click(motif)
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the motif over the drawing")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 2 and state["idle"], "the motif set down")
        editor.save()
        self.assertNotEqual(cells_of(path), letters)

    def test_a_motif_that_is_searched_comes_into_sight_and_return_takes_it(self):
        path = self.write("a.repeat", blank(height=24))
        editor = self.start(path)
        editor.click("tab Tools")
        editor.click("lettering")
        editor.type("Mole")
        editor.wait(lambda state: "set lettering down" in state["places"] and state["idle"], "the letters' picture")
        editor.click("tab Tools")
        editor.key("d")
        editor.wait(lambda state: state["keys_at"] == "motif search" and state["idle"], "the search")
        editor.type("qqq")
        editor.wait(lambda state: state["typed"] == "qqq" and "motif anchor" not in state["places"] and state["idle"], "none found")
        editor.key("Return")
        editor.settle()
        editor.key("ctrl+a")
        editor.type("anchor")  # words still, and no commands
        editor.wait(lambda state: state["typed"] == "anchor" and "motif anchor" in state["places"]
                    and not any(name.startswith("motif tern") for name in state["places"]) and state["idle"], "one found")
        _, top, _, bottom = editor.state["places"]["motif anchor"]
        self.assertGreater(top, editor.state["places"]["motif search"][1])
        self.assertLess(bottom, 950 - 28, "above the state line")
        editor.key("Tab")
        editor.wait(lambda state: state["keys_at"] == "motif anchor" and state["idle"], "the motif after the search")
        editor.key("shift+Tab")
        editor.wait(lambda state: state["keys_at"] == "motif search" and state["idle"], "the search again")
        editor.key("Return")
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the motif over the drawing")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "the motif set down")

    def test_a_motif_lets_the_ground_through_where_that_is_wished_and_it_is_kept(self):
        path = self.write("a.repeat", design(["#" * 24] * 24))
        editor = self.start(path)
        editor.key("4", "d")
        editor.wait(lambda state: state["keys_at"] == "motif search" and state["idle"], "the search")
        editor.type("anchor")
        editor.wait(lambda state: state["typed"] == "anchor" and state["idle"], "the word")
        editor.key("Return")
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the motif over the drawing")
        editor.key("Return", "space")
        editor.wait(lambda state: not state["saved"] and "sets it down" not in state["message"] and state["idle"], "done")
        editor.save()
        self.assertLessEqual(sum(row.count(".") for row in rows_in(path)), 1, "all but the stitch at the cursor")
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)
        self.assertTrue(self.settings()["motifs_see_through"])

    def test_the_large_piece_is_moved_by_keys_and_the_cursor_stays(self):
        path = self.write("a.repeat", blank(height=24))
        editor = self.start(path)
        editor.key("F4")
        editor.wait(lambda state: "stitches" not in state["places"] and state["places"]["cloth"][2] > 700
                    and state["idle"], "the large piece")
        def picture():
            editor.settle()
            left, top, right, bottom = (round(edge) for edge in editor.state["places"]["cloth"])
            return subprocess.run(["import", "-window", editor.window, "-crop",
                                   f"{right - left}x{bottom - top}+{left}+{top}", "rgb:-"],
                                  env=editor.environment, stdout=subprocess.PIPE, check=True).stdout
        seen = [picture()]
        for key in ("plus", "Right", "Up"):
            frame = editor.state["frame"]
            editor.key(key)
            editor.wait(lambda state, frame=frame: state["frame"] > frame and state["idle"], key)
            seen.append(picture())
        self.assertEqual(len(set(seen)), len(seen), "each key shows something else")
        self.assertEqual(editor.state["cursor"], [0, 0])
        editor.key("F4", "Right")
        editor.wait(lambda state: state["cursor"] == [1, 0] and state["idle"], "the drawing has the keys again")

    def test_a_repeat_is_made_as_wide_as_a_word(self):
        path = self.write("a.repeat", design(["#..."] * 4 + ["...."] * 8))
        editor = self.start(path)
        editor.click("tab Tools")
        editor.wait(lambda state: "lettering" in state["places"] and state["idle"], "the tools")
        editor.click("lettering")
        editor.wait(lambda state: state["keys_at"] == "lettering" and state["idle"], "the field with the keys")
        editor.type("LOU")
        editor.wait(lambda state: "widen repeat" in state["places"] and state["idle"], "the offer")
        editor.click("widen repeat")
        editor.wait(lambda state: state["steps"] == 1 and "times side by side" in state["message"] and state["idle"],
                    "the wider repeat")
        self.assertNotIn("widen repeat", editor.state["places"])
        editor.save()
        self.assertEqual({len(row) for row in rows_in(path)}, {24})
        self.assertEqual({row for row in rows_in(path)}, {"#..." * 6, "." * 24})
        editor.key("ctrl+z")
        editor.wait(lambda state: state["steps"] == 0 and "widen repeat" in state["places"] and state["idle"], "undone")
        editor.save()
        self.assertEqual({row for row in rows_in(path)}, {"#...", "...."})

    def test_a_command_is_found_by_typing_and_any_step_is_gone_back_to(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.stroke([(1, 1)])
        editor.stroke([(2, 2)])
        editor.key("ctrl+k")
        editor.wait(lambda state: state["dialog"] == "commands" and state["idle"], "the commands")
        editor.type("mirror left")
        editor.wait(lambda state: "command mirror-sideways" in state["places"]
                    and "command tool-pen" not in state["places"] and state["idle"], "the one command")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 3 and state["dialog"] == "none" and state["idle"], "mirrored")
        editor.key("ctrl+h")
        editor.wait(lambda state: "step 1" in state["places"] and state["idle"], "the steps")
        editor.click("step 1")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "one step")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the drawing")
        # By keys from where the work stands: to the latest and no further, to the beginning, and up again to the first.
        editor.key("ctrl+h")
        editor.wait(lambda state: state["keys_at"] == "close" and state["idle"], "the list with the keys")
        for key, presses, done in (("Up", 3, 3), ("Down", 4, 0), ("Home", 1, 3), ("End", 1, 0), ("Prior", 1, 3), ("Next", 1, 0),
                                   ("Up", 1, 1)):
            editor.key(*[key] * presses)
            editor.wait(lambda state: state["steps"] == done and state["idle"], f"step {done}")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the drawing")
        editor.key("ctrl+h")
        editor.wait(lambda state: state["dialog"] == "steps" and state["idle"], "the steps")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the drawing")
        editor.save()
        self.assertEqual(cells_of(path), {(1, 1)})


if __name__ == "__main__":
    main()
