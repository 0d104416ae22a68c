#!/usr/bin/env python3
"""Gates on the source text: what a compiler does not see.

    gates.py ROOT

Prints every fault as `file:line: what`, and ends with 1 where there is one. Each gate is a function
from the repository's root to its faults; gates_test.py shows that each one can fail.
"""

import re
import sys
from pathlib import Path

PUBLIC = Path("include/bowfront")
PRIVATE = Path("src")
OWN_INCLUDE = re.compile(r'^\s*#\s*include\s*"bowfront/(([a-z_]+)/[^"]+)"')
ANY_INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]')

# Outside libraries, and the only folders of src/ that may include them; never a public header.
FENCES = [
    ("the solid kernel", re.compile(r"\.hxx$"), {"solid", "step", "module"}),
    ("json", re.compile(r"^nlohmann/"), {"io", "report"}),
    ("the option parser", re.compile(r"^CLI/"), {"cli"}),
    ("digests", re.compile(r"^nettle/"), {"pipeline"}),
]

# Text that has no business in a repository: places of one machine, and hosts of registries.
MACHINE_TEXT = [
    ("a path of a machine", re.compile(r"(?<![\w.$}])/(?:home|root|Users|mnt|work)/\w")),
    ("a registry's host", re.compile(
        r"registry\.npmjs|files\.pythonhosted|pypi\.org/|deb\.debian\.org|artifactory|pkg\.dev")),
]


def lines_of(root, folders, endings):
    """Every line of every file: (path from the root, number, text)."""
    for folder in folders:
        for path in sorted((root / folder).rglob("*")):
            if path.is_file() and path.suffix in endings:
                text = path.read_text(encoding="utf-8")
                for number, line in enumerate(text.splitlines(), 1):
                    yield path.relative_to(root), number, line


def layer_of(path):
    """The layer that a file belongs to, or None for files beside the layers."""
    for base in (PUBLIC, PRIVATE):
        if base in path.parents and path.parent != base:
            return path.relative_to(base).parts[0]
    return None


def read_layers(root):
    """From each layer to the layers, or single headers, that it may include."""
    layers = {}
    for line in (root / "src/layers.txt").read_text(encoding="utf-8").splitlines():
        if line.strip() and not line.startswith("#"):
            name, _, allowed = line.partition(":")
            layers[name.strip()] = set(allowed.split())
    return layers


def arrows(root):
    """A layer includes itself and what its row of src/layers.txt lists; rows point down only."""
    layers = read_layers(root)
    names = list(layers)
    for name, allowed in layers.items():
        for target in allowed:
            folder = target.split("/")[0]
            if folder not in layers:
                yield f"src/layers.txt: {name} may include {target}, which is no layer"
            elif "/" not in target and names.index(folder) >= names.index(name):
                yield f"src/layers.txt: {name} includes {target}, which does not stand before it"
    for path, number, line in lines_of(root, (PUBLIC, PRIVATE), {".hpp", ".cpp"}):
        layer = layer_of(path)
        if layer not in layers:
            yield f"{path}:{number}: {layer} is no layer of src/layers.txt"
            continue
        found = OWN_INCLUDE.match(line)
        if found and found[2] != layer and not layers[layer] & {found[1], found[2]}:
            yield f"{path}:{number}: {layer} may not include {found[1]}"


def fences(root):
    """Outside libraries are met behind one door each."""
    for path, number, line in lines_of(root, (PUBLIC, PRIVATE), {".hpp", ".cpp"}):
        found = ANY_INCLUDE.match(line)
        for what, pattern, folders in FENCES if found else []:
            if pattern.search(found[1]) and (PUBLIC in path.parents or
                                             layer_of(path) not in folders):
                yield f"{path}:{number}: {found[1]}: {what} is met in {sorted(folders)} only"


def codes(root):
    """Every code has its entry in the catalogue and is named in a test."""
    table = (root / "src/base/code.cpp").read_text(encoding="utf-8")
    catalogue = (root / "DEVELOPERS.md").read_text(encoding="utf-8")
    tests = "\n".join(line for path, _, line in lines_of(root, ("tests",), {".hpp", ".cpp", ".py"})
                      if Path("tests/architecture") not in path.parents)
    rows = re.findall(r'CodeEntry\{Code::(\w+),\s*"([A-Z0-9-]+)"', table)
    if not rows:
        yield "src/base/code.cpp: no codes found"
    for name, text in rows:
        if not re.search(rf"\|\s*`?{text}`?\s*\|", catalogue):
            yield f"DEVELOPERS.md: the error catalogue has no row for {text}"
        if not re.search(rf"\b(Code::{name}|{text})\b", tests):
            yield f"tests: none mentions {name} ({text})"


def machine_text(root):
    """No file holds a path of the machine that it was written on, or a registry's host."""
    folders = ("include", "src", "schemas", "tests", "examples", ".ci")
    files = [path for folder in folders for path in sorted((root / folder).rglob("*"))]
    files += [path for path in sorted(root.iterdir()) if path.suffix in {".md", ".txt"}]
    here = Path("tests/architecture")
    for path in files:
        place = path.relative_to(root)
        if not path.is_file() or here in place.parents or "__pycache__" in place.parts:
            continue
        text = path.read_bytes().decode("utf-8", errors="replace")
        for number, line in enumerate(text.splitlines(), 1):
            for what, pattern in MACHINE_TEXT:
                if pattern.search(line):
                    yield f"{place}:{number}: {what}"


GATES = [arrows, fences, codes, machine_text]


def main(root):
    faults = [fault for gate in GATES for fault in gate(root)]
    for fault in faults:
        print(fault, file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
