"""The JSON forms, as scripts made by others rely on them: keys, their kinds, and whole answers worked out by hand.
The schemas in docs describe the same forms; every answer here is held against them too."""

import json

import command
from command import BY_HAND, DONE, FAULTS, GOOD, SAMPLE, SOURCE, CommandTest, run
from random_designs import design_from, write_machines

FINDING_KEYS = {"id": str, "severity": str, "text": str, "remedy": str}
ROW_KEYS = {"row", "drawn", "why", "travel", "main", "contrast", "needles", "card_row", "passes"}

# Row 1 of the sample by hand: contrast in drawn columns 7, 8, 15, 16, so where x mod 24 is 17, 16, 9, 8, counted from
# L12; with the end needles L36 and R35, which knit contrast in every pattern row.
SAMPLE_NEEDLES = "L36 L28 L27 L20 L19 L4 L3 R5 R6 R21 R22 R29 R30 R35".split()


def schema(name):
    path = SOURCE / "docs" / name
    return json.loads(path.read_text()) if path.exists() else None


def of_this_version(described):
    """The schema without room for what is to come: only the keys, ids and reasons that this version has."""
    if isinstance(described, list):
        return [of_this_version(part) for part in described]
    if not isinstance(described, dict):
        return described
    known = {"$ref": "#/$defs/known"}
    if known in described.get("anyOf", []):
        return known
    strict = {key: of_this_version(part) for key, part in described.items()}
    if described.get("type") == "object" and "properties" in described:
        strict["additionalProperties"] = False
    return strict


class JsonTest(CommandTest):
    def answer(self, what, file, code=None):
        ended = run(what, file, "--json")
        if code is not None:
            self.assert_ended(ended, code)
        answer = json.loads(ended.text)
        self.assertEqual(answer["format"], 1)
        described = schema(f"{what}.schema.json")
        if described is not None:
            import jsonschema

            jsonschema.Draft202012Validator.check_schema(described)
            jsonschema.validate(answer, described)
            jsonschema.validate(answer, of_this_version(described))
        return answer


