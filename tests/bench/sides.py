#!/usr/bin/python3
"""What `check` and `make` cost by the number of a case's sides: processor time, and that of one side.

usage: tests/bench/sides.py PROGRAM [straight | bowed]

Straight: regular polygons. Bowed: the same with every side an arc, each pane bent over a form of its
own, and so with many times the parts.
"""

import json
import os
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

CHECKED = (4, 10, 20, 40, 100, 200, 400)
MADE = (4, 10, 20, 40, 60)
SIDE = 300  # mm, from corner to corner
BOW = 20  # degrees that a bowed side turns through


def polygon(count):
    return {"shape": "polygon", "count": count, "side": SIDE}


def bowed(count):
    turn = 360 / count - BOW
    sides = [{"name": f"side-{i}", "arc": {"sweep": BOW, "chord": SIDE}, "turn": turn}
             for i in range(1, count)]
    del sides[-1]["turn"]
    return {"shape": "sides",
            "sides": sides + [{"name": f"side-{count}", "closing": True,
                               "arc": {"sweep": BOW}}]}


def case(count, plan):
    return {
        "bowfront": 1, "name": f"tower of {count} sides", "units": "mm", "plan": plan(count),
        "frame": {"timber": "cherry", "clear_height": 380,
                  "base": {"thickness": 22, "margin": 28}, "top": {"thickness": 24, "margin": 28},
                  "post": {"width": 46, "sawn": "rift"},
                  "groove": {"width": 5.8, "depth": {"base": 6, "top": 12, "post": 15}}},
        "panes": [{"side": f"side-{i}", "sheet": "cast-acrylic", "thickness": 4}
                  for i in range(1, count + 1)],
        "tolerance": {"cut": 0.5, "sheet_thickness": 0.2},
        "service": {"push": "60 N"},
    }


def seconds(*command):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(command, capture_output=True, check=False)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode not in (0, 1):
        sys.exit(done.stderr.decode())
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def table(title, counts, run):
    print(f"{title}\n  sides  seconds  ms a side")
    for count in counts:
        taken = run(count)
        print(f"  {count:5d}  {taken:7.2f}  {1000 * taken / count:9.2f}")


def main(program, plan):
    with tempfile.TemporaryDirectory(prefix="bowfront-bench-") as folder:
        def written(count):
            path = Path(folder) / f"{count}.json"
            path.write_text(json.dumps(case(count, plan)), encoding="utf-8")
            return str(path)

        table("check", CHECKED, lambda count: seconds(program, "check", written(count)))
        table("make", MADE,
              lambda count: seconds(program, "make", written(count), "--despite-failures", "-o",
                                    os.path.join(folder, f"made-{count}")))


if __name__ == "__main__":
    if len(sys.argv) not in (2, 3) or sys.argv[2:] not in ([], ["straight"], ["bowed"]):
        sys.exit(__doc__)
    main(str(Path(sys.argv[1]).resolve(strict=True)), bowed if sys.argv[2:] == ["bowed"] else polygon)
