"""The words of help and of wrong calls are compared with golden files; PUNCHWRIGHT_RENEW=1 writes them anew, to be looked
at. Help and version on standard output with exit 0; a call that makes no sense on standard error with exit 2.
Also what 'punchwright FILE' starts."""

import os
import pathlib
import re
import shutil
import stat

import command
from command import COMMANDS, DONE, GOOD, SOURCE, CommandTest, run


GOLDEN = pathlib.Path(__file__).parent / "golden"

WRONG_CALLS = [
    "check",
    "card design.repeat",
    "check --jason design.repeat",
    "rows design.repeat another.repeat",
    "steps design.repeat rows",
    "check design.repeat --json=5",
    "rows design.repeat -o rows.txt",
    "card design.repeat -o",
    "card design.repeat --output=",
    "needles design.repeat -o one.pdf -o two.pdf",
    "fabric design.repeat -o cloth.png --side front",
    "fabric design.repeat -o cloth.png --side",
    "machine bulky-card-24 --over-rows 252,5",
    "machine bulky-card-24 --swatch 9",
    "measure -o page.pdf",
    "swatch bulky-card-24 -o swatch.pdf --paper a3",
    "check design.repeat --language xx",
    "--language xx design.repeat",
    "--frobnicate",
    "punch design.repeat",
]


class TheWordsAreOurOwn(CommandTest):
    maxDiff = None

    def assert_golden(self, name, text):
        file = GOLDEN / name
        if os.environ.get("PUNCHWRIGHT_RENEW"):
            file.write_text(text)
        self.assertEqual(text, file.read_text(), f"if it is meant so: PUNCHWRIGHT_RENEW=1, and look at {file}")
        # The parser's own words.
        for word in ["REQUIRED", "TEXT", "FLOAT", "OPTIONS", "SUBCOMMAND", "Positionals", "ENUM", "required but"]:
            self.assertNotIn(word, text)

    def test_of_help(self):
        text = ""
        for arguments in [[], *([name] for name in COMMANDS)]:
            said = run(*arguments, "--help").text
            self.assertLessEqual(max(map(len, said.splitlines())), 79, "fits a terminal")
            text += "$ " + " ".join(["punchwright", *arguments, "--help"]) + f"\n{said}\n"
        self.assert_golden("help.txt", text)

    def test_of_wrong_calls(self):
        self.file("design.repeat", GOOD)
        text = ""
        for call in WRONG_CALLS:
            ended = run(*call.split(), cwd=self.folder)
            self.assert_refused(ended)
            text += f"$ punchwright {call}\n{ended.err}"
        self.assert_golden("wrong-calls.txt", text)


class HelpIsThereEverywhere(CommandTest):
    def test_of_the_program(self):
        for option in ["--help", "-h"]:
            ended = run(option)
            self.assert_ended(ended, DONE)
            self.assertEqual(ended.err, "")
            for name in COMMANDS:
                if name != "thumbnail":  # called by desktops; its own --help and the manual tell of it
                    self.assertRegex(ended.text, rf"(?m)^\s*{name}\b", "the commands are listed")
            self.assertLess(len(ended.text.splitlines()), 24, "24 lines, the prompt on the last")

    def test_of_each_command(self):
        said = set()
        for name in COMMANDS:
            with self.subTest(command=name):
                ended = run(name, "--help")
                self.assert_ended(ended, DONE)
                self.assertEqual(ended.err, "")
                self.assertIn("--help", ended.text)
                self.assertIn("--version", ended.text)
                said.add(ended.text)
        self.assertEqual(len(said), len(COMMANDS), "each has a help of its own")

    def test_tells_what_a_command_takes(self):
        for name, words in {
            "check": ["FILE", "--json"],
            "rows": ["FILE", "--json"],
            "card": ["FILE", "--output", ".pdf", ".svg", ".png", ".txt"],
            "needles": ["FILE", "--output", ".pdf", ".html", ".csv", ".txt"],
            "fabric": ["FILE", "--output", ".png", "--side", "knit", "purl"],
        }.items():
            text = run(name, "--help").text
            for word in words:
                self.assertIn(word, text, name)

    def test_wins_over_what_else_is_wrong(self):
        self.assert_ended(run("card", "nowhere.repeat", "--help"), DONE)


