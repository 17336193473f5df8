"""Several designs in one call of check, and how much is said: --quiet and --verbose. What scripts rely on: data alone on
standard output, all else on standard error, the exit code of the worst file; no colour codes, terminal or not."""

import json
import os
import pty
import subprocess

import jsonschema

import command
from command import CANNOT, DONE, FAULTS, PROGRAM, SOURCE, CommandTest, run


class SeveralDesigns(CommandTest):
    def test_are_checked_one_after_the_other_and_summed_up(self):
        alone = [run("check", file).text for file in (self.good, self.faulty, self.by_hand)]
        ended = run("check", self.good, self.faulty, self.by_hand)
        self.assert_ended(ended, FAULTS)
        self.assertEqual(ended.text, "".join(alone) + "3 files: 2 without faults, 1 with faults\n")
        self.assertEqual(ended.err, "")

    def test_are_all_checked_where_one_cannot_be_read(self):
        missing = self.folder / "missing.repeat"
        ended = run("check", missing, self.faulty, self.good)
        self.assert_ended(ended, CANNOT)
        self.assertTrue(ended.text.endswith("3 files: 1 without faults, 1 with faults, 1 not to be read\n"))
        self.assertRegex(ended.err, r"\Apunchwright: [^\n]*missing\.repeat[^\n]*\n\Z")

    def test_end_well_where_all_are_good(self):
        self.assert_ended(run("check", self.good, self.by_hand), DONE)

    def test_as_json_have_a_list_of_files(self):
        missing = self.folder / "missing.repeat"
        ended = run("check", "--json", self.good, missing, self.faulty)
        self.assert_ended(ended, CANNOT)
        answer = json.loads(ended.text)
        schema = json.loads((SOURCE / "docs/check.schema.json").read_text())
        jsonschema.validate(answer, schema)
        self.assertEqual([entry["file"] for entry in answer["files"]], [str(self.good), str(missing), str(self.faulty)])
        self.assertIn("missing.repeat", answer["files"][1]["error"])
        for place, file in [(0, self.good), (2, self.faulty)]:
            self.assertEqual(answer["files"][place]["findings"], json.loads(run("check", "--json", file).text)["findings"])
        for wrong in [{"format": 1}, {"format": 1, "files": [{"findings": []}]}, {"format": 1, "files": [{"file": "x"}]}]:
            with self.assertRaises(jsonschema.ValidationError):
                jsonschema.validate(wrong, schema)


class HowMuchIsSaid(CommandTest):
    def test_quietly_the_names_of_written_files_and_hints_are_left_out(self):
        for quiet in ("-q", "--quiet"):
            out = self.folder / f"card{quiet}.pdf"
            ended = run("card", quiet, self.faulty, "-o", out)
            self.assert_ended(ended, FAULTS)
            self.assertEqual((ended.text, ended.err), ("", ""))
            self.assertTrue(out.exists())
        self.assertNotIn("files:", run("check", "-q", self.good, self.by_hand).text)

    def test_quietly_data_and_errors_stay(self):
        self.assertEqual(run("rows", "-q", self.good).out, run("rows", self.good).out)
        self.assertEqual(run("check", "-q", self.faulty).out, run("check", self.faulty).out)
        self.assert_refused(run("card", "-q", self.folder / "missing.repeat", "-o", self.folder / "card.pdf"), "missing")

    def test_verbosely_what_is_read_and_written_is_told_on_standard_error(self):
        out = self.folder / "card.pdf"
        ended = run("card", "--verbose", self.good, "-o", out)
        self.assert_ended(ended, DONE)
        self.assertEqual(ended.text, f"{out}\n")
        self.assertEqual(ended.err, f"punchwright: read {self.good} ({self.good.stat().st_size} bytes)\n"
                                    f"punchwright: wrote {out} ({out.stat().st_size} bytes)\n")
        self.assertEqual(run("rows", "-v", self.good).out, run("rows", self.good).out)

    def on_a_terminal(self, *arguments, **environment):
        master, slave = pty.openpty()
        subprocess.run([PROGRAM, *map(str, arguments)], stdout=slave, stderr=slave, check=False, timeout=60,
                       env={**os.environ, "TERM": "xterm-256color", **environment})
        os.close(slave)
        said = b""
        try:
            while part := os.read(master, 65536):
                said += part
        except OSError:  # a terminal ends so
            pass
        os.close(master)
        return said.replace(b"\r\n", b"\n")

    def test_on_a_terminal_there_are_no_colours_and_no_progress_with_or_without_no_color(self):
        for arguments in [["check", self.faulty], ["card", self.good, "-o", self.folder / "card.pdf"], ["--help"]]:
            ended = run(*arguments)
            self.assertEqual(self.on_a_terminal(*arguments), ended.out + ended.err.encode())
            self.assertEqual(self.on_a_terminal(*arguments, NO_COLOR="1"), ended.out + ended.err.encode())


if __name__ == "__main__":
    command.main()
