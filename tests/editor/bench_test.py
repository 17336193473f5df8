"""At the bench, in the real window: a press a row, a place that survives a kill, and a screen that stays on."""
import datetime
import os
import pathlib
import select
import socket
import subprocess
import time

from driver import HANGS_AFTER, WindowTest, main, rows_in
from speech_server import SpeechServer

PATTERNS = pathlib.Path(__file__).resolve().parents[2] / "patterns"

# A desktop of the test's own: a screen saver that writes down what it is asked.
SAVER = """
import sys
import dbus, dbus.service
from dbus.mainloop.glib import DBusGMainLoop
from gi.repository import GLib
DBusGMainLoop(set_as_default=True)
bus = dbus.SessionBus()
name = dbus.service.BusName("org.freedesktop.ScreenSaver", bus)

class Saver(dbus.service.Object):
    @dbus.service.method("org.freedesktop.ScreenSaver", in_signature="ss", out_signature="u")
    def Inhibit(self, program, reason):
        print("on", program, flush=True)
        return dbus.UInt32(7)

    @dbus.service.method("org.freedesktop.ScreenSaver", in_signature="u")
    def UnInhibit(self, cookie):
        print("off", int(cookie), flush=True)

Saver(bus, "/org/freedesktop/ScreenSaver")
print("ready", flush=True)
GLib.MainLoop().run()
"""


# Another desktop: no screen saver that could be asked, but a portal, whose inhibition lasts until the program leaves the
# bus (freedesktop.org's portal interfaces, Inhibit: flag 8 is 'idle').
PORTAL = """
import dbus, dbus.service
from dbus.mainloop.glib import DBusGMainLoop
from gi.repository import GLib
DBusGMainLoop(set_as_default=True)
bus = dbus.SessionBus()
name = dbus.service.BusName("org.freedesktop.portal.Desktop", bus)
watches = []

class Portal(dbus.service.Object):
    @dbus.service.method("org.freedesktop.portal.Inhibit", in_signature="sua{sv}", out_signature="o", sender_keyword="sender")
    def Inhibit(self, window, flags, options, sender):
        print("on", int(flags), options["reason"], flush=True)
        watches.append(bus.watch_name_owner(sender, lambda owner: owner or print("off", flush=True)))
        return dbus.ObjectPath("/org/freedesktop/portal/desktop/request/one")

Portal(bus, "/org/freedesktop/portal/desktop")
print("ready", flush=True)
GLib.MainLoop().run()
"""


def line_of(process):
    """The next line that the process writes, or none when it hangs."""
    ready, _, _ = select.select([process.stdout], [], [], HANGS_AFTER)
    return process.stdout.readline() if ready else ""