class TheFindings(JsonTest):
    def test_have_the_keys_that_scripts_read(self):
        answer = self.answer("check", SAMPLE, FAULTS)
        self.assertEqual(list(answer), ["format", "findings"])
        for finding in answer["findings"]:
            for key, kind in FINDING_KEYS.items():
                self.assertIsInstance(finding[key], kind)
                self.assertTrue(finding[key])
            self.assertIn(finding["severity"], ("fault", "warning", "note"))
            self.assertRegex(finding["id"], r"\A[a-z]+(-[a-z]+)*\Z")

    def test_a_float_has_its_place_and_its_length(self):
        rows = ["#.#.#.#.#.#.#.#.#.#.#.#."] * 6 + ["###.#.#.#.#.#.#.#.#.####"]
        drawn = "".join(f'  "{row}",\n' for row in reversed(rows))
        text = GOOD.replace("width = 4", "width = 24").replace("rows = 2", "rows = 7")
        text = text.replace('  ".##.",\n  "#..#",\n', drawn)
        answer = self.answer("check", self.file("seven.repeat", text), FAULTS)
        floats = [one for one in answer["findings"] if one["id"] == "float-too-long" and one["on"] == "repeat"]
        self.assertEqual(len(floats), 1)
        expected = {"severity": "fault", "row": 7, "yarn": "A", "columns": [21, 3], "stitches": 7, "mm": 43.75}
        self.assertEqual({key: floats[0][key] for key in expected}, expected)

    def test_a_float_on_the_piece_has_needles_instead_of_columns(self):
        answer = self.answer("check", SAMPLE, FAULTS)
        places = [
            (one["row"], one["yarn"], one["needles"], one["stitches"], one["mm"])
            for one in answer["findings"]
            if one["id"] == "float-too-long" and one["on"] == "piece"
        ]
        # From the end needle L36 to L28; between the pairs; and over the repeat's edge.
        for expected in [
            (1, "B", ["L35", "L29"], 7, 43.75),
            (1, "B", ["L26", "L21"], 6, 37.5),
            (1, "B", ["L18", "L5"], 14, 87.5),
        ]:
            self.assertIn(expected, places)
        self.assertEqual(len(places), 3, "each distinct run once")
        for one in answer["findings"]:
            self.assertFalse("columns" in one and "needles" in one)

    def test_of_a_good_design(self):
        answer = self.answer("check", self.good, DONE)
        self.assertNotIn("fault", [one["severity"] for one in answer["findings"]])

    def test_say_the_same_as_the_words(self):
        for file in [SAMPLE, self.good, self.faulty, self.by_hand]:
            words = run("check", file).text
            for finding in self.answer("check", file)["findings"]:
                self.assertIn(f"{finding['severity']}: {finding['text']}\n    {finding['remedy']}\n", words)

    def test_rows_alike_are_gathered_in_the_words_only(self):
        rows = ["..", "..", "##", "##", "##", "#.", ".."]
        text = GOOD.replace("width = 4", "width = 2").replace("rows = 2", "rows = 7")
        text = text.replace('  ".##.",\n  "#..#",\n', "".join(f'  "{row}",\n' for row in rows))
        file = self.file("plain.repeat", text)
        found = [(one["row"], one["id"]) for one in self.answer("check", file, DONE)["findings"] if "all" in one["id"]]
        contrast = [(row, "row-all-contrast") for row in (3, 4, 5)]
        self.assertEqual(found, [(1, "row-all-main"), *contrast, (6, "row-all-main"), (7, "row-all-main")])
        said = [line for line in run("check", file).text.splitlines() if "alone" in line]
        self.assertEqual(len(said), 3)
        for begin, line in zip(["row 1 is", "rows 3 to 5 are", "rows 6 and 7 are"], said):
            self.assertTrue(line.startswith(f"note: {begin} knitted in "), line)

    def test_of_a_loop_and_of_one_feeder(self):
        machine = "format = 1\n[bed]\nneedles = 60\npitch_mm = 9\n[knitting]\nfeeders = 1\n[card]\nrepeat = 24\n"
        self.file("one feeder.machine", machine)
        text = GOOD.replace("bulky-card-24", "one feeder.machine").replace("rows = 2\n", "rows = 1\n")
        text = text.replace("[piece]", '[[band]]\nrows = 1\nmain = "A"\ncontrast = "C"\n\n[piece]')
        text = text.replace("[repeat]", '[[yarn]]\nkey = "C"\n\n[repeat]')
        text += '[rules]\nchange_side = "left"\n[card]\nloop = true\n'
        found = {one["id"]: one for one in self.answer("check", self.file("round.repeat", text), DONE)["findings"]}
        self.assertEqual(found["card-held"]["rows"], 2)
        self.assertEqual((found["loop-change-undone"]["row"], found["loop-change-undone"]["yarn"]), (1, "B"))
        self.assertEqual(found["loop-change-undone"]["severity"], "warning")

    def test_are_valid_whatever_the_names_are(self):
        for name in ['Quote \\"', "Backslash \\\\", "Tab\\t", "Möwe", "🧶", "\\u0007", "\\u2028", "</script>"]:
            text = self.faulty.read_text().replace('name = "Ink"', f'name = "{name}"')
            self.answer("check", self.file("names.repeat", text), FAULTS)

    def test_unknown_keys_are_named_with_their_line(self):
        file = self.file("keys.repeat", GOOD + '\n[room]\nshelf = "left"\n')
        lines = {one.get("line"): one["text"] for one in self.answer("check", file, DONE)["findings"]}
        self.assertIn(GOOD.count("\n") + 2, lines)
        self.assertIn("room", lines[GOOD.count("\n") + 2])
        self.assertIn(f"note: {file}:{GOOD.count(chr(10)) + 2}: unknown ", run("check", file).text)


