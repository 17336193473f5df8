#!/usr/bin/env python3
"""Compares the table in src/README.md with what the files in src really include.
Exits 1 and names every include that turns the direction, and every room that the table forgets."""
import pathlib
import re
import sys

root = pathlib.Path(__file__).resolve().parents[2] / "src"
LIBRARIES = {
    "toml++": r"toml\+\+|tomlplusplus|toml\.hpp", "cairo": r"cairo", "freetype": r"ft2build|freetype", "qpdf": r"qpdf",
    "pugixml": r"pugixml", "stb": r"stb_", "zlib": r"zlib", "png": r"png\.h|libpng", "turbojpeg": r"turbojpeg|jpeglib",
    "CLI": r"CLI/", "nlohmann": r"nlohmann", "imgui": r"imgui", "GLFW": r"GLFW",
    "GL": r"GL/|GLES", "dbus": r"dbus/",
}


# Single headers that a room may not include although it may include their room, and why.
FORBIDDEN = {
    ("knitting", "machine/placement.hpp"): "the proof must not share the conversion from needle to column",
}


def table():
    rooms = {}
    for line in (root / "README.md").read_text().splitlines():
        cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
        if len(cells) == 5 and cells[0].isdigit():
            name = cells[1].strip("`")
            rooms[name] = (cells[3], set(re.findall(r"`([^`]+)`", cells[3])), set(re.findall(r"`([^`]+)`", cells[4])))
    for name, (words, listed, libraries) in rooms.items():
        if words.startswith("all but"):
            listed = set(rooms) - listed - {name}
        rooms[name] = (listed | {name}, libraries)
    return rooms


def main():
    rooms = table()
    trouble = []
    for folder in sorted(path for path in root.iterdir() if path.is_dir()):
        files = sorted(folder.glob("**/*.[ch]pp"))
        if files and folder.name not in rooms:
            trouble.append(f"src/{folder.name} is missing in src/README.md")
            continue
        for file in files:
            allowed, libraries = rooms[folder.name]
            for number, line in enumerate(file.read_text().splitlines(), 1):
                found = re.match(r'\s*#\s*include\s+([<"])([^>"]+)[>"]', line)
                if not found:
                    continue
                where = f"{file.relative_to(root.parent)}:{number}: "
                target = found[2]
                if found[1] == '"' and target.split("/")[0] not in allowed:
                    trouble.append(f"{where}{folder.name} may not include {target}")
                if (folder.name, target) in FORBIDDEN:
                    trouble.append(f"{where}{folder.name} may not include {target}: {FORBIDDEN[folder.name, target]}")
                for library, pattern in LIBRARIES.items():
                    if found[1] == "<" and re.match(pattern, target) and library not in libraries:
                        trouble.append(f"{where}{folder.name} may not include {library} ({target})")
    print("\n".join(trouble) if trouble else f"{len(rooms)} rooms, no include against the direction")
    return 1 if trouble else 0


if __name__ == "__main__":
    sys.exit(main())
