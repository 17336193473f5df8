"""Drives the real editor in a real window: an X server of its own, keys and mouse by xdotool, and the editor's own
line of state a frame to wait on. Nothing here waits for a time; a time limit only ends a test that hangs."""
import json
import os
import pathlib
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import tomllib
import unittest

HANGS_AFTER = float(os.environ.get("PUNCHWRIGHT_HANGS_AFTER", "120"))  # seconds
EDITOR = os.environ.get("PUNCHWRIGHT_EDITOR", "punchwright-editor")

PLAIN = """format = 1
title = "{title}"

[machine]
profile = "bulky-card-24"

[[yarn]]
key = "A"
name = "Oat"
colour = "#e8dcc2"
[[yarn]]
key = "B"
name = "Ink"
colour = "#20304a"

[repeat]
width = {width}
rows = [
{rows}]

[[band]]
rows = {height}
main = "A"
contrast = "B"
"""


def design(rows, title=""):
    """The text of a .repeat file of one band; the last row given is row 1."""
    lines = "".join(f'  "{row}",\n' for row in rows)
    return PLAIN.format(title=title, width=len(rows[0]), rows=lines, height=len(rows))


def blank(width=24, height=12, **more):
    return design(["." * width] * height, **more)


def rows_in(path):
    """The drawing of a .repeat file, from row 1 upwards."""
    text = pathlib.Path(path).read_text()
    inside = text.split("rows = [", 1)[1].split("]", 1)[0]
    return [line.strip().strip('",') for line in inside.splitlines() if '"' in line][::-1]


