"""Times the mend of a random block of 24 × 60 by glpsol, the solver of the GNU Linear Programming Kit, as a process, and
by the program as a process. Prints figures only."""
import argparse
import pathlib
import random
import shutil
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "mending"))

WIDTH, HEIGHT, LIMIT, TIMES = 24, 60, 5, 15


def fastest(command):
    """ms of the fastest of several runs: others use the machine too."""
    best = None
    for _ in range(TIMES):
        begin = time.perf_counter()
        subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
        took = (time.perf_counter() - begin) * 1000
        best = took if best is None else min(best, took)
    return best


def main():
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("program")
    asked.add_argument("--alone", type=float, help="µs that the mend alone of such a block takes, for its ratio")
    wishes = asked.parse_args()
    if shutil.which("glpsol") is None:
        print("mend of 24 × 60 by glpsol: left out, glpsol isn't installed (Debian's glpk-utils)")
        return
    from integer_program import design, program_of_block  # beside the tests that use it

    dice = random.Random(1926)
    rows = []
    for _ in range(HEIGHT):
        colour, row = 0, []
        for _ in range(WIDTH):
            colour ^= dice.random() < 1 / 3
            row.append(int(colour))
        rows.append(row)
    with tempfile.TemporaryDirectory() as place:
        folder = pathlib.Path(place)
        (folder / "block.lp").write_text(program_of_block(rows, LIMIT))
        (folder / "block.repeat").write_text(design(rows, LIMIT))
        solver = fastest(["glpsol", "--lp", folder / "block.lp", "-o", folder / "answer.txt"])
        ours = fastest([wishes.program, "mend", folder / "block.repeat", "-o", folder / "mended.repeat"])
    print(f"mend of 24 × 60, fewest changes: glpsol as a process {solver:.1f} ms; punchwright mend as a process, with the "
          f"order of looks, reading and writing, {ours:.1f} ms; glpsol takes {solver / ours:.1f} times as long")
    if wishes.alone:
        print(f"the mend alone takes {wishes.alone:.0f} µs: glpsol as a process takes {solver * 1000 / wishes.alone:.0f} "
              "times as long")


if __name__ == "__main__":
    main()
