"""Print preview and the export of everything, in the real window: by mouse, and once by keyboard alone."""
import subprocess

from driver import WindowTest, design, main

NAMES = ["1-card.pdf", "2-needles.pdf", "3-steps.pdf", "4-knit-side.png", "5-purl-side.png", "6-rows.txt",
         "7-check.txt", "8-leaflet.pdf", "9-pattern-chart.png"]


def pages_of(path):
    told = subprocess.run(["pdfinfo", path], capture_output=True, text=True, check=True).stdout
    return int(told.split("Pages:")[1].split()[0])


def page_shown(state):
    """("1", "3") of what stands under the page."""
    for name in state["places"]:
        words = name.split()
        if len(words) == 4 and words[0] == "page" and words[2] == "of":
            return words[1], words[3]
    return None


class Preview(WindowTest):
    def begin(self, rows, *arguments):
        band = ["#..#.." * 4, "." * 24] * (rows // 2)
        path = self.write("puffin-cove.repeat", design(band, title="Puffin cove"))
        editor = self.start(path, *arguments)
        editor.key("ctrl+p")
        editor.wait(lambda state: state["dialog"] == "preview" and page_shown(state), "the preview")
        return editor

    def test_pages_are_turned_with_keys_and_are_those_of_the_file(self):
        editor = self.begin(130)
        pages = page_shown(editor.state)[1]
        editor.key("Next")
        editor.wait(lambda state: page_shown(state) == ("2", pages), "the second page")
        editor.key("Right")
        editor.wait(lambda state: page_shown(state) == ("3", pages), "the third page")
        editor.key("End")
        editor.wait(lambda state: page_shown(state) == (pages, pages), "the last page")
        editor.key("Next")
        editor.settle()
        self.assertEqual(page_shown(editor.state), (pages, pages))
        editor.key("Prior", "Left", "Home")
        editor.wait(lambda state: page_shown(state) == ("1", pages), "the first page")
        editor.click("export shown")
        editor.wait(lambda state: state["dialog"] == "card", "the dialog")
        editor.fill_name(self.folder / "card.pdf")
        editor.wait(lambda state: state["message"].startswith("Written"), "the file")
        editor.wait(lambda state: state["dialog"] == "preview", "the preview again")
        self.assertEqual(pages_of(self.folder / "card.pdf"), int(pages))
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none", "the end of the preview")

    def test_a_bed_without_a_reader_has_no_card_and_its_files_begin_with_the_needles(self):
        band = design(["#..#.." * 4, "." * 24] * 4, title="Puffin cove").replace("bulky-card-24", "plastic-by-hand")
        editor = self.start(self.write("puffin-cove.repeat", band))
        editor.key("ctrl+p")
        editor.wait(lambda state: state["dialog"] == "preview" and page_shown(state), "the needle chart")
        for sheet in ("card", "swatch", "measure"):
            editor.click(f"sheet {sheet}")
            editor.settle()
            self.assertIn("stay back", editor.state["places"], "the needle chart's own choice")
        editor.click("sheet leaflet")
        editor.wait(lambda state: "stay back" not in state["places"] and state["idle"], "the leaflet")
        editor.key("Escape", "ctrl+shift+p")
        editor.wait(lambda state: state["dialog"] == "everything" and state["idle"], "the dialog")
        editor.fill_name(self.folder / "cove")
        editor.wait(lambda state: state["message"].startswith("Written"), "the files")
        written = sorted(path.name for path in self.folder.glob("cove-*"))
        self.assertEqual((written[0], written[-1], len(written)), ("cove-1-needles.pdf", "cove-8-pattern-chart.png", 8))

    def test_one_card_of_several(self):
        editor = self.begin(130)
        everything = int(page_shown(editor.state)[1])
        editor.click("cards")
        editor.click("cards 2")
        editor.wait(lambda state: page_shown(state) and int(page_shown(state)[1]) < everything, "fewer pages")
        pages = int(page_shown(editor.state)[1])
        editor.click("export shown")
        editor.wait(lambda state: state["dialog"] == "card", "the dialog")
        editor.fill_name(self.folder / "second.pdf")
        editor.wait(lambda state: state["message"].startswith("Written"), "the file")
        self.assertEqual(pages_of(self.folder / "second.pdf"), pages)
        words = subprocess.run(["pdftotext", self.folder / "second.pdf", "-"], capture_output=True, text=True,
                               check=True).stdout
        self.assertIn("card 2 of 3", words)
        self.assertNotIn("card 1 of 3", words)

    def test_with_large_text_in_a_small_window_the_page_has_the_room(self):
        self.write_settings("text_percent = 250\n")
        editor = self.begin(12, "--size", "1280x720")
        left, top, right, bottom = editor.state["places"]["page"]
        self.assertTrue(0 <= left and 0 <= top and right <= 1280 and bottom <= 720, (left, top, right, bottom))
        self.assertGreater((right - left) * (bottom - top), 0.6 * 1280 * 720)
        editor.click("sheets")
        editor.click("sheet steps")
        editor.wait(lambda state: page_shown(state) == ("1", "3") and state["idle"], "the steps")
        self.tab_until(editor, "export shown")  # below the page, and scrolled to
        editor.settle()
        _, top, _, bottom = editor.state["places"]["export shown"]
        self.assertTrue(0 <= top and bottom <= 720, (top, bottom))
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] not in ("preview", "none"), "the dialog")
        editor.fill_name(self.folder / "steps.pdf")
        editor.wait(lambda state: state["message"].startswith("Written"), "the file")
        self.assertEqual(pages_of(self.folder / "steps.pdf"), 3)

    def test_paper_and_loop_are_steps_of_the_design(self):
        editor = self.begin(12)
        editor.click("loop")
        editor.wait(lambda state: state["steps"] == 1, "the loop")
        editor.click("paper")
        editor.click("paper 1")
        editor.wait(lambda state: state["steps"] == 2, "another paper")
        for sheet in ("chart", "steps", "swatch", "measure"):
            editor.click("sheet " + sheet)
            editor.wait(lambda state: page_shown(state) and page_shown(state)[0] == "1", sheet)
        editor.key("Escape", "ctrl+z", "ctrl+z")
        editor.wait(lambda state: state["dialog"] == "none" and state["steps"] == 0, "both taken back")

    def test_everything_by_keyboard_alone(self):
        editor = self.begin(12)
        editor.key("ctrl+shift+p")  # not while a dialog is open
        editor.settle()
        self.assertEqual(editor.state["dialog"], "preview")
        for _ in range(60):
            if editor.state["keys_at"] == "export-everything":
                break
            frame = editor.state["frame"]
            editor.key("Tab")
            editor.wait(lambda state, frame=frame: state["frame"] > frame + 1 and state["idle"], "the next stop")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "everything", "the dialog")
        (self.folder / "sheets").mkdir()
        editor.fill_name(self.folder / "sheets" / "cove")
        editor.wait(lambda state: state["message"].startswith("Written"), "the files")
        written = sorted(path.name for path in (self.folder / "sheets").iterdir())
        self.assertEqual(written, ["cove-" + name for name in NAMES])
        command = subprocess.run(["pdftotext", self.folder / "sheets" / "cove-2-needles.pdf", "-"],
                                 capture_output=True, text=True, check=True).stdout
        self.assertIn("Puffin cove", command)

    def test_everything_asks_before_it_replaces(self):
        (self.folder / "cove-3-steps.pdf").write_text("precious")
        editor = self.begin(12)
        editor.click("export-everything")
        editor.wait(lambda state: state["dialog"] == "everything", "the dialog")
        editor.fill_name(self.folder / "cove")
        editor.wait(lambda state: "replace" in state["places"], "the question")
        self.assertEqual(sorted(path.name for path in self.folder.glob("cove-*")), ["cove-3-steps.pdf"])
        self.assertEqual((self.folder / "cove-3-steps.pdf").read_text(), "precious")
        editor.click("replace")
        editor.wait(lambda state: state["message"].startswith("Written"), "the files")
        self.assertEqual(sorted(path.name for path in self.folder.glob("cove-*")), ["cove-" + name for name in NAMES])
        self.assertTrue((self.folder / "cove-3-steps.pdf").read_bytes().startswith(b"%PDF"))


if __name__ == "__main__":
    main()