class Server:
    """An X server with a free display number; it stays when its last client leaves."""

    def __init__(self, size="1500x950", dpi=None, extensions=()):
        reading, writing = os.pipe()
        extra = [*(["-dpi", str(dpi)] if dpi else []), *extensions]
        self.process = subprocess.Popen(
            ["Xvfb", "-displayfd", str(writing), "-screen", "0", f"{size}x24", "-noreset", "-nolisten", "tcp", *extra],
            pass_fds=[writing], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(writing)
        with os.fdopen(reading) as pipe:
            number = pipe.readline().strip()
        if not number:
            raise RuntimeError("Xvfb did not start")
        self.environment = {**os.environ, "DISPLAY": ":" + number, "LC_ALL": "C.UTF-8"}
        for name in ("WAYLAND_DISPLAY", "GTK_THEME"):
            self.environment.pop(name, None)

    def keep_to(self, folder):
        """Settings and whatever else programs keep for a user lie in that folder, not in the machine's own."""
        for name in ("CONFIG", "STATE", "DATA"):
            self.environment[f"XDG_{name}_HOME"] = str(pathlib.Path(folder) / name.lower())

    def stop(self):
        self.process.terminate()
        self.process.wait()


class Editor:
    """One running editor."""

    def __init__(self, server, folder, *arguments):
        self.environment = server.environment
        self.folder = pathlib.Path(folder)
        handle, states = tempfile.mkstemp(prefix="states-", suffix=".jsonl", dir=folder)
        os.close(handle)
        self.states = pathlib.Path(states)
        self.process = subprocess.Popen([EDITOR, "--state-to", str(self.states), *map(str, arguments)],
                                        cwd=folder, env=self.environment)
        self._file = open(self.states, encoding="utf-8")
        self._rest = ""
        self.state = {}
        self.wait(lambda state: state["idle"], "the first frames")
        self.window = self._xdotool("search", "--sync", "--all", "--pid", self.process.pid,
                                    "--name", "Punchwright").split()[-1]
        self.focus()

    def focus(self):
        """Keys go to this one from now on, and the pointer finds it above the others."""
        self._xdotool("windowraise", self.window, "windowfocus", self.window)

    def _xdotool(self, *arguments):
        done = subprocess.run(["xdotool", *map(str, arguments)], env=self.environment, capture_output=True, text=True,
                              timeout=HANGS_AFTER, check=False)
        return done.stdout

    def _read(self):
        self._rest += self._file.read()
        while "\n" in self._rest:
            line, self._rest = self._rest.split("\n", 1)
            self.state = json.loads(line)
            yield self.state

    def wait(self, condition, what="a state"):
        """Until a state of now or later fulfils the condition."""
        if self.state and condition(self.state):
            return self.state
        end = time.monotonic() + HANGS_AFTER
        while time.monotonic() < end:
            for state in self._read():
                if condition(state):
                    return state
            if self.process.poll() is not None:
                raise AssertionError(f"the editor ended with {self.process.returncode} while waiting for {what}")
            time.sleep(0.005)
        raise AssertionError(f"waited in vain for {what}; the last state: {self.state}")

    def wait_next(self, condition, what="a state"):
        """As wait, but only states of later frames count."""
        frame = self.state["frame"]
        return self.wait(lambda state: state["frame"] > frame and condition(state), what)

    def settle(self):
        return self.wait(lambda state: state["idle"], "rest")

    def wait_nothing(self, seconds):
        """Reads what comes in that time: for tests that nothing does."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            list(self._read())
            time.sleep(0.02)

    # Keys and mouse
    def key(self, *keys):
        # GLFW takes two presses of one key within a millisecond for one that the input method has doubled.
        self._xdotool("key", "--clearmodifiers", "--delay", 5, *keys)

    def type(self, text):
        self._xdotool("type", "--delay", 5, text)

    def point(self, column, row):
        """The middle of a stitch on the screen; beyond the repeat lie its neighbours."""
        return round(self.state["columns"][str(column)]), round(self.state["rows"][str(row)])

    def stroke(self, cells, button=1):
        """Presses on the first cell, goes over the others in jumps, lets go: all at once, as a fast hand does."""
        self.settle()
        commands = []
        for number, (column, row) in enumerate(cells):
            commands += ["mousemove", "--window", self.window, *self.point(column, row)]
            if number == 0:
                commands += ["mousedown", button]
        self._xdotool(*commands, "mouseup", button)
        self.wait_next(lambda state: state["stroke"], "the stroke's first stitch")
        self.wait_next(lambda state: not state["stroke"] and state["idle"], "the stroke's end")

    def click(self, place, button=1):
        """Clicks on something that the state line names."""
        self.wait(lambda state: place in state["places"] and state["idle"], f"'{place}' on the screen")
        left, top, right, bottom = self.state["places"][place]
        frame = self.state["frame"]
        x, y = round((left + right) / 2), round((top + bottom) / 2)
        # From beside it, since a pointer that is there already sends no event.
        self._xdotool("mousemove", "--window", self.window, x - 2, y, "mousemove", "--window", self.window, x, y)
        self.wait(lambda state: state["frame"] > frame and state["idle"], "the pointer's arrival")
        frame = self.state["frame"]
        self._xdotool("click", button)
        self.wait(lambda state: state["frame"] > frame + 1 and state["idle"], "the click")

    def click_stitch(self, column, row):
        """A click on a stitch that draws nothing, such as beside what hangs over the drawing."""
        self.settle()
        frame = self.state["frame"]
        self._xdotool("mousemove", "--window", self.window, *self.point(column, row), "click", 1)
        self.wait(lambda state: state["frame"] > frame + 1 and state["idle"], "the click")

    def wheel(self, column, row, notches):
        x, y = self.point(column, row)
        commands = ["mousemove", "--window", self.window, x, y]
        for _ in range(abs(notches)):
            commands += ["click", 4 if notches > 0 else 5]
        frame = self.state["frame"]
        self._xdotool(*commands)
        self.wait(lambda state: state["frame"] > frame + abs(notches) and state["idle"], "the wheel")

    def fill_name(self, path):
        """Types a path into the dialog that is open, and takes it."""
        self.settle()
        self.key("ctrl+a")
        self.type(str(path))
        self.key("Return")

    def save(self):
        saves = self.state["saves"]
        self.key("ctrl+s")
        self.wait(lambda state: state["saves"] > saves, "the file saved")

    def ended(self):
        return self.process.wait(timeout=HANGS_AFTER)

    def stop(self):
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGKILL)
            self.process.wait()
        self._file.close()


class WindowTest(unittest.TestCase):
    """Each test has a folder, a server and, where it wants one, an editor of its own."""

    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="punchwright-window-"))
        self.server = Server()
        self.server.keep_to(self.folder / "home")
        self.editors = []

    def tearDown(self):
        for editor in self.editors:
            editor.stop()
        self.server.stop()
        shutil.rmtree(self.folder, ignore_errors=True)

    def start(self, *arguments):
        editor = Editor(self.server, self.folder, *arguments)
        self.editors.append(editor)
        return editor

    def start_blank(self, *arguments):
        """Started without a file, and the start page left by Escape."""
        editor = self.start(*arguments)
        editor.wait(lambda state: state["dialog"] == "start" and state["idle"], "the start page")
        editor.key("Escape")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the blank drawing")
        return editor

    def tab_until(self, editor, place, key="Tab"):
        """Goes on by that key until the thing of that name has the keys."""
        seen = []
        for _ in range(60):
            if editor.state["keys_at"] == place:
                return
            before = editor.state["keys_at"]
            editor.key(key)
            editor.wait(lambda state: state["keys_at"] != before and state["idle"], "the next thing")
            seen.append(editor.state["keys_at"])
        self.fail(f"{key} never comes to '{place}': {seen}")

    def settings(self):
        """What the editor keeps for the user, as a table."""
        return tomllib.loads((self.folder / "home" / "config" / "punchwright" / "settings").read_text())

    def write_settings(self, text):
        path = self.folder / "home" / "config" / "punchwright" / "settings"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
        return path

    def write(self, name, text):
        path = self.folder / name
        path.write_text(text)
        return path


def main():
    unittest.main(argv=[sys.argv[0], "-v", *sys.argv[1:]])
