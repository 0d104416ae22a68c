"""Asks a JSON Schema validator of another maker whether the schema of case files is sound, takes the
project's own case files, and refuses files that the reader refuses too.

usage: case_schema_judge.py SCHEMA CASE...
"""

import copy
import json
import re
import sys

import jsonschema

COMMENT_OR_TEXT = re.compile(r'"(?:\\.|[^"\\])*"|//[^\n]*|/\*.*?\*/', re.DOTALL)


def read_case(path):
    """A case file, whose comments JSON itself does not have."""
    with open(path, encoding="utf-8") as file:
        text = file.read()
    plain = COMMENT_OR_TEXT.sub(
        lambda found: found.group() if found.group().startswith('"') else "", text
    )
    return json.loads(plain)


def changed(case, pointer, value):
    """A copy with the value at a pointer replaced; the value None takes it out."""
    out = copy.deepcopy(case)
    *way, last = pointer.strip("/").split("/")
    node = out
    for step in way:
        node = node[int(step)] if isinstance(node, list) else node[step]
    if isinstance(node, list):
        last = int(last)
    if value is None:
        del node[last]
    else:
        node[last] = value
    return out


WRONG = [
    ("/bowfront", 2),
    ("/name", ""),
    ("/name", "a\u0007b"),
    ("/name", "x" * 201),
    ("/units", "cm"),
    ("/plan/shape", "triangle"),
    ("/plan/shape", "rectangle"),
    ("/plan/front", None),
    ("/plan/front", {}),
    ("/plan/front", {"radius": 420, "rise": 90}),
    ("/plan/width", 0),
    ("/plan/width", "520"),
    ("/plan/widht", 520),
    ("/frame/base/margin", None),
    ("/frame/loading", "drop"),
    ("/panes", []),
    ("/panes/0/side", "Top side"),
    ("/panes/0/blank", {"length": 3}),
    ("/panes/0/blank", {"method": "trim-after", "length": 3, "width": 3}),
    ("/panes/0/size", {}),
    ("/blank", {"length": 3, "width": 3}),
    ("/sheets", {"b": {}}),
    ("/sheets", {"b": {"like": "petg", "shrink": {"along": 0.015}}}),
    ("/fit/end_clearance", -1),
    ("/tolerance", {"cut": "x"}),
    ("/oven/accuracy", 5),
    ("/oven/inside", [900, 600]),
    ("/service/humidity", ["35 %"]),
    ("/stock/0/count", 0),
    ("/stock/0/count", 1.5),
]

RIGHT = [
    ("/plan/width", "20 1/2 in"),
    ("/plan/front", {"sweep": "76 deg"}),
    ("/panes/0/blank", {"length": 560, "width": "15 3/4 in"}),
    ("/panes/0/blank", {"method": "trim-after", "trim": 10}),
    ("/panes/0/size", {"height": 390}),
    ("/blank", "trim-after"),
    ("/blank", {"method": "trim-after"}),
    ("/tolerance", {"cut": "f", "groove_depth": 0.2, "groove_width": "0.1 mm"}),
    ("/webs", {"floor": "1/3"}),
    ("/oven/set", "165 C"),
    (
        "/sheets",
        {
            "batch-7": {
                "like": "extruded-acrylic",
                "shrink": {"along": "2.8 %", "across": "-0.4 %", "spread": "0.3 %"},
                "springback": {"radius": "1 %", "spread": "0.5 %"},
            }
        },
    ),
]


def main(schema_path, case_paths):
    with open(schema_path, encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    complaints = []
    for path in case_paths:
        for error in validator.iter_errors(read_case(path)):
            complaints.append(f"{path}: {error.message}")
    case = read_case(case_paths[0])
    for pointer, value in WRONG:
        if validator.is_valid(changed(case, pointer, value)):
            complaints.append(f"{pointer} = {value!r} is taken")
    for pointer, value in RIGHT:
        for error in validator.iter_errors(changed(case, pointer, value)):
            complaints.append(f"{pointer} = {value!r} is refused: {error.message}")
    print("\n".join(complaints) or f"{len(case_paths)} case files keep to the schema")
    return 1 if complaints else 0


if __name__ == "__main__":
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1], sys.argv[2:]))
