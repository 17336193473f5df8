"""punchwright mend: what it changes, says, keeps and refuses. That it changes the fewest stitches is shown elsewhere."""

import json

import command
from command import CANNOT, DONE, FAULTS, FAULTY, SOURCE, CommandTest, run


class TheMend(CommandTest):
    def mend(self, *options, code=DONE):
        out = self.folder / "mended.repeat"
        ended = run("mend", self.faulty, "-o", out, *options)
        self.assert_ended(ended, code)
        return ended.text, out

    def test_leaves_a_design_without_faults_and_names_each_change(self):
        text, out = self.mend()
        self.assertEqual(
            text,
            "row 2: stitch 3 to contrast\n"
            "1 stitch changed, the fewest that do; no two of them side by side in neighbouring rows\n"
            "proved: no other choice of as few stitches lies better\n"
            f"{out}\n",
        )
        self.assert_ended(run("check", out), DONE)
        drawn, mended = FAULTY.splitlines(), out.read_text().splitlines()
        self.assertIn('  "..#...##",', mended)
        self.assertIn('  "#..#.#.#",', mended)
        self.assertIn('title = "Buoys"', drawn)
        self.assertIn('title = "Buoys"', mended)

    def test_as_json_fits_its_schema(self):
        import jsonschema

        described = json.loads((SOURCE / "docs" / "mend.schema.json").read_text())
        jsonschema.Draft202012Validator.check_schema(described)
        for options in [[], ["--protect", "2"]]:
            text, _ = self.mend("--json", *options, code=FAULTS if options else DONE)
            answer = json.loads(text)
            jsonschema.validate(answer, described)
        self.assertEqual(answer["changed"], [])
        self.assertEqual(answer["unmendable"], [{"row": 2, "columns": [1, 6]}])
        answer = json.loads(self.mend("--json")[0])
        self.assertEqual(answer["changed"], [{"row": 2, "column": 3, "to": "contrast"}])
        self.assertEqual((answer["limit"], answer["count"], answer["neighbours"]), (5, 1, 0))

    def test_catches_by_hand_and_accepts_instead(self):
        import jsonschema

        described = json.loads((SOURCE / "docs" / "mend.schema.json").read_text())
        text, out = self.mend("--catch", "all")
        self.assertTrue(text.startswith("row 2: caught by hand in column "), text)
        self.assertIn("1 catch, the fewest that do; no two of all catches side by side", text)
        self.assertIn("proved: no other choice of as few catches lies better\n", text)
        self.assertIn('[[catch]]\nrow = 2\ncolumns = "', out.read_text())
        self.assertIn('  "......##",', out.read_text())
        self.assert_ended(run("check", out), DONE)
        self.assert_ended(run("prove", out), DONE)
        steps = run("steps", out)
        self.assertIn("Catch the floats of row 2: with the transfer tool lift the yarn", steps.text)
        listed = json.loads(run("rows", "--json", out).text)
        rows = listed["rows"]
        self.assertNotIn("caught", rows[0])
        self.assertTrue(rows[1]["caught"])
        jsonschema.validate(listed, json.loads((SOURCE / "docs" / "rows.schema.json").read_text()))
        jsonschema.validate(json.loads(run("steps", "--json", out).text),
                            json.loads((SOURCE / "docs" / "steps.schema.json").read_text()))
        again = self.folder / "again.repeat"
        self.assert_ended(run("mend", out, "-o", again), DONE)
        self.assertEqual(again.read_text(), out.read_text())

        text, out = self.mend("--accept", "2:1-6")
        self.assertIn("row 2: the float of 6 stitches from column 1 on is accepted\n", text)
        findings = json.loads(run("check", "--json", out).text)
        self.assertIn("float-accepted", [finding["id"] for finding in findings["findings"]])
        jsonschema.validate(findings, json.loads((SOURCE / "docs" / "check.schema.json").read_text()))
        self.assert_ended(run("prove", out), DONE)

        for options in [["--catch", "2"], ["--accept", "all"], ["--no-changes"]]:
            answer = json.loads(self.mend("--json", *options, code=FAULTS if options[0] == "--no-changes" else DONE)[0])
            jsonschema.validate(answer, described)
            self.assertEqual(answer["changed"], [])
        self.assert_refused(run("mend", self.faulty, "-o", out, "--catch", "3"), "'3'", "rows 1 to 2")

    def test_keeps_the_symmetry_if_asked(self):
        import jsonschema

        half_below, half_above = "#..#..#..#.#", "#......#.#.#"
        whole = FAULTY.replace("width = 8", "width = 24").replace("#..#.#.#", half_below + half_below[::-1])
        self.faulty.write_text(whole.replace("......##", half_above + half_above[::-1]))
        text, _ = self.mend("--symmetry")
        self.assertIn("the symmetry of the drawing (p1m1) is kept\n", text)
        answer = json.loads(self.mend("--symmetry", "--json")[0])
        jsonschema.validate(answer, json.loads((SOURCE / "docs" / "mend.schema.json").read_text()))
        self.assertEqual(answer["symmetry"], {"group": "p1m1", "unlike": 0})
        self.assertTrue(answer["proved"])
        self.assertEqual([25], [sum(change["column"] for change in answer["changed"])])
        self.assertNotIn("symmetry", json.loads(self.mend("--json")[0]))

        self.faulty.write_text(FAULTY.replace("#..#.#.#", "#..##..#").replace("......##", "#......#"))
        text, _ = self.mend("--symmetry")  # one catch, and the mirror between the float's two middle stitches
        self.assertIn("1 pair of stitches that the symmetry of the drawing (p1m1) makes alike differ now\n", text)
        self.assertNotIn("fewest", json.loads(self.mend("--symmetry", "--json")[0])["symmetry"])

        text, out = self.mend("--whole-symmetry")  # one catch beside each of them, or on both sides of the mirror
        self.assertIn("2 stitches changed, the fewest that keep the symmetry; ", text)
        self.assertIn("the symmetry of the drawing (p1m1) is kept\n1 changed stitch would do, but breaks it\n", text)
        rows = [line.strip('", ') for line in out.read_text().splitlines() if line.startswith('  "')]
        self.assertEqual(len(rows), 2)
        self.assertEqual(rows, [row[::-1] for row in rows])
        answer = json.loads(self.mend("--whole-symmetry", "--json")[0])
        jsonschema.validate(answer, json.loads((SOURCE / "docs" / "mend.schema.json").read_text()))
        self.assertEqual(answer["symmetry"], {"group": "p1m1", "unlike": 0, "fewest": 1})
        self.assertEqual(answer["count"], 2)
        text, _ = self.mend("--whole-symmetry", "--protect", "2:2-4")  # so the float can be broken on one side only
        self.assertIn("differ now\nno mend keeps the symmetry whole\n", text)
        self.faulty.write_text(FAULTY)
        for option in ("--symmetry", "--whole-symmetry"):
            self.assertIn("the drawing has no symmetry to keep\n", self.mend(option)[0])

    def test_writes_what_is_protected(self):
        _, out = self.mend("--protect", "2:1-3")
        self.assertIn('[[protect]]\nrow = 2\ncolumns = "1-3"\n', out.read_text())

    def test_goes_round_protected_stitches(self):
        text, _ = self.mend("--protect", "2:1-3", "--protect", "1")
        self.assertIn("row 2: stitch 4 to contrast\n", text)

    def test_says_where_nothing_can_be_done(self):
        text, out = self.mend("--protect", "1-2:1-8", code=FAULTS)
        self.assertIn("row 2: can't be mended; in columns 1 to 6", text)
        self.assertIn('  "......##",', out.read_text())

    def test_keeps_keys_that_it_does_not_know(self):
        self.faulty.write_text(FAULTY.replace("[piece]\n", '[piece]\nbasket = "blue"\n'))
        _, out = self.mend()
        self.assertIn('basket = "blue"', out.read_text())

    def test_may_replace_the_file_itself(self):
        self.assert_ended(run("mend", self.faulty, "-o", self.faulty), DONE)
        self.assert_ended(run("check", self.faulty), DONE)

    def test_has_nothing_to_do_where_no_float_is_too_long(self):
        out = self.folder / "same.repeat"
        ended = run("mend", self.good, "-o", out)
        self.assert_ended(ended, DONE)
        self.assertEqual(ended.text, f"no float passes more than 5 stitches: nothing to mend\n{out}\n")

    def test_refuses_what_it_cannot_do_and_writes_nothing(self):
        out = self.folder / "mended.repeat"
        for place in ["3", "0", "2:9", "2:3-1", "2-", ":4", "eye", "2:3-4-5", ""]:
            with self.subTest(place=place):
                ended = run("mend", self.faulty, "-o", out, f"--protect={place}")
                self.assert_ended(ended, CANNOT)
                self.assertFalse(out.exists())
        self.assert_refused(run("mend", self.faulty, "-o", out, "--protect", "3"), "'3'", "rows 1 to 2, columns 1 to 8")
        self.assert_refused(run("mend", self.faulty, "-o", self.folder / "mended.pdf"), ".repeat")
        self.assert_refused(run("mend", self.folder / "none.repeat", "-o", out), "none.repeat")


if __name__ == "__main__":
    command.main()
