"""The same design gives the same bytes in the same language: twice, in another time zone, locale and folder, and on another day.
People keep exports under version control, and a German desktop must not turn 6.25 into 6,25 for a reader of English."""

import pathlib
import shutil
import subprocess
import tempfile
import time

import command
from command import EXPORTS, SAMPLE, CommandTest, run

ANSWERS = [["check"], ["check", "--json"], ["rows"], ["rows", "--json"]]
CALM = {"PATH": "/usr/bin:/bin", "LC_ALL": "C", "TZ": "UTC"}


def german_locale():
    """A folder with de_DE.UTF-8, made from Debian's sources of locales; None where they are not installed."""
    if not shutil.which("localedef") or not pathlib.Path("/usr/share/i18n/locales/de_DE").exists():
        return None
    folder = tempfile.mkdtemp(prefix="punchwright-locale-")
    words = ["localedef", "--no-archive", "-i", "de_DE", "-f", "UTF-8", f"{folder}/de_DE.UTF-8"]
    made = subprocess.run(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    if made.returncode > 1:
        shutil.rmtree(folder)
        return None
    return folder


class TheSameBytes(CommandTest):
    def all_of(self, environment, folder="sheets", design=SAMPLE):
        """Everything that the program writes about the design, by name."""
        place = self.folder / folder
        place.mkdir(exist_ok=True)
        written = {}
        for what, form in EXPORTS:
            ended = run(what, design, "-o", f"{what}.{form}", env=environment, cwd=place)
            self.assertIn(ended.code, (command.DONE, command.FAULTS), ended.err)
            for name in ended.text.splitlines():
                written[name] = (place / name).read_bytes()
        for what in ["measure", "swatch"]:
            ended = run(what, "bulky-card-24", "-o", f"{what}.pdf", env=environment, cwd=place)
            self.assert_ended(ended, command.DONE)
            written[what] = (place / f"{what}.pdf").read_bytes()
        for arguments in [*([*answer, design] for answer in ANSWERS), ["machine", "fine-card-24"], ["--help"]]:
            written[" ".join(map(str, arguments[:2]))] = run(*arguments, env=environment).out
        return written

    first = None

    def usual(self):
        """What all others are compared with, written once."""
        if TheSameBytes.first is None:
            TheSameBytes.first = self.all_of(CALM)
        return TheSameBytes.first

    def assert_same(self, environment, **where):
        first = self.usual()
        second = self.all_of(environment, **where)
        self.assertEqual(list(first), list(second))
        self.assertGreater(len(first), 14)
        for name, content in first.items():
            self.assertTrue(content, name)
            self.assertTrue(content == second[name], f"{name} differs")

    def test_a_second_later_and_in_another_folder(self):
        self.usual()
        time.sleep(1.1)
        self.assert_same(CALM, folder="other sheets")

    def test_in_another_time_zone(self):
        self.assert_same({**CALM, "TZ": "Pacific/Kiritimati"})

    def test_whoever_and_wherever_the_user_is(self):
        self.assert_same({**CALM, "HOME": "/nonexistent", "USER": "puffin", "HOSTNAME": "harbour", "COLUMNS": "40"})

    def test_with_hardly_an_environment(self):
        self.assert_same({"PATH": ""})

    def test_with_a_locale_that_is_not_installed(self):
        self.assert_same({**CALM, "LC_ALL": "xx_YY.UTF-8", "LANG": "xx_YY.UTF-8"})

    def german(self, **others):
        folder = german_locale()
        if folder is None:
            self.skipTest("no locale sources here")
        self.addCleanup(shutil.rmtree, folder)
        german = {**CALM, "LOCPATH": folder, "LC_ALL": "de_DE.UTF-8", "LANG": "de_DE.UTF-8", **others}
        point = subprocess.run(["locale", "decimal_point"], env=german, stdout=subprocess.PIPE).stdout
        self.assertEqual(point, b",\n", "the locale is in force")
        return german

    def test_in_a_german_locale_whose_user_reads_english(self):
        self.assert_same(self.german(LANGUAGE="en"))

    def test_in_german_wherever_that_is_asked_for(self):
        """The language is the reader's; nothing else of her machine is in it, not even whether it has her locale."""
        english = self.usual()
        here = self.all_of(self.german())
        there = self.all_of({**CALM, "LC_ALL": "de_AT.UTF-8", "TZ": "Pacific/Kiritimati"}, folder="other sheets")
        self.assertEqual(list(here), list(there))
        for name, content in here.items():
            self.assertTrue(content == there[name], f"{name} differs")
        self.assertEqual(list(english), list(here))
        self.assertNotEqual(english["--help"], here["--help"])


class PagesWithoutADay(CommandTest):
    def test_a_pdf_names_no_date_of_its_making(self):
        """The page description library would write the present time."""
        for what in ["card", "needles"]:
            self.assert_ended(run(what, self.good, "-o", self.folder / "sheet.pdf"), command.DONE)
            words = ["pdfinfo", "-isodates", self.folder / "sheet.pdf"]
            said = subprocess.run(words, stdout=subprocess.PIPE, check=True)
            self.assertIn(b"Title:", said.stdout)
            self.assertNotIn(time.strftime("%Y-%m-%d").encode(), said.stdout)
            self.assertNotIn(time.strftime("D:%Y%m%d").encode(), (self.folder / "sheet.pdf").read_bytes())


class TheDateInThem(CommandTest):
    """SOURCE_DATE_EPOCH as reproducible-builds.org specifies it (version 1.1); what the PDF then says is read by poppler."""

    def card(self, seconds):
        out = self.folder / "card.pdf"
        return out, run("card", self.good, "-o", out, env={**CALM, "SOURCE_DATE_EPOCH": seconds})

    def date(self, out):
        words = subprocess.run(["pdfinfo", "-isodates", out], check=True, capture_output=True, text=True, env=CALM).stdout
        return next(line.split()[1] for line in words.splitlines() if line.startswith("CreationDate"))

    def test_is_the_wished_one(self):
        for seconds, date in [("0", "1970-01-01T00:00:00Z"), ("1764158405", "2025-11-26T12:00:05Z"),
                              ("253402300799", "9999-12-31T23:59:59Z")]:
            out, ended = self.card(seconds)
            self.assert_ended(ended, command.DONE)
            self.assertEqual(self.date(out), date)
            subprocess.run(["qpdf", "--check", out], check=True, stdout=subprocess.DEVNULL)

    def test_is_always_the_same_without_a_wish(self):
        self.assertEqual(self.date(self.card("")[0]), "2000-01-01T00:00:00Z")

    def test_is_refused_where_it_is_no_date_and_nothing_is_written(self):
        for seconds in ["yesterday", "-1", "12.5", "253402300800", "99999999999999999999"]:
            out, ended = self.card(seconds)
            self.assertEqual(ended.code, command.CANNOT, seconds)
            self.assertIn(f"SOURCE_DATE_EPOCH is '{seconds}'", ended.err)
            self.assertFalse(out.exists())


if __name__ == "__main__":
    command.main()
