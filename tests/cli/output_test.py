"""What is written: whole or not at all, where it was asked for, or a refusal that says why.
Full devices, read-only folders, size limits and kills stand for what happens to people."""

import os
import random
import re
import resource
import subprocess
import time

import command
from command import CANNOT, DONE, EXPORTS, FAULTS, GOOD, CommandTest, as_nobody, first_file, run

OLD = b"an older sheet\n" * 40
SENDERS = [["check"], ["check", "--json"], ["rows"], ["rows", "--json"]]

# What each kind of file begins with: enough to tell that the extension chose the writer.
BEGINNINGS = {"pdf": b"%PDF-1.", "svg": b"<?xml", "png": b"\x89PNG\r\n\x1a\n", "html": b"<!doctype html>"}


class TheExtensionChoosesTheWriter(CommandTest):
    def test_every_export(self):
        for what, form in EXPORTS:
            out = self.folder / f"sheet.{form}"
            ended = run(what, self.good, "-o", out)
            self.assert_ended(ended, DONE)
            written = [str(out)]
            if (what, form) == ("card", "png"):  # one file a page, in names that sort
                pages = ended.text.count("\n")
                written = [str(self.folder / f"sheet-{page:0{len(str(pages))}}.png") for page in range(1, pages + 1)]
                self.assertEqual(written, sorted(written))
                out = self.folder / written[0]
            self.assertEqual(ended.text.splitlines(), written, "the names of what was written")
            self.assertEqual(ended.err, "")
            content = out.read_bytes()
            self.assertTrue(content.lower().startswith(BEGINNINGS.get(form, b"").lower()), content[:20])
            if form in ("txt", "html", "svg"):
                self.assertIn("Buoys", content.decode("utf-8"))

    def test_an_unknown_one_is_refused_with_those_that_are_known(self):
        known = {"card": "pdf svg png txt", "needles": "pdf html csv txt", "fabric": "png"}
        for what, forms in known.items():
            for name in ["sheet.jpg", "sheet", "sheet.", "sheet.pdf.zip", "pdf", ".pdf.d/sheet"]:
                with self.subTest(what=what, name=name):
                    ended = run(what, self.good, "-o", self.folder / name)
                    self.assert_refused(ended, *(f".{form}" for form in forms.split()))
                    self.assertFalse((self.folder / name).exists())
        anothers = [("card", "html"), ("card", "csv"), ("needles", "svg"), ("needles", "png"), ("fabric", "pdf")]
        for what, form in anothers:
            self.assert_refused(run(what, self.good, "-o", self.folder / f"sheet.{form}"), form)

    def test_two_cards_are_two_pictures(self):
        tall = GOOD.replace('  ".##.",\n  "#..#",\n', '  ".##.",\n' * 61).replace("rows = 2", "rows = 61")
        design = self.file("tall.repeat", tall)
        ended = run("card", design, "-o", self.folder / "tall.svg")
        self.assert_ended(ended, DONE)
        self.assertEqual(ended.text, f"{self.folder}/tall-1.svg\n{self.folder}/tall-2.svg\n")
        self.assertTrue((self.folder / "tall-2.svg").read_bytes().startswith(b"<?xml"))
        self.assertFalse((self.folder / "tall.svg").exists())
        (self.folder / "lost-2.svg").mkdir()
        before = self.names()
        self.assert_refused(run("card", design, "-o", self.folder / "lost.svg"), "lost-2.svg")
        self.assertEqual(self.names(), before, "one card without the other would be half an export")


class ACardForAMachineWithoutOne(CommandTest):
    def test_is_refused_with_what_to_use_instead(self):
        for form in ["pdf", "svg", "png", "txt"]:
            out = self.folder / f"card.{form}"
            self.assert_refused(run("card", self.by_hand, "-o", out), "needle")
            self.assertFalse(out.exists())

    def test_the_other_exports_work(self):
        for what, form in EXPORTS:
            if what != "card":
                self.assert_ended(run(what, self.by_hand, "-o", self.folder / f"sheet.{form}"), DONE)


