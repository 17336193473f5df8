"""Rows and columns in the real window: moved by the strips and by keys, another size, other yarns at the place, and the
drawing laid out; files compared."""
from driver import WindowTest, design, main, rows_in

STAIRS = ["####....", "###.....", "##......", "#......."]  # row 4 to row 1

TWO_BANDS = design(STAIRS).replace("""[[band]]
rows = 4
main = "A"
contrast = "B"
""", """[[band]]
rows = 2
main = "A"
contrast = "B"
[[band]]
rows = 2
main = "A"
contrast = "C"
""").replace("[repeat]", """[[yarn]]
key = "C"
name = "Brick"
colour = "#9c3b2a"

[repeat]""")


def bands_in(path):
    import tomllib

    return [(band["rows"], band["main"], band.get("contrast")) for band in tomllib.loads(path.read_text())["band"]]


class Rows(WindowTest):
    def drag(self, editor, places):
        """Presses at the first place, goes over the others, lets go."""
        editor.settle()
        steps = editor.state["steps"]
        self.hold(editor, places)
        editor._xdotool("mouseup", 1)
        editor.wait(lambda state: state["steps"] > steps and state["idle"], "the step")

    def hold(self, editor, places):
        """Presses at the first place and goes over the others."""
        (x, y), *others = places
        frame = editor.state["frame"]
        editor._xdotool("mousemove", "--window", editor.window, round(x), round(y))
        editor.wait(lambda state: state["frame"] > frame and state["idle"], "the pointer's arrival")
        frame = editor.state["frame"]
        editor._xdotool("mousedown", 1)
        editor.wait(lambda state: state["frame"] > frame and state["idle"], "the button held")
        for x, y in others:
            self.hold_on(editor, x, y)

    def hold_on(self, editor, x, y):
        frame = editor.state["frame"]
        editor._xdotool("mousemove", "--window", editor.window, round(x), round(y))
        editor.wait(lambda state: state["frame"] > frame and state["idle"], "the pointer there")

    def test_a_row_and_a_column_are_dragged_by_their_numbers(self):
        path = self.write("a.repeat", design(STAIRS))
        editor = self.start(path)
        left, top, right, _ = editor.state["places"]["row strip"]
        row = {number: editor.state["rows"][str(number)] for number in range(4)}
        middle = (left + right) / 2
        self.drag(editor, [(middle, row[0]), (middle, row[1]), (middle, row[3])])
        self.assertEqual(editor.state["message"], "Row 1 is row 4 now")
        left, top, right, bottom = editor.state["places"]["column strip"]
        column = {number: editor.state["columns"][str(number)] for number in range(8)}
        self.drag(editor, [(column[0], (top + bottom) / 2), (column[7], (top + bottom) / 2)])
        editor.save()
        self.assertEqual(rows_in(path), ["#......#", "##.....#", "###....#", ".......#"])
        editor.key("ctrl+z", "ctrl+z")
        editor.wait(lambda state: state["steps"] == 0 and state["idle"], "undone")
        editor.save()
        self.assertEqual(rows_in(path), STAIRS[::-1])

    def test_the_floats_of_a_dragged_column_are_marked_before_it_is_let_go(self):
        rows = ["#...#...", "#...#...", "#.#.#.#."]
        path = self.write("a.repeat", design(rows) + "\n[rules]\nlongest_float = 3\n")
        editor = self.start(path)
        left, top, right, bottom = editor.state["places"]["column strip"]
        column = {number: editor.state["columns"][str(number)] for number in range(8)}
        middle = (top + bottom) / 2
        self.assertEqual(editor.state["floats_shown"], -1)
        self.hold(editor, [(column[4], middle), (column[3], middle)])
        self.assertEqual(editor.state["floats_shown"], 2)
        self.assertEqual((editor.state["faults"], editor.state["steps"]), (0, 0))  # nothing is done yet
        self.hold_on(editor, column[4], middle)
        self.assertEqual(editor.state["floats_shown"], -1)
        self.hold_on(editor, column[3], middle)
        editor._xdotool("key", "Escape")  # without --clearmodifiers, which lets go of buttons too
        editor.wait(lambda state: state["message"] == "Nothing was moved" and state["idle"], "given up")
        self.assertEqual(editor.state["floats_shown"], -1)
        editor._xdotool("mouseup", 1)
        self.drag(editor, [(column[4], middle), (column[3], middle)])
        self.assertGreater(editor.state["faults"], 0)
        editor.save()
        self.assertEqual(rows_in(path), ["#.##..#.", "#..#....", "#..#...."])

    def test_rows_and_size_by_keys_alone(self):
        path = self.write("a.repeat", design(STAIRS))
        editor = self.start(path)
        editor.key("ctrl+shift+Up", "ctrl+shift+Right")
        editor.wait(lambda state: state["steps"] == 2 and state["idle"], "two steps")
        editor.key("ctrl+r")
        editor.wait(lambda state: state["dialog"] == "size" and state["idle"], "the size")
        self.tab_until(editor, "size width")
        editor.key("ctrl+a")
        editor.type("12")
        self.tab_until(editor, "size rows")
        editor.key("ctrl+a")
        editor.type("6")
        self.tab_until(editor, "anchor middle middle")
        editor.key("Return")
        editor.settle()
        self.tab_until(editor, "set size")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 3 and state["dialog"] == "none" and state["idle"], "the new size")
        editor.save()
        self.assertEqual(rows_in(path), ["............", "..##........", "...#........", "..###.......", "..####......",
                                         "............"])

    def test_marked_rows_and_columns_are_doubled_and_deleted_together(self):
        path = self.write("a.repeat", design(STAIRS))
        editor = self.start(path)
        editor.key("Up", "m")
        editor.stroke([(0, 1), (1, 2)])
        editor.key("ctrl+d")
        editor.settle()
        editor.save()
        self.assertEqual(rows_in(path), ["#.......", "##......", "###.....", "##......", "###.....", "####...."])
        editor.key("Delete")
        editor.wait(lambda state: state["message"] == "Rows 2 to 3 are deleted" and state["idle"], "two rows less")
        editor.save()
        self.assertEqual(rows_in(path), STAIRS[::-1])
        editor.key("ctrl+z", "shift+Delete")  # undone, the area is marked again
        editor.wait(lambda state: state["message"] == "Columns 1 to 2 are deleted" and state["idle"], "two less")
        editor.save()
        self.assertEqual(rows_in(path), ["......", "......", "#.....", "......", "#.....", "##...."])

    def test_marked_rows_round_the_edge_are_deleted_in_one_step(self):
        path = self.write("a.repeat", design(STAIRS))
        editor = self.start(path)
        editor.key("m")
        editor.stroke([(0, 0), (1, -1)])
        editor.key("ctrl+d")
        editor.wait(lambda state: "go round the edge" in state["message"] and state["idle"], "the refusal")
        editor.key("Delete")
        editor.wait(lambda state: state["message"] == "Rows 4 to 1 are deleted" and state["idle"], "two rows less")
        self.assertEqual(editor.state["steps"], 1)
        editor.save()
        self.assertEqual(rows_in(path), ["##......", "###....."])

    def test_yarns_are_changed_at_the_place(self):
        path = self.write("a.repeat", TWO_BANDS)
        editor = self.start(path)
        left, _, right, _ = editor.state["places"]["yarn strip"]
        x, y = (left + right) / 2, editor.state["rows"]["0"]
        frame = editor.state["frame"]
        editor._xdotool("mousemove", "--window", editor.window, round(x), round(y))
        editor.wait(lambda state: state["frame"] > frame and state["idle"], "the pointer's arrival")
        editor._xdotool("click", 1)
        editor.wait(lambda state: state["dialog"] == "yarns-here" and state["idle"], "the yarns")
        editor.click("contrast C")
        editor.wait(lambda state: state["steps"] == 1 and state["dialog"] == "none" and state["idle"], "the step")
        editor.save()
        self.assertEqual(bands_in(path), [(2, "A", "C"), (2, "A", "C")])

    def test_the_yarns_of_one_row_by_keys_alone(self):
        path = self.write("a.repeat", TWO_BANDS)
        editor = self.start(path)
        editor.key("Up", "u")
        editor.wait(lambda state: state["dialog"] == "yarns-here" and state["idle"], "the yarns")
        self.tab_until(editor, "yarns of row")
        editor.key("Return")
        editor.settle()
        self.tab_until(editor, "main C")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 1 and state["dialog"] == "none" and state["idle"], "the step")
        editor.save()
        self.assertEqual(bands_in(path), [(1, "A", "B"), (1, "C", "B"), (2, "A", "C")])

    def test_the_drawing_is_laid_out_by_keys_and_refused_where_the_card_is_too_narrow(self):
        path = self.write("a.repeat", design(["##..", "#..."]))
        editor = self.start(path)
        editor.key("ctrl+b")
        editor.wait(lambda state: state["dialog"] == "layout" and state["idle"], "the layouts")
        self.tab_until(editor, "layout half drop")
        editor.key("Return")
        editor.settle()
        self.tab_until(editor, "take layout")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 1 and state["dialog"] == "none" and state["idle"], "the half drop")
        editor.save()
        self.assertEqual(rows_in(path), ["#...##..", "##..#..."])
        editor.key("ctrl+b")
        editor.wait(lambda state: state["dialog"] == "layout" and state["idle"], "the layouts")
        editor.click("layout mirrored beside")
        editor.click("take layout")  # 16 stitches don't divide the card's 24
        self.assertEqual((editor.state["dialog"], editor.state["steps"]), ("layout", 1))
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the drawing")


if __name__ == "__main__":
    main()
