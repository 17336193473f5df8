"""The findings beside the drawing: shown while drawing, and each leads to its place."""
import re
import subprocess

from driver import WindowTest, blank, design, main, rows_in


def rows_marked(path):
    """How many floats are caught on single stitches of each row."""
    entries = re.findall(r'\[\[catch\]\]\nrow = (\d+)\ncolumns = "([^"]*)"', path.read_text())
    return {int(row): len(columns.split(",")) for row, columns in entries}


class Findings(WindowTest):
    def test_a_float_too_long_is_found_and_gone_again(self):
        editor = self.start(self.write("a.repeat", design(["#.....#....." * 2] * 2)))
        clean = editor.settle()["faults"]
        editor.stroke([(6, 1)])
        self.assertGreater(editor.state["faults"], clean)
        editor.key("ctrl+z")
        editor.wait(lambda state: state["faults"] == clean, "no fault")

    def test_a_click_on_a_finding_jumps_to_its_place(self):
        rows = ["#..." * 6] * 9
        rows[2] = "#......." * 3  # row 7, counted from the last line
        editor = self.start(self.write("a.repeat", design(rows)))
        self.assertGreater(editor.state["faults"], 0)
        editor.click("finding 0")
        editor.wait(lambda state: state["finding"] == 0, "the finding chosen")
        self.assertEqual(editor.state["cursor"][1], 6)
        self.assertEqual(editor.state["cursor"][0], 1)
        self.assertTrue(editor.state["saved"])
        editor.key("Right")
        editor.wait(lambda state: state["cursor"][0] == 2, "the keys back at the drawing")

    def test_a_float_on_the_needles_by_button_and_by_key(self):
        rows = ["#..." * 6] * 9
        rows[2] = "#......." + "#..." * 4
        editor = self.start(self.write("a.repeat", design(rows)))
        editor.click("finding 0")
        editor.wait(lambda state: state["finding"] == 0 and "on the needles" in state["places"], "the finding chosen")
        editor.click("on the needles")
        editor.wait(lambda state: state["finding"] == 1, "the same on the piece")
        self.assertEqual(editor.state["cursor"][1], 6)
        editor.key("o")
        editor.wait(lambda state: state["finding"] == 0, "back on the repeat")

    def test_a_mend_that_is_shown_stays_while_the_keys_go_round_the_window(self):
        editor = self.start(self.write("a.repeat", design(["#......." + "#..." * 4] * 4)))
        editor.key("n", "ctrl+m")
        editor.wait(lambda state: "take mend" in state["places"] and state["idle"], "the mend")
        editor.key("F6")
        editor.wait(lambda state: state["keys_at"] != "drawing" and state["idle"], "another part")
        self.tab_until(editor, "drawing", "F6")
        self.assertIn("take mend", editor.state["places"])
        editor.key("Escape")
        editor.wait(lambda state: "take mend" not in state["places"] and state["idle"], "no mend")

    def test_entries_have_lines_for_their_words_where_all_have_room_so(self):
        few = ["#......." + "#..." * 4] + ["#..." * 6] * 3
        many = ["#......." + "#..." * 4, "#..." * 6] * 20
        for name, rows, more_room in (("few", few, True), ("many", many, False)):
            with self.subTest(name):
                editor = self.start(self.write(f"{name}.repeat", design(rows)), "--size", "1440x900", "--scale", "1")
                editor.settle()
                _, top, _, bottom = editor.state["places"]["finding 0"]
                line = 17
                self.assertEqual(bottom - top > 3 * line, more_room, bottom - top)
                editor.stop()

    def test_in_a_small_window_a_finding_has_room_for_its_words_and_what_can_be_done_is_reached(self):
        path = self.write("a.repeat", design(["#......." + "#..." * 4] * 4))
        for size, scale in (("1280x720", 2.5), ("1280x720", 2), ("1024x640", 2.5), ("1024x640", 1.6), ("1280x720", 1)):
            with self.subTest(size=size, scale=scale):
                editor = self.start(path, "--size", size, "--scale", str(scale))
                width, height = map(int, size.split("x"))
                editor.key("n")
                editor.wait(lambda state: state["finding"] >= 0 and state["idle"], "the finding")
                _, top, _, bottom = editor.state["places"]["finding details"]
                self.assertGreater(bottom - top, 3 * 17 * scale)  # lines of text
                self.assertLessEqual(bottom, height)
                for name in ("mend", "catch float", "accept float"):
                    self.reached_by_keys(editor, name, width, height)
                editor.key("ctrl+m")
                editor.wait(lambda state: "take mend" in state["places"] and state["idle"], "the mend")
                for name in ("take mend", "other mend", "leave mend"):
                    self.reached_by_keys(editor, name, width, height)
                editor.key("Return")  # leaves it
                editor.wait(lambda state: "take mend" not in state["places"] and state["idle"], "no mend")
                editor.stop()

    def reached_by_keys(self, editor, name, width, height):
        if editor.state["keys_at"] == "drawing":
            self.tab_until(editor, "right side" if "right side" in editor.state["places"] else "finding 0", "F6")
        self.tab_until(editor, name)
        left, top, right, bottom = editor.state["places"][name]
        self.assertTrue(0 <= left and right <= width and 0 <= top and bottom <= height, (name, left, top, right, bottom))

    def test_a_float_is_caught_or_accepted_instead(self):
        rows = ["#..." * 6] * 9
        rows[2] = "#......." + "#..." * 4
        path = self.write("a.repeat", design(rows))
        editor = self.start(path)
        editor.click("finding 0")
        editor.wait(lambda state: state["finding"] == 0 and "catch float" in state["places"], "the finding chosen")
        editor.click("catch float")
        editor.wait(lambda state: state["faults"] == 0 and "1 catch" in state["message"], "the float caught")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["saved"], "saved")
        self.assertIn('[[catch]]\nrow = 7\ncolumns = "5"\n', path.read_text())
        editor.key("ctrl+z")
        editor.wait(lambda state: state["faults"] > 0, "undone")
        editor.click("finding 0")
        editor.wait(lambda state: "accept float" in state["places"], "the finding chosen again")
        editor.click("accept float")
        editor.wait(lambda state: state["faults"] == 0, "the float accepted")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["saved"], "saved")
        self.assertIn('[[accept]]\nrow = 7\ncolumns = "2-8"\n', path.read_text())
        self.assertNotIn("[[catch]]", path.read_text())
        editor.key("ctrl+z", "ctrl+s")
        editor.wait(lambda state: state["saved"] and state["faults"] > 0, "as it was")
        self.assertNotIn("[[accept]]", path.read_text())

    def test_the_floats_of_a_row_or_of_all_rows_are_caught_by_menu(self):
        rows = ["#..." * 6] * 9
        rows[2] = "#......." * 3  # row 7, counted from the last line: three floats
        rows[6] = "#......." + "#..." * 4  # row 3: one
        path = self.write("a.repeat", design(rows))
        editor = self.start(path)
        before = editor.state["faults"]
        editor.click_stitch(3, 6)  # leaves the cursor in row 7
        editor.key("ctrl+z")
        editor.wait(lambda state: state["saved"] and state["faults"] == before, "the drawing as it was")
        self.from_menu(editor, "catch-row")
        editor.wait(lambda state: "3 floats caught by hand with 3 catches" in state["message"], "the row's floats caught")
        self.assertGreater(editor.state["faults"], 0)
        editor.save()
        self.assertEqual(rows_marked(path), {7: 3})
        self.from_menu(editor, "catch-all")
        editor.wait(lambda state: "1 float caught by hand with 1 catch" in state["message"], "all floats caught")
        self.assertEqual(editor.state["faults"], 0)
        editor.save()
        self.assertEqual(rows_marked(path), {3: 1, 7: 3})

    def from_menu(self, editor, command):
        editor.click("menu Drawing")
        editor.wait(lambda state: f"menu {command}" in state["places"] and state["idle"], "the menu")
        editor.click(f"menu {command}")

    def test_next_and_previous_finding_by_key(self):
        rows = ["#..." * 6] * 40
        rows[1] = rows[38] = "#......." * 3
        editor = self.start(self.write("a.repeat", design(rows)))
        editor.key("n")
        editor.wait(lambda state: state["finding"] == 0, "the first finding")
        first = editor.state["cursor"]
        editor.key("n", "n")
        editor.wait(lambda state: state["finding"] == 2, "the third finding")
        editor.key("shift+n", "shift+n")
        editor.wait(lambda state: state["finding"] == 0, "the first finding again")
        self.assertEqual(editor.state["cursor"], first)

    def test_a_finding_far_away_comes_into_view(self):
        rows = ["#..." * 6] * 400
        rows[0] = "#......." * 3  # row 400
        editor = self.start(self.write("a.repeat", design(rows)))
        editor.key("n")
        editor.wait(lambda state: state["finding"] == 0 and state["idle"], "the finding")
        self.assertEqual(editor.state["cursor"][1], 399)
        left, top, right, bottom = editor.state["canvas"]
        x, y = editor.point(*editor.state["cursor"])
        self.assertTrue(left < x < right and top < y < bottom)


