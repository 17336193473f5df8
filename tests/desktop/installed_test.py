"""What is installed, looked at by each thing's own checker, and run from an empty prefix and from the unpacked Debian
package. The checkers are Debian's: desktop-file-validate, appstreamcli, xmllint, update-mime-database and gio, mandoc,
bash, zsh, fish, lintian."""

import configparser
import gzip
import os
import pathlib
import shlex
import shutil
import subprocess
import sys
import tempfile
import unittest

from PIL import Image

SOURCE = pathlib.Path(__file__).resolve().parents[2]
DESKTOP = SOURCE / "src/desktop"
BUILD = pathlib.Path(os.environ["PUNCHWRIGHT_BUILD"])
TOOLS = SOURCE / "tests/tools"
DEMO = SOURCE / "patterns/puffin-cove.repeat"


def said(*command, **how):
    done = subprocess.run([str(part) for part in command], capture_output=True, text=True, timeout=120, **how)
    return done.returncode, done.stdout + done.stderr


class Installed(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.prefix = pathlib.Path(cls.folder.name) / "an empty prefix ä"
        code, words = said("cmake", "--install", BUILD, "--prefix", cls.prefix)
        assert code == 0, words

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def assert_good(self, *command, **how):
        code, words = said(*command, **how)
        self.assertEqual(code, 0, f"{command}: {words}")
        return words

    def scratch(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        return pathlib.Path(folder.name)


class ThePrograms(Installed):
    def run_from(self, prefix):
        out = self.scratch() / "card.pdf"
        alone = {"PATH": f"{prefix}/bin", "HOME": "/nowhere"}
        self.assert_good(prefix / "bin/punchwright", "card", prefix / "share/punchwright/patterns" / DEMO.name, "-o", out,
                         env=alone)
        self.assertEqual(out.read_bytes()[:5], b"%PDF-")
        german = self.assert_good(prefix / "bin/punchwright", "--language", "de", "check",
                                  prefix / "share/punchwright/patterns" / DEMO.name, env=alone)
        self.assertIn("keine Fehler", german)
        self.assertIn("punchwright-editor 0.", self.assert_good(prefix / "bin/punchwright-editor", "--version", env=alone))

    def test_run_from_an_empty_prefix(self):
        self.run_from(self.prefix)

    def test_run_from_the_unpacked_package_which_lintian_finds_nothing_in(self):
        folder = self.scratch()
        self.assert_good("cpack", "-G", "DEB", "--config", BUILD / "CPackConfig.cmake", "-B", folder,
                         "-D", "CPACK_INSTALL_CMAKE_PROJECTS=" f"{BUILD};punchwright;ALL;/")
        [package] = folder.glob("*.deb")
        words = self.assert_good("lintian", "--allow-root", "--fail-on", "error,warning", package)
        self.assertEqual(words.strip(), "")
        self.assert_good("dpkg-deb", "-x", package, folder / "root")
        self.run_from(folder / "root/usr")

    def test_nothing_is_installed_that_is_not_named_here(self):
        kinds = sorted({str(file.relative_to(self.prefix).parent) for file in self.prefix.rglob("*") if file.is_file()})
        sizes = [f"share/icons/hicolor/{size}x{size}/apps" for size in (16, 22, 24, 32, 48, 64, 96, 128, 256, 512)]
        self.assertEqual(kinds, sorted([
            "bin", "share/applications", "share/bash-completion/completions", "share/doc/punchwright",
            "share/fish/vendor_completions.d", "share/icons/hicolor/scalable/apps", "share/locale/de/LC_MESSAGES",
            "share/man/man1", "share/man/man5",
            "share/metainfo", "share/mime/packages", "share/punchwright/patterns", "share/punchwright/patterns/tiers",
            "share/thumbnailers", "share/zsh/vendor-completions", *sizes]))


class TheDesktop(Installed):
    def test_has_a_valid_entry(self):
        self.assertEqual(self.assert_good("desktop-file-validate", self.prefix / "share/applications/punchwright.desktop"), "")

    def test_has_valid_metadata(self):
        [file] = (self.prefix / "share/metainfo").iterdir()
        self.assert_good("appstreamcli", "validate", "--no-net", "--pedantic", file)

    def test_knows_our_documents_by_their_type(self):
        share = self.scratch()
        ours = {**os.environ, "XDG_DATA_HOME": str(share)}
        (share / "mime/packages").mkdir(parents=True)
        shutil.copy(self.prefix / "share/mime/packages/punchwright.xml", share / "mime/packages")
        self.assert_good("xmllint", "--noout", share / "mime/packages/punchwright.xml")
        self.assertEqual(self.assert_good("update-mime-database", share / "mime", env=ours), "")
        entry = configparser.ConfigParser(interpolation=None)
        entry.read(self.prefix / "share/applications/punchwright.desktop")
        opened = entry["Desktop Entry"]["MimeType"].split(";")
        for name, kind in [(DEMO, "repeat"), (SOURCE / "patterns/anchor-yoke.yoke", "yoke")]:
            words = self.assert_good("gio", "info", "-a", "standard::content-type", name, env=ours)
            self.assertIn(f"standard::content-type: application/x-punchwright-{kind}\n", words)
            self.assertIn(f"application/x-punchwright-{kind}", opened)

    def thumbnail_of(self, document):
        """As a desktop asks for it: by the entry, where that names the document's type."""
        entry = configparser.ConfigParser(interpolation=None)
        entry.read(self.prefix / "share/thumbnailers/punchwright.thumbnailer")
        self.assertIn(f"application/x-punchwright-{document.suffix[1:]}", entry["Thumbnailer Entry"]["MimeType"].split(";"))
        out = self.scratch() / "thumbnail"  # desktops name it as they like
        values = {"%s": "128", "%o": str(out), "%i": str(document)}
        command = [values.get(word, word) for word in shlex.split(entry["Thumbnailer Entry"]["Exec"])]
        self.assert_good(*command, env={"PATH": f"{self.prefix}/bin"})
        picture = Image.open(out)
        self.assertEqual((picture.format, picture.mode, max(picture.size)), ("PNG", "RGB", 128))
        return picture

    def test_gets_thumbnails_from_the_command_that_the_entry_names(self):
        picture = self.thumbnail_of(DEMO)
        # 24 stitches by 60 rows at 14 stitches and 18.5 rows over 10 cm, as the demo says.
        text = DEMO.read_text()
        self.assertIn("width = 24", text)
        self.assertGreater(len(set(picture.getdata())), 2, "the yarns' colours, and no others")
        colours = {f"#{red:02x}{green:02x}{blue:02x}" for red, green, blue in picture.getdata()}
        self.assertLessEqual(colours, {line.split('"')[1].lower() for line in text.splitlines() if line.startswith("colour")})

    def test_gets_thumbnails_of_yokes_as_they_are_worn_from_above(self):
        white = (255, 255, 255)
        for document in sorted((self.prefix / "share/punchwright/patterns").glob("*.yoke")):
            with self.subTest(yoke=document.name):
                picture = self.thumbnail_of(document)
                self.assertEqual(picture.size, (128, 128))
                for place in [(0, 0), (127, 0), (0, 127), (127, 127), (64, 64)]:
                    self.assertEqual(picture.getpixel(place), white, "beside the ring, and the neck")
                for place in [(64, 3), (64, 124), (3, 64), (124, 64)]:
                    self.assertNotEqual(picture.getpixel(place), white, "the ring")
                self.assertGreater(len(set(picture.getdata())), 20, "stitches of several yarns, and their means")

    def test_shows_a_yoke_whose_tiers_are_out_of_reach_as_rings_without_motifs(self):
        """As in the sandbox in which a desktop runs its thumbnailers: the one file, under another name."""
        alone = self.scratch() / "alone.yoke"
        shutil.copy(SOURCE / "patterns/anchor-yoke.yoke", alone)
        picture = self.thumbnail_of(alone)
        across = [picture.getpixel((64, y)) for y in range(64)]
        self.assertEqual(across[-1], (255, 255, 255), "the neck")
        rings = [colour for colour, before in zip(across, [None, *across]) if colour == (112, 120, 130) != before]
        self.assertEqual(len(rings), alone.read_text().count("[[tier]]"), "a ring for each tier")

    def test_refuses_a_yoke_whose_tier_is_broken_by_its_place(self):
        broken = self.scratch() / "broken.yoke"
        shutil.copy(SOURCE / "patterns/anchor-yoke.yoke", broken)
        (broken.parent / "tiers").mkdir()
        for tier in (SOURCE / "patterns/tiers").glob("*.repeat"):
            (broken.parent / "tiers" / tier.name).write_text("format = 1\nwidth = none\n")
        code, words = said(self.prefix / "bin/punchwright", "thumbnail", "-o", self.scratch() / "out", broken)
        self.assertEqual(code, 2)
        self.assertIn("tiers/", words)

    def test_has_icons_of_all_usual_sizes_drawn_from_ours(self):
        for size in (16, 22, 24, 32, 48, 64, 96, 128, 256, 512):
            icon = self.prefix / f"share/icons/hicolor/{size}x{size}/apps/punchwright.png"
            drawing = DESKTOP / ("icons/punchwright-small.svg" if size <= 32 else "icons/punchwright.svg")
            again = self.scratch() / "icon.png"
            self.assert_good("rsvg-convert", "-w", size, "-h", size, drawing, "-o", again)
            pictures = [Image.open(file).convert("RGBA") for file in (icon, again)]
            self.assertEqual(pictures[0].size, (size, size))
            worst = max(abs(a - b) for one, other in zip(*(picture.getdata() for picture in pictures))
                        for a, b in zip(one, other))
            self.assertLessEqual(worst, 8, f"{size} px")


class ManualsAndCompletions(Installed):
    def test_are_those_that_the_help_and_the_file_forms_give(self):
        self.assert_good(sys.executable, "-B", TOOLS / "make-desktop-files.py", "check", os.environ["PUNCHWRIGHT"])

    def test_manuals_are_well_formed(self):
        pages = sorted(self.prefix.glob("share/man/man?/*.gz"))
        self.assertEqual(len(pages), 6)
        for page in pages:
            words = said("mandoc", "-Tlint", "-W", "warning", page)[1]
            self.assertEqual(words, "")
            self.assertIn(page.name.removesuffix(".gz")[:-2], gzip.decompress(page.read_bytes()).decode())

    def test_completions_are_well_formed(self):
        share = self.prefix / "share"
        for checker, file in [(["bash", "-n"], "bash-completion/completions/punchwright"),
                              (["shellcheck"], "bash-completion/completions/punchwright"),
                              (["zsh", "-n"], "zsh/vendor-completions/_punchwright"),
                              (["fish", "--no-execute"], "fish/vendor_completions.d/punchwright.fish")]:
            self.assertEqual(self.assert_good(*checker, share / file), "")

    def completed(self, shell, line):
        folder = self.scratch()
        for name in ("band.repeat", "ring.yoke", "photo.png", "other.txt"):
            (folder / name).touch()
        share = self.prefix / "share"
        if shell == "bash":
            script = (f"source /usr/share/bash-completion/bash_completion; source '{share}/bash-completion/completions/punchwright'\n"
                      f"COMP_LINE='{line}'; COMP_POINT=${{#COMP_LINE}}; IFS=' ' read -ra COMP_WORDS <<<\"$COMP_LINE\"\n"
                      "[[ $COMP_LINE == *' ' ]] && COMP_WORDS+=('')\nCOMP_CWORD=$((${#COMP_WORDS[@]} - 1))\n"
                      "_punchwright; printf '%s\\n' \"${COMPREPLY[@]}\"")
            return self.assert_good("bash", "-c", script, cwd=folder).split()
        path = {**os.environ, "PATH": f"{self.prefix}/bin:{os.environ['PATH']}", "HOME": str(folder)}
        words = self.assert_good("fish", "-c", f"source '{share}/fish/vendor_completions.d/punchwright.fish'; "
                                 f"complete -C '{line}'", cwd=folder, env=path)
        return [entry.split("\t")[0] for entry in words.splitlines()]

    def test_complete_commands_options_values_and_files(self):
        for shell in ("bash", "fish"):
            with self.subTest(shell=shell):
                self.assertEqual(self.completed(shell, "punchwright ch"), ["chart", "check"] if shell == "fish" else ["check", "chart"])
                self.assertEqual(self.completed(shell, "punchwright mend --pro"), ["--protect"])
                self.assertEqual(self.completed(shell, "punchwright trace --shading "), ["diffusion", "dither", "split"])
                self.assertEqual(self.completed(shell, "punchwright measure bulky"), ["bulky-card-24", "bulky-card-12"])
                self.assertEqual(self.completed(shell, "punchwright card ")[0], "band.repeat")
                self.assertEqual(self.completed(shell, "punchwright yoke ")[0], "ring.yoke")

    def test_zsh_loads_ours_for_the_command(self):
        script = (f"fpath=('{self.prefix}/share/zsh/vendor-completions' $fpath); autoload -Uz compinit; "
                  "compinit -u -D; print $_comps[punchwright]; autoload +X _punchwright && print loaded")
        self.assertEqual(self.assert_good("zsh", "-f", "-c", script).split(), ["_punchwright", "loaded"])


if __name__ == "__main__":
    unittest.main()