class FaultsNeverStopAnExport(CommandTest):
    def test_written_all_the_same(self):
        for what, form in EXPORTS:
            out = self.folder / f"sheet.{form}"
            ended = run(what, self.faulty, "-o", out)
            self.assert_ended(ended, FAULTS)
            self.assertGreater(first_file(what, out).stat().st_size, 100)
            self.assertIn("fault", ended.err, "and said")

    def test_of_every_kind(self):
        wide = GOOD.replace("width = 4", "width = 5").replace('".##."', '".##.#"').replace('"#..#"', '"#..##"')
        for text in [wide, GOOD.replace("stitches = 24", "stitches = 200"), GOOD + 'first_needle = "L80"\n']:
            file = self.file("faulty.repeat", text)
            for arguments in SENDERS:
                self.assert_ended(run(*arguments, file), FAULTS)
            for what, form in EXPORTS:
                self.assert_ended(run(what, file, "-o", self.folder / f"sheet.{form}"), FAULTS)

    def test_warnings_and_notes_are_no_faults(self):
        pale = self.file("pale.repeat", GOOD.replace("#20304a", "#e8dcc3"))
        ended = run("check", pale)
        self.assertIn("warning", ended.text)
        self.assert_ended(ended, DONE)
        self.assert_ended(run("check", self.file("note.repeat", GOOD + "[room]\nshelf = 3\n")), DONE)


class TheOldFileStaysWhole(CommandTest):
    """Whatever stops the writing: the file that was there is as it was, and nothing else is left in its folder."""

    def setUp(self):
        super().setUp()
        self.place = self.folder / "sheets"
        self.place.mkdir()

    def assert_nothing_happened(self, names):
        self.assertEqual(self.names(self.place), sorted(names))
        for name in names:
            self.assertEqual((self.place / name).read_bytes(), OLD)

    def for_each_export(self, *words, **how):
        for what, form in EXPORTS:
            with self.subTest(what=what, form=form):
                self.assert_refused(run(what, self.good, "-o", self.place / f"{what}.{form}", **how), *words)

    def old_files(self):
        names = [f"{what}.{form}" for what, form in EXPORTS]
        for name in names:
            (self.place / name).write_bytes(OLD)
        return names

    def test_a_read_only_folder(self):
        names = self.old_files()
        self.place.chmod(0o555)
        self.for_each_export(str(self.place), prefix=as_nobody())
        self.place.chmod(0o755)
        self.assert_nothing_happened(names)

    def test_a_file_size_limit(self):
        names = self.old_files()

        def limited():
            resource.setrlimit(resource.RLIMIT_FSIZE, (64, 64))

        # Python ignores SIGXFSZ, and leaves it ignored in what it starts: writing fails with EFBIG.
        self.for_each_export(str(self.place), preexec_fn=limited, restore_signals=False)
        self.assert_nothing_happened(names)

    def test_a_missing_folder(self):
        for what, form in EXPORTS:
            out = self.place / "nowhere" / f"sheet.{form}"
            self.assert_refused(run(what, self.good, "-o", out), str(out.parent))
        self.assert_nothing_happened([])

    def test_a_folder_of_that_name(self):
        (self.place / "sheet.pdf").mkdir()
        self.assert_refused(run("card", self.good, "-o", self.place / "sheet.pdf"), "sheet.pdf")
        self.assertEqual(self.names(self.place), ["sheet.pdf"])
        self.assertEqual(self.names(self.place / "sheet.pdf"), [])

    def test_a_full_device(self):
        for what, form in EXPORTS:
            with self.subTest(what=what, form=form):
                out = self.folder / f"full.{form}"
                link = first_file(what, out)
                link.unlink(missing_ok=True)
                link.symlink_to("/dev/full")
                self.assert_refused(run(what, self.good, "-o", out), link.name)
                self.assertEqual(os.readlink(link), "/dev/full", "the link is as it was")

    def test_a_full_device_for_what_is_no_sheet(self):
        picture = self.file("wave.pbm", "P1\n4 2\n0 1 1 0\n1 0 0 1\n")
        writers = [
            ("made.repeat", ["import", picture]),
            ("traced.repeat", ["trace", "--machine", "bulky-card-24", picture]),
            ("mended.repeat", ["mend", self.good]),
            ("mine.machine", ["machine", "bulky-card-24"]),
            ("measure.pdf", ["measure", "bulky-card-24"]),
            ("swatch.pdf", ["swatch", "bulky-card-24"]),
            ("swatch.png", ["swatch", "bulky-card-24"]),
        ]
        for name, arguments in writers:
            with self.subTest(arguments=arguments):
                out = self.folder / name
                self.assert_ended(run(*arguments, "-o", self.folder / ("good " + name)), DONE)
                link = first_file(arguments[0], out)
                link.symlink_to("/dev/full")
                self.assert_refused(run(*arguments, "-o", out), link.name, "No space left on device")

    def test_a_refused_design_or_extension(self):
        names = self.old_files()
        broken = self.file("broken.repeat", "format = 1\n[")
        for what, form in EXPORTS:
            self.assert_refused(run(what, broken, "-o", self.place / f"{what}.{form}"), "broken.repeat:2:")
        self.assert_refused(run("card", self.by_hand, "-o", self.place / "card.pdf"))
        self.assert_nothing_happened(names)

    def test_a_kill_at_any_moment(self):
        """Old or new, whole. The moments spread over a run's usual length, so that some fall into the writing."""
        out = self.place / "card.svg"
        self.assert_ended(run("card", self.good, "-o", out), DONE)
        new = out.read_bytes()
        started = time.monotonic()
        self.assert_ended(run("card", self.good, "-o", out), DONE)
        usual = time.monotonic() - started
        dice = random.Random(4)
        killed = 0
        for _ in range(60):
            out.write_bytes(OLD)
            process = subprocess.Popen(
                [command.PROGRAM, "card", self.good, "-o", out], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
            )
            time.sleep(dice.uniform(0, usual * 1.1))
            process.kill()
            killed += process.wait() != DONE
            self.assertIn(out.read_bytes(), (OLD, new))
        self.assertGreater(killed, 10)
        self.assert_ended(run("card", self.good, "-o", out), DONE)
        self.assertEqual(out.read_bytes(), new)


