"""Pictures in and out, and motifs of one's own, in the real window; files compared."""
import subprocess

from desktop_messages import drop_file
from driver import WindowTest, blank, main, rows_in

GULL = "P1\n5 3\n1 0 0 0 1\n0 1 0 1 0\n0 0 1 0 0\n"
GULL_ROWS = ["..#..", ".#.#.", "#...#"]  # row 1 first


class Pictures(WindowTest):
    def png(self, name):
        png = subprocess.run(["pnmtopng"], input=GULL.encode(), capture_output=True, check=True).stdout
        path = self.folder / name
        path.write_bytes(png)
        return path

    def test_a_picture_becomes_a_design_by_keys_alone(self):
        self.png("gull.png")
        editor = self.start_blank()
        editor.key("ctrl+shift+o")
        editor.wait(lambda state: state["dialog"] == "import" and state["idle"], "the file chooser")
        editor.fill_name(self.folder / "gull.png")
        editor.wait(lambda state: state["dialog"] == "picture" and state["idle"], "the picture")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the design")
        self.assertIn("A new design of gull", editor.state["message"])
        editor.key("ctrl+s")
        editor.wait(lambda state: state["dialog"] == "save" and state["idle"], "the dialog")
        editor.fill_name(self.folder / "gull.repeat")
        editor.wait(lambda state: state["saves"] == 1 and state["dialog"] == "none", "the file saved")
        self.assertEqual(rows_in(self.folder / "gull.repeat"), GULL_ROWS)

    def test_a_dropped_picture_is_set_down_with_its_lighter_colour_as_contrast(self):
        picture = self.png("gull.png")
        path = self.write("a.repeat", blank())
        editor = self.start(path)
        drop_file(self.server.environment["DISPLAY"], int(editor.window), picture)
        editor.wait(lambda state: state["dialog"] == "picture" and state["idle"], "the picture")
        editor.click("lighter")
        editor.click("picture place")
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the picture over the drawing")
        editor.key("Up", "Right", "Return")
        editor.wait(lambda state: state["steps"] == 1 and state["idle"], "the picture set down")
        editor.save()
        turned = str.maketrans(".#", "#.")
        self.assertEqual([row[1:6] for row in rows_in(path)[1:4]], [row.translate(turned) for row in GULL_ROWS])

    def test_a_picture_with_greys_is_traced_and_a_broken_one_refused(self):
        grey = subprocess.run(["pnmtopng"], input=b"P2\n3 1\n2\n0 1 2\n", capture_output=True, check=True).stdout
        (self.folder / "grey.png").write_bytes(grey)
        editor = self.start(self.folder / "grey.png")
        editor.wait(lambda state: state["dialog"] == "trace" and state["idle"], "the picture to trace")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the blank drawing")
        editor.stop()
        (self.folder / "broken.png").write_bytes(grey[:20])
        editor = self.start(self.folder / "broken.png")
        editor.wait(lambda state: state["dialog"] == "trouble" and state["idle"], "the trouble")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the blank drawing")

    def test_the_pattern_chart_is_exported_as_the_command_writes_it(self):
        path = self.write("a.repeat", blank(title="Cove"))
        editor = self.start(path)
        editor.key("ctrl+k")
        editor.wait(lambda state: state["dialog"] == "commands" and state["idle"], "the commands")
        editor.type("pattern chart")
        editor.wait(lambda state: "command export-pattern" in state["places"]
                    and "command tool-pen" not in state["places"] and state["idle"], "the one command")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "pattern" and state["idle"], "the dialog")
        editor.fill_name(self.folder / "chart.svg")
        editor.wait(lambda state: state["message"].startswith("Written") and state["idle"], "the chart")
        self.assertIn("<title>Cove</title>", (self.folder / "chart.svg").read_text())

    def test_a_marked_area_is_kept_as_a_motif_and_set_down_again(self):
        path = self.write("a.repeat", blank())
        folder = self.folder / "home" / "data" / "punchwright" / "motifs"
        folder.mkdir(parents=True)
        (folder / "broken.motif").write_text("x: X\n#x#\n")
        editor = self.start(path)
        editor.stroke([(1, 1), (3, 1)])
        editor.key("m")
        editor.stroke([(1, 1), (3, 2)])
        editor.key("ctrl+g")
        editor.wait(lambda state: state["keys_at"] == "motif name" and state["idle"], "the name's field")
        editor.type("Three in a row")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and "Kept" in state["message"], "the motif kept")
        self.assertEqual((folder / "three-in-a-row.motif").read_text(), "three-in-a-row: Three in a row\n...\n###\n")
        editor.key("Escape", "p", "Home", "Page_Up")
        editor.click("tab Tools")
        editor.click("own motif three-in-a-row")
        editor.wait(lambda state: "sets it down" in state["message"] and state["idle"], "the motif over the drawing")
        editor.key("Return")
        editor.wait(lambda state: state["steps"] == 2 and state["idle"], "the motif set down")
        editor.save()
        rows = rows_in(path)
        self.assertEqual([rows[1], rows[11]], [".###" + "." * 20, "###" + "." * 21])


if __name__ == "__main__":
    main()