class TheVersion(CommandTest):
    def test_is_the_projects(self):
        version = re.search(r"VERSION (\d+\.\d+\.\d+)", (SOURCE / "CMakeLists.txt").read_text()).group(1)
        for arguments in [["--version"], *([name, "--version"] for name in COMMANDS)]:
            with self.subTest(arguments=arguments):
                ended = run(*arguments)
                self.assert_ended(ended, DONE)
                self.assertEqual(ended.text, f"punchwright {version}\n")
                self.assertEqual(ended.err, "")


class ACallThatMakesNoSense(CommandTest):
    def test_names_what_is_wrong(self):
        good = self.good
        for arguments, word in [
            (["check"], "FILE"),
            (["rows"], "FILE"),
            (["card"], ""),
            (["card", good], "output"),
            (["needles", good], "output"),
            (["fabric", good], "output"),
            (["measure", "-o", self.folder / "m.pdf"], ""),
            (["check", "--jason", good], "--jason"),
            (["rows", good, self.faulty], "long floats.repeat"),
            (["rows", good, "-o", self.folder / "rows.txt"], "-o"),
            (["card", good, "-o"], "output"),
            (["fabric", good, "-o", self.folder / "f.png", "--side", "front"], "front"),
            (["fabric", good, "-o", self.folder / "f.png", "--side"], "side"),
            (["machine", "bulky-card-24", "--over-rows", "wide"], "wide"),
            (["machine", "bulky-card-24", "--swatch", "9"], "9"),
            (["--frobnicate"], "--frobnicate"),
        ]:
            with self.subTest(arguments=arguments):
                self.assert_refused(run(*arguments, cwd=self.folder), word)
        self.assertEqual(self.names(), sorted(["buoys.repeat", "long floats.repeat", "by hand.repeat"]))

    def test_two_commands_in_one_call(self):
        self.assert_refused(run("steps", self.good, "rows"))


class WithoutACommandTheEditorStarts(CommandTest):
    """The program and the editor are two; here a copy of the program stands beside an editor that only says what it
    was asked."""

    def setUp(self):
        super().setUp()
        self.copy = self.folder / "punchwright"
        shutil.copy(command.PROGRAM, self.copy)

    def editor(self, folder):
        folder.mkdir(exist_ok=True)
        script = folder / "punchwright-editor"
        script.write_text('#!/bin/sh\nprintf "%s:" "$0" "$#" "$@"\n')
        script.chmod(script.stat().st_mode | stat.S_IXUSR)

    def test_beside_the_program(self):
        self.editor(self.folder)
        ended = run(self.good, program=self.copy)
        self.assert_ended(ended, DONE)
        self.assertEqual(ended.text, f"{self.folder}/punchwright-editor:1:{self.good}:")
        self.assertIn("editor:0:", run(program=self.copy).text)

    def test_in_the_language_that_was_asked_for(self):
        self.editor(self.folder)
        for arguments in [["--language", "de", self.good], [self.good, "--language=de"]]:
            ended = run(*arguments, program=self.copy)
            self.assert_ended(ended, DONE)
            self.assertEqual(ended.text, f"{self.folder}/punchwright-editor:2:--language=de:{self.good}:")

    def test_on_the_path(self):
        self.editor(self.folder / "bin")
        ended = run(self.faulty, program=self.copy, env={**os.environ, "PATH": f"{self.folder}/bin:/usr/bin:/bin"})
        self.assert_ended(ended, DONE)
        self.assertIn(f":1:{self.faulty}:", ended.text)

    def test_nowhere(self):
        ended = run(self.good, program=self.copy, env={**os.environ, "PATH": str(self.folder / "empty")})
        self.assert_refused(ended, "punchwright-editor", "--help")


if __name__ == "__main__":
    command.main()
