"""Desktops that are not like ours: a display without OpenGL 3, one that speaks German or French, a home folder that can't be
written or isn't there, a path with spaces and umlauts. A clear message with the exit code, or the editor works."""

import pathlib
import shutil
import subprocess
import tempfile

from driver import EDITOR, Editor, Server, WindowTest, main

LANGUAGES = ["de_DE", "fr_FR"]


def locales():
    """A folder with the locales, made from Debian's sources of them; None where these are not installed."""
    if not shutil.which("localedef") or not pathlib.Path("/usr/share/i18n/locales/de_DE").exists():
        return None
    folder = tempfile.mkdtemp(prefix="punchwright-locale-")
    for language in LANGUAGES:
        words = ["localedef", "--no-archive", "-i", language, "-f", "UTF-8", f"{folder}/{language}.UTF-8"]
        subprocess.run(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
    return folder


class WithoutOpenGL3(WindowTest):
    def assert_told(self, environment):
        done = subprocess.run([EDITOR], env=environment, capture_output=True, text=True, timeout=60, check=False)
        self.assertEqual(done.returncode, 2)
        self.assertEqual(done.stdout, "")
        self.assertIn("the display has no OpenGL 3.2", done.stderr)
        for command in ("punchwright check", "card", "needles", "rows", "fabric", "--help"):
            self.assertIn(command, done.stderr)
        self.assertLessEqual(len(done.stderr.splitlines()), 2)

    def test_an_older_one(self):
        self.assert_told({**self.server.environment, "MESA_GL_VERSION_OVERRIDE": "2.1"})

    def test_none_at_all(self):
        bare = Server(extensions=["-extension", "GLX"])
        self.addCleanup(bare.stop)
        self.assert_told(bare.environment)


class AnotherHome(WindowTest):
    """The editor opens and saves a design; what it keeps for itself it leaves, and it doesn't end."""

    def server_with(self, **variables):
        other = Server()
        self.addCleanup(other.stop)
        for name in ("CONFIG", "STATE", "DATA", "CACHE"):
            other.environment.pop(f"XDG_{name}_HOME", None)
        for name, value in variables.items():
            if value is None:
                other.environment.pop(name, None)
            else:
                other.environment[name] = value
        return other

    def open_draw_and_save(self, server, prefix=()):
        folder = pathlib.Path(self.folder) / "Möwen und Bojen"
        folder.mkdir(exist_ok=True)
        path = folder / "Bänder ß.repeat"
        shutil.copy(pathlib.Path(__file__).resolve().parents[2] / "patterns" / "puffin-cove.repeat", path)
        before = path.read_bytes()
        editor = Editor(server, self.folder, path)
        self.addCleanup(editor.stop)
        self.assertEqual(editor.state["steps"], 0)
        editor.click("gauge stitches")
        editor.key("ctrl+a")
        editor.type("28")
        editor.key("Tab")
        editor.save()
        after = path.read_bytes()
        self.assertNotEqual(after, before)
        self.assertIn(b"stitches = 28.0", after, "files keep the point, whatever the language")

    def test_missing(self):
        # In /proc, where not even root makes a folder.
        self.open_draw_and_save(self.server_with(HOME="/proc/nobody/home"))

    def test_missing_where_it_could_be_made(self):
        # XDG's Base Directory Specification lets programs make their folders in it, not it: nobody lives there.
        home = pathlib.Path(self.folder) / "nobody"
        server = self.server_with(HOME=str(home), MESA_SHADER_CACHE_DISABLE="true")
        self.open_draw_and_save(server)
        self.assertFalse(home.exists(), "no home is made")

    def test_empty(self):
        home = pathlib.Path(self.folder) / "newcomer"
        home.mkdir(mode=0o755)
        server = self.server_with(HOME=str(home), MESA_SHADER_CACHE_DISABLE="true")
        self.open_draw_and_save(server)
        settings = home / ".config" / "punchwright" / "settings"
        self.assertTrue(settings.is_file())
        for folder in (settings.parent, settings.parent.parent):
            self.assertEqual(folder.stat().st_mode & 0o777, 0o700, "as that specification asks for")
        self.assertEqual(home.stat().st_mode & 0o777, 0o755)

    def test_not_named(self):
        self.open_draw_and_save(self.server_with(HOME=None))

    def test_one_that_cannot_be_written(self):
        # For root every folder can be written, but none in /proc.
        self.open_draw_and_save(self.server_with(HOME="/proc/self"))

    def test_languages(self):
        folder = locales()
        if folder is None:
            self.skipTest("no sources of locales here")
        self.addCleanup(shutil.rmtree, folder)
        for language in LANGUAGES:
            with self.subTest(language=language):
                server = self.server_with(HOME=str(self.folder), LOCPATH=folder, LC_ALL=f"{language}.UTF-8")
                point = subprocess.run(["locale", "decimal_point"], env=server.environment, capture_output=True, check=False)
                self.assertEqual(point.stdout, b",\n", "the locale is in force")
                self.open_draw_and_save(server)


if __name__ == "__main__":
    main()
