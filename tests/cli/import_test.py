"""punchwright import: pictures that netpbm, ImageMagick and the X Window System wrote come in stitch for stitch."""

import os
import random
import subprocess
import sys
import tomllib

import command
from command import CANNOT, DONE, FAULTS, PROGRAM, SOURCE, CommandTest, run

sys.path.insert(0, str(SOURCE / "tests" / "tools"))
from netpbm_reference import netpbm, pbm_of, rows_of


def random_rows(dice, width, height):
    rows = ["".join(dice.choice(".#") for _ in range(width)) for _ in range(height)]
    return ["#" + rows[0][1:], *rows[1:-1], "." + rows[-1][1:]] if height > 1 else ["#." + rows[0][2:]]


def convert(words, picture):
    return subprocess.run(["convert", *words], input=picture, stdout=subprocess.PIPE, check=True).stdout


class Pictures(CommandTest):
    def rows_in(self, picture, *options, code=None):
        out = self.folder / "out.repeat"
        ended = run("import", picture, "-o", out, *options)
        self.assertIn(ended.code, (DONE, FAULTS) if code is None else (code,), ended.err)
        self.design = tomllib.loads(out.read_text())
        self.said = ended.text
        return list(reversed(self.design["repeat"]["rows"]))  # row 1 first

    def test_of_every_form_that_netpbm_writes(self):
        dice = random.Random(20)
        for width, height in [(1, 2), (7, 3), (8, 8), (16, 5), (17, 31), (24, 60), (200, 9), (3, 2000)]:
            rows = random_rows(dice, width, height)
            plain = pbm_of(rows)
            forms = {
                "packed.pbm": netpbm(["pnmtopnm"], plain),
                "plain.pbm": netpbm(["pnmtopnm", "-plain"], plain),
                "one-bit.png": netpbm(["pnmtopng"], plain),
                "interlaced.png": netpbm(["pnmtopng", "-interlace"], plain),
                "bits.xbm": netpbm(["pbmtoxbm", "-name", "bits"], plain),
                "words.xbm": netpbm(["pbmtoxbm", "-x10", "-name", "bits"], plain),
            }
            for name, bytes in forms.items():
                with self.subTest(form=name, width=width, height=height):
                    self.assertEqual(self.rows_in(self.file(name, bytes)), rows)

    def test_of_every_kind_of_png_that_imagemagick_writes(self):
        rows = random_rows(random.Random(21), 23, 14)
        pbm = pbm_of(rows)
        for kind in ["PNG8", "PNG24", "PNG32", "PNG48", "PNG64"]:
            for colours in [["black", "white"], ["#20304a", "#e8dcc2"], ["#7a1f1f", "#1fd07a"]]:
                with self.subTest(kind=kind, colours=colours):
                    picture = convert(["pbm:-", "-fill", colours[0], "-opaque", "black", "-fill", colours[1],
                                       "-opaque", "white", f"{kind}:-"], pbm)
                    self.assertEqual(self.rows_in(self.file("picture.png", picture)), rows)
        yarns = {yarn["key"]: yarn["colour"] for yarn in self.design["yarn"]}
        band = self.design["band"][0]
        self.assertEqual([yarns[band["contrast"]], yarns[band["main"]]], ["#7a1f1f", "#1fd07a"])

    def test_with_a_transparent_ground(self):
        rows = random_rows(random.Random(22), 9, 9)
        picture = convert(["pbm:-", "-transparent", "white", "PNG32:-"], pbm_of(rows))
        self.assertEqual(self.rows_in(self.file("picture.png", picture)), rows)

    def test_of_the_x_window_system(self):
        import pathlib

        for name in ["boxes", "cross_weave", "escherknot", "menu12", "plaid", "scales", "weird_size"]:
            bytes = pathlib.Path("/usr/include/X11/bitmaps", name).read_bytes()
            width, height = map(int, netpbm(["pnmfile"], netpbm(["xbmtopbm"], bytes)).split(b"raw, ")[1].split()[0:3:2])
            with self.subTest(picture=name):
                picture = self.file(name + ".xbm", bytes)
                if width > 200:
                    self.assert_refused(run("import", picture, "-o", self.folder / "no.repeat"), name, width, "200")
                else:
                    self.assertEqual(self.rows_in(picture), rows_of(netpbm(["xbmtopbm"], bytes)))

    def test_with_the_lighter_colour_as_contrast(self):
        rows = random_rows(random.Random(23), 8, 5)
        picture = self.file("sea gull.pbm", pbm_of(rows))
        self.assertEqual(self.rows_in(picture, "--contrast", "darker"), rows)
        self.assertIn("8 × 5 stitches; contrast is the darker colour, #000000\n", self.said)
        turned = str.maketrans(".#", "#.")
        self.assertEqual(self.rows_in(picture, "--contrast", "lighter"), [row.translate(turned) for row in rows])
        self.assertEqual(self.design["title"], "sea gull")

    def test_from_standard_input(self):
        out = self.folder / "out.repeat"
        ended = run("import", "-", "-o", out, input=b"P1 4 1 1 0 1 0")
        self.assert_ended(ended, DONE)
        self.assertEqual(tomllib.loads(out.read_text())["repeat"]["rows"], ["#.#."])

    def test_for_a_machine_built_in_or_of_ones_own(self):
        picture = self.file("five.pbm", "P1 5 1 1 0 1 0 0")
        self.rows_in(picture, code=FAULTS)  # 5 stitches are no repeat of a 24-stitch card
        self.rows_in(picture, "--machine", "plastic-by-hand", code=DONE)
        self.assertEqual(self.design["machine"]["profile"], "plastic-by-hand")
        (self.folder / "machines").mkdir()
        own = self.folder / "machines" / "ours.machine"
        self.assert_ended(run("machine", "plastic-by-hand", "-o", own), DONE)
        out = self.folder / "out.repeat"
        self.assert_ended(run("import", "five.pbm", "-o", out, "--machine", "machines/ours.machine", cwd=self.folder),
                          DONE)
        self.assert_ended(run("check", out), DONE)


