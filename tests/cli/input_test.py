"""What is read: files by any name, standard input, .machine files beside them; and how unreadable ones are refused.
Every refusal is exit 2 with one message; where there is a place in the file, it says file, line and column."""

import os
import subprocess

import command
from command import CANNOT, DONE, FAULTS, GOOD, CommandTest, as_nobody, run

READERS = [["check"], ["check", "--json"], ["rows"], ["rows", "--json"]]


class FilesByAnyName(CommandTest):
    def test_spaces_umlauts_and_none_of_the_usual(self):
        expected = run("rows", self.good, "--json").out
        names = ["zwei Bänder.repeat", "παπαγάλος", "no extension", "check", "-dash.repeat", "a'b\"c", "%s.repeat"]
        for name in names:
            with self.subTest(name=name):
                self.file(name, GOOD)
                ended = run("rows", "--json", "--", name, cwd=self.folder)
                self.assert_ended(ended, DONE)
                self.assertEqual(ended.out, expected)

    def test_in_a_folder_with_spaces_and_umlauts(self):
        folder = self.folder / "Möwen und Bojen"
        folder.mkdir()
        (folder / "Bänder ß.repeat").write_text(GOOD)
        for what, form in command.EXPORTS:
            out = folder / f"Blatt für {what}.{form}"
            ended = run(what, folder / "Bänder ß.repeat", "-o", out)
            written = command.first_file(what, out)
            self.assert_ended(ended, DONE)
            self.assertIn(str(written), ended.text)
            self.assertGreater(written.stat().st_size, 100)

    def test_a_name_that_is_no_utf_8(self):
        name = os.fsencode(self.folder) + b"/b\xe4nder.repeat"
        with open(name, "wb") as file:
            file.write(GOOD.encode())
        self.assert_ended(run("check", os.fsdecode(name)), DONE)

    def test_windows_line_ends_and_a_byte_order_mark(self):
        expected = run("rows", self.good, "--json").out
        for content in [GOOD.replace("\n", "\r\n").encode(), b"\xef\xbb\xbf" + GOOD.encode()]:
            ended = run("rows", self.file("foreign.repeat", content), "--json")
            self.assert_ended(ended, DONE)
            self.assertEqual(ended.out, expected)


class StandardInput(CommandTest):
    def test_says_the_same_as_the_file(self):
        for arguments in READERS:
            from_file = run(*arguments, self.faulty)
            ended = run(*arguments, "-", input=self.faulty.read_bytes())
            self.assert_ended(ended, FAULTS)
            self.assertEqual(ended.text, from_file.text.replace(str(self.faulty), "standard input"))

    def test_gives_the_same_exports(self):
        for what, form in command.EXPORTS:
            first, second = self.folder / f"1.{form}", self.folder / f"2.{form}"
            self.assert_ended(run(what, self.good, "-o", first), DONE)
            self.assert_ended(run(what, "-", "-o", second, input=GOOD.encode()), DONE)
            one, other = command.first_file(what, first), command.first_file(what, second)
            self.assertEqual(one.read_bytes(), other.read_bytes(), what)

    def test_errors_name_it(self):
        self.assert_refused(run("check", "-", input=b"format = 2\n"), "standard input:1:")
        self.assert_refused(run("check", "-", input=b""), "standard input")

    def test_closed(self):
        ended = run("check", "-", prefix=["sh", "-c", 'exec "$@" <&-', "sh"])
        self.assert_refused(ended)


class WhatCannotBeRead(CommandTest):
    def refused_by_all(self, file, *words, **how):
        for arguments in READERS:
            self.assert_refused(run(*arguments, file, **how), *words)
        for what, form in command.EXPORTS:
            out = self.folder / f"out.{form}"
            self.assert_refused(run(what, file, "-o", out, **how), *words)
            self.assertFalse(out.exists())

    def test_a_file_that_is_not_there(self):
        self.refused_by_all(self.folder / "nowhere.repeat", "nowhere.repeat")

    def test_an_empty_name(self):
        for arguments in READERS:
            self.assert_refused(run(*arguments, ""))

    def test_a_folder(self):
        self.refused_by_all(self.folder, self.folder)

    def test_a_name_below_a_file(self):
        self.refused_by_all(self.good / "inner.repeat", "inner.repeat")

    def test_a_file_that_may_not_be_read(self):
        secret = self.file("secret.repeat", GOOD)
        secret.chmod(0)
        self.refused_by_all(secret, "secret.repeat", prefix=as_nobody())

    def test_a_name_that_is_too_long(self):
        self.refused_by_all(self.folder / ("x" * 300))

    def test_a_pipe_without_an_end_of_sense(self):
        self.assert_refused(run("check", "/dev/zero"), "/dev/zero")

    def test_bytes_that_are_no_text(self):
        for content in [b"\x00\x01\x02", b"\xff\xfe\x00\x00", b"\x89PNG\r\n\x1a\n", GOOD.encode() + b"\xc3"]:
            self.refused_by_all(self.file("noise.repeat", content), "noise.repeat:")


