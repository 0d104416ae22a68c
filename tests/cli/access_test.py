"""How a case is opened: in the report, in derivations, in what is cut."""

import csv
import io
import json
from pathlib import Path

import jsonschema

import program
from program import CHECK_FAILS, FINE, ROOT

# Half of the last digit that a derivation prints.
PRINTED = 5e-7


def example(name):
    return ROOT / "examples" / name / "case.json"


class Opening(program.ProgramTest):
    def report(self, case, code=FINE):
        out, _ = self.ends(code, "check", case, "--json")
        report = json.loads(out)
        jsonschema.validate(report, self.schema())
        return report

    @staticmethod
    def schema():
        return json.loads((ROOT / "schemas" / "report.schema.json").read_text(encoding="utf-8"))

    def test_is_no_open_side_and_no_ordinary_pane(self):
        report = self.report(example("chronometer"))
        self.assertEqual(report["open_sides"], [])
        self.assertEqual([pane["side"] for pane in report["panes"]], ["front", "left", "right"])
        self.assertEqual(report["access"]["kind"], "hinged-door")
        self.assertEqual(report["access"]["side"], "back")

    def test_figures_are_explained_as_they_are_reported(self):
        for name, figure in (("dory", "headroom"), ("tide-gauge", "held/nominal"),
                             ("ship-bell", "overlap/worst"), ("chronometer", "latch/nominal")):
            with self.subTest(name):
                value = self.report(example(name))["access"]
                for step in figure.split("/"):
                    value = value[step]
                out, _ = self.ends(FINE, "explain", example(name), "access/" + figure, "--json")
                self.assertAlmostEqual(json.loads(out)["value"], value, delta=PRINTED)

    def test_checks_are_explained(self):
        out, _ = self.ends(FINE, "explain", example("tide-gauge"), "checks/access-lift/back")
        self.assertIn("access/lift/nominal", out)

    def test_a_pull_too_small_for_a_finger_fails(self):
        text = example("ship-bell").read_text(encoding="utf-8")
        case = self.write_case(text.replace('"pull": 25', '"pull": 12'))
        report = self.report(case, CHECK_FAILS)
        failed = [check for check in report["checks"] if check["status"] == "fail"]
        self.assertEqual([check["code"] for check in failed], ["BF-ACCESS-005"])
        self.assertIn("larger by 8", failed[0]["advice"])

    def test_a_door_without_room_is_refused_with_its_place(self):
        text = example("chronometer").read_text(encoding="utf-8")
        case = self.write_case(text.replace('"pivot": 20', '"pivot": 300'))
        _, error = self.ends(program.BAD_INPUT, "check", case)
        self.assertIn("/access", error)

    def test_panes_that_open_are_cut_rather_too_small(self):
        self.ends(FINE, "make", example("ship-bell"), "-o", self.folder / "made")
        rows = {row["id"]: row for row in csv.DictReader(io.StringIO(
            (self.folder / "made" / "cutlist.csv").read_text(encoding="utf-8")))}
        access = json.loads((self.folder / "made" / "report.json").read_text())["access"]
        for end in ("start", "end"):
            row = rows["pane-back-" + end]
            self.assertAlmostEqual(float(row["length_mm"]), access["length"], delta=1e-3)
            self.assertGreaterEqual(0, float(row["shop_length_over_mm"]))
            self.assertTrue((self.folder / "made" / Path(row["file"])).is_file())


if __name__ == "__main__":
    program.main()
