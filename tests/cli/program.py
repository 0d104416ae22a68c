"""Starts the program under test and looks at what it leaves on disk.

Each test file is run as `python3 <file> PROGRAM [unittest options]`.
"""

import hashlib
import json
import os
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]

# Exit codes; they never change their meaning.
FINE, CHECK_FAILS, BAD_INPUT, NO_OUTPUT, OWN_FAULT = range(5)

HANGS = 120  # s; the slowest case takes a few seconds on a busy machine


def tree(folder):
    """All that stands in a folder: each path with what it is, a file with the hash of its bytes."""
    found = {}
    for path in sorted(Path(folder).rglob("*")):
        name = str(path.relative_to(folder))
        if path.is_symlink():
            found[name] = f"link to {os.readlink(path)}"
        elif path.is_dir():
            found[name] = "folder"
        elif path.is_file():
            found[name] = hashlib.sha256(path.read_bytes()).hexdigest()
        else:
            found[name] = "special file"
    return found


class ProgramTest(unittest.TestCase):
    """A test that starts the program in an empty folder of its own, `self.folder`."""

    program = None

    def setUp(self):
        self.folder = Path(tempfile.mkdtemp(prefix="bowfront-cli-"))
        self.addCleanup(shutil.rmtree, self.folder)

    def run_program(self, *arguments, **options):
        """The finished process, its outputs as bytes."""
        options = {"cwd": self.folder, "stdin": subprocess.DEVNULL, "timeout": HANGS,
                   "stdout": subprocess.PIPE, "stderr": subprocess.PIPE, **options}
        return subprocess.run([self.program, *map(str, arguments)], check=False, **options)

    def ends(self, code, *arguments, **options):
        """Starts the program, holds it to an exit code; gives standard output and error as text."""
        done = self.run_program(*arguments, **options)
        out, error = ((text or b"").decode() for text in (done.stdout, done.stderr))
        self.assertEqual(done.returncode, code, f"{arguments}\n{error}\n{out[:2000]}")
        return out, error

    def write_case(self, case, name="case.json"):
        """A case, given as data, text or bytes, as a file in the test's folder."""
        path = self.folder / name
        if isinstance(case, bytes):
            path.write_bytes(case)
        else:
            path.write_text(case if isinstance(case, str) else json.dumps(case, indent=2),
                            encoding="utf-8")
        return path


def main():
    """Runs the tests of the calling file against the program named on the command line."""
    if len(sys.argv) < 2:
        sys.exit(f"usage: {sys.argv[0]} PROGRAM [unittest options]")
    ProgramTest.program = str(Path(sys.argv.pop(1)).resolve(strict=True))
    unittest.main()