class TheRows(JsonTest):
    def test_of_the_sample(self):
        self.assertEqual(
            self.answer("rows", SAMPLE, FAULTS),
            {
                "format": 1,
                "rows": [
                    {
                        "row": 1,
                        "drawn": 1,
                        "why": "drawn",
                        "travel": "leftwards",
                        "main": "A",
                        "contrast": "B",
                        "needles": SAMPLE_NEEDLES,
                        "card_row": 1,
                        "passes": [{"yarns": "AB", "travel": "leftwards"}],
                    }
                ],
                "setup": [
                    {"travel": "leftwards", "main": "A", "selects": False},
                    {"travel": "rightwards", "main": "A", "selects": True},
                ],
            },
        )

    def test_of_the_sample_knitted_twice(self):
        """plain_below of the lowest band counts between repetitions; inserted rows have no drawn row, no contrast."""
        twice = self.file("twice.repeat", SAMPLE.read_text().replace("times = 1 ", "times = 2 "))
        rows = self.answer("rows", twice, FAULTS)["rows"]
        self.assertEqual([row["drawn"] for row in rows], [1, None, None, 1])
        self.assertEqual([row["row"] for row in rows], [1, 2, 3, 4])
        self.assertEqual([row["card_row"] for row in rows], [1, 2, 3, 4])
        self.assertEqual([row["contrast"] for row in rows], ["B", None, None, "B"])
        self.assertEqual([row["travel"] for row in rows], ["leftwards", "rightwards"] * 2)
        self.assertEqual(rows[1]["needles"], [])
        self.assertEqual(rows[1]["passes"], [{"yarns": "A", "travel": "rightwards"}])
        self.assertNotEqual(rows[1]["why"], "drawn")
        self.assertEqual(rows[3]["needles"], SAMPLE_NEEDLES)

    def test_an_all_contrast_row_still_names_its_main(self):
        file = self.file("full.repeat", GOOD.replace('"#..#"', '"####"'))
        row = self.answer("rows", file, DONE)["rows"][0]
        self.assertEqual((row["main"], row["contrast"]), ("A", "B"))
        self.assertEqual(row["passes"], [{"yarns": "B", "travel": "leftwards"}])
        self.assertEqual(len(row["needles"]), 24)

    def test_a_row_without_contrast_stitches_has_none(self):
        file = self.file("plain.repeat", GOOD.replace('"#..#"', '"...."'))
        row = self.answer("rows", file, DONE)["rows"][0]
        self.assertEqual((row["drawn"], row["why"], row["main"], row["contrast"]), (1, "drawn", "A", None))
        self.assertEqual(row["needles"], [], "end needles knit contrast in no row of one colour")

    def test_without_a_card_there_is_no_card_row(self):
        for row in self.answer("rows", self.by_hand, DONE)["rows"]:
            self.assertEqual(set(row), ROW_KEYS)
            self.assertIsNone(row["card_row"])

    def test_in_a_loop_the_card_rows_begin_anew(self):
        file = self.file("loop.repeat", GOOD + "times = 3\n[card]\nloop = true\n")
        rows = self.answer("rows", file)["rows"]
        self.assertEqual([row["card_row"] for row in rows], [1, 2] * 3)

    def test_the_needle_next_to_L1_is_R1(self):
        file = self.file("middle.repeat", BY_HAND.replace('"#..#"', '"####"').replace("stitches = 24", "stitches = 5"))
        row = self.answer("rows", file)["rows"][0]
        self.assertEqual(row["needles"], ["L2", "L1", "R1", "R2", "R3"], "centred, the odd one on the right")

    def test_has_the_same_keys_always(self):
        write_machines(self.folder)
        for seed in range(7000, 7020):
            file = self.file("random.repeat", design_from(seed).text())
            self.answer("check", file)
            for row in self.answer("rows", file)["rows"]:
                self.assertEqual(set(row), ROW_KEYS)

    def test_can_be_very_many(self):
        file = self.file("many.repeat", GOOD + "times = 1000\n")
        self.assertEqual(len(self.answer("rows", file)["rows"]), 2000)


class TheSchemas(JsonTest):
    def test_have_room_for_what_is_to_come(self):
        import jsonschema

        for what, add in {
            "check": lambda answer: answer["findings"].append(
                {"id": "needle-bent", "severity": "note", "text": "t", "remedy": "r", "shelf": 3}
            ),
            "rows": lambda answer: answer["rows"][0].update(shelf=3),
        }.items():
            answer = self.answer(what, SAMPLE)
            add(answer)
            answer["room"] = "harbour"
            jsonschema.validate(answer, schema(f"{what}.schema.json"))
            with self.assertRaises(jsonschema.ValidationError, msg="so that this version's keys are looked at"):
                jsonschema.validate(answer, of_this_version(schema(f"{what}.schema.json")))

    def test_tell_a_spoilt_answer(self):
        import jsonschema

        for what, spoil in {
            "check": lambda answer: answer["findings"][0].update(severity="dreadful"),
            "rows": lambda answer: answer["rows"][0].update(travel="upwards"),
        }.items():
            described = schema(f"{what}.schema.json")
            if described is None:
                self.skipTest(f"docs/{what}.schema.json is not there")
            answer = self.answer(what, SAMPLE)
            spoil(answer)
            with self.assertRaises(jsonschema.ValidationError, msg=what):
                jsonschema.validate(answer, described)


