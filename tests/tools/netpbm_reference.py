"""Mirror, shift and tile as netpbm does them (Debian's package netpbm), for comparing cloth pictures with.
A drawing is a picture of one pixel a stitch: white main, black contrast, row 1 lowest."""

import subprocess

import numpy


def netpbm(words, picture):
    return subprocess.run(words, input=picture, stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=True).stdout


def pbm_of(rows):
    """`rows`: '.' and '#', row 1 first."""
    lines = [" ".join("1" if stitch == "#" else "0" for stitch in row) for row in reversed(rows)]
    plain = f"P1\n{len(rows[0])} {len(rows)}\n" + "\n".join(lines) + "\n"
    return netpbm(["pnmtopnm"], plain.encode())


def rows_of(pbm):
    """Back to '.' and '#', row 1 first."""
    words = netpbm(["pnmtopnm", "-plain"], pbm).split()
    assert words[0] == b"P1"
    width, height = int(words[1]), int(words[2])
    bits = b"".join(words[3:]).decode().translate({ord("0"): ".", ord("1"): "#"})
    return [bits[line * width : (line + 1) * width] for line in reversed(range(height))]


def mirrored(pbm):
    return netpbm(["pnmflip", "-lr"], pbm)


def tiled(pbm, width, height):
    """From the upper left, cut where it ends."""
    return netpbm(["pnmtile", str(width), str(height)], pbm)


def cut(pbm, left, width):
    return netpbm(["pnmcut", "-left", str(left), "-width", str(width)], pbm)


def shifted_to_end_with(pbm, width, column, folder):
    """Turned round its edge, so that drawn column `column` (from 1) is the rightmost."""
    if column == width:
        return pbm
    left, right = folder / "left.pbm", folder / "right.pbm"
    left.write_bytes(cut(pbm, 0, column))
    right.write_bytes(cut(pbm, column, width - column))
    return netpbm(["pnmcat", "-leftright", str(right), str(left)], b"")


def cells_of_cloth(png, stitches, rows, main, contrast):
    """The cloth picture back to '.' and '#', row 1 first: a cell has the yarn that most of its pixels are nearest to.
    `main`, `contrast`: red, green, blue."""
    ppm = netpbm(["pngtopnm"], png)
    head, size, _, pixels = ppm.split(b"\n", 3)
    assert head == b"P6"
    width, height = map(int, size.split())
    picture = numpy.frombuffer(pixels, numpy.uint8).reshape(height, width, 3).astype(int)
    to_main, to_contrast = (abs(picture - numpy.array(yarn)).sum(axis=2) for yarn in (main, contrast))
    dark = to_contrast < to_main
    out = []
    for row in range(rows):
        top, bottom = height * (rows - 1 - row) / rows, height * (rows - row) / rows
        line = ""
        for stitch in range(stitches):
            left, right = width * stitch / stitches, width * (stitch + 1) / stitches
            cell = dark[round(top) + 1 : round(bottom) - 1, round(left) + 1 : round(right) - 1]
            assert cell.size, "the cells are large enough to be told apart"
            share = cell.mean()
            assert not 0.3 < share < 0.7, f"row {row + 1}, stitch {stitch + 1}: neither yarn ({share:.2f})"
            line += "#" if share > 0.5 else "."
        out.append(line)
    return out