def furthest(one, other):
    """The largest distance of a channel; the same stitch elsewhere is off by a level or two."""
    return max(abs(here - there) for here, there in zip(one, other, strict=True))


class Marks(WindowTest):
    def middle_of(self, editor, column, row):
        """The pixels in the middle of a stitch, as they are on the screen."""
        editor.settle()
        across, down = editor.state["columns"][str(column)], editor.state["rows"][str(row)]
        asked = ["import", "-window", editor.window, "-crop", f"5x5+{across - 2:.0f}+{down - 2:.0f}", "-depth", "8", "rgb:-"]
        return subprocess.run(asked, env=editor.environment, capture_output=True, check=True).stdout

    def test_the_marks_of_long_floats_are_put_aside_and_come_back(self):
        editor = self.start(self.write("a.repeat", design(["#...#." + "#..." * 4 + ".#"] * 2 + ["#" + "." * 23])))
        faults = editor.settle()["faults"]
        self.assertGreater(faults, 0)
        marked, elsewhere = self.middle_of(editor, 8, 0), self.middle_of(editor, 1, 1)
        self.assertGreater(furthest(marked, elsewhere), 60)
        editor.key("g")
        editor.wait(lambda state: "aren't marked" in state["message"], "the marks put aside")
        self.assertLess(furthest(self.middle_of(editor, 8, 0), elsewhere), 10, "a stitch of main as any other")
        self.assertEqual(editor.state["faults"], faults)
        self.assertTrue(editor.state["saved"])
        editor.key("g")
        editor.wait(lambda state: "are marked" in state["message"], "the marks back")
        self.assertEqual(self.middle_of(editor, 8, 0), marked)

    def test_the_float_of_a_shape_is_marked_before_the_button_is_released(self):
        editor = self.start(self.write("a.repeat", design(["#." * 12] * 4)))
        self.assertEqual(editor.settle()["faults"], 0)
        editor.key("l")
        editor.settle()
        editor._xdotool("mousemove", "--window", editor.window, *editor.point(4, 1))
        editor._xdotool("mousedown", 1)
        editor.wait(lambda state: state["stroke"], "the line begun")
        editor._xdotool("mousemove", "--window", editor.window, *editor.point(14, 1))
        editor.wait(lambda state: state["cursor"] == [14, 1], "the line drawn to its end")
        held = self.middle_of(editor, 7, 1)
        self.assertEqual(editor.state["revision"], 0, "nothing is drawn yet")
        editor._xdotool("mouseup", 1)
        editor.wait(lambda state: not state["stroke"] and state["faults"], "the line drawn")
        drawn = self.middle_of(editor, 7, 1)
        self.assertLess(furthest(held, drawn), 30, "the bar of the mark; before, its halo dims the dot of a preview")
        editor.key("g")
        editor.wait(lambda state: "aren't marked" in state["message"], "the marks put aside")
        self.assertGreater(furthest(held, self.middle_of(editor, 7, 1)), 60, "a bar, not a stitch")


