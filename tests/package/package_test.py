#!/usr/bin/env python3
"""Installs what was built, compares the list of files with the reviewed one, and builds and runs a
project that knows nothing but the installed files."""

import argparse
import difflib
import re
import shutil
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent


def run(*command):
    done = subprocess.run([str(word) for word in command], capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"failed ({done.returncode}): {' '.join(map(str, command))}\n"
                 f"{done.stdout}{done.stderr}")
    return done.stdout


def same_files(prefix):
    """Installed files against installed_files.txt; a changed list is a change for all users."""
    wanted = (HERE / "installed_files.txt").read_text(encoding="utf-8").splitlines()
    found = sorted(str(path.relative_to(prefix)) for path in prefix.rglob("*") if path.is_file())
    difference = list(difflib.unified_diff(wanted, found, "installed_files.txt", "installed",
                                           lineterm="", n=0))
    if difference:
        sys.exit("\n".join(difference))


def no_build_places(prefix, build, source):
    """An installed package must not know where it was built."""
    for path in (prefix / "lib").rglob("*.cmake"):
        text = path.read_text(encoding="utf-8")
        for place in (build, source):
            if str(place) in text:
                sys.exit(f"{path.relative_to(prefix)} names {place}")


def main():
    parser = argparse.ArgumentParser()
    for option in ("cmake", "generator", "build", "compiler", "launcher", "source", "scratch"):
        parser.add_argument("--" + option, required=True)
    options = parser.parse_args()
    scratch = Path(options.scratch)
    shutil.rmtree(scratch, ignore_errors=True)
    prefix = scratch / "prefix"
    run(options.cmake, "--install", options.build, "--prefix", prefix)
    same_files(prefix)
    no_build_places(prefix, options.build, options.source)

    consumer = scratch / "consumer"
    run(options.cmake, "-S", HERE, "-B", consumer, "-G", options.generator,
        f"-DCMAKE_PREFIX_PATH={prefix}", f"-DCMAKE_CXX_COMPILER={options.compiler}",
        f"-DCMAKE_CXX_COMPILER_LAUNCHER={options.launcher}")
    run(options.cmake, "--build", consumer)

    case = Path(options.source) / "examples/pilot-boat/case.json"
    verdict = run(consumer / "verdict_only", case)
    print(verdict, end="")
    # The front's blank as tests/reference/pilot_boat_sums.py works it out.
    if "front blank 550.97 x 399.49 mm" not in verdict:
        sys.exit("another verdict was expected")
    solids = run(consumer / "verdict_and_solids", case)
    print(solids, end="")
    volumes = re.fullmatch(r"Base: ([\d.]+) mm3 drawn, ([\d.]+) mm3 read back\n", solids)
    # STEP files carry coordinates of 12 digits or more.
    if not volumes or abs(float(volumes[1]) / float(volumes[2]) - 1) > 1e-9:
        sys.exit("the solid was not read back as drawn")
    print(run(prefix / "bin/bowfront", "--version"), end="")


if __name__ == "__main__":
    main()
