"""Figures of the report against the same sums done a second way."""

import json

import program
from case_files import VARIANTS, changed
from case_sums import Sums
from program import CHECK_FAILS, FINE
from report_paths import figures

# mm, degrees or K: a thousandth of what a workshop can measure, and a hundred times what halving
# intervals and walking in steps can be off.
AGREED = 1e-6


class Figures(program.ProgramTest):
    def report(self, case):
        done = self.run_program("check", self.write_case(case), "--json")
        self.assertIn(done.returncode, (FINE, CHECK_FAILS), done.stderr)
        return json.loads(done.stdout)

    def test_every_nominal_figure_of_every_variant(self):
        for name, changes in VARIANTS.items():
            case = changed(changes)
            report = self.report(case)
            found = {path: value for section in ("panes", "forms", "heating")
                     for path, value in figures(report[section], section)}
            wanted = Sums(case).table
            sides = {pane["side"] for pane in case["panes"]}
            self.assertEqual({path.split("/")[1] for path in wanted}, sides)
            for path, value in wanted.items():
                with self.subTest(f"{name}: {path}"):
                    self.assertAlmostEqual(found[path], value, delta=AGREED)


if __name__ == "__main__":
    program.main()
