"""Every system call of a saving, one by one: it fails, once or for ever, with each error that a disk may give, or the
program is killed at it. Afterwards the file has its old content or its new one, whole, and the answer says which."""
import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import unittest

SAVER = os.environ["PUNCHWRIGHT_SAVER"]
ERRORS = ["ENOSPC", "EIO", "EDQUOT", "EACCES", "EROFS"]
OLD = "old stitches\n" * 30
NEW = "new stitches, and more of them\n" * 40
NOT_CONFIRMED = "was written, but the disk did not confirm it"
BESIDE = ".punchwright-whole"
# Never the calls that a failing one is repaired with: a temporary file that can't be removed stays.
REMOVING = {"unlink", "unlinkat"}
OF_MEMORY = {"brk", "mmap", "munmap", "mremap"}
CAN_BE_INTERRUPTED = {"openat", "open", "read", "write", "fsync", "close"}


class Place:
    """A folder with what a saving finds, made anew for each run."""

    def __init__(self, kind):
        self.kind = kind
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="punchwright-calls-"))
        self.file = self.folder / "waves.repeat"
        self.other = self.folder / "other name"
        self.before = {}
        if kind != "fresh":
            self.file.write_text(OLD)
            self.file.chmod(0o640)
            os.setxattr(self.file, "user.gauge", b"16")
            self.before[self.file.name] = OLD
        if kind == "two names":
            os.link(self.file, self.other)
            self.before[self.other.name] = OLD
        if kind == "together":
            self.other.write_text(OLD)
            self.before[self.other.name] = OLD

    @property
    def arguments(self):
        pairs = [str(self.file), NEW]
        return pairs + ([str(self.other), NEW] if self.kind == "together" else [])

    @property
    def after(self):
        return {name: NEW for name in [self.file.name, *self.before]}

    def content(self):
        return {path.name: path.read_text() for path in self.folder.iterdir()}

    def __enter__(self):
        return self

    def __exit__(self, *_):
        shutil.rmtree(self.folder)


def trace(place, *wishes):
    log = place.folder.parent / (place.folder.name + ".calls")
    ended = subprocess.run(["strace", "-o", log, *wishes, SAVER, *place.arguments], capture_output=True, text=True,
                           check=False)
    lines = log.read_text().splitlines()
    log.unlink()
    return ended, lines


def calls_of_saving(kind):
    """Each call between the two marks: its name, and which of its name in the whole run."""
    with Place(kind) as place:
        ended, lines = trace(place)
        if ended.stdout != "saved\n":
            raise AssertionError(ended.stdout + ended.stderr)
        if place.content() != place.after:
            raise AssertionError("an undisturbed saving does not save")
    counts = {}
    calls = []
    saving = False
    for line in lines:
        name = line.split("(", 1)[0]
        if not re.fullmatch(r"[a-z_0-9]+", name):
            continue
        counts[name] = counts.get(name, 0) + 1
        if "the saving ends" in line:
            saving = False
        if saving and name not in OF_MEMORY:
            calls.append((name, counts[name]))
        if "the saving begins" in line:
            saving = True
    return calls


class EveryCall(unittest.TestCase):
    kinds = ["fresh", "replaced", "two names", "together"]

    def assert_whole(self, place, content):
        """Each file is old or new; where it is neither, its new content lies whole beside it."""
        for name in place.after:
            now = content.get(name)
            if name not in place.before and now is None:
                continue
            if now not in (OLD, NEW) or (name not in place.before and now != NEW):
                self.assertEqual(content.get(place.file.name + BESIDE), NEW, f"{name} is damaged")

    def test_an_error_at_each_call(self):
        runs = 0
        for kind in self.kinds:
            calls = calls_of_saving(kind)
            self.assertGreater(len(calls), 8, "the calls of a saving")
            for name, number in calls:
                for error in ERRORS:
                    for often in ("", "+"):
                        with self.subTest(kind=kind, call=name, number=number, error=error, often=often), \
                                Place(kind) as place:
                            self.one_error(place, name, f"error={error}:when={number}{often}")
                            runs += 1
        print(f"{runs} savings, each with an error at one call")

    def one_error(self, place, name, how):
        ended, lines = trace(place, "-e", f"inject={name}:{how}")
        self.assertTrue(any("(INJECTED)" in line for line in lines), "the error was never seen")
        content = place.content()
        self.assert_whole(place, content)
        stray = set(content) - set(place.after)
        if name not in REMOVING and BESIDE not in ended.stdout:
            self.assertEqual(stray, set(), "left behind")
        if ended.returncode == 0:
            self.assertEqual({name: content.get(name) for name in place.after}, place.after)
            self.assertEqual(ended.stdout, "saved\n")
            return
        self.assertEqual(ended.returncode, 2, ended.stderr)
        self.assertRegex(ended.stdout, r"^.+: .+; .+\n$", "a place, a reason and a remedy")
        if NOT_CONFIRMED in ended.stdout:
            self.assertEqual({name: content.get(name) for name in place.after}, place.after)
        elif name == "rename" and how.endswith("+") and place.kind == "together":
            pass  # what is in its place can't be taken back without this call; each file is whole
        elif BESIDE in ended.stdout:
            self.assertEqual(content[place.file.name + BESIDE], NEW)
        else:
            self.assertEqual({name: text for name, text in content.items() if name not in stray}, place.before)

    def test_a_kill_at_each_call(self):
        runs = 0
        for kind in self.kinds:
            for name, number in calls_of_saving(kind):
                with self.subTest(kind=kind, call=name, number=number), Place(kind) as place:
                    ended, _ = trace(place, "-e", f"inject={name}:signal=KILL:when={number}")
                    self.assertLess(ended.returncode, 0, "it was killed")
                    self.assertEqual(ended.stdout, "")
                    self.assert_whole(place, place.content())
                    # The next saving clears away what the killed one left.
                    again = subprocess.run([SAVER, *place.arguments], capture_output=True, text=True, check=True)
                    self.assertEqual(again.stdout, "saved\n")
                    self.assertEqual(place.content(), place.after)
                    runs += 1
        print(f"{runs} savings, each killed at one call")

    def test_an_interruption_at_each_call(self):
        for kind in self.kinds:
            for name, number in calls_of_saving(kind):
                if name in CAN_BE_INTERRUPTED:
                    with self.subTest(kind=kind, call=name, number=number), Place(kind) as place:
                        ended, _ = trace(place, "-e", f"inject={name}:error=EINTR:when={number}")
                        self.assertEqual(ended.stdout, "saved\n")
                        self.assertEqual(place.content(), place.after)

    def test_short_writes(self):
        for kind in self.kinds:
            with self.subTest(kind=kind), Place(kind) as place:
                environment = {**os.environ, "SHORT_WRITES": "1"}
                ended = subprocess.run([SAVER, *place.arguments], env=environment, capture_output=True, text=True,
                                       check=False)
                self.assertEqual(ended.stdout, "saved\n")
                self.assertEqual(place.content(), place.after)


if __name__ == "__main__":
    unittest.main(verbosity=2)
