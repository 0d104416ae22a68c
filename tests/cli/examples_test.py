"""Every example and every starter holds all its checks and is made, solids and files and all."""

import json

import program
from program import FINE, ROOT

EXAMPLES = sorted((ROOT / "examples").glob("*/case.json"))
STARTERS = sorted((ROOT / "src" / "io" / "starters").glob("*.json"))

# The worst case of the first example is meant to show what a warning looks like.
WARNS = {"pilot-boat"}


class Examples(program.ProgramTest):
    def test_there_is_one_of_every_shape(self):
        schema = json.loads((ROOT / "schemas" / "case.schema.json").read_text(encoding="utf-8"))
        shapes = set(schema["properties"]["plan"]["properties"]["shape"]["enum"])
        shown = set()
        for case in EXAMPLES:
            text = case.read_text(encoding="utf-8")
            shown |= {shape for shape in shapes if f'"shape": "{shape}"' in text}
        self.assertEqual(shown, shapes)

    def test_there_is_one_of_every_way_to_open_a_case(self):
        schema = json.loads((ROOT / "schemas" / "case.schema.json").read_text(encoding="utf-8"))
        kinds = set(schema["properties"]["access"]["properties"]["kind"]["enum"])
        shown = {kind for kind in kinds for case in EXAMPLES
                 if f'"kind": "{kind}"' in case.read_text(encoding="utf-8")}
        self.assertEqual(shown, kinds)

    def test_pass_their_checks_and_are_made(self):
        for case in EXAMPLES:
            with self.subTest(case.parent.name):
                folder = self.folder / case.parent.name
                self.ends(FINE, "make", case, "-o", folder)
                report = json.loads((folder / "report.json").read_text(encoding="utf-8"))
                if case.parent.name not in WARNS:
                    self.assertEqual(report["verdict"], "pass")
                self.assertEqual({file["read_back"] for file in report["files"]
                                  if "read_back" in file}, {"pass"})
                for pane in report["panes"]:
                    # The blank as it would be if nothing shrank: developed length by height.
                    formed = pane["formed"]
                    part = next(part for part in report["parts"]
                                if part["id"] == "pane-" + pane["side"])
                    self.assertAlmostEqual(
                        part["volume"],
                        formed["developed_length"] * formed["height"] * pane["thickness"],
                        delta=1e-9 * part["volume"])


class Starters(program.ProgramTest):
    def test_pass_their_checks(self):
        for path in STARTERS:
            with self.subTest(path.stem):
                text, _ = self.ends(FINE, "start", path.stem)
                self.ends(FINE, "check", self.write_case(text))


if __name__ == "__main__":
    program.main()
