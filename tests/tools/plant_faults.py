#!/usr/bin/env python3
"""Shows how many small faults the unit tests notice: one after another is planted in a copy of the source (a bound, a sign, an
off-by-one, an 'and' for an 'or'), at places that a seeded die chooses, and the tests of the room and of those above it are run.

    plant_faults.py [--count 60] [--seed 1] [--rooms rows,plan] [--folder FOLDER] [--workers 2]

One line a fault: caught (and by which test), or SURVIVED; then the counts. A folder that is kept is built only once, with a
copy in it for each worker. What doesn't compile is no fault and is not counted. It takes an hour or so, and is run on
demand."""
import argparse
import os
import pathlib
import random
import re
import subprocess
import sys
import tempfile
import threading

import planting

# Below the sheets: what decides, not how it is drawn. Rooms in order, as tests/CMakeLists.txt has them.
ROOMS = ["design", "drawing", "pictures", "files", "journal", "settings", "machine", "rows", "rules", "mending", "tracing",
         "knitting", "plan", "diagnosis", "pieces", "proof"]
TESTS = ["random", *ROOMS, "sheets"]
# Tables of shapes, letters and words, in which a comparison or a sign has nothing to decide.
NO_CODE = re.compile(r"(motifs_\w+|letters_\w+|alphabet_data|motif_data|built_in_profiles|words|edit_names|\w+_words)\.(cpp|hpp)$")
FAULTS = {" < ": " <= ", " <= ": " < ", " > ": " >= ", " >= ": " > ", " == ": " != ", " != ": " == ", " && ": " || ",
          " || ": " && ", " + ": " - ", " - ": " + ", " += ": " -= ", " -= ": " += ", " * ": " + ", " % ": " * ",
          " + 1": "", " - 1": "", "std::min(": "std::max(", "std::max(": "std::min(", "true": "false", "false": "true",
          "++": "--"}
LONGEST = 300  # seconds that a test may take before it counts as hanging


def places_in(path, text):
    """(line, its text with a fault) for every place in the file's code; only lines that stand once in the file."""
    lines = text.split("\n")
    for number, line in enumerate(lines, 1):
        code = re.sub(r'"(\\.|[^"\\])*"', lambda found: "\0" * len(found[0]), line.split("//")[0])
        if re.match(r"\s*(#|template|using|static_assert)", code) or lines.count(line) != 1 or not code.strip():
            continue
        for found, put in FAULTS.items():
            for at in re.finditer(re.escape(found), code):
                word = found.strip().isalpha()
                if word and re.search(r"\w", code[at.start() - 1:at.start()] + code[at.end():at.end() + 1]):
                    continue
                yield path, number, line, line[:at.start()] + put + line[at.end():]


def chosen(rooms, seed):
    """All places in an order by dice. Each room has its turn by the amount of code in it, since each place is one."""
    places = []
    for room in rooms:
        for source in sorted((planting.HERE / "src" / room).glob("*.[ch]pp")):
            if not NO_CODE.search(source.name):
                places += places_in(source.relative_to(planting.HERE), source.read_text())
    random.Random(seed).shuffle(places)
    return places


class Copy:
    def __init__(self, folder):
        self.folder = folder
        planting.copy_of_source(folder)
        self.environment = {**os.environ, "CCACHE_BASEDIR": str(folder), "CCACHE_NOHASHDIR": "1",
                            "PUNCHWRIGHT_DOCUMENTS": "1000"}
        options = ["-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release", "-DPUNCHWRIGHT_EDITOR=OFF"]
        self.run(["cmake", "-S", folder, "-B", folder / "build", *options]).check_returncode()

    def run(self, words, **how):
        return subprocess.run(list(map(str, words)), env=self.environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                              text=True, errors="replace", check=False, **how)

    def build(self, *targets):
        return self.run(["cmake", "--build", self.folder / "build", "--target", *targets])

    def caught_by(self, room):
        """The name of the test that fails, with what it says; None: none does; False: it can't be built."""
        order = [room, *(test for test in TESTS if test != room)]
        for test in order:
            program = self.folder / "build" / "tests" / f"test_{test}"
            before = program.stat().st_mtime_ns if program.exists() else 0
            built = self.build(f"test_{test}")
            if built.returncode != 0:
                return False
            if program.stat().st_mtime_ns == before:
                continue  # what it is made of did not change
            try:
                done = self.run([program], timeout=LONGEST, cwd=self.folder)
            except subprocess.TimeoutExpired:
                return f"{test} (hangs)"
            if done.returncode != 0:
                case = re.search(r"TEST CASE:\s*(.*)", done.stdout)
                return f"{test} ({case[1] if case else done.stdout.strip().splitlines()[-1][:60]})"
        return None


class Check:
    """Workers, each with a copy, take the next place from one list until enough faults were tried."""

    def __init__(self, places, count):
        self.places = iter(enumerate(places))
        self.count = count
        self.taken = self.caught = self.survived = 0
        self.lock = threading.Lock()

    def next_place(self):
        with self.lock:
            if self.taken == self.count:
                return None
            self.taken += 1
            return next(self.places, None)

    def note(self, number, path, line, put, by, at):
        with self.lock:
            if by is False:
                self.taken -= 1  # another one in its place
                return
            self.caught += by is not None
            self.survived += by is None
            print(f"{self.caught + self.survived:3} (place {number}) {path}:{at}: '{line.strip()}' -> '{put.strip()}': "
                  f"{'caught by ' + by if by else 'SURVIVED'}", flush=True)

    def work(self, copy):
        while (place := self.next_place()) is not None:
            number, (path, at, line, put) = place
            with planting.planted(copy.folder, path, f"\n{line}\n", f"\n{put}\n"):
                by = copy.caught_by(path.parts[1])
            self.note(number, path, line, put, by, at)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--count", type=int, default=60)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--rooms", default=",".join(ROOMS))
    parser.add_argument("--folder", type=pathlib.Path)
    parser.add_argument("--workers", type=int, default=len(os.sched_getaffinity(0)))
    wished = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="punchwright-planted-") as own:
        copies = [Copy((wished.folder or pathlib.Path(own)) / str(number)) for number in range(wished.workers)]
        for copy in copies:
            whole = copy.build(*(f"test_{test}" for test in TESTS))
            if whole.returncode != 0:
                raise SystemExit(f"plant_faults.py: the copy can't be built:\n{whole.stdout[-3000:]}")
        check = Check(chosen(wished.rooms.split(","), wished.seed), wished.count)
        workers = [threading.Thread(target=check.work, args=[copy]) for copy in copies]
        for worker in workers:
            worker.start()
        for worker in workers:
            worker.join()
    print(f"{check.caught} of {check.caught + check.survived} faults caught, {check.survived} survived")
    return 0 if check.survived == 0 else 1


if __name__ == "__main__":
    sys.exit(main())
