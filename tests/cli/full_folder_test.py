"""A folder on a device that is full: every writer says so and ends with 2, and nothing of its own is left there.
The device is a tiny tmpfs in a mount namespace of the test's own; where none can be had, /dev/full stands in for it elsewhere."""

import subprocess

import command
from command import DONE, EXPORTS, SOURCE, CommandTest, run

# Fills the folder to the last page, then runs the program there; afterwards what else lies there.
FULL = """
mount -t tmpfs -o size=64k,mode=777 tmpfs "$1" || exit 77
cd "$1" || exit 77
dd if=/dev/zero of=filler bs=4096 2>/dev/null
shift
"$@"
ended=$?
for name in * .[!.]*; do [ -e "$name" ] && [ "$name" != filler ] && echo "left: $name" >&2; done
exit $ended
"""


def on_a_full_device(folder, *arguments):
    words = ["unshare", "--mount", "--map-root-user", "sh", "-c", FULL, "sh", folder, command.PROGRAM, *arguments]
    return subprocess.run(list(map(str, words)), stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, timeout=120,
                          check=False)


class AFullFolder(CommandTest):
    def setUp(self):
        super().setUp()
        self.full = self.folder / "full"
        self.full.mkdir()
        if on_a_full_device(self.full, "--version").returncode != DONE:
            self.skipTest("no mount namespace is allowed here")

    def assert_said(self, *arguments):
        with self.subTest(arguments=arguments):
            ended = on_a_full_device(self.full, *arguments)
            self.assertEqual(ended.returncode, command.CANNOT, ended.stderr)
            self.assertEqual(ended.stdout, "")
            self.assertIn("No space left on device", ended.stderr)
            self.assertNotIn("left:", ended.stderr)

    def test_every_export(self):
        for what, form in EXPORTS:
            self.assert_said(what, self.good, "-o", f"sheet.{form}")

    def test_all_of_them_into_a_folder(self):
        self.assert_ended(run("export", self.good, "-o", self.folder / "everything"), DONE)
        self.assert_said("export", self.good, "-o", ".")

    def test_pictures_charts_and_yokes(self):
        yoke = SOURCE / "patterns" / "anchor-yoke.yoke"
        picture = self.file("wave.pbm", "P1\n4 2\n0 1 1 0\n1 0 0 1\n")
        for arguments in [
            ("chart", self.good, "-o", "chart.png"),
            ("leaflet", self.good, "-o", "leaflet.pdf"),
            ("yoke", yoke, "-o", "yoke.pdf"),
            ("import", picture, "-o", "made.repeat"),
            ("trace", "--machine", "bulky-card-24", picture, "-o", "traced.repeat"),
            ("mend", self.good, "-o", "mended.repeat"),
            ("machine", "bulky-card-24", "-o", "mine.machine"),
            ("measure", "bulky-card-24", "-o", "measure.pdf"),
            ("swatch", "bulky-card-24", "-o", "swatch.pdf"),
        ]:
            self.assert_said(*arguments)


if __name__ == "__main__":
    command.main()
