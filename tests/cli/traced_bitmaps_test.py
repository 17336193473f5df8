"""Every XBM picture of Debian's package xbitmaps traced: no float too long, and the table in docs as the program makes it."""

import sys

import command
from command import PROGRAM, SOURCE, CommandTest

sys.path.insert(0, str(SOURCE / "tests" / "tools"))
import trace_bitmaps


class TracedBitmaps(CommandTest):
    def test_the_table_in_docs_is_what_the_program_makes(self):
        self.assertEqual(trace_bitmaps.PAGE.read_text(), trace_bitmaps.table(PROGRAM))


if __name__ == "__main__":
    command.main()
