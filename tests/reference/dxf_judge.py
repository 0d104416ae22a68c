#!/usr/bin/python3
"""Judges DXF patterns by means other than those that wrote them.

usage: dxf_judge.py FILE_OR_FOLDER... [--expect areas.json]

Each file must be read by ezdxf without an error or a fix, keep our own rules of structure, and show
none of the faults that a cutter meets. areas.json holds, by file name, what may be known of a file:
  {"part.dxf": {"net_area": mm2, "areas": {layer: [mm2, ...]}, "lengths": {layer: [mm, ...]}}}
net_area is that of the outer outlines less the inner ones; lists are compared in order of size.
Ends 0 where all is well, 1 with a line for each fault, 2 for wrong usage.
"""

import argparse
import json
import sys
from pathlib import Path

import ezdxf

from dxf_lines import geometry_faults, line_of
from dxf_tags import structure_faults

SAME_SHARE = 1e-6  # of an area or a length, as far as expectations go


def audit_faults(drawing):
    auditor = drawing.audit()
    # An auditor is false when it is empty, so its lists are counted.
    if len(auditor.errors) + len(auditor.fixes) == 0:
        return []
    return [f"audit: {entry.message}" for entry in auditor.errors + auditor.fixes]


def list_faults(what, found, wanted):
    for layer in sorted(set(found) | set(wanted)):
        here, there = sorted(found.get(layer, [])), sorted(wanted.get(layer, []))
        agree = len(here) == len(there) and all(
            abs(a - b) <= SAME_SHARE * abs(b) for a, b in zip(here, there))
        if not agree:
            yield f"{what}: on {layer} {here}, expected {there}"


def expectation_faults(lines, expected):
    areas, lengths, net = {}, {}, 0.0
    for line in lines:
        lengths.setdefault(line.layer, []).append(line.length)
        if line.closed:
            areas.setdefault(line.layer, []).append(abs(line.area))
        if line.layer.startswith("profile-"):
            net += line.area  # inner outlines run clockwise and count as negative
    if "areas" in expected:
        yield from list_faults("area", areas, expected["areas"])
    if "lengths" in expected:
        yield from list_faults("length", lengths, expected["lengths"])
    if "net_area" in expected:
        yield from list_faults("area", {"all": [net]}, {"all": [expected["net_area"]]})


def judge(path, expectations=None):
    """The faults of one file; `expectations` as in areas.json."""
    faults = structure_faults(path.read_bytes())
    try:
        drawing = ezdxf.readfile(path)
    except (ezdxf.DXFError, OSError, ValueError) as error:
        return faults + [f"read: {error}"]
    faults += audit_faults(drawing)
    if faults:
        return faults
    lines = [line for line in map(line_of, drawing.modelspace()) if line]
    faults = geometry_faults(lines)
    if not faults and expectations is not None:
        expected = expectations.get(path.name)
        if expected is None:
            return [f"area: nothing is expected of {path.name}"]
        faults += expectation_faults(lines, expected)
    return faults


def files_of(paths):
    for path in paths:
        if path.is_dir():
            yield from sorted(path.rglob("*.dxf"))
        else:
            yield path


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    parser.add_argument("paths", nargs="+", type=Path, metavar="FILE_OR_FOLDER")
    parser.add_argument("--expect", type=Path, metavar="areas.json")
    options = parser.parse_args()
    expectations = json.loads(options.expect.read_text()) if options.expect else None
    files = list(files_of(options.paths))
    if not files:
        parser.error("no DXF file there")
    bad = 0
    for path in files:
        faults = judge(path, expectations)
        bad += bool(faults)
        for fault in faults:
            print(f"{path}: {fault}")
    print(f"{len(files)} files judged, {bad} with faults")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
