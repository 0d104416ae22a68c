#!/usr/bin/env python3
"""Breaks a sound STEP file in many ways and checks that the judge sees each.

usage: step_judge_test.py FILE
"""

import re
import sys
import unittest

from step_judge import judge

SOUND = ""


def broken(pattern, replacement, count=1):
    """The sound text with the first matches of a pattern replaced."""
    text, made = re.subn(pattern, replacement, SOUND, count=count, flags=re.DOTALL)
    assert made, f"nothing in the file is like {pattern}"
    return text


def scaled(found):
    """A volume a hundred millionth too large: ten times what the judge lets pass."""
    return f"VOLUME_MEASURE({float(found[1]) * (1 + 1e-8)!r}".upper()


BREAKS = {
    "no end": (lambda: SOUND[: len(SOUND) // 2], "wanted"),
    "text after the end": (lambda: SOUND + "#1=A();", "after the end"),
    "a letter outside ASCII": (lambda: broken("PRODUCT\\('", "PRODUCT('\u00e9"), "basic alphabet"),
    "an unknown escape": (lambda: broken("PRODUCT\\('", r"PRODUCT('\\X2\\00F\\X0\\"), "bad escape"),
    "a keyword in small letters": (lambda: broken("= PLANE", "= plane"), "no token"),
    "a missing semicolon": (lambda: broken(r"\);\n#9 ", ")\n#9 "), "wanted"),
    "a missing bracket": (lambda: broken(r"PLANE\(", "PLANE"), "wanted"),
    "a real without its point": (lambda: broken(r"\(0\.,0\.,0\.\)", "(0E1,0.,0.)"), "wanted"),
    "header out of order": (
        lambda: broken(r"(FILE_NAME.*?\);\n)(FILE_SCHEMA.*?;\n)", r"\2\1"), "header"),
    "no time stamp": (lambda: broken(r"'\d{4}-\d\d-\d\dT[\d:]+'", "'noon'"), "ISO 8601"),
    "another schema": (lambda: broken("'AUTOMOTIVE_DESIGN", "'CONFIG_CONTROL_DESIGN"), "AP214"),
    "another protocol": (lambda: broken("'automotive_design'", "'ship_design'"), "speaks of"),
    "a number twice": (lambda: broken("#12 = ", "#11 = "), "stands twice"),
    "a dangling reference": (lambda: broken(r"PLANE\('',#\d+", "PLANE('',#999999"), "not there"),
    "complex parts out of order": (
        lambda: broken(r"\( LENGTH_UNIT\(\) NAMED_UNIT\(\*\)", "( NAMED_UNIT(*) LENGTH_UNIT()"),
        "alphabetical"),
    "two products of one id": (lambda: broken(r"PRODUCT\('(base|top)'", "PRODUCT('same'", 2),
                               "are both PRODUCT"),
    "a product without a name": (lambda: broken(r"PRODUCT\('base','[^']*'", "PRODUCT('base',''"),
                                 "no name"),
    "a product with the writer's own name": (
        lambda: broken(r"PRODUCT\('base','[^']*'", "PRODUCT('base','X STEP translator 7'"),
        "no name"),
    "two instances of one id": (
        lambda: broken(r"OCCURRENCE\('2'", "OCCURRENCE('1'"), "NEXT_ASSEMBLY"),
    "an assembly within itself": (
        lambda: broken(r"(OCCURRENCE\('\d+','[^']*',(?:''|\$),)#\d+,(#\d+)", r"\1\2,\2"),
        "part of itself"),
    "an instance without a place": (
        lambda: broken(r"#\d+ = CONTEXT_DEPENDENT_SHAPE_REPRESENTATION\([^)]*\);\n", ""),
        "placed 0 times"),
    "inches": (lambda: broken(r"SI_UNIT\(\.MILLI\.", "SI_UNIT(.CENTI."), "has units"),
    "a solid without colour": (lambda: broken(r"STYLED_ITEM\('color',\(#\d+\),#\d+",
                                              "STYLED_ITEM('color',(),#1"), "no colour"),
    "an open loop": (lambda: broken(r"EDGE_LOOP\('',\((#\d+),(#\d+)", r"EDGE_LOOP('',(\2,\1"),
                     "is open"),
    "an edge run the other way": (
        lambda: broken(r"(ORIENTED_EDGE\('',\*,\*,#\d+),\.T\.", r"\1,.F."), "is open"),
    "a shell with a face too few": (
        lambda: broken(r"CLOSED_SHELL\('',\(#\d+,", "CLOSED_SHELL('',("), "times along"),
    "a bound turned round": (lambda: broken(r"(FACE_BOUND\('',#\d+),\.T\.", r"\1,.F."),
                             "times along"),
    "a face turned round": (lambda: broken(r"(ADVANCED_FACE\([^;]*),\.T\.\)", r"\1,.F.)"),
                            "turned the wrong way"),
    "a larger cylinder": (
        lambda: broken(r"(CYLINDRICAL_SURFACE\('',#\d+),[\d.E+-]+", r"\1,77."), "off its cylinder"),
    "a larger circle": (lambda: broken(r"(CIRCLE\('',#\d+),[\d.E+-]+", r"\1,77."), "off circle"),
    "a moved vertex": (
        lambda: broken(r"(VERTEX_POINT\('',#(\d+)\).*?#\2 = CARTESIAN_POINT\('',\()", r"\g<1>9"),
        "lies off"),
    "a volume slightly too large": (lambda: broken(r"VOLUME_MEASURE\(\s*([\d.E+]+)", scaled),
                                    "stated"),
    "no volume": (lambda: broken(r"VOLUME_MEASURE\(", "AREA_MEASURE("), "states no volume"),
    "a record of another form": (lambda: broken(r"EDGE_LOOP\('',\(", "EDGE_LOOP((", 1), "not of"),
}


class BrokenFiles(unittest.TestCase):
    def test_the_file_is_sound(self):
        self.assertEqual(judge(SOUND), [])

    def test_each_break_is_seen(self):
        for what, (make, said) in BREAKS.items():
            with self.subTest(what):
                faults = judge(make())
                self.assertTrue(any(said in fault for fault in faults), faults[:5])


if __name__ == "__main__":
    with open(sys.argv.pop(1), encoding="latin-1", newline="") as sound:
        SOUND = sound.read()
    unittest.main()
