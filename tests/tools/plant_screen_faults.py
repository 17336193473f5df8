#!/usr/bin/env python3
"""Shows that the comparison of the screens with the kept pictures sees a real defect: faults are planted, one after
another, in the source of a copy; each copy's editor is built, and its screens have to differ. The copy without a fault must not.

    plant_screen_faults.py [--keep FOLDER]    a table of what was seen; ends with 1 where a fault went unseen

It builds the editor anew for each (all of it once, then a file), so it belongs to the nightly run. --keep names a folder for the
copy and its build, so that another run is quicker."""
import argparse
import pathlib
import sys
import tempfile

import planting
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
    ("a faint grid gone: no lines between single stitches", "src/editor/drawing_stitches.cpp",
     "const float x = edge(sight, column);\n", "const float x = edge(sight, column);\n    if (inside % 5 != 0) continue;\n", ["drawing"]),
]
LOOKED_AT = ["drawing", "finding", "yarns"]


def editor_of(folder, jobs):
    return planting.build(folder, "punchwright-editor", jobs)


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
    with planting.planted(folder, path, found, put):
        return squares_seen(editor_of(folder, jobs))


def show(what, seen):
    print(f"{what}: " + ", ".join(f"{name} {count}" for name, count in seen.items()), flush=True)


def run(folder, jobs):
    planting.copy_of_source(folder)
    print("Squares of 8 x 8 pixels that differ from the kept pictures:")
    as_it_is = squares_seen(editor_of(folder, jobs))
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
    line = argparse.ArgumentParser(description="Plants faults and looks whether the screens' comparison sees them.")
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
