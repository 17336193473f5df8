"""punchwright yoke: tables and JSON of the demo yokes, seams counted anew from needles and columns, faults with their place,
splitting, and new yokes from measurements."""

import json
import re
import shlex
import shutil
import subprocess

import command
import jsonschema
from command import CANNOT, DONE, FAULTS, SOURCE, CommandTest, run

YOKES = sorted((SOURCE / "patterns").glob("*.yoke"))
TIERS = SOURCE / "patterns" / "tiers"


def position(needle):
    """L2 is -2, L1 is -1, R1 is 0."""
    return -int(needle[1:]) if needle[0] == "L" else int(needle[1:]) - 1


def width_of_tier(yoke, tier):
    repeat = [line for line in yoke.read_text().splitlines() if line.startswith("repeat = ")][tier - 1]
    text = (yoke.parent / repeat.split('"')[1]).read_text()
    return int(next(line for line in text.splitlines() if line.startswith("width = ")).split("= ")[1])


class Yokes(CommandTest):
    def answer(self, path, code=DONE):
        ended = run("yoke", path, "--json")
        self.assert_ended(ended, code)
        answer = json.loads(ended.text)
        schema = json.loads((SOURCE / "docs" / "yoke.schema.json").read_text())
        jsonschema.Draft202012Validator.check_schema(schema)
        jsonschema.validate(answer, schema)
        return answer

    def test_a_repeat_and_a_yoke_are_told_from_each_other(self):
        tier = TIERS / "corks.repeat"
        self.assert_refused(run("yoke", tier), "this is a repeat, not what is wanted here; see it with punchwright check")
        for command_word in ("check", "rows"):
            self.assert_refused(run(command_word, YOKES[0]), "this is a yoke, not what is wanted here; see it with punchwright yoke")

    def test_tiers_whose_drawings_have_faults_are_named(self):
        """One stitch of contrast in 24: main passes behind one, and contrast behind 23, which is too long."""
        rows = ",\n".join('"#' + "." * 23 + '"' for _ in range(2))
        tier = self.file("faulty.repeat", f"""format = 1
[machine]
profile = "bulky-card-24"
[gauge]
stitches = 14.0
rows = 18.0
[[yarn]]
key = "A"
[[yarn]]
key = "B"
[repeat]
width = 24
rows = [{rows}]
[[band]]
rows = 2
main = "A"
contrast = "B"
""")
        yoke = self.file("faulty.yoke", """format = 1
sizes = ["one"]
[[piece]]
name = "front"
bottom_cm = 40.0
top_cm = 36.0
[[piece]]
name = "back"
like = "front"
[depth]
cm = 8.0
[[tier]]
repeat = "faulty.repeat"
plain_above = 4
[fit]
seams = "free"
""")
        checked = run("check", tier)
        self.assertEqual(checked.code, FAULTS)
        for more in ([], ["--json"], ["-o", self.folder / "sheets.pdf"]):
            with self.subTest(more=more):
                told = run("yoke", yoke, *more)
                self.assertEqual(told.code, FAULTS)
                self.assertIn(f"tier 1: its drawing has 2 faults, floats that are too long; see punchwright check {tier}",
                              told.err)
        words = subprocess.run(["pdftotext", "-l", "1", self.folder / "sheets.pdf", "-"], check=True, capture_output=True,
                               text=True).stdout
        self.assertIn("Tier 1: its drawing has 2 faults, floats that are too long; see punchwright check",
                      " ".join(words.split()))

        # The command that is named does so in a shell, whatever the folder is called.
        apart = self.folder / "the gull's tiers"
        apart.mkdir()
        tier.rename(apart / tier.name)
        yoke.write_text(yoke.read_text().replace('"faulty.repeat"', f'"{apart / tier.name}"'))
        named = re.search(r"see (punchwright check .*)\n", run("yoke", yoke).err)[1]
        self.assertEqual(shlex.split(named), ["punchwright", "check", str(apart / tier.name)])

    def test_without_room_beside_the_edge_decreases_say_so(self):
        """Without seam stitches the outermost ones are the edge: 8 of 20 leave them alone, 10 of 20 take each second."""
        path = self.folder / "edge.yoke"
        for top, clear in ((12, True), (10, False)):
            path.write_text(f"""format = 1
sizes = ["one"]
edge = 0
[gauge]
stitches = 10.0
[[piece]]
name = "front"
bottom_cm = 20.0
top_cm = {top}
[depth]
cm = 10.0
[[tier]]
repeat = "{TIERS / 'corks.repeat'}"
plain_above = 2
[fit]
seams = "free"
""")
            tier = self.answer(path)["sizes"][0]["pieces"][0]["tiers"][0]
            self.assertEqual((tier["stitches"], tier["after"]), (20, top))
            self.assertEqual(tier["clear_of_edge"], clear)
            for needle in (tier["first_needle"], tier["last_needle"]):
                self.assertEqual(needle in sum(tier["transfers"], []), not clear)

    def test_tiers_with_other_yarns_by_the_same_key_have_amounts_of_their_own(self):
        good = YOKES[1].read_text()
        tier = self.folder / "corks.repeat"
        tier.write_text(TIERS.joinpath("corks.repeat").read_text().replace('"Whitewash"', '"Sand"'))
        path = self.folder / "changed.yoke"
        path.write_text(good.replace('"tiers/corks.repeat"', '"corks.repeat"').replace('"tiers/', f'"{TIERS}/'))
        one, two = self.answer(YOKES[1])["sizes"], self.answer(path)["sizes"]
        for before, size in zip(one, two):
            whole = {yarn["yarn"]: yarn for yarn in before["yarn"]}
            parts = [yarn for yarn in size["yarn"] if yarn["yarn"] == "A"]
            self.assertEqual([yarn["name"] for yarn in parts], ["Whitewash", "Sand"])
            self.assertEqual(whole["A"]["colour"], "#f4eddc")
            self.assertIn(sum(yarn["metres"] for yarn in parts) - whole["A"]["metres"], (0, 1))  # rounded up
            self.assertEqual(sum(yarn["yarn"] == "B" for yarn in size["yarn"]), 1)
        ended = run("yoke", path)
        self.assertRegex(ended.text, r"yarn A, Whitewash: \d+ g, \d+ m")
        self.assertRegex(ended.text, r"yarn A, Sand: \d+ g, \d+ m")
        self.assertIn("the tiers call two yarns A, Whitewash #f4eddc and Sand #f4eddc: each has an amount of its own",
                      ended.err)
        self.assertNotIn("Whitewash", run("yoke", YOKES[1]).text)
        sheet = self.folder / "sizes.pdf"
        self.assert_ended(run("yoke", path, "-o", sheet, "--sheets", "sizes"), DONE)
        lines = subprocess.run(["pdftotext", "-layout", sheet, "-"], check=True, capture_output=True,
                               text=True).stdout.splitlines()
        for name in ("A Whitewash", "A Sand"):
            row = next(line for line in lines if line.strip().startswith(name))
            self.assertEqual(len(re.findall(r"\d+ g, \d+ m", row)), len(two))

    def test_by_how_much_decreases_keep_clear_of_the_seams_is_told(self):
        good = YOKES[1].read_text().replace('"tiers/', f'"{TIERS}/')
        path = self.folder / "clear.yoke"
        by = set()
        for wished in (0, 2, 30):
            text = re.sub(r"clear_of_seam = \d+", "", good)
            path.write_text(text + ("" if "[decreases]" in text else "\n[decreases]\n") + f"clear_of_seam = {wished}\n")
            for size in self.answer(path)["sizes"]:
                for tier in (tier for piece in size["pieces"] for tier in piece["tiers"]):
                    self.assertEqual(tier["clear_of_seam_wished"], wished)
                    if not tier["transfers"]:
                        self.assertIsNone(tier["clear_of_seam_by"])
                        continue
                    self.assertEqual(tier["clear_of_seam"], tier["clear_of_seam_by"] == wished)
                    # No needle of a transfer is one of the seam stitch and those beside it.
                    touched = [position(needle) for pair in tier["transfers"] for needle in pair]
                    beside = min(min(touched) - position(tier["first_needle"]), position(tier["last_needle"]) - max(touched))
                    self.assertGreaterEqual(beside, 1 + tier["clear_of_seam_by"])
                    by.add(tier["clear_of_seam_by"])
        self.assertLess({0, 2}, by)
        self.assertNotIn(30, by)

    def test_there_are_three_demos_in_three_sizes(self):
        self.assertEqual(len(YOKES), 3)
        for path in YOKES:
            self.assertGreaterEqual(len(self.answer(path)["sizes"]), 3)

    def test_stitches_balance_and_seams_meet(self):
        for path in YOKES:
            for size in self.answer(path)["sizes"]:
                with self.subTest(yoke=path.name, size=size["size"]):
                    self.assertAlmostEqual(size["squares"], size["bound"], places=5)
                    for piece in size["pieces"]:
                        self.check_piece(piece)
                    for seam in size["seams"]:
                        self.assertTrue(seam["meets"])
                    for tier in range(len(size["pieces"][0]["tiers"])):
                        self.check_ring([piece["tiers"][tier] for piece in size["pieces"]], width_of_tier(path, tier + 1))

    def check_piece(self, piece):
        for tier, above in zip(piece["tiers"], piece["tiers"][1:] + [None]):
            self.assertEqual(tier["stitches"] - tier["decreases"] + tier["increases"], tier["after"])
            self.assertEqual(position(tier["last_needle"]) - position(tier["first_needle"]) + 1, tier["stitches"])
            self.assertEqual(sum(times for _, times in tier["every"]), tier["decreases"] + tier["increases"])
            forward, at = [], position(tier["first_needle"]) - 1
            for step, times in tier["every"]:
                for _ in range(times):
                    at += step
                    forward.append(at)
            self.assertEqual([position(start) for start, _ in tier["transfers"]], forward)
            touched = [position(needle) for pair in tier["transfers"] for needle in pair]
            self.assertEqual(len(touched), len(set(touched)))
            if above:
                self.assertEqual(tier["after"], above["stitches"])
                self.assertEqual(tier["needles_after"], [above["first_needle"], above["last_needle"]])
            elif tier["increases"] == 0:
                self.assertIsNone(tier["needles_after"])  # off the bed, and not hung on again

    def check_ring(self, tiers, width):
        """One seam stitch on each side; columns follow each other from piece to piece, and within each."""
        self.assertEqual(sum(tier["stitches"] - 2 for tier in tiers) % width, 0)
        for tier, right in zip(tiers, tiers[1:] + tiers[:1]):
            self.assertEqual((tier["left_column"] + tier["stitches"] - 2 - 1 - tier["right_column"]) % width, 0)
            self.assertEqual((tier["right_column"] + 1 - right["left_column"]) % width, 0)
            if tier["first_column"] is None:
                # On a card of 24 that begins at L12 the last column of the repeat stands on L12, counted leftwards on the
                # knit side.
                column = (width - 1 - (position(tier["first_needle"]) + 1 + 12)) % width + 1
                self.assertEqual(tier["right_column"], column)

    def test_the_table_says_the_same(self):
        ended = run("yoke", YOKES[0])
        self.assert_ended(ended, DONE)
        for size in self.answer(YOKES[0])["sizes"]:
            self.assertIn("size " + size["size"], ended.text)
        self.assertIn("all seams meet", ended.text)
        self.assertIn("every ", ended.text)

    def test_faults_have_their_place_and_a_remedy(self):
        good = YOKES[1].read_text().replace('"tiers/', f'"{TIERS}/')
        for change, said in [
            (("edge = 1", "edge = -1"), ":5:8: 'edge' is -1; allowed: a whole number from 0 to 50"),
            (("plain_above = ", "plain_above = 1 # "), "plain above tier 1, and the procedure needs 4"),
            (("corks.repeat", "cork.repeat"), "cork.repeat"),
            (("tolerance = 0.06", "tolerance = 0.001"), "no stitch counts of size"),
        ]:
            path = self.folder / "changed.yoke"
            text = good.replace(*change)
            self.assertNotEqual(text, good)
            path.write_text(text)
            ended = run("yoke", path)
            self.assert_ended(ended, CANNOT)
            self.assertIn(said, ended.err)
            self.assertIn("changed.yoke:", ended.err)
        self.assert_refused(run("yoke"), "FILE")
        self.assert_refused(run("yoke", YOKES[0], "-o", self.folder / "out.yoke"), "--split")

    def test_a_broken_tier_is_told_with_the_line_that_names_it(self):
        good = YOKES[1].read_text()
        line = next(number for number, text in enumerate(good.splitlines(), 1) if "corks.repeat" in text)
        path = self.folder / "changed.yoke"
        tier = self.folder / "corks.repeat"
        text = good.replace('"tiers/corks.repeat"', '"corks.repeat"').replace('"tiers/', f'"{TIERS}/')
        path.write_text(text)
        width = TIERS.joinpath("corks.repeat").read_text().replace("width = ", "width = -")
        for broken, said in [
            ("JPEG \u00ff\u00d8", "corks.repeat:1:"),
            (width, "corks.repeat:"),
            ("format = 1\n", "corks.repeat:1:1: 'yarn' is missing"),
        ]:
            tier.write_text(broken)
            ended = run("yoke", path)
            self.assert_ended(ended, CANNOT)
            self.assertIn(f"changed.yoke:{line}:10: ", ended.err)
            self.assertIn(said, ended.err)

    def test_notes_go_to_standard_error(self):
        good = YOKES[1].read_text()
        path = self.folder / "changed.yoke"
        tier = self.folder / "corks.repeat"
        tier.write_text(TIERS.joinpath("corks.repeat").read_text().replace("[card]\n", "[card]\ncolour = 3\n"))
        text = good.replace('"tiers/corks.repeat"', '"corks.repeat"').replace('"tiers/', f'"{TIERS}/')
        path.write_text(text.replace("[fit]", "[fit]\ntolerence = 0.1"))
        line = next(number for number, row in enumerate(path.read_text().splitlines(), 1) if "tolerence" in row)
        for more in ((), ("--json",), ("-o", self.folder / "out.pdf", "--sheets", "sizes")):
            ended = run("yoke", path, *more)
            self.assert_ended(ended, DONE)
            self.assertIn(f"changed.yoke:{line}: unknown key 'fit.tolerence' is kept as it is\n", ended.err)
            self.assertIn("corks.repeat:", ended.err)
            self.assertIn("unknown key 'card.colour'", ended.err)
            self.assertNotIn("tolerence", ended.text)
            self.assertEqual(run("yoke", path, *more, "--quiet").err, "")
        path.write_text(text)
        tier.write_text(TIERS.joinpath("corks.repeat").read_text())
        self.assertEqual(run("yoke", path).err, "")

    def test_where_nothing_fits_the_nearest_widths_are_named(self):
        """A front of 5 cm at the top would lose more than one stitch in two; one wider top does."""
        good = YOKES[1].read_text().replace('"tiers/', f'"{TIERS}/')
        path = self.folder / "changed.yoke"
        for top in (5, 4, 3, 2, 1):
            text = good.replace("top_cm = [11.8, ", f"top_cm = [{top}, ")
            self.assertNotEqual(text, good)
            path.write_text(text)
            ended = run("yoke", path)
            self.assert_ended(ended, CANNOT)
            said = re.search(r"with the nearest widths: front ([0-9.]+) cm at the top instead of ([0-9.]+) cm\n", ended.err)
            self.assertEqual(float(said[2]), top)
            self.assertLessEqual(float(said[1]), 7.5)
            path.write_text(good.replace("top_cm = [11.8, ", f"top_cm = [{said[1]}, "))
            self.assert_ended(run("yoke", path), DONE)

    def narrow(self, tops):
        """The demo with other widths of its first piece at the top, one for each size."""
        good = YOKES[1].read_text().replace('"tiers/', f'"{TIERS}/')
        path = self.folder / "narrow.yoke"
        text = re.sub(r"top_cm = \[11.8, .*\]", f"top_cm = {tops}", good, count=1)
        self.assertNotEqual(text, good)
        path.write_text(text)
        return path

    def test_sizes_that_fit_are_told_beside_those_that_do_not(self):
        good = self.answer(YOKES[1])["sizes"]
        names = [size["size"] for size in good]
        tops = [float(top) for top in re.search(r"top_cm = \[(.*?)\]", YOKES[1].read_text())[1].split(", ")]
        path = self.narrow([5.0, *tops[1:-1], 4.0])  # the first and the last don't fit
        answer = self.answer(path, CANNOT)
        self.assertEqual(answer["sizes"], good[1:-1])
        self.assertEqual([fault["size"] for fault in answer["faults"]], [names[0], names[-1]])
        ended = run("yoke", path)
        self.assert_ended(ended, CANNOT)
        for fault, name in zip(answer["faults"], (names[0], names[-1])):
            self.assertIn(f"no stitch counts of size {name} keep to every rule", fault["message"])
            self.assertIn("it fits with", fault["remedy"])
            self.assertGreater(fault["line"], 0)
            said = f"{fault['file']}:{fault['line']}:{fault['column']}: {fault['message']}; {fault['remedy']}\n"
            self.assertIn(said, ended.err)
            self.assertIn(f"size {name} doesn't fit\n", ended.text)
        for name in names[1:-1]:
            self.assertIn(f"size {name}\n", ended.text)
            self.assertNotIn(f"size {name} doesn't fit", ended.text)
        self.assertEqual(ended.text.count("proved: no counts"), len(names) - 2)

    def test_sheets_of_the_sizes_that_fit(self):
        names = [size["size"] for size in self.answer(YOKES[1])["sizes"]]
        tops = [float(top) for top in re.search(r"top_cm = \[(.*?)\]", YOKES[1].read_text())[1].split(", ")]
        path = self.narrow([5.0, *tops[1:]])
        out = self.folder / "sheets.pdf"

        def words():
            return subprocess.run(["pdftotext", out, "-"], check=True, stdout=subprocess.PIPE).stdout.decode()

        ended = run("yoke", path, "-o", out, "--sheets", "schematic")
        self.assert_ended(ended, CANNOT)
        self.assertIn(f"of size {names[0]} keep", ended.err)
        self.assertNotIn(f"Size {names[0]}:", words())
        for name in names[1:]:
            self.assertIn(f"Size {name}:", words())
        ended = run("yoke", path, "-o", out, "--sheets", "schematic", "--sizes", ",".join(names[1:]))
        self.assert_ended(ended, DONE)  # what was asked for, fits
        self.assertEqual(ended.err, "")
        out.unlink()
        ended = run("yoke", path, "-o", out, "--sizes", names[0])
        self.assert_ended(ended, CANNOT)
        self.assertFalse(out.exists())

    def test_every_piece_that_is_too_wide_is_named_in_every_size(self):
        text = YOKES[2].read_text().replace('"tiers/', f'"{TIERS}/')
        widths = re.findall(r"bottom_cm = \[(.*?)\]", text)
        self.assertEqual(len(widths), 1)
        sizes = widths[0].split(", ")
        path = self.folder / "wide.yoke"
        path.write_text(text.replace(widths[0], ", ".join([*sizes[:-2], "130.0", "131.0"])))
        answer = self.answer(path, CANNOT)
        self.assertEqual(len(answer["sizes"]), len(sizes) - 2)
        ended = run("yoke", path)
        self.assert_ended(ended, CANNOT)
        pieces = [piece["piece"] for piece in answer["sizes"][0]["pieces"]]
        names = [size["size"] for size in self.answer(YOKES[2])["sizes"]][-2:]
        self.assertEqual(len(answer["faults"]), 2 * len(pieces))
        for name in names:
            for piece in pieces:
                self.assertRegex(ended.err, rf"piece '{piece}' is [0-9]+ stitches wide in size {name}, [0-9]+ at least within the tolerance, and the bed has")

    def test_centred_and_free_seams(self):
        good = YOKES[1].read_text().replace('"tiers/', f'"{TIERS}/')
        path = self.folder / "changed.yoke"
        path.write_text(good.replace('"continuous"', '"free"'))
        for size in self.answer(path)["sizes"]:  # at most one seam of each tier takes the whole mismatch
            for tier in (1, 2, 3):
                self.assertLessEqual(sum(not seam["meets"] for seam in size["seams"] if seam["tier"] == tier), 1)
        for demo in YOKES:
            good = demo.read_text().replace('"tiers/', f'"{TIERS}/')
            path.write_text(good.replace('"continuous"', '"centred"'))
            for size in self.answer(path)["sizes"]:
                self.assertTrue(all(seam["alike"] for seam in size["seams"]))
                for piece in size["pieces"]:
                    for number, tier in enumerate(piece["tiers"], 1):  # the repeat's middle is the piece's
                        width, visible = width_of_tier(demo, number), tier["stitches"] - 2
                        self.assertEqual(visible % 2, width % 2)
                        self.assertEqual((tier["left_column"] - 1 + (visible - 1) // 2) % width, (width - 1) // 2)
            text = run("yoke", path).text
            self.assertIn("the middle of the repeat lies at the middle of every piece, and seams are alike", text)
            self.assertNotIn("left out", text)

    def test_a_wide_piece_is_refused_and_split(self):
        text = YOKES[1].read_text().replace('"tiers/', f'"{TIERS}/')
        lines = [
            "bottom_cm = 130.0" if line.startswith("bottom_cm") else "top_cm = 50.0" if line.startswith("top_cm") else line
            for line in text.splitlines()
        ]
        path = self.folder / "wide.yoke"
        path.write_text("\n".join(lines) + "\n")
        ended = run("yoke", path)
        self.assert_ended(ended, CANNOT)
        self.assertIn("2 pieces in its place would fit", ended.err)
        out = self.folder / "split.yoke"
        self.assert_ended(run("yoke", path, "--split", "-o", out), DONE)
        self.assertEqual(len(self.answer(out)["sizes"][0]["pieces"]), 8)
        # Seven parts of each of four pieces are more than a file holds.
        text = "\n".join(lines).replace("bottom_cm = 130.0", "bottom_cm = 480.0") + "\n"
        path.write_text(text.replace("tolerance = 0.06", "tolerance = 0.01"))
        for more in ((), ("--split", "-o", out)):
            ended = run("yoke", path, *more)
            self.assert_ended(ended, CANNOT)
            self.assertIn("allowed: 24 pieces at most", ended.err)
            self.assertIn("wide.yoke:", ended.err)

    def test_sheets_and_json_at_once(self):
        """The sheets are written, and standard output is the answer alone."""
        out = self.folder / "sheets.pdf"
        ended = run("yoke", YOKES[0], "--json", "-o", out, "--sheets", "sizes")
        self.assert_ended(ended, DONE)
        self.assertEqual(ended.text, run("yoke", YOKES[0], "--json").text)
        self.assertTrue(out.read_bytes().startswith(b"%PDF"))
        self.assert_refused(run("yoke", YOKES[0], "--json", "-o", "-"), "--json")
        self.assert_refused(run("yoke", YOKES[0], "--json", "-o", self.folder / "none" / "sheets.pdf"))

    def test_a_split_yoke_elsewhere_names_the_same_files(self):
        """Tiers and machine, from a folder with a space in its name to another one and to itself."""
        here, there = self.folder / "t a", self.folder / "elsewhere" / "deep"
        here.mkdir()
        there.mkdir(parents=True)
        shutil.copytree(TIERS, here / "tiers")
        machine = here / "own.machine"
        machine.write_text('format = 1\nname = "own"\n[bed]\nneedles = 112\npitch_mm = 9.0\n')
        text = YOKES[1].read_text().replace("\n[[piece]]", '\n[machine]\nprofile = "own.machine"\n\n[[piece]]', 1)
        text = re.sub(r"bottom_cm = .*", "bottom_cm = 130.0", text)
        wide = here / "wide yoke.yoke"
        wide.write_text(re.sub(r"top_cm = .*", "top_cm = 60.0", text).replace("continuous", "free"))
        out = there / "x.yoke"
        self.assert_ended(run("yoke", wide, "--split", "-o", out), DONE)
        self.assertIn('profile = "../../t a/own.machine"', out.read_text())
        self.assertIn('repeat = "../../t a/tiers/', out.read_text())
        beside = here / "beside.yoke"
        self.assert_ended(run("yoke", wide, "--split", "-o", beside), DONE)
        self.assertIn('profile = "own.machine"', beside.read_text())
        self.assertIn('repeat = "tiers/', beside.read_text())
        self.assertEqual(self.answer(out)["sizes"], self.answer(beside)["sizes"])

    def test_a_new_yoke_from_measurements(self):
        out = self.folder / "new.yoke"
        tiers = ["--tier", TIERS / "corks.repeat", "--tier", TIERS / "pot-buoys.repeat", "--tier", TIERS / "small-waves.repeat"]
        for kind in ("pullover", "poncho"):
            ended = run("yoke", "--new", kind, *tiers, "--chest", "90,100.5", "--sizes", "one,two", "-o", out)
            self.assert_ended(ended, DONE)
            self.assertIn("# chest 90, 100.5 cm with 7.5 cm of ease", out.read_text())
            sizes = self.answer(out)["sizes"]
            self.assertEqual([size["size"] for size in sizes], ["one", "two"])
            self.assertEqual(len(sizes[0]["pieces"]), 4)
        for wrong in (["--chest", "90", "--sizes", "S,M"], ["--sizes", "S,XXS"], ["--sizes", "S", "--upper-arm", "30,31"]):
            self.assert_refused(run("yoke", "--new", "poncho", *tiers, "-o", out, *wrong))
        ended = run("yoke", "--new", "pullover", *tiers, "--sizes", "4 years,6 years", "--chest", "60,66", "--ease", "6", "-o", out)
        self.assert_ended(ended, DONE)
        self.assertIn("# sleeves: upper arm 19.1, 20.3 cm", out.read_text())  # 7.5 and 8 inches
        self.assertIn("by age: crochetkitten.com", out.read_text())
        self.assert_refused(run("yoke", "--new", "pullover", *tiers, "--sizes", "4 years", "-o", out), "--chest")
        self.assert_refused(run("yoke", "--new", "poncho", "-o", out), "--tier")
        self.assert_refused(run("yoke", "--new", "poncho", *tiers, "-o", self.folder / "new.txt"), ".yoke")

    def test_a_new_yoke_has_names_in_the_language_it_is_begun_in(self):
        out = self.folder / "neu.yoke"
        tiers = [word for tier in ("corks", "pot-buoys", "small-waves") for word in ("--tier", TIERS / f"{tier}.repeat")]
        begin = ["yoke", "--language", "de", *tiers, "--chest", "90,100", "--sizes", "14 years,tall", "-o", out, "--new"]
        for kind, names in (("pullover", ["Vorderteil", "linker Ärmel", "Rückenteil", "rechter Ärmel"]),
                            ("poncho", ["vorn rechts", "vorn links", "hinten links", "hinten rechts"])):
            self.assert_ended(run(*begin, kind), DONE)
            sizes = self.answer(out)["sizes"]
            self.assertEqual([size["size"] for size in sizes], ["14 Jahre", "tall"])
            self.assertEqual([piece["piece"] for piece in sizes[0]["pieces"]], names)
            self.assertNotIn("years", out.read_text(), "nor in its comments")
            self.assertIn("# 14 Jahre: ", out.read_text())

    def test_a_new_yoke_that_could_not_be_read_is_not_written(self):
        out = self.folder / "new.yoke"
        for wrong, words in ((["--chest", "90", "--upper-arm", "10", "--ease", "-4"], "'90 cm': each sleeve would be -0.9 cm"),
                             (["--chest", "60", "--upper-arm", "10", "--ease", "-20"], "each sleeve would be -13.2 cm"),
                             (["--chest", "10", "--ease", "-10"], "give more ease, or a larger chest")):
            ended = run("yoke", "--new", "pullover", "--tier", TIERS / "corks.repeat", *wrong, "-o", out)
            self.assert_refused(ended, words)
            self.assertFalse(out.exists())

    def test_a_new_yoke_that_does_not_fit_is_written_and_says_so(self):
        out = self.folder / "new.yoke"
        tiers = [word for tier in ("corks", "pot-buoys", "small-waves") for word in ("--tier", TIERS / f"{tier}.repeat")]
        ended = run("yoke", "--new", "pullover", *tiers, "--chest", "34,100.5", "--sizes", "doll,tall", "-o", out)
        self.assert_ended(ended, FAULTS)
        self.assertEqual(ended.text, f"{out}\n")
        self.assertIn("no stitch counts of size doll keep to every rule", ended.err)
        self.assertIn("it fits with", ended.err)
        self.assertNotIn("size tall", ended.err)
        self.assertEqual([fault["size"] for fault in self.answer(out, CANNOT)["faults"]], ["doll"])

    def test_increases_are_named_in_the_table(self):
        path = self.folder / "wider.yoke"
        path.write_text(f"""format = 1
sizes = ["one"]
[[piece]]
name = "front"
bottom_cm = 22.0
top_cm = 30.0
[depth]
cm = 12.0
[[tier]]
repeat = "{TIERS / 'corks.repeat'}"
plain_above = 4
[fit]
tolerance = 0.2
seams = "free"
""")
        ended = run("yoke", path)
        self.assert_ended(ended, DONE)
        self.assertIn(b"after  increases\n", ended.out)
        self.assertNotIn(b"decreases", ended.out)

    def test_in_the_readers_language(self):
        """Names and comments of a new yoke, and a table whose columns stand below each other all the same; figures have the
        language's sign, and what goes onto a needle is no range."""
        out = self.folder / "new.yoke"
        tiers = ["--tier", TIERS / "corks.repeat", "--tier", TIERS / "pot-buoys.repeat", "--tier", TIERS / "small-waves.repeat"]
        self.assert_ended(run("--language", "de", "yoke", "--new", "pullover", *tiers, "--chest", "100.5", "--sizes", "one",
                              "-o", out), DONE)
        text = out.read_text()
        self.assertIn('name = "Vorderteil"', text)
        self.assertIn("# Brustumfang 100.5 cm mit 7.5 cm Zugabe", text)
        for english in ("front", "sleeve", "chest"):
            self.assertNotIn(english, text)
        self.assertEqual([piece["piece"] for piece in self.answer(out)["sizes"][0]["pieces"]],
                         ["Vorderteil", "linker Ärmel", "Rückenteil", "rechter Ärmel"])
        table = run("--language", "de", "yoke", out).text.splitlines()
        ends = {line.index("–") for line in table if re.match(r"(Vorder|link|Rücken|recht)", line)}
        self.assertEqual(len(ends), 1, table)
        text = YOKES[1].read_text().replace('"tiers/', f'"{TIERS}/').replace("top_cm = [11.8, ", "top_cm = [5.5, ")
        told = run("--language", "de", "yoke", self.file("narrow.yoke", text)).err
        self.assertRegex(told, r"[0-9],[0-9]+ cm .* 5,5 cm")
        self.assertNotRegex(told, r"[0-9]\.[0-9]+ cm")
        sheets = self.folder / "steps.pdf"
        self.assert_ended(run("--language", "de", "yoke", YOKES[1], "-o", sheets, "--sheets", "steps"), DONE)
        words = subprocess.run(["pdftotext", sheets, "-"], check=True, stdout=subprocess.PIPE).stdout.decode()
        self.assertRegex(words, r"Nachbarnadel\s+umhängen:\s+[LR]\d+\s+auf\s+[LR]\d+")


class TheProof(CommandTest):
    def test_every_demo_is_knitted_by_its_steps_and_its_seams_meet(self):
        for path in sorted((SOURCE / "patterns").glob("*.yoke")):
            with self.subTest(path=path.name):
                ended = run("prove", path)
                self.assert_ended(ended, DONE)
                self.assertIn("Proved:", ended.text)
                ended = run("prove", path, "--json")
                self.assert_ended(ended, DONE)
                answer = json.loads(ended.text)
                described = json.loads((SOURCE / "docs/prove-yoke.schema.json").read_text())
                jsonschema.Draft202012Validator.check_schema(described)
                jsonschema.validate(answer, described)
                self.assertTrue(answer["proved"])
                plan = json.loads(run("yoke", path, "--json").text)
                self.assertEqual([size["size"] for size in answer["sizes"]], [size["size"] for size in plan["sizes"]])
                for proved, planned in zip(answer["sizes"], plan["sizes"]):
                    self.assertEqual([(seam["tier"], seam["between"], seam["planned"]) for seam in proved["seams"]],
                                     [(seam["tier"], seam["between"], seam["meets"]) for seam in planned["seams"]])

    def test_a_size_that_does_not_fit_is_told_and_the_others_are_proved(self):
        shutil.copytree(SOURCE / "patterns", self.folder / "patterns")
        path = self.folder / "patterns" / "harbour-pullover.yoke"
        wide = re.search(r"bottom_cm = \[(.*), ([0-9.]+)\]", path.read_text())
        path.write_text(path.read_text().replace(wide[0], f"bottom_cm = [{wide[1]}, 400.0]"))
        ended = run("prove", path)
        self.assertEqual(ended.code, 2)
        self.assertIn("size S: ", ended.text)
        self.assertNotIn("size L: ", ended.text)
        self.assertIn("size L doesn't fit\n", ended.text)
        self.assertNotIn("Proved", ended.text)
        self.assertIn("Not proved: not every size fits. In those that do, by its steps every piece is knitted", ended.text)
        self.assertIn("front", ended.err)
        ended = run("prove", path, "--json")
        self.assertEqual((ended.code, json.loads(ended.text)["proved"]), (2, False))

    def test_notes_are_told_as_by_the_other_command(self):
        shutil.copytree(SOURCE / "patterns", self.folder / "patterns")
        path = self.folder / "patterns" / "anchor-yoke.yoke"
        path.write_text(path.read_text().replace("[fit]", "[fit]\ntolerence = 0.1"))
        for more in ((), ("--json",)):
            told = run("yoke", path, *more).err
            self.assertIn("unknown key 'fit.tolerence' is kept as it is\n", told)
            ended = run("prove", path, *more)
            self.assert_ended(ended, DONE)
            self.assertEqual(ended.err, told)
            self.assertEqual(run("prove", path, *more, "--quiet").err, "")

    def test_a_card_or_a_picture_is_for_one_design(self):
        path = SOURCE / "patterns" / "anchor-yoke.yoke"
        self.assert_refused(run("prove", path, "--picture", self.folder / "a.png"), "anchor-yoke.yoke", "--picture")
        self.assert_refused(run("prove", path, "--card", self.file("list.txt", "")), "anchor-yoke.yoke", "--card")


if __name__ == "__main__":
    command.main()
