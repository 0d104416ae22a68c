"""The files that `make` writes of every variant, before judges that share no code with it."""

import json
import math
import sys

import program
from case_files import RAILS, VARIANTS, changed, example
from program import CHECK_FAILS, FINE

sys.path.insert(0, str(program.ROOT / "tests/reference"))

import dxf_judge  # noqa: E402
import step_judge  # noqa: E402
from part21 import parse  # noqa: E402

SAME_VOLUME = step_judge.VOLUME_DIGITS
KERNEL_PRECISION = 1e-6  # mm; ten times its tolerance of 1e-7, as distances end in two points


def volumes(text):
    """The volume that a STEP file states of each product, by the product's id."""
    judgement = step_judge.Judgement(parse(text))
    stated = {}
    for number, volume in judgement.volume_properties().items():
        formation = judgement.get(judgement.records[number].values[2])
        stated[judgement.get(formation.values[2]).values[0]] = volume
    return stated


class MadeFiles(program.ProgramTest):
    def make(self, name, case=None):
        folder = self.folder / "out"
        case = changed(VARIANTS[name]) if case is None else case
        done = self.run_program("make", self.write_case(case), "-o", folder,
                                "--json", "--despite-failures")
        self.assertIn(done.returncode, (FINE, CHECK_FAILS), f"{name}: {done.stderr}")
        return folder, json.loads(done.stdout)

    def judge_patterns(self, folder, report):
        unfit = {check["about"] for check in report["checks"]
                 if check["id"] == "pattern" and check["status"] == "fail"}
        self.assertEqual({part["id"] for part in report["parts"] if not part["file"]}, unfit)
        for part in report["parts"]:
            if part["id"] in unfit:
                continue
            path = folder / part["file"]
            expected = {path.name: {"net_area": part["area"]}}
            self.assertEqual(dxf_judge.judge(path, expected), [], path.name)

    def judge_solids(self, folder, report):
        for path in sorted(folder.glob("*.step")):
            text = path.read_text(encoding="latin-1")
            self.assertEqual(step_judge.judge(text), [], path.name)
            stated = volumes(text)
            for part in report["parts"]:
                if part["assembly"] == path.stem:
                    self.assertTrue(math.isclose(stated[part["id"]], part["volume"],
                                                 rel_tol=SAME_VOLUME), part["id"])

    def judge(self, folder, report):
        self.assertTrue(report["parts"])
        self.judge_patterns(folder, report)
        self.judge_solids(folder, report)
        failed = {check["id"] for check in report["checks"] if check["status"] == "fail"}
        self.assertNotEqual(failed, {"interference"}, "parts stand in one place")

    def test_every_variant_passes_the_judges(self):
        for name in VARIANTS:
            with self.subTest(name):
                self.judge(*self.make(name))

    # Corners of other angles than a right one, smooth ones, and a side that bows into the case.
    def test_rails_and_joints_of_other_plans_pass_the_judges(self):
        butted = {"/frame/base/corner": "butt", "/frame/top/corner": "butt"}
        for name, changes in (("harbour-light", butted | {"/frame/post/joint": "tenon"}),
                              ("quay-crane", butted | {"/frame/post/joint": "dowel"}),
                              ("buoy", {"/frame/post/joint": "tenon"})):
            with self.subTest(name):
                folder, report = self.make(name, changed(RAILS | changes, example(name)))
                self.judge(folder, report)
                self.assertEqual(report["frame"]["base"]["build"], "rails")
                self.assertEqual(len(report["frame"]["joint"]["posts"]), len(report["panes"]))

    def test_engagement_on_the_solids_is_that_of_the_sums(self):
        _, report = self.make("pilot boat")
        edges = {f"{pane['side']}/{edge['edge']}": edge["engagement"]["nominal"]
                 for pane in report["panes"] for edge in pane["edges"]}
        measured = {entry["about"]: entry["measured"] for entry in report["measured"]}
        self.assertEqual(set(measured), set(edges))
        for about, value in measured.items():
            self.assertAlmostEqual(value, edges[about], delta=KERNEL_PRECISION)


if __name__ == "__main__":
    program.main()