class WhatIsNoSuchPicture(CommandTest):
    def refused(self, name, content, *words):
        out = self.folder / "no.repeat"
        self.assert_refused(run("import", self.file(name, content), "-o", out), name, *words)
        self.assertFalse(out.exists())

    def test_says_how_many_colours_it_has(self):
        ppm = b"P6\n3 1\n255\n" + bytes([0, 0, 0, 255, 255, 255, 250, 255, 255])
        self.refused("three.png", netpbm(["pnmtopng"], ppm), "3 colours", "67 %", "two in a paint program",
                     "punchwright trace ")
        grey = b"P5\n16 16\n255\n" + bytes(range(256))
        self.refused("grey.png", netpbm(["pnmtopng"], grey), "256 colours")
        self.refused("white.png", netpbm(["pnmtopng"], b"P1 2 2 0 0 0 0"), "one colour")

    def test_is_too_large(self):
        self.refused("wide.png", convert(["-size", "201x3", "pattern:gray50", "png:-"], b""), "201", "200 × 2000")
        self.refused("high.png", convert(["-size", "3x2001", "pattern:gray50", "png:-"], b""), "2001", "200 × 2000")

    def test_is_broken(self):
        png = netpbm(["pnmtopng"], pbm_of(random_rows(random.Random(24), 24, 40)))
        self.refused("short.png", png[: len(png) // 2], "broken", "again")
        self.refused("changed.png", png[:60] + bytes([png[60] ^ 255]) + png[61:], "broken")
        self.refused("text.png", b"hello", "no PNG, PBM or XBM")

    def test_unpacks_no_more_than_its_head_says(self):
        """An IDAT of zeros a hundred times as large as the picture: read or refused, with little memory."""
        import struct
        import zlib

        def chunk(kind, data):
            return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

        packer = zlib.compressobj(9)  # in pieces: a child's memory counts what its parent held
        packed = b"".join(packer.compress(bytes(1_000_000)) for _ in range(300)) + packer.flush()
        bomb = (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", 10, 10, 8, 2, 0, 0, 0))
                + chunk(b"IDAT", packed) + chunk(b"IEND", b""))
        started = subprocess.Popen([PROGRAM, "import", self.file("bomb.png", bomb), "-o", self.folder / "no.repeat"],
                                   stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        _, status, used = os.wait4(started.pid, 0)
        started.returncode = os.waitstatus_to_exitcode(status)
        self.assertEqual(started.returncode, CANNOT)
        self.assertLess(used.ru_maxrss, 200_000, "kB, far below what is packed")

    def test_needs_a_design_to_write(self):
        picture = self.file("p.pbm", "P1 2 1 1 0")
        self.assert_refused(run("import", picture, "-o", self.folder / "p.pdf"), ".repeat")
        self.assert_refused(run("import", picture, "-o", self.folder / "p.repeat", "--machine", "loom"), "loom")
        self.assert_refused(run("import", self.folder / "none.png", "-o", self.folder / "p.repeat"), "none.png")


if __name__ == "__main__":
    command.main()
