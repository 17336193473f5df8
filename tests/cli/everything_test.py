"""punchwright export: every sheet into one folder, together or not at all, and nothing replaced unasked."""

import command
from command import GOOD, CommandTest, run

NAMES = ["1-card.pdf", "2-needles.pdf", "3-steps.pdf", "4-knit-side.png", "5-purl-side.png", "6-rows.txt",
         "7-check.txt", "8-leaflet.pdf", "9-pattern-chart.png"]


class Everything(CommandTest):
    def setUp(self):
        super().setUp()
        self.design = self.file("puffin-cove.repeat", GOOD)
        self.out = self.folder / "out"

    def names(self):
        return sorted(path.name for path in self.out.iterdir())

    def test_all_sheets_under_names_that_sort(self):
        ended = run("export", self.design, "-o", self.out)
        self.assertIn(ended.code, (command.DONE, command.FAULTS), ended.err)
        self.assertEqual(self.names(), ["puffin-cove-" + name for name in NAMES])
        self.assertEqual(ended.text.splitlines(), [str(self.out / name) for name in self.names()])

    def test_each_is_what_its_own_command_writes(self):
        run("export", self.design, "-o", self.out)
        for verb, name, more in (("card", NAMES[0], []), ("needles", NAMES[1], []), ("steps", NAMES[2], []), ("leaflet", NAMES[7], []),
                                 ("fabric", NAMES[3], []), ("fabric", NAMES[4], ["--side", "purl"])):
            alone = self.folder / name
            run(verb, self.design, "-o", alone, *more)
            self.assertEqual((self.out / f"puffin-cove-{name}").read_bytes(), alone.read_bytes(), name)
        self.assertEqual((self.out / "puffin-cove-6-rows.txt").read_text(), run("rows", self.design).text)
        report = (self.out / "puffin-cove-7-check.txt").read_text()
        self.assertEqual(report.splitlines()[:-1], run("check", self.design).text.splitlines()[:-1])

    def test_nothing_is_replaced_unasked(self):
        run("export", self.design, "-o", self.out)
        steps = self.out / "puffin-cove-3-steps.pdf"
        card = self.out / "puffin-cove-1-card.pdf"
        steps.write_text("precious")
        card.unlink()
        ended = run("export", self.design, "-o", self.out)
        self.assertEqual(ended.code, command.CANNOT)
        self.assertIn("puffin-cove-3-steps.pdf", ended.err)
        self.assertIn("--replace", ended.err)
        self.assertEqual(steps.read_text(), "precious")
        self.assertFalse(card.exists())
        run("export", self.design, "-o", self.out, "--replace")
        self.assertTrue(steps.read_bytes().startswith(b"%PDF"))
        self.assertTrue(card.exists())

    def test_together_or_not_at_all(self):
        self.out.mkdir()
        (self.out / "puffin-cove-7-check.txt").mkdir()  # a folder where the last file should go
        ended = run("export", self.design, "-o", self.out, "--replace")
        self.assertEqual(ended.code, command.CANNOT)
        self.assertEqual(self.names(), ["puffin-cove-7-check.txt"])

    def test_a_folder_that_cannot_be_made(self):
        ended = run("export", self.design, "-o", self.folder / "nowhere" / "out")
        self.assertEqual(ended.code, command.CANNOT)
        self.assertIn("the folder can't be made", ended.err)
        self.assertEqual(run("export", self.design, "-o", self.design).code, command.CANNOT)

    def test_one_card_of_several(self):
        text = GOOD.replace("stitches = 24", "stitches = 24\ntimes = 60")
        design = self.file("tall.repeat", text)
        self.assertEqual(run("card", design, "-o", self.folder / "c.svg", "--card", "99").code, command.CANNOT)
        ended = run("card", design, "-o", self.folder / "c.svg", "--card", "2")
        self.assertEqual(ended.text.splitlines(), [str(self.folder / "c.svg")])


if __name__ == "__main__":
    command.main()