class Mending(WindowTest):
    ROWS = ["#..#" * 6, "#" + "." * 8 + "##" + "." * 8 + "#..##", "#..#" * 6]

    def check_saved(self, editor, path):
        editor.key("ctrl+s")
        editor.wait(lambda state: state["saved"], "the design saved")
        lines = path.read_text().splitlines()
        rows = [line.strip().strip('",') for line in lines if line.startswith('  "')]
        self.assertEqual(rows[0], self.ROWS[0])
        changed = sum(one != other for one, other in zip(rows[1], self.ROWS[1], strict=True))
        self.assertEqual(changed, 2, rows[1])
        self.assertNotIn("." * 6, rows[1] * 2)

    def test_by_mouse(self):
        path = self.write("a.repeat", design(self.ROWS))
        editor = self.start(path)
        self.assertGreater(editor.state["faults"], 0)
        editor.click("finding 0")
        editor.wait(lambda state: state["finding"] == 0, "the finding chosen")
        editor.click("mend")
        editor.wait(lambda state: "take mend" in state["places"], "the mend shown")
        self.assertTrue(editor.state["saved"], "nothing is changed before it is taken")
        editor.click("take mend")
        editor.wait(lambda state: state["faults"] == 0 and not state["saved"], "no fault left")
        self.check_saved(editor, path)

    def test_by_keys(self):
        path = self.write("a.repeat", design(self.ROWS))
        editor = self.start(path)
        editor.key("ctrl+m")
        editor.wait(lambda state: "2 stitches would be changed" in state["message"], "the mend shown")
        editor.key("Escape")
        editor.wait(lambda state: "stays as it is" in state["message"], "the mend given up")
        self.assertTrue(editor.state["saved"])
        editor.key("ctrl+m", "Up", "ctrl+shift+m")
        editor.wait(lambda state: "Row 2: choice " in state["message"], "another choice")
        editor.key("Return")
        editor.wait(lambda state: state["faults"] == 0 and not state["saved"], "no fault left")
        self.check_saved(editor, path)


    def fewest_changes(self, editor):
        """The stitches that the panel names beside the chosen float."""
        words = next(name for name in editor.state["places"] if name.startswith("The fewest changes in row 1: "))
        return [int(number) for number in re.findall(r"stitch (\d+) to", words)]

    def test_what_is_said_beside_the_float_is_the_mend_that_is_shown(self):
        # Two floats of six, each the other's mirror image: either of its two middle stitches does, the symmetry decides.
        path = self.write("a.repeat", design(["#..#..#..#.##.#..#..#..#", "#......#.#.##.#.#......#"]))
        editor = self.start(path)
        editor.click("finding 0")
        editor.wait(lambda state: state["finding"] == 0 and state["idle"], "the finding chosen")
        self.assertNotEqual(sum(self.fewest_changes(editor)), 25)
        editor.key("ctrl+m")
        editor.wait(lambda state: "is kept" in state["message"] and state["idle"], "the mend shown")
        self.assertEqual(sum(self.fewest_changes(editor)), 25, "columns 1 to 24: mirror images add up to 25")

    def test_a_mend_that_keeps_the_symmetry_comes_before_one_of_fewer_stitches(self):
        path = self.write("a.repeat", design(["#.##.##.##.#", "#.#......#.#"]))
        editor = self.start(path)
        editor.click("finding 0")
        editor.wait(lambda state: state["finding"] == 0 and state["idle"], "the finding chosen")
        editor.key("ctrl+m")
        editor.wait(lambda state: state["message"].startswith("2 stitches would be changed, the fewest that keep the symm")
                    and state["idle"], "the mend that keeps it")
        self.assertTrue(any(name.startswith("Row 1, so that the symmetry stays whole: ") for name in editor.state["places"]))
        editor.key("shift+m")
        editor.wait(lambda state: state["message"].startswith("1 stitch would be changed, the fewest that do, though")
                    and state["idle"], "the fewest")
        self.assertEqual(len(self.fewest_changes(editor)), 1)
        editor.key("shift+m")
        editor.wait(lambda state: state["message"].startswith("2 stitches would") and state["idle"], "the first again")
        editor.key("Return")
        editor.wait(lambda state: state["faults"] == 0 and state["steps"] == 1 and state["idle"], "mended")
        editor.save()
        rows = rows_in(path)
        self.assertEqual(rows, [row[::-1] for row in rows])


class Views(WindowTest):
    def test_no_frame_is_drawn_while_nothing_happens(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("Right")
        editor.wait(lambda state: state["cursor"] == [1, 0] and state["idle"], "rest")
        before = processor_time(editor.process.pid)
        frame = editor.state["frame"]
        editor.wait_nothing(1.0)
        self.assertEqual(editor.state["frame"], frame)
        self.assertLessEqual(processor_time(editor.process.pid) - before, 1)

    def test_the_other_side_of_the_cloth(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key("k")
        editor.wait(lambda state: state["face"] == "purl", "the purl side")
        self.assertTrue(editor.state["saved"])


def processor_time(process):
    """Clock ticks that the process has used."""
    with open(f"/proc/{process}/stat", encoding="utf-8") as file:
        fields = file.read().rsplit(")", 1)[1].split()
    return int(fields[11]) + int(fields[12])


if __name__ == "__main__":
    main()
