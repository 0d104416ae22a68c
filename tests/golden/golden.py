"""What the program is expected to give, and what it gives now.

Each example has its expected files beside it, and each command its help in help/; `accept` writes
them anew. STEP files are held by their measures (solids.json), since their bytes are the kernel's.
"""

import json
import math
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests/reference"))

from part21 import parse  # noqa: E402
from step_judge import Judgement  # noqa: E402

COMMANDS = ("start", "check", "make", "explain", "inspect", "materials", "schema")
# Patterns that a person can review; all others are held by their hashes in report.json.
REVIEWED = ("base", "pane-front", "form-front-rib")
# Examples whose report and patterns are held, too: thousands of lines, which a person reviews once.
WHOLE = ("pilot-boat",)
EXPLAINED = "panes/front/blank/length"
SOLIDS = "solids.json"
# The measures are sums over a solid's faces: some 1e3 terms, each rounded once.
SAME_MEASURE = 1e-12


def run(program, *arguments):
    """Standard output of a command; one that fails its checks has a product too."""
    done = subprocess.run([program, *map(str, arguments)], capture_output=True, check=False)
    if done.returncode not in (0, 1):
        raise RuntimeError(f"{arguments}: {done.stderr.decode()}")
    return done.stdout


def solids(folder):
    """By file and product: the volume that is stated, the faces, and how often it stands there."""
    found = {}
    for path in sorted(folder.glob("*.step")):
        judgement = Judgement(parse(path.read_text(encoding="latin-1")))
        definitions = {record.number: judgement.get(judgement.get(record.values[2]).values[2])
                       for record in judgement.all("PRODUCT_DEFINITION")}
        uses = [usage.values[4].number
                for usage in judgement.all("NEXT_ASSEMBLY_USAGE_OCCURRENCE")]
        volumes = judgement.volume_properties()
        found[path.name] = {
            "faces": len(judgement.all("ADVANCED_FACE")),
            "products": {product.values[0]: {"name": product.values[1],
                                             "instances": uses.count(number),
                                             "volume": volumes.get(number)}
                         for number, product in definitions.items()}}
    return json.dumps(found, indent=2).encode() + b"\n"


def of_example(program, case, expected):
    """The expected files of one example, each with the bytes that it should hold."""
    with tempfile.TemporaryDirectory(prefix="bowfront-golden-") as made:
        folder = Path(made) / "out"
        run(program, "make", case, "-o", folder)
        names = sorted(str(path.relative_to(folder)) for path in folder.rglob("*")
                       if path.is_file())
        yield expected / "files.txt", "".join(f"{name}\n" for name in names).encode()
        yield expected / SOLIDS, solids(folder)
        for name in ["report.json", "cutlist.csv", *(f"parts/{part}.dxf" for part in REVIEWED)]:
            if name in names and case.parent.name in WHOLE:
                yield expected / name, (folder / name).read_bytes()
    yield expected / "check.txt", run(program, "check", case)
    measured = case.with_name("measured.json")
    if measured.is_file():
        yield expected / "inspect.txt", run(program, "inspect", case, measured)
        yield expected / "inspection.json", run(program, "inspect", case, measured, "--json")


def golden_files(program):
    """Every golden file with the bytes that the program gives for it now."""
    for command in COMMANDS:
        yield ROOT / f"tests/golden/help/{command}.txt", run(program, command, "--help")
    yield ROOT / "tests/golden/help/bowfront.txt", run(program, "--help")
    pilot_boat = ROOT / "examples/pilot-boat/case.json"
    yield (ROOT / "tests/golden/explain/blank_length.txt",
           run(program, "explain", pilot_boat, EXPLAINED))
    for case in sorted(ROOT.glob("examples/*/case.json")):
        yield from of_example(program, case, case.parent / "expected")


def standing():
    """The golden files that stand in the repository now."""
    folders = [ROOT / "tests/golden/help", ROOT / "tests/golden/explain",
               *ROOT.glob("examples/*/expected")]
    return {path for folder in folders for path in folder.rglob("*") if path.is_file()}


def same_measures(one, other):
    if isinstance(one, dict) and isinstance(other, dict):
        return list(one) == list(other) and all(same_measures(one[k], other[k]) for k in one)
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=SAME_MEASURE)
    return one == other


def agree(path, expected, given):
    """Whether a golden file is still what the program gives."""
    if path.name == SOLIDS:
        return same_measures(json.loads(expected), json.loads(given))
    return expected == given
