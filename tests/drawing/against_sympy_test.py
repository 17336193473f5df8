"""Strips counted by the program's frieze groups against sympy, a program for symbolic mathematics, which lists the necklaces
and bracelets of as many beads: a strip of h rows that repeats sideways is a necklace with a bead of 2^h colours a column."""
import os
import subprocess
import unittest

from sympy.utilities.iterables import bracelets, necklaces


def recurs_no_sooner(beads):
    return all(beads[shift:] + beads[:shift] != beads for shift in range(1, len(beads)))


class Counts(unittest.TestCase):
    def test_strips_are_necklaces_and_with_their_mirror_images_bracelets(self):
        printed = subprocess.run([os.environ["PUNCHWRIGHT_STRIPS"]], capture_output=True, text=True, check=True).stdout
        lines = [tuple(int(number) for number in line.split()) for line in printed.splitlines()]
        self.assertEqual(len(lines), 25)
        for width, height, strips, mirrored, whole in lines:
            with self.subTest(width=width, height=height):
                colours = 2**height
                turned = list(necklaces(width, colours))
                self.assertEqual(strips, len(turned))
                self.assertEqual(strips + mirrored, 2 * len(list(bracelets(width, colours))))
                self.assertEqual(whole, sum(recurs_no_sooner(beads) for beads in turned))


if __name__ == "__main__":
    unittest.main()
