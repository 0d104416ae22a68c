#!/usr/bin/python3
"""Proves that the judge sees each fault: one defect is put into a good file at a time.

usage: dxf_judge_test.py GOOD_FILE   (the reviewed board in AC1015)
"""

import sys
import tempfile
import unittest
from pathlib import Path

from dxf_judge import judge
from dxf_tags import read_tags

GOOD = []  # tags of the good file


def position(kind, layer=None, after=0):
    """Where the object of a kind, on a layer if given, begins."""
    for index in range(after, len(GOOD)):
        if GOOD[index] == (0, kind):
            end = end_of(GOOD, index)
            if layer is None or (8, layer) in GOOD[index:end]:
                return index
    raise LookupError(f"{kind} on {layer}")


def end_of(tags, begin):
    return next(i for i in range(begin + 1, len(tags) + 1) if i == len(tags) or tags[i][0] == 0)


def with_object(kind, layer, change):
    """The good file with one object changed: `change` gets its tags and gives new ones."""
    begin = position(kind, layer)
    end = end_of(GOOD, begin)
    return GOOD[:begin] + change(GOOD[begin:end]) + GOOD[end:]


def with_value(tags, code, value, nth=0):
    """Some tags with the value of the nth one of a code changed; gone where it is None."""
    at = [i for i, (key, _) in enumerate(tags) if key == code][nth]
    return tags[:at] + ([] if value is None else [(code, value)]) + tags[at + 1:]


def with_vertices(tags, points):
    """A polyline with other vertices: (x, y) or (x, y, bulge)."""
    kept = [tag for tag in tags if tag[0] not in (10, 20, 42, 90)]
    placed = [(code, str(value)) for point in points for code, value in zip((10, 20, 42), point)]
    return kept[:6] + [(90, str(len(points)))] + kept[6:] + placed


def with_copy(kind, layer, handle):
    return with_object(kind, layer, lambda tags: tags + with_value(tags, 5, handle))


def with_variable(name, value):
    at = GOOD.index((9, name))
    variable = [] if value is None else [GOOD[at], (GOOD[at + 1][0], value)]
    return GOOD[:at] + variable + GOOD[at + 2:]


def without_section(name):
    begin = GOOD.index((2, name)) - 1
    return GOOD[:begin] + GOOD[GOOD.index((0, "ENDSEC"), begin) + 1:]


def outline(layer, points):
    return with_object("LWPOLYLINE", layer, lambda tags: with_vertices(tags, points))


def changed(kind, layer, code, value, nth=0):
    return with_object(kind, layer, lambda tags: with_value(tags, code, value, nth))


SQUARE = [(0, 0), (120, 0), (120, 40), (0, 40)]
UNUSED = "2F"  # a handle that nothing has, below the next one
INNER, OUTER, RECESS, BORE = "profile-inner", "profile-outer", "recess-2_50", "bore-12_00"