class Bench(WindowTest):
    def setUp(self):
        super().setUp()
        self.server.environment["DBUS_SESSION_BUS_ADDRESS"] = "unix:path=/nowhere"
        self.path = self.write("hood.repeat", (PATTERNS / "hood-border.repeat").read_text())

    def at_the_bench(self, *arguments):
        editor = self.start(self.path, *arguments)
        editor.key("F5")
        editor.wait(lambda state: state["bench"] and state["idle"], "the bench")
        return editor

    def press(self, editor, key, times=1):
        """One press after the other, each seen before the next."""
        for _ in range(times):
            done = editor.state["bench"]["done"]
            editor.key(key)
            editor.wait(lambda state: state["bench"]["done"] != done and state["idle"], f"{key} seen")

    def go_to_row(self, editor, row):
        while editor.state["bench"]["rows"] < row:
            self.press(editor, "space")

    def places(self):
        return list((self.folder / "home" / "state" / "punchwright" / "bench").glob("*"))

    def test_every_key_that_a_pedal_may_send_moves_a_step(self):
        editor = self.at_the_bench()
        self.assertEqual(editor.state["bench"]["done"], 0)
        for number, key in enumerate(("space", "Right", "Down", "Next", "Return", "KP_Enter", "b"), 1):
            self.press(editor, key)
            self.assertEqual(editor.state["bench"]["done"], number, key)
        for number, key in enumerate(("Left", "Up", "Prior", "BackSpace"), 1):
            self.press(editor, key)
            self.assertEqual(editor.state["bench"]["done"], 7 - number, key)

    def test_gathered_rows_are_counted_one_by_one_with_the_carriages_side(self):
        editor = self.at_the_bench()
        self.go_to_row(editor, 3)
        self.assertEqual(editor.state["bench"]["words"], "Knit row 4, to the left.")
        self.assertEqual(editor.state["bench"]["carriage"], "right")
        self.press(editor, "space")
        self.assertEqual(editor.state["bench"]["words"], "Knit row 5, to the right.")
        self.assertEqual(editor.state["bench"]["carriage"], "left")
        self.assertEqual(editor.state["bench"]["today"], 4)

    def test_a_kill_in_the_middle_loses_no_row(self):
        editor = self.at_the_bench()
        self.go_to_row(editor, 6)
        before = editor.state["bench"]
        editor.stop()  # SIGKILL
        editor = self.at_the_bench()
        self.assertEqual(editor.state["bench"], before)
        self.assertIn("after row 6", editor.state["message"])
        self.assertEqual(len(self.places()), 1)
        self.assertIn(f'date = "{datetime.date.today()}"\nrows = 6', self.places()[0].read_text())

    def test_a_kill_right_behind_a_key_loses_that_key_at_most(self):
        editor = self.at_the_bench()
        for pause in (0, 0.002, 0.01, 0.03, 0.08):
            self.press(editor, "space", 2)
            shown = editor.state["bench"]["done"]
            editor.key("space")
            time.sleep(pause)
            editor.stop()
            editor = self.at_the_bench()
            self.assertIn(editor.state["bench"]["done"], (shown, shown + 1))

    def test_a_changed_design_is_asked_about(self):
        editor = self.at_the_bench()
        self.go_to_row(editor, 5)
        editor.stop()
        text = self.path.read_text()
        self.path.write_text(text.replace("#.", ".#", 1))
        self.assertNotEqual(text, self.path.read_text())
        for answer, done in (("bench stay", True), ("bench start over", False)):
            with self.subTest(answer=answer):
                editor = self.start(self.path)
                editor.key("F5")
                editor.wait(lambda state: state["dialog"] == "bench-changed" and state["idle"], "the question")
                self.assertIsNone(editor.state["bench"])
                if done:
                    place = self.places()[0].read_text()
                editor.click(answer)
                editor.wait(lambda state: state["bench"] and state["idle"], "the bench")
                self.assertEqual(editor.state["bench"]["rows"], 5 if done else 0)
                self.assertEqual(editor.state["bench"]["today"], 5)
                editor.stop()
                self.places()[0].write_text(place)  # as it was, for the other answer

    def test_the_drawing_is_safe_from_the_pedal_and_escape_leads_back_to_it(self):
        editor = self.at_the_bench()
        drawing = rows_in(self.path)
        for key in ("x", "h", "Delete", "ctrl+i", "ctrl+Left", "w"):
            editor.key(key)
        self.press(editor, "space", 3)
        self.assertEqual(editor.state["revision"], 0)
        editor.key("Escape")
        editor.wait(lambda state: state["bench"] is None and state["idle"], "the drawing")
        editor.key("space")
        editor.wait(lambda state: state["revision"] > 0 and state["idle"], "a stitch turned")
        self.assertEqual(rows_in(self.path), drawing)

    def test_tab_goes_to_the_buttons_and_the_pedal_still_moves_on(self):
        editor = self.at_the_bench()
        self.tab_until(editor, "bench-forward")
        editor.key("Return")
        editor.wait(lambda state: state["bench"]["done"] == 1 and state["idle"], "the button pressed")
        self.press(editor, "space")
        self.assertEqual(editor.state["bench"]["done"], 2)
        self.tab_until(editor, "step-list")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "step-list" and state["idle"], "the list")

    def test_the_list_of_steps_marks_the_place_and_leads_to_another(self):
        editor = self.at_the_bench()
        self.go_to_row(editor, 2)
        editor.key("F7")
        editor.wait(lambda state: state["dialog"] == "step-list" and state["idle"], "the list")
        self.assertIn("list step 14", editor.state["places"])
        editor.key("Up")
        editor.key("Up")
        editor.settle()
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["idle"], "the bench")
        self.assertEqual(editor.state["bench"]["rows"], 0)
        self.assertEqual(editor.state["bench"]["today"], 2)

    def begin(self, *command, errors=None):
        process = subprocess.Popen(command, env=self.server.environment, stdout=subprocess.PIPE, stderr=errors, text=True)
        self.addCleanup(process.stdout.close)
        self.addCleanup(process.wait)
        self.addCleanup(process.terminate)
        return process

    def a_bus(self):
        """A session bus of the test's own, to which the editor will speak."""
        daemon = self.begin("dbus-daemon", "--session", "--nofork", "--print-address", errors=subprocess.DEVNULL)
        self.server.environment["DBUS_SESSION_BUS_ADDRESS"] = line_of(daemon).strip()

    def a_desktop(self, source):
        self.a_bus()
        desktop = self.begin("/usr/bin/python3", "-c", source)
        self.assertEqual(line_of(desktop), "ready\n")
        return desktop

    def test_the_screen_is_kept_on_while_the_bench_is_open(self):
        reason = "The steps at the knitting machine are shown"
        for source, on, off in ((SAVER, "on Punchwright\n", "off 7\n"), (PORTAL, f"on 8 {reason}\n", "off\n")):
            with self.subTest(desktop="portal" if source == PORTAL else "screen saver"):
                desktop = self.a_desktop(source)
                editor = self.at_the_bench()
                self.assertEqual(line_of(desktop), on)
                editor.key("Escape")
                self.assertEqual(line_of(desktop), off)
                editor.key("F5")
                self.assertEqual(line_of(desktop), on)
                editor.key("ctrl+q")
                self.assertEqual(editor.ended(), 0)
                self.assertEqual(line_of(desktop), off)

    def test_a_kill_lets_a_portals_screen_sleep_again(self):
        desktop = self.a_desktop(PORTAL)
        editor = self.at_the_bench()
        self.assertTrue(line_of(desktop).startswith("on 8"))
        editor.stop()  # SIGKILL
        self.assertEqual(line_of(desktop), "off\n")

    def test_without_a_bus_or_with_an_empty_one_the_bench_is_as_ever(self):
        def no_variable():
            for name in ("DBUS_SESSION_BUS_ADDRESS", "XDG_RUNTIME_DIR"):
                self.server.environment.pop(name, None)

        def nobody_listens():
            self.server.environment["DBUS_SESSION_BUS_ADDRESS"] = "unix:path=/nowhere"

        for desktop in (no_variable, nobody_listens, self.a_bus):
            with self.subTest(desktop=desktop.__name__):
                desktop()
                editor = self.at_the_bench()
                done = editor.state["bench"]["done"]
                self.press(editor, "space")
                self.assertEqual(editor.state["bench"]["done"], done + 1)
                editor.key("Escape")
                editor.wait(lambda state: state["bench"] is None and state["idle"], "the drawing")
                editor.key("ctrl+q")
                self.assertEqual(editor.ended(), 0)

    def test_a_desktop_that_never_answers_holds_nothing_up(self):
        deaf = socket.socket(socket.AF_UNIX)
        self.addCleanup(deaf.close)
        deaf.bind(str(self.folder / "deaf"))
        deaf.listen()
        deaf.settimeout(HANGS_AFTER)
        self.server.environment["DBUS_SESSION_BUS_ADDRESS"] = f"unix:path={self.folder / 'deaf'}"
        editor = self.at_the_bench()
        caller, _ = deaf.accept()
        self.addCleanup(caller.close)
        self.press(editor, "space")
        editor.key("Escape")
        editor.wait(lambda state: state["bench"] is None and state["idle"], "the drawing")
        self.assertTrue(self.still_asking(caller), "the window waited until the question was given up")
        editor.key("ctrl+q")
        self.assertEqual(editor.ended(), 0)

    @staticmethod
    def still_asking(caller):
        caller.setblocking(False)
        try:
            while caller.recv(4096):
                pass
        except BlockingIOError:
            return True
        return False

    def test_a_step_is_spoken_where_a_program_can_and_the_next_one_cuts_it_short(self):
        said = self.folder / "said"
        programs = self.folder / "programs"
        programs.mkdir()
        voice = programs / "spd-say"  # which is looked for first
        voice.write_text(f'#!/bin/sh\nfor word; do :; done\necho "$$ $word" >> {said}\n'
                         f'[ "$1" = --wait ] && exec sleep {HANGS_AFTER}\n')
        voice.chmod(0o755)
        self.server.environment["PATH"] = f"{programs}:{os.environ['PATH']}"
        self.write_settings("[bench]\nspeak = true\n")
        editor = self.at_the_bench()
        lines = self.lines_of(said, 1)
        self.assertIn("Starting position", lines[0])
        self.press(editor, "space")
        lines = self.lines_of(said, 2)
        self.assertIn("Thread Sailcloth", lines[1])
        self.wait_gone(int(lines[0].split()[0]))
        editor.key("Escape")
        self.wait_gone(int(lines[1].split()[0]))
        self.assertIn("--cancel", self.lines_of(said, 3)[2])

    def test_the_real_speech_client_says_the_steps_at_the_rate_that_is_set(self):
        server = SpeechServer(self.folder / "speech.sock")
        self.addCleanup(server.close)
        self.server.environment["SPEECHD_ADDRESS"] = server.address
        self.write_settings("[bench]\nspeak = true\nspeech_rate = -20\n")
        editor = self.at_the_bench()
        self.wait_until(lambda: len(server.said) >= 1, "the first step said")
        self.assertIn("Starting position", server.said[0])
        self.assertEqual(server.set_to["RATE"], "-20")
        self.press(editor, "space")
        self.wait_until(lambda: len(server.said) >= 2, "the second step said")
        self.assertIn("Thread Sailcloth", server.said[1])

    def test_silence_is_the_default(self):
        said = self.folder / "said"
        programs = self.folder / "programs"
        programs.mkdir()
        voice = programs / "spd-say"
        voice.write_text(f'#!/bin/sh\nfor word; do :; done\necho "$$ $word" >> {said}\n')
        voice.chmod(0o755)
        self.server.environment["PATH"] = f"{programs}:{os.environ['PATH']}"
        editor = self.at_the_bench()
        self.press(editor, "space", 3)
        self.assertFalse(said.exists())
        editor.click("say-step")  # once, by its button
        self.assertIn("Hang weights", self.lines_of(said, 1)[0])

    def wait_until(self, condition, what):
        end = time.monotonic() + HANGS_AFTER
        while not condition():
            self.assertLess(time.monotonic(), end, f"no sign of {what}")
            time.sleep(0.01)

    def lines_of(self, path, count):
        end = time.monotonic() + HANGS_AFTER
        while time.monotonic() < end:
            lines = path.read_text().splitlines() if path.exists() else []
            if len(lines) >= count:
                return lines
            time.sleep(0.01)
        raise AssertionError(f"{path} has no {count} lines")

    def wait_gone(self, process):
        end = time.monotonic() + HANGS_AFTER
        while pathlib.Path(f"/proc/{process}").exists():
            self.assertLess(time.monotonic(), end, f"{process} goes on")
            time.sleep(0.01)


class SmallWindows(WindowTest):
    """At 80 to 250 % every button of the bench and its lists lies in the window."""

    def test_every_button_lies_in_the_window(self):
        path = self.write("hood.repeat", (PATTERNS / "hood-border.repeat").read_text())
        places = {"F5": ("bench-back", "bench-forward", "step-list", "at-the-bench"), "F7": ("go to bench", "cancel"),
                  "F8": ("play slider", "play back", "play forward", "cancel"), "F9": ("ask", "cancel")}
        for size, percent in (("1440x900", 100), ("1024x640", 100), ("1024x640", 250)):
            for key, names in places.items():
                with self.subTest(size=size, percent=percent, key=key):
                    self.write_settings(f"text_percent = {percent}\n")
                    editor = self.start(path, "--size", size)
                    width, height = map(int, size.split("x"))
                    editor.key(key)
                    editor.wait(lambda state, names=names: names[0] in state["places"] and state["idle"], names[0])
                    for name in names:
                        left, top, right, bottom = editor.state["places"][name]
                        self.assertTrue(0 <= left and right <= width and 0 <= top and bottom <= height, name)
                    editor.stop()


if __name__ == "__main__":
    main()
