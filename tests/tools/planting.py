"""A copy of the source in which faults are planted one after another, to see that something notices them."""
import contextlib
import os
import pathlib
import shutil
import subprocess

HERE = pathlib.Path(__file__).resolve().parents[2]


def copy_of_source(folder):
    """The source as it stands in the working folder, without what git ignores; files that are alike keep their times."""
    names = subprocess.run(["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"], cwd=HERE,
                           capture_output=True, check=True).stdout.decode().split("\0")
    for name in filter(None, names):
        here, there = HERE / name, folder / name
        if not here.is_file() or (there.exists() and there.read_bytes() == here.read_bytes()):
            continue
        there.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(here, there)


def build(folder, target, jobs, *options):
    """Builds one program of the copy and gives its path."""
    environment = {**os.environ, "CCACHE_BASEDIR": str(folder), "CCACHE_NOHASHDIR": "1"}
    for command in (["cmake", "-S", folder, "-B", folder / "build", "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release",
                     "-DPUNCHWRIGHT_TESTS=OFF", *options],
                    ["cmake", "--build", folder / "build", "--target", target, "-j", jobs]):
        done = subprocess.run(list(map(str, command)), env=environment, capture_output=True, text=True, check=False)
        if done.returncode != 0:
            raise SystemExit(f"the copy can't be built:\n{(done.stdout + done.stderr)[-3000:]}")
    return folder / "build" / target


@contextlib.contextmanager
def planted(folder, path, found, put):
    """While it lasts, the copy's file has `put` in the one place where it had `found`."""
    source = folder / path
    before = source.read_text()
    if before.count(found) != 1:
        raise SystemExit(f"{path} has '{found}' {before.count(found)} times instead of once; choose another fault there")
    source.write_text(before.replace(found, put))
    try:
        yield
    finally:
        source.write_text(before)
