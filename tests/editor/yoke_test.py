"""Yokes in the real window: begun from measurements, a width dragged, undone, saved, opened again, a tier changed."""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tomllib

from driver import WindowTest, blank, main, rows_in
from desktop_messages import drop_file

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "tools"))
import strip_finder

PUNCHWRIGHT = os.environ["PUNCHWRIGHT"]
PATTERNS = pathlib.Path(__file__).resolve().parents[2] / "patterns"


def yoke_of(state):
    return state["yoke"] or {}


class Yokes(WindowTest):
    def desk(self):
        """A folder with the demos' yokes and tiers; nothing of it is shared."""
        shutil.copytree(PATTERNS, self.folder / "patterns")
        return self.folder / "patterns"

    def drop(self, editor, path):
        drop_file(self.server.environment["DISPLAY"], int(editor.window), path)

    def drag(self, editor, place, by_x, by_y):
        editor.wait(lambda state: place in state["places"] and state["idle"], f"'{place}' on the screen")
        left, top, right, bottom = editor.state["places"][place]
        x, y = round((left + right) / 2), round((top + bottom) / 2)
        window = editor.window
        editor._xdotool("mousemove", "--window", window, x - 2, y, "mousemove", "--window", window, x, y)
        editor.settle()
        revision = yoke_of(editor.state)["revision"]
        editor._xdotool("mousedown", 1)
        for part in range(1, 6):
            editor._xdotool("mousemove", "--window", window, x + by_x * part // 5, y + by_y * part // 5)
            editor.settle()
        editor._xdotool("mouseup", 1)
        editor.wait(lambda state: yoke_of(state)["revision"] > revision and state["idle"], f"'{place}' dragged")

    def fill(self, editor, place, text):
        editor.click(place)
        editor.wait(lambda state: state["keys_at"] == place and state["idle"], f"'{place}' with the keys")
        editor.key("ctrl+a")
        editor.type(text)
        editor.key("Tab")
        editor.wait(lambda state: state["keys_at"] != place and state["idle"], f"'{place}' left")

    def plan(self, path):
        done = subprocess.run([PUNCHWRIGHT, "yoke", path, "--json"], capture_output=True, text=True, check=False,
                              timeout=60)
        self.assertIn(done.returncode, (0, 1), done.stderr)
        return json.loads(done.stdout)

    def new_yoke_dialog(self, tiers):
        """The dialog by the list of commands, with those files as its tiers."""
        editor = self.start_blank()
        editor.key("ctrl+k")
        editor.wait(lambda state: state["dialog"] == "commands" and state["idle"], "all commands")
        editor.type("new yoke")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "new-yoke" and state["idle"], "the dialog")
        for tier in tiers:
            editor.click("new tier")
            editor.wait(lambda state: state["dialog"] == "yoke-tier" and state["idle"], "the files")
            editor.fill_name(tier)
            editor.wait(lambda state: state["dialog"] == "new-yoke" and state["idle"], "the dialog again")
        return editor

    def begin(self):
        desk = self.desk()
        editor = self.new_yoke_dialog(desk / "tiers" / f"{tier}.repeat" for tier in ("pot-buoys", "corks", "small-waves"))
        editor.click("begin yoke")
        editor.wait(lambda state: state["dialog"] == "none" and yoke_of(state).get("shown") and state["idle"],
                    "the yoke")
        return editor, desk

    def test_begin_stays_under_the_pointer_while_a_remark_goes_or_comes(self):
        desk = self.desk()
        tiers = [desk / "tiers" / "pot-buoys.repeat", desk / "tiers" / "rope.repeat"]  # of two machines
        editor = self.new_yoke_dialog(tiers)
        alone = editor.state["places"]["begin yoke"]
        editor.click("begin yoke")
        editor.settle()
        remarked = editor.state["places"]["begin yoke"]
        self.assertEqual(editor.state["dialog"], "new-yoke")
        self.assertEqual(remarked, alone, "what scrolls above makes room for the remark")
        for typed in ("104", "5"):  # too little is spoken of only when the field is left: by the press
            editor.click("new chest 1")
            editor.key("ctrl+a")
            editor.type(typed)
            editor.wait(lambda state, words=typed: state["typed"] == words and state["idle"], f"'{typed}' typed")
            before = editor.state["places"]["begin yoke"]
            x, y = round((before[0] + before[2]) / 2), round((before[1] + before[3]) / 2)
            editor._xdotool("mousemove", "--window", editor.window, x, y)
            editor.wait_next(lambda state: state["idle"], "the pointer's arrival")
            editor._xdotool("mousedown", 1)
            editor.wait_next(lambda state: state["idle"], "the press")
            self.assertEqual(editor.state["places"]["begin yoke"], before, f"after '{typed}'")
            editor._xdotool("mouseup", 1)
            editor.wait_next(lambda state: state["places"]["begin yoke"] == remarked and state["idle"], "begun")

    def retype(self, editor, place, text):
        """By keys, backwards through the dialog, since what is scrolled out of sight can't be clicked on."""
        self.tab_until(editor, place, key="shift+Tab")
        editor.key("ctrl+a")
        editor.type(text)
        editor.wait(lambda state: state["typed"] == text and state["idle"], f"'{text}' typed")

    def test_of_a_poncho_the_room_for_arms_and_the_most_depth_are_shown_and_changed(self):
        desk = self.desk()
        editor = self.new_yoke_dialog([desk / "tiers" / "pot-buoys.repeat", desk / "tiers" / "corks.repeat"])
        editor.click("new poncho")
        editor.wait(lambda state: "new sleeve" in state["places"] and state["idle"], "the field of the arms' room")
        # From the last field of the dialog to the first.
        for place, text in (("new deep", "30"), ("new shallow chest", "86"), ("new shallow", "20"),
                            ("new sleeve", "43")):
            self.retype(editor, place, text)
        editor.click("begin yoke")
        editor.wait(lambda state: state["dialog"] == "none" and yoke_of(state).get("shown") and state["idle"],
                    "the yoke")
        body = 34 * 2.54 + 7.5
        # Front and back of 42 % each, two arms of 43 less 8 %: a quarter of that.
        self.assertAlmostEqual(editor.state["yoke"]["bottom_cm"], body * (2 * 0.42 + 2 * 0.35) / 4, delta=0.051)
        deepest = 20 + (34 * 2.54 - 86) / (151 - 86) * (30 - 20)
        self.assertLess(deepest, body / 4)
        self.assertAlmostEqual(editor.state["yoke"]["depth_cm"], deepest, delta=0.051)

    def test_large_text_in_a_small_window_leaves_each_picture_more_than_half_of_the_height(self):
        desk = self.desk()
        for percent in (200, 250):
            self.write_settings(f'theme = "dark"\ntext_percent = {percent}\n')
            for language in ("en", "de"):
                for name in ("puffin-poncho", "harbour-pullover"):
                    editor = self.start(desk / f"{name}.yoke", "--size", "1024x640", "--language", language)
                    for number, view in enumerate(("schematic", "flat", "worn", "bed"), 1):
                        with self.subTest(percent=percent, language=language, yoke=name, view=view):
                            editor.key(f"ctrl+{number}")
                            editor.wait(lambda state, view=view: state["yoke"]["view"] == view and state["idle"], view)
                            places = editor.state["places"]
                            _, top, _, bottom = places["yoke seen"]
                            _, tab_top, _, tab_bottom = places["settings edge"]
                            self.assertGreaterEqual(bottom - top, 0.5 * (tab_bottom - tab_top))
                            self.assertGreaterEqual(bottom - top, 0.4 * 640, "nor do the buttons above take it")
                    editor.stop()

    def test_views_size_and_piece_are_chosen_from_lists_where_large_text_leaves_room_for_no_more(self):
        desk = self.desk()
        self.write_settings('theme = "light"\ntext_percent = 250\n')
        editor = self.start(desk / "puffin-poncho.yoke", "--size", "1024x640")
        editor.click("yoke views")
        editor.click("yoke views bed")
        editor.wait(lambda state: state["yoke"]["view"] == "bed" and state["idle"], "the piece on its bed")
        editor.click("yoke piece")
        editor.click("yoke piece 3")
        editor.wait(lambda state: state["yoke"]["piece"] == 2 and state["idle"], "the third piece")
        editor.click("yoke size")
        editor.click("yoke size 2")
        editor.wait(lambda state: state["yoke"]["size"] == 1 and state["idle"], "the second size")
        self.assertIn("all-commands", editor.state["places"], "the button for what has no room")

    def test_words_of_the_schematic_cover_no_counts_and_are_not_cut(self):
        desk = self.desk()
        path = desk / "harbour-pullover.yoke"
        text = path.read_text()
        for depth in (15.0, 16.0, 17.0):  # too little for its rows, which come to 19.4 cm
            path.write_text(re.sub(r"^cm = .*$", f"cm = {depth}", text, count=1, flags=re.M))
            editor = self.start(path, "--size", "1440x900")
            places = editor.state["places"]
            counts = [box for name, box in places.items() if name.startswith("schematic count ")]
            self.assertGreater(len(counts), 3)
            for top in (box for name, box in places.items() if name.startswith("schematic top ")):
                for count in counts:
                    apart = (top[2] <= count[0] or count[2] <= top[0] or top[3] <= count[1] or count[3] <= top[1])
                    self.assertTrue(apart, f"the top's words at {top} and a count at {count}")
            editor.stop()
        path.write_text(re.sub(r"bottom_cm = .*", "bottom_cm = 200.0", text, count=1))  # the front: the sleeves beside it
        editor = self.start(path, "--size", "1440x900")
        left, _, right, _ = editor.state["places"]["yoke seen"]
        names = [box for name, box in editor.state["places"].items() if name.startswith("schematic names ")]
        self.assertEqual(len(names), 2)
        for box in names:
            self.assertTrue(left <= box[0] and box[2] <= right, f"{box} within {left} to {right}")

    def test_gauge_and_swatch_weights_are_typed_recomputed_at_once_undone_left_empty_and_saved(self):
        desk = self.desk()
        path = desk / "harbour-pullover.yoke"
        self.assertNotIn("[gauge]", path.read_text())  # the tiers': 14 by 18
        before = self.plan(path)["sizes"][0]
        editor = self.start(path, "--size", "1440x900")
        stitches = editor.state["yoke"]["stitches"]
        editor.click("yoke title")
        self.tab_until(editor, "yoke gauge stitches")
        editor.type("16")
        editor.wait(lambda state: state["yoke"]["stitches"] != stitches and state["idle"], "counts of another gauge")
        wider = editor.state["yoke"]["stitches"]
        self.assertAlmostEqual(wider[0] / stitches[0], 16 / 14, delta=0.05)
        self.assertEqual(editor.state["yoke"]["steps"], 1, "typing is one step")
        editor.key("Return")
        editor.key("ctrl+z")
        editor.wait(lambda state: state["yoke"]["stitches"] == stitches and state["idle"], "undone")
        editor.key("ctrl+y")
        editor.wait(lambda state: state["yoke"]["stitches"] == wider and state["idle"], "done again")
        editor.click("yoke title")
        self.tab_until(editor, "yoke gauge stitches")
        editor.key("ctrl+a")
        editor.key("BackSpace")
        editor.wait(lambda state: state["yoke"]["stitches"] == stitches and state["idle"], "empty: the tiers' own")
        for place, text in (("yoke gauge rows", "18,5"), ("yoke plain stitches", "15"), ("yoke plain rows", "21"),
                            ("yoke plain A", "6.1"), ("yoke coloured A", "3.4")):
            self.tab_until(editor, place)
            editor.type(text)
            editor.wait(lambda state, text=text: state["typed"] == text and state["idle"], f"'{text}' typed")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["yoke"]["saved"] and state["idle"], "the yoke saved")
        saved = tomllib.loads(path.read_text())
        self.assertEqual(saved["gauge"], {"rows": 18.5, "plain": {"stitches": 15.0, "rows": 21.0}})
        yarn = next(yarn for yarn in saved["yarn"] if yarn["key"] == "A")
        self.assertEqual((yarn["plain_g_per_100cm2"], yarn["two_colour_g_per_100cm2"]), (6.1, 3.4))
        after = self.plan(path)["sizes"][0]
        self.assertEqual(next(yarn["from"] for yarn in after["yarn"] if yarn["yarn"] == "A"), "swatch")
        self.assertNotEqual(next(yarn["from"] for yarn in before["yarn"] if yarn["yarn"] == "A"), "swatch")

    def test_gauge_and_swatches_in_inches_are_kept_over_centimetres(self):
        desk = self.desk()
        path = desk / "harbour-pullover.yoke"
        self.write_settings('lengths = "inches"\n')
        editor = self.start(path, "--size", "1440x900")
        editor.click("yoke title")
        for place, text in (("yoke plain rows", "20"), ("yoke plain A", "6")):  # over 4 inches; of 4 × 4 inches
            self.tab_until(editor, place)
            editor.type(text)
            editor.wait(lambda state, text=text: state["typed"] == text and state["idle"], f"'{text}' typed")
        editor.key("ctrl+s")
        editor.wait(lambda state: state["yoke"]["saved"] and state["idle"], "the yoke saved")
        saved = tomllib.loads(path.read_text())
        self.assertAlmostEqual(saved["gauge"]["plain"]["rows"], 20 / 10.16 * 10, delta=0.001)
        yarn = next(yarn for yarn in saved["yarn"] if yarn["key"] == "A")
        self.assertAlmostEqual(yarn["plain_g_per_100cm2"], 6 / 10.16 ** 2 * 100, delta=0.001)

    def test_a_fault_in_a_tiers_drawing_opens_the_drawing(self):
        desk = self.desk()
        tier = desk / "tiers" / "puffin-ledge.repeat"
        text = tier.read_text()
        row = re.search(r'^  "([.#]+)",?$', text, re.M)
        tier.write_text(text.replace(f'"{row[1]}"', '"#' + "." * (len(row[1]) - 1) + '"', 1))
        editor = self.start(desk / "puffin-poncho.yoke")
        opening = editor.state["opening"]
        editor.click("yoke open drawing 1")
        editor.wait(lambda state: state["opening"] > opening and state["idle"], "the tier's repeat")
        self.assertEqual(pathlib.Path(editor.state["path"]).name, "puffin-ledge.repeat")

    def test_a_yoke_is_begun_from_measurements_a_width_is_dragged_and_what_is_saved_has_both(self):
        editor, desk = self.begin()
        yoke = editor.state["yoke"]
        self.assertEqual((yoke["pieces"], yoke["tiers"], yoke["saved"]), (4, 3, False))
        self.assertTrue(editor.state["title"].startswith("• "))
        # 34 inches and 7.5 cm of ease: half of the body less an underarm of 8 % of it.
        self.assertAlmostEqual(yoke["bottom_cm"], (34 * 2.54 + 7.5) * (0.5 - 0.08), delta=0.051)
        before, stitches = yoke["bottom_cm"], yoke["stitches"][0]
        self.drag(editor, "drag bottom 1", 40, 0)
        dragged = editor.state["yoke"]
        self.assertGreater(dragged["bottom_cm"], before + 1)
        self.assertGreater(dragged["stitches"][0], stitches)
        self.assertEqual(dragged["steps"], 1, "a drag is one step")
        editor.key("ctrl+z")
        editor.wait(lambda state: state["yoke"]["bottom_cm"] == before and state["idle"], "the drag undone")
        editor.key("ctrl+y")
        editor.wait(lambda state: state["yoke"]["bottom_cm"] == dragged["bottom_cm"] and state["idle"], "done again")
        path = desk / "from-measures.yoke"
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "save-yoke" and state["idle"], "the dialog")
        editor.fill_name(path)
        editor.wait(lambda state: state["yoke"]["saved"] and state["idle"], "the yoke saved")
        self.assertIn('repeat = "tiers/pot-buoys.repeat"', path.read_text(), "paths are as seen from the file")
        front = self.plan(path)["sizes"][0]["pieces"][0]
        self.assertEqual(front["tiers"][0]["stitches"], dragged["stitches"][0])
        self.assertEqual(editor.state["title"], "from-measures.yoke — Punchwright")
        editor.key("ctrl+shift+y")
        editor.wait(lambda state: state["dialog"] == "yoke-sheets" and state["idle"], "the dialog")
        (self.folder / "out").mkdir()
        editor.fill_name(self.folder / "out" / "all.pdf")
        editor.wait(lambda state: state["message"].startswith("Written") and state["idle"], "the sheets")
        self.assertEqual([file.name for file in (self.folder / "out").iterdir()], ["all.pdf"])
        self.check_sheets(self.folder / "out" / "all.pdf", self.plan(path))

    def told(self, *words):
        return subprocess.run([str(word) for word in words], capture_output=True, text=True, check=True,
                              timeout=120).stdout

    def check_sheets(self, pdf, plan):
        """All parts of a yoke on a card machine: where the first page says, with the steps of every piece of every size, and
        the needles to transfer on the strips."""
        self.told("qpdf", "--check", pdf)
        pages = [re.sub(r"\s+", " ", page) for page in self.told("pdftotext", pdf, "-").split("\f")[:-1]]
        self.assertEqual(len(pages), int(re.search(r"^Pages: +(\d+)$", self.told("pdfinfo", pdf), re.M)[1]))
        contents = self.told("pdftotext", "-layout", "-l", "1", pdf, "-").split("What stands where")[1]
        entries = re.findall(r"(Schematic|Table of sizes|Size .+?|Strips .+?|Card of .+?) {2,}(\d+)", contents)
        begins = {title: int(number) for title, number in entries}
        cards = [title for title in begins if title.startswith("Card of")]
        self.assertEqual(len(cards), len(plan["sizes"][0]["pieces"][0]["tiers"]), cards)
        for number, page in enumerate(pages[:begins[cards[0]] - 1], 1):
            self.assertIn(f"page {number} of {len(pages)}", page)
        for title, number in begins.items():
            begun = "strips for the rows" if title.startswith("Strips") else title.split(",")[0].lower()
            self.assertIn(begun, pages[number - 1].lower(), title)
        ends = sorted([*begins.values(), len(pages) + 1])
        for size in plan["sizes"]:
            for piece in size["pieces"]:
                title = next(title for title in begins if re.match(
                    rf"Size {re.escape(size['size'])}: (.* )?{re.escape(piece['piece'])}( |,|$)", title))
                end = next(number for number in ends if number > begins[title])
                self.check_steps(" ".join(pages[begins[title] - 1:end - 1]), piece["tiers"])
        self.check_strips(pdf, plan)

    def check_steps(self, words, tiers):
        for tier in tiers:
            self.assertIn(f"{tier['stitches']} stitches, {tier['first_needle']} to {tier['last_needle']}; the knit side "
                          f"shows columns {tier['left_column']} to {tier['right_column']}", words)
            self.assertIn(f"Decrease {tier['decreases']} stitches in {tier['stitches']} stitches:", words)
            self.assertIn(", ".join(f"{one} to {other}" for one, other in tier["transfers"]) + ".", words)
            if tier["needles_after"]:
                self.assertIn(f"Hang the {tier['after']} loops on {' to '.join(tier['needles_after'])}", words)

    def check_strips(self, pdf, plan):
        """By their pixels: ticks at the pitch of 9 mm, and of the first strip a thick one at each needle to transfer."""
        tiers = [tier for size in plan["sizes"] for piece in size["pieces"] for tier in piece["tiers"]]
        every = {one for tier in tiers for one, _ in tier["transfers"]}
        thick, parts_to_come = set(), 1
        for number in strip_finder.pages_with_strips(pdf):
            pixels, words = strip_finder.pixels_of(pdf, number), strip_finder.words_on(pdf, number)
            self.assertAlmostEqual(strip_finder.check_line(pixels, words), 100.0, delta=0.1)
            parts = strip_finder.parts_on(pixels, words)
            self.assertTrue(parts)
            for ticks in parts:
                self.assertLessEqual(strip_finder.largest_error(ticks, 9.0), 0.1)
                thick |= {needle for needle, (_, is_thick) in ticks.items() if is_thick}
            text = " ".join(word[0] for word in words)
            parts_to_come = min([parts_to_come] + [int(of) - int(part)
                                                   for part, of in re.findall(r"strip 1, part (\d+) of (\d+)", text)])
            if parts_to_come == 0:
                break
        self.assertEqual(parts_to_come, 0, "all of strip 1")
        self.assertLessEqual({one for one, _ in tiers[0]["transfers"]}, thick)
        self.assertLessEqual(thick, every)

    def test_sheets_are_written_of_the_sizes_that_fit_and_the_others_are_told(self):
        path = self.desk() / "harbour-pullover.yoke"
        text = path.read_text()
        wide = re.search(r"bottom_cm = \[(.*), ([0-9.]+)\]", text)  # of the front
        sizes = re.findall(r'"([^"]+)"', re.search(r"^sizes = (.*)$", text, re.M)[1])
        path.write_text(text.replace(wide[0], f"bottom_cm = [{wide[1]}, 400.0]"))
        editor = self.start(path)
        editor.key("ctrl+shift+y")
        editor.wait(lambda state: state["dialog"] == "yoke-sheets" and state["idle"], "the dialog")
        editor.fill_name(self.folder / "some.pdf")
        editor.wait(lambda state: state["message"].startswith("Written") and state["idle"], "the sheets")
        self.assertRegex(editor.state["message"], r"; left out: .*front.*" + re.escape(sizes[-1]))
        words = subprocess.run(["pdftotext", "-layout", self.folder / "some.pdf", "-"], capture_output=True, text=True,
                               check=True, timeout=60).stdout
        self.assertTrue(f"Size {sizes[0]}:" in words)
        self.assertFalse(f"Size {sizes[-1]}:" in words)

    def test_depth_and_plain_rows_are_dragged_and_typed(self):
        desk = self.desk()
        editor = self.start(desk / "harbour-pullover.yoke")
        self.assertTrue(editor.state["yoke"]["shown"])
        depth, rows = editor.state["yoke"]["depth_cm"], editor.state["yoke"]["plain_above"]
        self.drag(editor, "drag depth", 0, -30)
        self.assertGreater(editor.state["yoke"]["depth_cm"], depth)
        self.drag(editor, "drag rows 1", 0, -40)
        self.assertGreater(editor.state["yoke"]["plain_above"], rows)
        self.fill(editor, "yoke depth", "21.5")
        self.assertEqual(editor.state["yoke"]["depth_cm"], 21.5)
        self.fill(editor, "yoke bottom 1", "41.2")
        self.assertEqual(editor.state["yoke"]["bottom_cm"], 41.2)
        self.assertEqual(editor.state["yoke"]["steps"], 4)
        editor.key("ctrl+s")
        editor.wait(lambda state: state["yoke"]["saved"] and state["idle"], "the yoke saved")
        text = (desk / "harbour-pullover.yoke").read_text()
        self.assertRegex(text, r"bottom_cm = \[41\.2, ")
        self.assertIn("# chest 86.4", text, "comments stay")

    def test_a_tier_opens_from_the_yoke_and_its_change_is_in_the_yoke(self):
        desk = self.desk()
        editor = self.start(desk / "harbour-pullover.yoke")
        opening = editor.state["opening"]
        editor.click("yoke tier 2")
        editor.wait(lambda state: state["opening"] > opening and state["idle"], "the tier's repeat")
        self.assertEqual(pathlib.Path(editor.state["path"]).name, "corks.repeat")
        self.assertFalse(editor.state["yoke"]["shown"])
        drawn = rows_in(desk / "tiers" / "corks.repeat")
        editor.key("x")
        editor.save()
        self.assertNotEqual(rows_in(desk / "tiers" / "corks.repeat"), drawn)
        revision = editor.state["yoke"]["revision"]
        editor.key("F11")
        editor.wait(lambda state: state["yoke"]["shown"] and state["idle"], "the yoke again")
        self.assertGreater(revision, 0, "the tier was read again when it was saved")

    def test_views_change_by_keys_and_the_drawing_is_out_of_reach_of_them(self):
        desk = self.desk()
        editor = self.start(desk / "puffin-poncho.yoke")
        for key, view in (("ctrl+2", "flat"), ("ctrl+3", "worn"), ("ctrl+4", "bed"), ("ctrl+1", "schematic")):
            editor.key(key)
            editor.wait(lambda state, view=view: state["yoke"]["view"] == view and state["idle"], view)
        editor.click("yoke bottom 1")
        editor.wait(lambda state: state["keys_at"] == "yoke bottom 1" and state["idle"], "a field with the keys")
        for key, view in (("ctrl+2", "flat"), ("ctrl+1", "schematic")):
            editor.key(key)
            editor.wait(lambda state, view=view: state["yoke"]["view"] == view and state["idle"], view)
        editor.key("Escape")
        editor.wait(lambda state: state["keys_at"] != "yoke bottom 1" and state["idle"], "the field left")
        steps = editor.state["steps"]
        editor.key("x", "Left", "Home", "Delete")
        editor.settle()
        self.assertEqual(editor.state["steps"], steps)
        self.assertEqual(editor.state["cursor"], [0, 0])
        self.tab_until(editor, "yoke bottom 1")

    def test_the_machine_for_all_tiers_is_chosen_by_keys_and_saved(self):
        desk = self.desk()
        path = desk / "harbour-pullover.yoke"
        editor = self.start(path)
        editor.wait(lambda state: yoke_of(state).get("shown") and state["idle"], "the yoke")
        editor.key("ctrl+5")
        editor.wait(lambda state: state["keys_at"] == "yoke machine" and state["idle"], "the field with the keys")
        editor.key("Return")
        editor.wait(lambda state: "yoke machine standard-card-24" in state["places"] and state["idle"], "the list")
        editor.click("yoke machine standard-card-24")
        editor.wait(lambda state: state["yoke"]["steps"] == 1 and state["idle"], "a step")
        editor.key("ctrl+s")
        editor.wait(lambda state: yoke_of(state)["saved"] and state["idle"], "saved")
        self.assertIn('[machine]\nprofile = "standard-card-24"', path.read_text())

    def test_what_is_not_saved_is_asked_for_and_a_file_that_changed_meanwhile_too(self):
        desk = self.desk()
        path = desk / "harbour-pullover.yoke"
        editor = self.start(path)
        self.fill(editor, "yoke depth", "23")
        path.write_text(path.read_text().replace("tolerance = 0.06", "tolerance = 0.07"))
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "changed" and state["idle"], "the question")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the answer")
        self.assertIn("0.07", path.read_text())
        self.drop(editor, desk / "puffin-poncho.yoke")
        editor.wait(lambda state: state["dialog"] == "guard" and state["idle"], "the guard")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the answer")
        editor.key("ctrl+q")
        editor.wait(lambda state: state["dialog"] == "guard" and state["idle"], "the guard")
        self.tab_until(editor, "guard discard")
        editor.key("Return")
        self.assertEqual(editor.ended(), 0)

    def test_a_yoke_stays_open_beside_a_repeat_that_is_dropped(self):
        desk = self.desk()
        band = self.write("band.repeat", blank())
        editor = self.start(desk / "anchor-yoke.yoke")
        self.drop(editor, band)
        editor.wait(lambda state: state["path"].endswith("band.repeat") and state["idle"], "the repeat")
        self.assertFalse(editor.state["yoke"]["shown"])
        editor.key("F11")
        editor.wait(lambda state: state["yoke"]["shown"] and state["idle"], "the yoke again")
        self.assertEqual(editor.state["title"], "anchor-yoke.yoke — Punchwright")
        self.assertTrue(re.search("anchor-yoke", json.dumps(self.settings())), "it is among the recent files")


if __name__ == "__main__":
    main()
