#!/usr/bin/env python3
"""Shows that the comparison of the screens with the kept pictures sees a real defect: three faults are planted, one after
another, in the source of a copy; each copy's editor is built, and its screens have to differ. The copy without a fault must not.

    plant_screen_faults.py [--keep FOLDER]    a table of what was seen; ends with 1 where a fault went unseen

It builds the editor four times (all of it once, then a file), so it belongs to the nightly run. --keep names a folder for the
copy and its build, so that another run is quicker."""
import argparse
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

import screens

# What is planted, where, the words in the source and what they become, and the screens on which it has to be seen.
FAULTS = [
    ("a wrong colour: the floats' bars as blue as notes", "src/editor/drawing_marks.cpp",
     "ink(theme.panel, 0.85F) : ink(theme.fault);", "ink(theme.panel, 0.85F) : ink(theme.note);", ["finding"]),
    ("a mark displaced by a stitch: the floats' bars", "src/editor/drawing_marks.cpp",
     "draw(ScreenBox{low.left, high.top, high.right, low.bottom});",
     "draw(ScreenBox{low.left + sight.layout.cell_width, high.top, high.right + sight.layout.cell_width, low.bottom});",
     ["finding"]),
    ("a missing strip: no plain rows between the bands", "src/editor/drawing_stitches.cpp",
     "if (!has_strip_below(sight.layout, inside)) {", "if (inside >= 0) {", ["yarns"]),
]
LOOKED_AT = ["drawing", "finding", "yarns"]


def copy_of_source(folder):
    """The source as it stands in the working folder, without what git ignores; files that are alike keep their times."""
    names = subprocess.run(["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"], cwd=screens.HERE,
                           capture_output=True, check=True).stdout.decode().split("\0")
    for name in filter(None, names):
        here, there = screens.HERE / name, folder / name
        if not here.is_file() or (there.exists() and there.read_bytes() == here.read_bytes()):
            continue
        there.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(here, there)


def build(folder, jobs):
    environment = {**os.environ, "CCACHE_BASEDIR": str(folder), "CCACHE_NOHASHDIR": "1"}
    for command in (["cmake", "-S", folder, "-B", folder / "build", "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release",
                     "-DPUNCHWRIGHT_TESTS=OFF"],
                    ["cmake", "--build", folder / "build", "--target", "punchwright-editor", "-j", jobs]):
        done = subprocess.run(list(map(str, command)), env=environment, capture_output=True, text=True, check=False)
        if done.returncode != 0:
            raise SystemExit(f"plant_screen_faults.py: the copy can't be built:\n{(done.stdout + done.stderr)[-3000:]}")
    return folder / "build" / "punchwright-editor"


def squares_seen(editor):
    """For each screen that is looked at, how many squares of 8 x 8 pixels differ from its kept picture."""
    arguments = {name: given for name, _, given in screens.SCREENS}
    seen = {}
    with screens.Desk() as desk:
        for name in LOOKED_AT:
            squares = screens.differences(desk.picture(editor, "light", arguments[name]),
                                          screens.kept_picture(name, "light"))
            if squares is None:
                raise SystemExit(f"plant_screen_faults.py: the kept picture of '{name}' has another size")
            seen[name] = len(squares)
    return seen


def plant(folder, fault, jobs):
    _, path, found, put, _ = fault
    source = folder / path
    before = source.read_text()
    if before.count(found) != 1:
        raise SystemExit(f"plant_screen_faults.py: {path} has '{found}' {before.count(found)} times instead of once; "
                         "choose another fault there")
    source.write_text(before.replace(found, put))
    try:
        return squares_seen(build(folder, jobs))
    finally:
        source.write_text(before)


def show(what, seen):
    print(f"{what}: " + ", ".join(f"{name} {count}" for name, count in seen.items()), flush=True)


def run(folder, jobs):
    copy_of_source(folder)
    print("Squares of 8 x 8 pixels that differ from the kept pictures:")
    as_it_is = squares_seen(build(folder, jobs))
    show("nothing planted", as_it_is)
    wrong = [f"nothing is planted, and '{name}' differs" for name, count in as_it_is.items() if count > 0]
    for fault in FAULTS:
        seen = plant(folder, fault, jobs)
        show(fault[0], seen)
        wrong += [f"{fault[0]}: not seen on '{name}'" for name in fault[4] if seen[name] == 0]
    for line in wrong:
        print("plant_screen_faults.py: " + line, file=sys.stderr)
    return 1 if wrong else 0


def main():
    line = argparse.ArgumentParser(description="Plants three faults and looks whether the screens' comparison sees them.")
    line.add_argument("--keep", help="the folder of the copy and its build, which stays")
    line.add_argument("--jobs", default="2", help="how many are compiled at a time")
    given = line.parse_args()
    if given.keep:
        folder = pathlib.Path(given.keep).resolve()
        folder.mkdir(parents=True, exist_ok=True)
        return run(folder, given.jobs)
    with tempfile.TemporaryDirectory(prefix="punchwright-planted-") as folder:
        return run(pathlib.Path(folder), given.jobs)


if __name__ == "__main__":
    raise SystemExit(main())
