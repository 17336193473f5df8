"""Drawing with mouse and keys in the real window; what is saved is compared with what was drawn."""
import subprocess

from PIL import Image

from driver import WindowTest, blank, design, main, rows_in


def cells_of(path):
    return {(column, row) for row, text in enumerate(rows_in(path)) for column, sign in enumerate(text) if sign == "#"}


class Drawing(WindowTest):
    def test_a_click_draws_one_stitch_and_a_second_click_takes_it_back(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.stroke([(5, 3)])
        editor.save()
        self.assertEqual(cells_of(path), {(5, 3)})
        editor.stroke([(5, 3)])
        editor.save()
        self.assertEqual(cells_of(path), set())

    def test_a_fast_drag_leaves_no_gap(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.stroke([(2, 1), (20, 1)])
        editor.stroke([(1, 10), (7, 4), (13, 10)])
        editor.save()
        wave = {(1 + step, 10 - step) for step in range(7)} | {(7 + step, 4 + step) for step in range(7)}
        self.assertEqual(cells_of(path), {(column, 1) for column in range(2, 21)} | wave)

    def test_a_drag_is_one_step_of_undo(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.stroke([(2, 1), (12, 6), (20, 1)])
        self.assertEqual(editor.state["steps"], 1)
        editor.key("ctrl+z")
        editor.wait(lambda state: state["steps"] == 0, "undo")
        self.assertTrue(editor.state["saved"])
        editor.key("ctrl+y")
        editor.wait(lambda state: state["steps"] == 1, "redo")
        editor.save()
        self.assertEqual(len(cells_of(path)), 19)

    def test_a_drag_over_the_edge_goes_on_at_the_other_side(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.stroke([(22, 2), (25, 2)])
        editor.stroke([(4, 13), (4, 10)])
        editor.save()
        self.assertEqual(cells_of(path), {(22, 2), (23, 2), (0, 2), (1, 2), (4, 1), (4, 0), (4, 11), (4, 10)})

    def test_a_stroke_ends_at_the_edge_of_what_is_drawn_however_far_the_hand_goes_on(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.settle()
        left = min(int(column) for column in editor.state["columns"])
        self.assertGreater(editor.state["canvas"][0], 100, "the panel beside it")
        x, y = editor.point(2, 3)
        editor._xdotool("mousemove", "--window", editor.window, x, y, "mousedown", 1,
                        "mousemove", "--window", editor.window, 100, y, "mouseup", 1)
        editor.wait_next(lambda state: not state["stroke"] and state["steps"] == 1 and state["idle"], "the stroke")
        editor.save()
        self.assertEqual(cells_of(path), {(column % 24, 3) for column in range(left, 3)})
        self.assertLess(len(cells_of(path)), 23)

    def test_what_a_shape_would_draw_is_as_dim_in_the_neighbours_as_they_are(self):
        editor = self.start(self.write("a.repeat", design([("#" + "." * 23)] * 12)))
        editor.key("r", "Right", "Right", "Right", "Right", "Up", "Up", "space", "Right", "Right", "Up")
        editor.wait(lambda state: state["stroke"] and state["cursor"] == [6, 3] and state["idle"], "the shape shown")
        out = self.folder / "shown.png"
        subprocess.run(["import", "-window", editor.window, out], env=editor.environment, check=True)
        picture = Image.open(out).convert("RGB")

        def colour(column, row):
            """Beside the dot that tells what is shown from what is drawn."""
            x, y = editor.point(column, row)
            return picture.getpixel((round(x - editor.state["cell"][0] / 3), round(y + editor.state["cell"][1] / 4)))

        def apart(one, other):
            return max(abs(a - b) for a, b in zip(one, other))

        above = [row for row in range(12, 24) if str(row) in editor.state["rows"] and row % 12 in (2, 3)]
        self.assertTrue(above, "the neighbour above")
        for row in above:
            self.assertLess(apart(colour(5, row), colour(0, row)), 16, "dimmed as what is drawn there")
            self.assertGreater(apart(colour(5, row), colour(5, row - 12)), 60)
        self.assertLess(apart(colour(5, 2), colour(0, 2)), 16)

    def test_the_right_button_erases(self):
        path = self.write("a.repeat", design(["########" * 3] * 4))
        editor = self.start(path)
        editor.stroke([(3, 1), (6, 1)], button=3)
        editor.save()
        self.assertEqual(rows_in(path)[1], "###....#" + "########" * 2)

    def test_twenty_taps_of_a_key_are_twenty_moves(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key(*["Right"] * 20)
        editor.wait(lambda state: state["cursor"] == [20, 0], "the cursor in column 21")
        editor.key(*["Up"] * 7, *["Left"] * 9)
        editor.wait(lambda state: state["cursor"] == [11, 7], "the cursor in column 12 of row 8")
        self.assertTrue(editor.settle()["saved"])
        self.assertEqual(editor.state["cursor"], [11, 7])

    def test_page_keys_stop_at_the_first_and_the_last_row(self):
        editor = self.start(self.write("a.repeat", blank(height=12)))
        editor.key("Prior")
        editor.wait(lambda state: state["cursor"] == [0, 10], "ten rows up")
        editor.key("Prior")
        editor.wait(lambda state: state["cursor"] == [0, 11], "the last row")
        editor.key("Next", "Next")
        editor.wait(lambda state: state["cursor"] == [0, 0], "the first row")

    def test_the_view_follows_the_cursor_when_large(self):
        editor = self.start(self.write("a.repeat", blank()))
        editor.key(*["plus"] * 8)
        editor.key("End", *["Up"] * 9)
        editor.wait(lambda state: state["cursor"] == [23, 9], "the cursor in the last column")
        state = editor.settle()
        self.assertIn("23", state["columns"])
        left, top, right, bottom = state["canvas"]
        self.assertTrue(left < state["columns"]["23"] < right)
        self.assertTrue(top < state["rows"]["9"] < bottom)

    def test_drawing_with_the_keys_alone(self):
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        editor.key("Right", "Up", "space", "shift+Right", "shift+Right", "shift+Up", "Left")
        editor.wait(lambda state: state["cursor"] == [2, 2] and state["idle"], "the stroke")  # one step, or more on a slow day
        steps = editor.state["steps"]
        editor.key("x")
        editor.wait(lambda state: state["steps"] == steps + 1, "the stitch turned")
        editor.save()
        self.assertEqual(cells_of(path), {(1, 1), (2, 1), (3, 1), (3, 2), (2, 2)})

    def test_shift_mirror_and_rows(self):
        path = self.write("a.repeat", design(["....", "##..", "#..."]))
        editor = self.start(path)
        editor.key("ctrl+Right", "h")
        editor.wait(lambda state: state["steps"] == 2, "shift and mirror")
        editor.key("Insert", "Delete", "Insert", "ctrl+Up")
        editor.wait(lambda state: state["steps"] == 6, "four steps more")
        editor.save()
        # From row 1 upwards: #... ##.. .... shifted to the right and mirrored is ..#. .##. ....; the row inserted above
        # row 1 is deleted again, which leaves the cursor in row 2, and another is inserted above that; all goes up by one.
        self.assertEqual(rows_in(path), ["....", "..#.", ".##.", "...."])

    def test_a_band_of_one_yarn_refuses_and_says_so(self):
        text = blank(height=4).replace('rows = 4\nmain = "A"\ncontrast = "B"',
                                       'rows = 2\nmain = "A"\ncontrast = "B"\n\n[[band]]\nrows = 2\nmain = "B"')
        path = self.write("a.repeat", text)
        editor = self.start(path)
        editor.stroke([(4, 3)])
        self.assertIn("one yarn", editor.state["message"])
        self.assertEqual(editor.state["steps"], 0)
        editor.stroke([(4, 0), (4, 3)])
        editor.save()
        self.assertEqual(cells_of(path), {(4, 0), (4, 1)})

    def test_zoom_keeps_the_stitch_under_the_pointer(self):
        editor = self.start(self.write("a.repeat", blank()))
        before = editor.point(6, 5)
        size = editor.state["cell"]
        editor.wheel(6, 5, 3)
        self.assertGreater(editor.state["cell"][0], size[0])
        after = editor.point(6, 5)
        self.assertLessEqual(abs(after[0] - before[0]) + abs(after[1] - before[1]), 6)
        self.assertTrue(editor.state["saved"])
        editor.stroke([(6, 5)])
        self.assertEqual(editor.state["cursor"], [6, 5])


if __name__ == "__main__":
    main()