class TheSteps(JsonTest):
    def test_of_every_demo_fit_the_schema_and_are_numbered(self):
        for path in sorted((SOURCE / "patterns").glob("*.repeat")):
            with self.subTest(path=path.name):
                answer = self.answer("steps", path, DONE)
                self.assertEqual([step["step"] for step in answer["steps"]], list(range(1, len(answer["steps"]) + 1)))
                text = run("steps", path).text
                for step in answer["steps"]:
                    self.assertIn(f"{step['step']}. {step['text']}\n", text)

    def test_their_passes_are_those_of_the_rows(self):
        """Setting-up, every pass of every row, and the plain row behind the last."""
        for path in sorted((SOURCE / "patterns").glob("*.repeat")):
            rows = self.answer("rows", path, DONE)
            passes = sum(len(row["passes"]) for row in rows["rows"]) + len(rows["setup"]) + 1
            steps = self.answer("steps", path, DONE)["steps"]
            self.assertEqual(sum(action["do"] == "pass" for step in steps for action in step["actions"]), passes)
            self.assertEqual(steps[-1]["counter"], passes)

    def test_on_paper(self):
        path = SOURCE / "patterns" / "shore-crabs.repeat"
        for name in ("steps.pdf", "steps.html", "steps.txt"):
            self.assert_ended(run("steps", path, "-o", self.folder / name), DONE)
            self.assertGreater((self.folder / name).stat().st_size, 1000)
        self.assert_refused(run("steps", path, "-o", self.folder / "steps.csv"), ".pdf, .html, .txt")
        self.assert_refused(run("steps", path, "--json", "-o", self.folder / "steps.pdf"), "--json")


class WhatWentWrong(JsonTest):
    demo = SOURCE / "patterns" / "puffin-cove.repeat"

    def picture(self, rows):
        """Row 1 last, the knit side; only the rows that are given are looked at."""
        top = max(rows)
        lines = [rows.get(row, "?" * 74) for row in range(top, 0, -1)]
        return self.file("seen.txt", "; what I see\n" + "\n".join(lines) + "\n")

    def explained(self, picture, *options):
        ended = run("explain", self.demo, "--seen", picture, "--json", *options)
        answer = json.loads(ended.text)
        import jsonschema

        jsonschema.validate(answer, schema("explain.schema.json"))
        return ended, answer

    def test_dropped_ends_are_the_end_needles_that_were_not_pushed_back(self):
        picture = self.picture({9: "o" + "." * 72 + "o", 11: "?" * 74})
        ended, answer = self.explained(picture)
        self.assert_ended(ended, DONE)
        first = answer["explanations"][0]
        self.assertEqual((first["departures"][0]["kind"], first["departures"][0]["row"]), ("left-out", 9))
        self.assertEqual((first["remedy"]["back_to_row"], first["remedy"]["ravel_rows"]), (8, 3))
        self.assertIn("Step 16 was left out", run("explain", self.demo, "--seen", picture).text)

    def test_the_explanation_as_a_picture(self):
        picture = self.picture({9: "o" + "." * 72 + "o", 11: "?" * 74})
        drawn = self.folder / "seen.png"
        ended = run("explain", self.demo, "--seen", picture, "--picture", drawn)
        self.assert_ended(ended, DONE)
        self.assertIn("Step 16", ended.text)
        self.assertTrue(drawn.read_bytes().startswith(b"\x89PNG"))

    def test_a_fabric_as_planned(self):
        ended, answer = self.explained(self.picture({9: "." * 74}))
        self.assert_ended(ended, DONE)
        self.assertTrue(answer["as_planned"])

    def test_what_nothing_explains_is_exit_1(self):
        ended, answer = self.explained(self.picture({1: "#." * 37, 2: ".#" * 37, 3: "#." * 37, 4: "##" * 37}))
        self.assert_ended(ended, FAULTS)
        self.assertEqual(answer["explanations"], [])

    def test_a_search_that_was_ended_says_so(self):
        self.demo = SOURCE / "patterns" / "harbour-lanterns.repeat"
        for unseen, complete in ((19, True), (179, False)):
            picture = self.file("seen.txt", "o" * 218 + "\n" + ("?" * 218 + "\n") * unseen)
            ended, answer = self.explained(picture)
            self.assert_ended(ended, FAULTS)
            self.assertIs(answer["complete"], complete)
            text = run("explain", self.demo, "--seen", picture).text
            self.assertEqual("Not every pair of slips was tried" in text, not complete)

    def test_refusals(self):
        self.assert_refused(run("explain", self.demo, "--seen", self.file("short.txt", "...\n")), "short.txt:1", "74")
        self.assert_refused(run("explain", self.demo, "--seen", self.folder / "none.txt"), "none.txt")
        self.assert_refused(run("explain", self.demo), "--seen")