def defects():
    """Each defect by name: the broken file's tags, and what the judge must say."""
    return {
        "missing subclass marker": (changed("LWPOLYLINE", OUTER, 100, None, 1), "read:"),
        "missing end": (GOOD[:-1], "end:"),
        "cut off": (GOOD[:len(GOOD) // 2], "read:"),
        "decimal comma": (changed("CIRCLE", BORE, 40, "1,75"), "number:"),
        "not a number": (changed("CIRCLE", BORE, 40, "nan"), "number:"),
        "infinite": (changed("LWPOLYLINE", OUTER, 10, "1e999"), "number:"),
        "letters that are not ASCII": (changed("TEXT", "label", 1, "Caf\u00e9"), "tags:"),
        "handle twice": (with_copy("LINE", "scribe", position_handle("CIRCLE")), "handle:"),
        "no handle": (changed("CIRCLE", BORE, 5, None), "handle:"),
        "unknown owner": (changed("CIRCLE", BORE, 330, UNUSED), "owner:"),
        "no owner": (changed("CIRCLE", BORE, 330, None), "owner:"),
        "low next handle": (with_variable("$HANDSEED", "31"), "handle:"),
        "no units": (with_variable("$INSUNITS", None), "units:"),
        "inches": (with_variable("$INSUNITS", "1"), "units:"),
        "English measurement": (with_variable("$MEASUREMENT", "0"), "units:"),
        "unknown release": (with_variable("$ACADVER", "AC1014"), "version:"),
        "no objects": (without_section("OBJECTS"), "sections:"),
        "no classes": (without_section("CLASSES"), "sections:"),
        "group twice": (with_object("VPORT", None, lambda t: t + [(36, "1.0")]), "repetition:"),
        "layer 0": (changed("LWPOLYLINE", RECESS, 8, "0"), "layer:"),
        "undeclared layer": (changed("LWPOLYLINE", RECESS, 8, "recess-9_00"), "layer:"),
        "layer of no operation": (changed("LAYER", None, 2, "cut", 0), "layer:"),
        "undefined line type": (with_object("CIRCLE", BORE, lambda t: t[:4] + [(6, "DASHED")]
                                            + t[4:]), "audit:"),
        "wrong vertex count": (changed("LWPOLYLINE", RECESS, 90, "5"), "vertices:"),
        "unknown entity": (with_object("LINE", "scribe", lambda t: [(0, "XLINE")] + t[1:]),
                           "entity:"),
        "elevation": (with_object("LWPOLYLINE", RECESS, lambda t: t[:6] + [(38, "3.0")] + t[6:]),
                      "plane:"),
        "off the plane": (changed("CIRCLE", BORE, 30, "3.0"), "plane:"),
        "seen from below": (with_object("CIRCLE", BORE, lambda t: t + [(210, "0.0"), (220, "0.0"),
                                                                      (230, "-1.0")]), "plane:"),
        "open outline": (changed("LWPOLYLINE", OUTER, 70, "0"), "open:"),
        "open bore": (with_object("LWPOLYLINE", RECESS, lambda t: with_value(
            with_value(t, 8, BORE), 70, "0")), "open:"),
        "outline as a bore": (changed("LWPOLYLINE", RECESS, 8, BORE), "bore:"),
        "doubled recess": (with_copy("LWPOLYLINE", RECESS, UNUSED), "doubled:"),
        "doubled bore": (with_copy("CIRCLE", BORE, UNUSED), "doubled:"),
        "doubled scribe": (with_copy("LINE", "scribe", UNUSED), "doubled:"),
        "no vertex": (outline(RECESS, []), "vertices:"),
        "one vertex": (outline(RECESS, [(20, 10)]), "zero:"),
        "vertex twice": (outline(RECESS, [(20, 10), (30, 10), (30, 10), (30, 14)]), "zero:"),
        "tiny side": (outline(RECESS, [(20, 10), (30, 10), (30, 10.009), (20, 14)]), "tiny:"),
        "bulge over half a turn": (outline(RECESS, [(20, 10, 1.2), (24, 10)]), "bulge:"),
        "bore without radius": (changed("CIRCLE", BORE, 40, "0.0"), "zero:"),
        "bow tie": (outline(RECESS, [(20, 10), (30, 14), (30, 10), (20, 14)]), "crossing:"),
        "arc through a side": (outline(RECESS, [(20, 10), (60, 10), (60, 14, -1), (20, 14)]),
                               "crossing:"),
        "spike": (outline(RECESS, [(20, 10), (30, 10), (40, 10), (30, 10), (30, 14)]), "crossing:"),
        "hole outside": (outline(INNER, [(200, 10), (200, 14), (210, 10)]), "hole:"),
        "hole through the edge": (outline(INNER, [(110, 20), (110, 24), (130, 20)]), "hole:"),
        "hole on the edge": (outline(INNER, [(110, 20), (110, 24), (120, 24), (120, 20)]), "hole:"),
        "hole turned": (outline(INNER, [(50, 20), (60, 20), (60, 24)]), "sense:"),
        "outline turned": (outline(OUTER, SQUARE[::-1]), "sense:"),
        "two outlines": (with_object("LWPOLYLINE", OUTER, lambda t: t + with_value(with_vertices(
            t, [(x + 200, y) for x, y in SQUARE]), 5, UNUSED)), "outline:"),
        "no outline": (with_object("LWPOLYLINE", OUTER, lambda t: []), "outline:"),
        "recess beside the part": (outline(RECESS, [(220, 10), (230, 10), (230, 14)]), "place:"),
        "away from the origin": (outline(OUTER, [(x + 1, y) for x, y in SQUARE]), "origin:"),
    }


def nest(parts_at, sheet=(0, 0, 400, 100)):
    """A sheet with squares of 50 x 50 on it, in the place of the board."""
    x, y, right, top = sheet
    edge = [(x, y), (right, y), (right, top), (x, top)]
    squares = [[(x, y), (x + 50, y), (x + 50, y + 50), (x, y + 50)] for x, y in parts_at]
    layer = position("LAYER", None, GOOD.index((2, OUTER)) - 10)
    while (2, OUTER) not in GOOD[layer:end_of(GOOD, layer)]:
        layer = position("LAYER", None, layer + 1)
    record = with_value(with_value(GOOD[layer:end_of(GOOD, layer)], 2, "sheet-edge"), 5, "2E")
    entities = GOOD.index((2, "ENTITIES")) + 1
    board = GOOD[position("LWPOLYLINE", OUTER):]
    board = board[:end_of(board, 0)]
    drawn = with_vertices(with_value(board, 8, "sheet-edge"), edge)
    for handle, square in zip(("2F", "2D", "2C"), squares):
        drawn += with_value(with_vertices(board, square), 5, handle)
    rest = GOOD[GOOD.index((0, "ENDSEC"), entities):]
    return GOOD[:layer] + record + GOOD[layer:entities] + drawn + rest


def position_handle(kind):
    begin = position(kind)
    return next(value for code, value in GOOD[begin:] if code == 5)


def write(folder, tags):
    path = Path(folder) / "broken.dxf"
    text = "".join(f"{code:3}\r\n{value}\r\n" for code, value in tags)
    path.write_bytes(text.encode("utf-8"))
    return path


class JudgeTest(unittest.TestCase):
    def judged(self, tags, expectations=None):
        with tempfile.TemporaryDirectory() as folder:
            return judge(write(folder, tags), expectations)

    def test_passes_the_good_file(self):
        self.assertEqual(self.judged(GOOD), [])

    def test_catches_each_defect(self):
        for name, (tags, wanted) in defects().items():
            with self.subTest(name):
                self.assertNotEqual(tags, GOOD)
                faults = self.judged(tags)
                self.assertTrue(any(fault.startswith(wanted) for fault in faults), faults)

    def test_judges_nests(self):
        self.assertEqual(self.judged(nest([(10, 10), (70, 10), (130, 10)])), [])
        for name, tags, wanted in (
                ("overlapping parts", nest([(10, 10), (59, 10)]), "overlap: two"),
                ("part over the edge", nest([(10, 10), (70, 60)]), "overlap: a part"),
                ("part twice", nest([(10, 10), (10, 10)]), "doubled:"),
                ("sheet away from the origin", nest([(70, 10)], (5, 0, 400, 100)), "origin:")):
            with self.subTest(name):
                faults = self.judged(tags)
                self.assertTrue(any(fault.startswith(wanted) for fault in faults), faults)

    def test_catches_other_line_ends(self):
        with tempfile.TemporaryDirectory() as folder:
            path = write(folder, GOOD)
            path.write_bytes(path.read_bytes().replace(b"\r\n", b"\n"))
            self.assertTrue(judge(path)[0].startswith("tags:"))

    def test_compares_areas_and_lengths(self):
        # The slot: 34 x 6 and a circle of 6; the recess 100 x 8; the line 60 long.
        slot = 34 * 6 + 9 * 3.141592653589793
        good = {"areas": {INNER: [slot], RECESS: [800], BORE: [9.62112750161874],
                          OUTER: [4778.540734641021]},
                "lengths": {"scribe": [60], INNER: [86.84955592153876], RECESS: [216],
                            BORE: [10.995574287564276], OUTER: [311.41592653589794]},
                "net_area": 4778.540734641021 - slot}
        self.assertEqual(self.judged(GOOD, {"broken.dxf": good}), [])
        for change in ({"areas": {**good["areas"], RECESS: [800.01]}},
                       {"areas": {**good["areas"], RECESS: [800, 800]}},
                       {"areas": {**good["areas"], "recess-9_00": [1]}},
                       {"lengths": {**good["lengths"], "scribe": [61]}},
                       {"net_area": 4778}):
            faults = self.judged(GOOD, {"broken.dxf": {**good, **change}})
            self.assertEqual(len(faults), 1, faults)
        self.assertEqual(len(self.judged(GOOD, {})), 1)


if __name__ == "__main__":
    GOOD[:] = read_tags(Path(sys.argv.pop(1)).read_bytes())
    unittest.main()