class AMalformedFile(CommandTest):
    """The place is counted in characters from 1. The whole table of malformed inputs is the reader's own test."""

    def test_says_file_line_and_column(self):
        for text, place in [
            ("format = 1\ntitle = \n", "2:9"),
            (GOOD.replace("format = 1", "format = 2"), "1:10"),
            (GOOD.replace("width = 4", "width = 5"), "19:8"),
            (GOOD.replace('".##."', '".x#."'), "19:5"),
            (GOOD.replace('contrast = "B"', 'contrast = "Z"'), "26:12"),
            (GOOD + "times = 0\n", "30:9"),
            (GOOD + "first_column = 1\n", "30:"),
            (GOOD + "[rules]\nlongest_float = 5\nlongest_float_mm = 25.0\n", "32:"),
            (GOOD.replace("bulky-card-24", "bulky-card-25"), "5:11"),
        ]:
            with self.subTest(place=place):
                file = self.file("spoilt.repeat", text)
                for arguments in READERS:
                    self.assert_refused(run(*arguments, file), f"{file}:{place}")

    def test_says_what_was_found_and_what_is_allowed(self):
        ended = run("check", self.file("spoilt.repeat", GOOD + 'carriage = "middle"\n'))
        self.assert_refused(ended, "middle", "left", "right")


class ADesignBeyondAllUse(CommandTest):
    """2,000 drawn rows knitted 1,000 times are the largest that the keys allow without plain rows between them."""

    def design(self, bands):
        rows = '  "#.#.",\n' * 2000
        text = GOOD.replace('  ".##.",\n  "#..#",\n', rows).replace(GOOD[GOOD.index("[[band]]") : GOOD.index("[piece]")], bands)
        return self.file("tall.repeat", text + "times = 1000\n")

    def test_two_million_rows_are_knitted(self):
        tall = self.design('[[band]]\nrows = 2000\nmain = "A"\ncontrast = "B"\n')
        self.assert_ended(run("check", tall), DONE)

    def test_two_hundred_million_are_refused_in_little_memory(self):
        huge = self.design('[[band]]\nrows = 1\nmain = "A"\ncontrast = "B"\nplain_below = 99\n' * 2000)
        for arguments in [["check"], ["rows", "--json"], ["card", "-o", self.folder / "card.txt"]]:
            self.assert_refused(run(*arguments, huge), f"{huge}: ", "4 million rows to knit", "times")
        child = subprocess.Popen([command.PROGRAM, "check", huge], stderr=subprocess.DEVNULL)
        used = os.wait4(child.pid, 0)[2].ru_maxrss
        child.returncode = CANNOT  # waited for already
        self.assertLess(used, 600 << 10, "KiB; all of them would take 3 GiB")


class AMachineOfOnesOwn(CommandTest):
    def own(self, name="own.machine", change=("", "")):
        text = run("machine", "bulky-card-24").text
        return self.file(name, text.replace(*change) if change[0] else text)

    def test_is_found_beside_the_design(self):
        self.own(change=('first_needle = "L12"', 'first_needle = "L11"'))
        design = self.file("own.repeat", GOOD.replace("bulky-card-24", "own.machine"))
        ended = run("rows", design, "--json", cwd="/")
        self.assert_ended(ended, DONE)
        self.assertNotEqual(ended.out, run("rows", self.good, "--json").out)

    def test_says_the_same_as_the_built_in_one_that_it_was_written_from(self):
        for name in ["fine-card-24", "standard-card-24", "bulky-card-24", "bulky-card-12", "plastic-by-hand"]:
            self.assert_ended(run("machine", name, "-o", self.folder / "copy.machine"), DONE)
            own = self.file("own.repeat", GOOD.replace("bulky-card-24", "copy.machine"))
            built_in = self.file("built in.repeat", GOOD.replace("bulky-card-24", name))
            self.assertEqual(run("rows", own, "--json").out, run("rows", built_in, "--json").out, name)

    def test_that_is_not_there_is_refused_at_its_name(self):
        design = self.file("own.repeat", GOOD.replace("bulky-card-24", "lost.machine"))
        self.assert_refused(run("check", design), "lost.machine")

    def test_that_is_malformed_is_refused_at_its_own_place(self):
        machine = self.own(change=("feeders = 2", "feeders = 3"))
        line = machine.read_text().splitlines().index("feeders = 3") + 1
        design = self.file("own.repeat", GOOD.replace("bulky-card-24", "own.machine"))
        self.assert_refused(run("check", design), f"own.machine:{line}:11")


if __name__ == "__main__":
    command.main()
