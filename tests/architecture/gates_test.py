#!/usr/bin/env python3
"""The repository passes every gate, and each gate fails on a small tree made to break it."""

import tempfile
import unittest
from pathlib import Path

import gates

SOUND = {
    "src/layers.txt": "# arrows\nbase:\ngeom: base\nsolid: base geom\n"
                      "step: base solid pipeline/shop.hpp\npipeline: base\n",
    "src/base/code.cpp": 'CodeEntry{Code::fit_room, "BF-FIT-002", "room"},\n',
    "include/bowfront/base/code.hpp": "#pragma once\n",
    "include/bowfront/geom/point.hpp": '#include "bowfront/base/code.hpp"\n',
    "src/solid/make.cpp": '#include <TopoDS_Shape.hxx>\n#include "bowfront/geom/point.hpp"\n',
    "src/step/write.cpp": '#include "bowfront/pipeline/shop.hpp"\n#include "own.hpp"\n',
    "tests/unit/fit_test.cpp": "EXPECT_EQ(code, Code::fit_room);\n",
    "DEVELOPERS.md": "| `BF-FIT-002` | room | widen it |\n",
}


class Gates(unittest.TestCase):
    def faults(self, gate, **changed):
        """What a gate finds in the sound tree with some files changed (`__` for `/`)."""
        with tempfile.TemporaryDirectory() as folder:
            root = Path(folder)
            for name, text in {**SOUND, **changed.pop("files", {})}.items():
                path = root / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, encoding="utf-8")
            return list(gate(root))

    def test_a_sound_tree_passes(self):
        for gate in gates.GATES:
            self.assertEqual(self.faults(gate), [], gate.__name__)

    def test_the_repository_passes(self):
        root = Path(__file__).resolve().parents[2]
        for gate in gates.GATES:
            self.assertEqual(list(gate(root)), [], gate.__name__)

    def expect_fault(self, gate, files, part):
        faults = self.faults(gate, files=files)
        self.assertEqual(len(faults), 1, faults)
        self.assertIn(part, faults[0])

    def test_arrows_point_down(self):
        self.expect_fault(gates.arrows,
                          {"src/base/x.cpp": '#include "bowfront/geom/point.hpp"\n'},
                          "src/base/x.cpp:1: base may not include geom/point.hpp")
        self.expect_fault(gates.arrows,
                          {"include/bowfront/geom/x.hpp": '\n#include "bowfront/solid/s.hpp"\n'},
                          "include/bowfront/geom/x.hpp:2: geom may not include solid/s.hpp")

    def test_a_single_header_opens_no_folder(self):
        self.expect_fault(gates.arrows,
                          {"src/step/x.cpp": '#include "bowfront/pipeline/make.hpp"\n'},
                          "step may not include pipeline/make.hpp")

    def test_every_folder_is_a_layer(self):
        self.expect_fault(gates.arrows, {"src/utils/x.cpp": "int x;\n"}, "utils is no layer")

    def test_rows_point_at_rows_above(self):
        self.expect_fault(gates.arrows, {"src/layers.txt": SOUND["src/layers.txt"].replace(
            "base:\n", "base: geom\n")}, "geom, which does not stand before it")
        self.expect_fault(gates.arrows, {"src/layers.txt": SOUND["src/layers.txt"].replace(
            "geom: base", "geom: base glass")}, "glass, which is no layer")

    def test_outside_libraries_stay_behind_their_doors(self):
        self.expect_fault(gates.fences, {"src/geom/x.cpp": "#include <gp_Pnt.hxx>\n"}, "kernel")
        self.expect_fault(gates.fences,
                          {"include/bowfront/solid/x.hpp": "#include <TopoDS_Shape.hxx>\n"},
                          "kernel")
        self.expect_fault(gates.fences, {"src/step/x.cpp": "#include <nlohmann/json.hpp>\n"},
                          "json")
        self.expect_fault(gates.fences, {"src/pipeline/x.cpp": "#include <CLI/CLI.hpp>\n"},
                          "option parser")

    def test_codes_stand_in_the_catalogue(self):
        self.expect_fault(gates.codes, {"DEVELOPERS.md": "BF-FIT-002 in passing\n"},
                          "no row for BF-FIT-002")

    def test_codes_are_tested(self):
        self.expect_fault(gates.codes, {"tests/unit/fit_test.cpp": "Code::fit_rooms\n"},
                          "none mentions fit_room")

    def test_a_table_without_codes_is_noticed(self):
        self.expect_fault(gates.codes, {"src/base/code.cpp": "\n"}, "no codes found")

    def test_no_file_tells_of_a_machine(self):
        self.expect_fault(gates.machine_text, {"src/geom/x.cpp": "// see /home/ann/notes\n"},
                          "src/geom/x.cpp:1: a path of a machine")
        self.expect_fault(gates.machine_text, {"tests/x.json": '"https://registry.npmjs.org/"\n'},
                          "a registry's host")

    def test_ends_with_one_where_there_is_a_fault(self):
        with tempfile.TemporaryDirectory() as folder:
            root = Path(folder)
            for name, text in SOUND.items():
                (root / name).parent.mkdir(parents=True, exist_ok=True)
                (root / name).write_text(text, encoding="utf-8")
            self.assertEqual(gates.main(root), 0)
            (root / "src/base/x.cpp").write_text("#include <CLI/CLI.hpp>\n", encoding="utf-8")
            self.assertEqual(gates.main(root), 1)


if __name__ == "__main__":
    unittest.main()
