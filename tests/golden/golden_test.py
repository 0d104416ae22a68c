#!/usr/bin/python3
"""Compares what the program gives with the golden files.

usage: golden_test.py PROGRAM
"""

import difflib
import itertools
import sys
import unittest
from pathlib import Path

import golden

MOST_LINES = 40  # of a difference; it is looked at in full by `accept` and the version control


def difference(path, expected, given):
    lines = difflib.unified_diff(expected.decode().splitlines(), given.decode().splitlines(),
                                 f"{path} (expected)", "given now", lineterm="", n=1)
    return "\n".join(itertools.islice(lines, MOST_LINES))


class Golden(unittest.TestCase):
    program = ""

    def test_the_program_gives_what_is_expected(self):
        seen = set()
        for path, given in golden.golden_files(self.program):
            seen.add(path)
            name = path.relative_to(golden.ROOT)
            with self.subTest(str(name)):
                self.assertTrue(path.is_file(), f"{name} is not there: accept it")
                expected = path.read_bytes()
                if not golden.agree(path, expected, given):
                    self.fail(difference(name, expected, given))
        self.assertEqual(golden.standing() - seen, set(), "files that nothing gives any more")


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    Golden.program = str(Path(sys.argv.pop(1)).resolve(strict=True))
    unittest.main()