class TheProof(JsonTest):
    def test_of_every_demo(self):
        for path in sorted((SOURCE / "patterns").glob("*.repeat")):
            ended = run("prove", path)
            self.assert_ended(ended, DONE)
            self.assertIn("Proved:", ended.text)

    def test_the_exported_punch_list_proves_too_and_a_wrong_hole_does_not(self):
        path = SOURCE / "patterns" / "hood-border.repeat"
        listed = self.folder / "list.txt"
        self.assert_ended(run("card", path, "-o", listed), DONE)
        self.assert_ended(run("prove", path, "--card", listed), DONE)
        wrong = self.file("wrong.txt", listed.read_text().replace("row 2: ", "row 2: 1-12, ", 1))
        ended = run("prove", path, "--card", wrong)
        self.assert_ended(ended, FAULTS)
        self.assertIn("row 2", ended.text)

    def test_as_json(self):
        for path in sorted((SOURCE / "patterns").glob("*.repeat")):
            with self.subTest(path=path.name):
                answer = self.answer("prove", path, DONE)
                self.assertTrue(answer["proved"])
                self.assertEqual(answer["differences"], [])
                rows = self.answer("rows", path)["rows"]
                self.assertEqual(answer["rows"], len(rows))
                self.assertEqual(answer["stitches"] + answer["selvedges"], len(rows) * answer["needles"])
                self.assertEqual(answer["steps"], len(self.answer("steps", path)["steps"]))
                self.assertLessEqual(answer["longest_float"], answer["limit"])

    def test_what_differs_as_json(self):
        import jsonschema

        path = SOURCE / "patterns" / "hood-border.repeat"
        listed = self.folder / "list.txt"
        self.assert_ended(run("card", path, "-o", listed), DONE)
        wrong = self.file("wrong.txt", listed.read_text().replace("row 2: ", "row 2: 1-12, ", 1))
        ended = run("prove", path, "--card", wrong, "--json")
        self.assert_ended(ended, FAULTS)
        answer = json.loads(ended.text)
        jsonschema.validate(answer, of_this_version(schema("prove.schema.json")))
        self.assertFalse(answer["proved"])
        kinds = {one["kind"] for one in answer["differences"]}
        self.assertIn("wrong-yarn", kinds)
        for one in answer["differences"]:
            self.assertEqual(one["row"], 2)
            if one["kind"] == "wrong-yarn":
                self.assertEqual({one["wanted"], one["found"]}, {"A", "B"})
        plain = run("prove", path, "--card", wrong).text
        self.assertIn(answer["differences"][0]["text"], plain)

    def test_the_fabric_as_a_picture(self):
        path = SOURCE / "patterns" / "hood-border.repeat"
        pictures = [self.folder / f"{side}.png" for side in ("knit", "purl")]
        for picture in pictures:
            ended = run("prove", path, "--picture", picture, "--side", picture.stem)
            self.assert_ended(ended, DONE)
            self.assertTrue(ended.text.startswith("Card:"))
            self.assertTrue(picture.read_bytes().startswith(b"\x89PNG"))
        self.assertNotEqual(pictures[0].read_bytes(), pictures[1].read_bytes())
        self.assert_refused(run("prove", path, "--picture", self.folder / "cloth.jpg"), ".png")

    def test_refusals(self):
        crabs = SOURCE / "patterns" / "shore-crabs.repeat"
        self.assert_refused(run("prove", crabs, "--card", self.file("list.txt", "row 1: 1\n")), "reads no card")
        demo = SOURCE / "patterns" / "hood-border.repeat"
        self.assert_refused(run("prove", demo, "--card", self.file("list.txt", "row 1: 99\n")), "list.txt:1", "1 to 12")


if __name__ == "__main__":
    command.main()
