"""Asks a JSON Schema validator of another maker whether the schema of measurements is sound, takes
the project's own files, and refuses what the reader refuses too.

usage: measured_schema_judge.py SCHEMA MEASURED...
"""

import json
import sys

import jsonschema

from case_schema_judge import changed, read_case

WRONG = [
    ("/bowfront_measured", 2),
    ("/bowfront_measured", None),
    ("/units", "cm"),
    ("/uncertainty/length", -1),
    ("/uncertainty/width", 1),
    ("/panes/0/side", "Top side"),
    ("/panes/0/side", None),
    ("/panes/0/formed/chord", None),
    ("/panes/0/formed/length", 0),
    ("/panes/0/formed/length", "12 parsecs"),
    ("/panes/0/thickness", 3),
    ("/panes/0/thickness", [-1]),
    ("/openings/0/side", None),
    ("/openings/0/widht", 3),
    ("/grooves/0/base", [0]),
    ("/grooves/0/depth", [6]),
]

RIGHT = [
    ("/units", "in"),
    ("/uncertainty/length", "1/64 in"),
    ("/uncertainty/length", 0),
    ("/panes/0/formed/length", "21 3/8 in"),
    ("/panes/0/thickness", []),
    ("/panes", None),
    ("/grooves/0/base", [6, "1/4 in"]),
]


def main(schema_path, paths):
    with open(schema_path, encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    complaints = []
    for path in paths:
        for error in validator.iter_errors(read_case(path)):
            complaints.append(f"{path}: {error.message}")
    measured = read_case(paths[0])
    for pointer, value in WRONG:
        if validator.is_valid(changed(measured, pointer, value)):
            complaints.append(f"{pointer} = {value!r} is taken")
    for pointer, value in RIGHT:
        for error in validator.iter_errors(changed(measured, pointer, value)):
            complaints.append(f"{pointer} = {value!r} is refused: {error.message}")
    print("\n".join(complaints) or f"{len(paths)} files of measurements keep to the schema")
    return 1 if complaints else 0


if __name__ == "__main__":
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1], sys.argv[2:]))