class WhereTheFileIsToStand(CommandTest):
    def test_mode_and_link_are_kept(self):
        real = self.file("real.pdf", OLD)
        real.chmod(0o640)
        link = self.folder / "link.pdf"
        link.symlink_to("real.pdf")
        self.assert_ended(run("card", self.good, "-o", link), DONE)
        self.assertTrue(link.is_symlink())
        self.assertTrue(real.read_bytes().startswith(b"%PDF"))
        self.assertEqual(real.stat().st_mode & 0o777, 0o640)

    def test_a_new_file_has_the_usual_mode(self):
        ended = run("card", self.good, "-o", self.folder / "new.pdf", preexec_fn=lambda: os.umask(0o027))
        self.assert_ended(ended, DONE)
        self.assertEqual((self.folder / "new.pdf").stat().st_mode & 0o777, 0o640)

    def test_nothing_else_is_left(self):
        before = self.names()
        for what, form in EXPORTS:
            self.assert_ended(run(what, self.good, "-o", "sheet." + form, cwd=self.folder), DONE)
        self.assertEqual(
            {name for name in self.names() if not re.fullmatch(r"sheet-[2-9]\.png", name)},
            {*before, *(first_file(what, self.folder / f"sheet.{form}").name for what, form in EXPORTS)},
        )


class StandardOutput(CommandTest):
    def test_full(self):
        everything = [[*sender, self.faulty] for sender in SENDERS]
        everything += [["--help"], ["--version"], ["check", "--help"], ["machine"], ["machine", "bulky-card-24"]]
        everything += [["card", self.good, "-o", self.folder / "card.pdf"]]
        for arguments in everything:
            with self.subTest(arguments=arguments), open("/dev/full", "wb") as full:
                ended = run(*arguments, stdout=full)
                self.assert_ended(ended, CANNOT)
                self.assertRegex(ended.err, r"\Apunchwright: [^\n]+\n\Z")

    def test_closed(self):
        for sender in SENDERS:
            ended = run(*sender, self.good, prefix=["sh", "-c", 'exec "$@" >&-', "sh"])
            self.assert_ended(ended, CANNOT)

    def test_a_reader_that_leaves_early(self):
        long = self.file("long.repeat", GOOD + "times = 1000\n")
        process = subprocess.Popen([command.PROGRAM, "rows", long], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        process.stdout.read(10)
        process.stdout.close()
        said = process.stderr.read().decode()
        process.stderr.close()
        self.assertNotEqual(process.wait(timeout=30), DONE)
        self.assertLessEqual(len(said.splitlines()), 1)


if __name__ == "__main__":
    command.main()
