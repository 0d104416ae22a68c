"""A case that fails a check: what is written of it, and what only on demand."""

import json

import program
from case_files import PILOT_BOAT, failing
from program import CHECK_FAILS, FINE

MARK = "FAILED"
CUT_FROM = {"parts", "sheets", "templates", "cutlist.csv"}


class FailingCase(program.ProgramTest):
    def setUp(self):
        super().setUp()
        self.case = self.write_case(failing())

    def make(self, *options):
        _, error = self.ends(CHECK_FAILS, "make", self.case, "-o", "out", *options)
        return error

    def written(self):
        return {path.name for path in (self.folder / "out").iterdir()}

    def report(self):
        return json.loads((self.folder / "out/report.json").read_text(encoding="utf-8"))

    def test_it_gets_its_solids_and_its_report_and_nothing_to_cut_from(self):
        error = self.make()
        self.assertLessEqual({"report.json", "case.step", "form-front.step"}, self.written())
        self.assertEqual(self.written() & CUT_FROM, set())
        self.assertIn("nothing to cut from was written", error)
        report = self.report()
        self.assertEqual(report["verdict"], "fail")
        self.assertNotIn("despite_failures", report)
        self.assertEqual({part["file"] for part in report["parts"]}, {""})

    def test_what_is_written_despite_the_failure_says_so_in_each_file(self):
        error = self.make("--despite-failures")
        self.assertIn("marked as failed", error)
        self.assertIs(self.report()["despite_failures"], True)
        for path in sorted((self.folder / "out").rglob("*")):
            if path.is_file() and path.suffix in (".step", ".dxf", ".csv"):
                with self.subTest(path.name):
                    self.assertIn(MARK, path.read_text(encoding="utf-8"))
        self.assertLessEqual({"parts", "cutlist.csv"}, self.written())

    def test_the_solids_say_so_too(self):
        self.make()
        for name in ("case.step", "form-front.step"):
            self.assertIn(MARK, (self.folder / "out" / name).read_text(encoding="ascii"))

    def test_a_failing_output_takes_away_the_patterns_of_a_sound_one(self):
        self.ends(FINE, "make", PILOT_BOAT, "-o", "out")
        self.assertLessEqual({"parts", "cutlist.csv"}, self.written())
        self.make()
        self.assertEqual(self.written() & CUT_FROM, set())

    def test_a_case_that_passes_is_never_marked(self):
        self.ends(FINE, "make", PILOT_BOAT, "-o", "out", "--despite-failures")
        self.assertNotIn("despite_failures", self.report())
        for path in (self.folder / "out").rglob("*"):
            if path.is_file():
                self.assertNotIn(MARK, path.read_text(encoding="utf-8"))

    def test_every_failed_check_says_what_would_pass(self):
        out, _ = self.ends(CHECK_FAILS, "check", self.case, "--json")
        for check in json.loads(out)["checks"]:
            if check["status"] != "pass":
                self.assertTrue(check["advice"], check)


if __name__ == "__main__":
    program.main()
