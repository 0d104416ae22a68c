"""`check --suggest`: a corrected case file beside the old one."""

import json
import os
import re

import program
from case_files import PILOT_BOAT, changed, pilot_boat
from program import BAD_INPUT, CHECK_FAILS, FINE, NO_OUTPUT, tree

SHRINK = 0.015  # of the library's cast acrylic

COMMENTED = """// The harbour tug's case
{
  "bowfront": 1,
  "name": "harbour tug",  /* as on the plate */
  "units": "in",
  "plan": { "shape": "rectangle", "width": 20.5, "depth": "9 1/2 in" },
  "frame": {
    "timber": "white-oak", "clear_height": 15,
    "base": { "thickness": "3/4 in", "margin": "15/16 in" },
    "top": { "thickness": 1, "margin": "15/16 in" },
    "post": { "width": "1 5/8 in" },
    "groove": { "width": "3/16 in", "depth": { "base": "1/4 in", "top": "1/2 in", "post": "19/32 in" } }
  },
  "panes": [
    { "side": "back", "sheet": "cast-acrylic", "thickness": "1/8 in" } // the only one
  ],
  "service": {
    "push": "5 N"
  },
  "fit": {
    "end_clearance": "1/32 in", // too tight
    "least_engagement": "1/8 in" // and no more
    // end of the play
  }
}
"""


def cut_to_finished_size():
    """The reference case with a front blank that was cut to the size of the finished pane."""
    report = {"length": 542.71, "width": 393.5}
    return changed({"/panes/0/blank": report})


class Suggest(program.ProgramTest):
    def suggest(self, code, case, *options):
        out, error = self.ends(code, "check", case, "--suggest", "better.json", *options)
        self.assertEqual(error, "")
        return out

    def checks(self, path):
        done = self.run_program("check", path, "--json")
        return json.loads(done.stdout)["checks"]

    def better(self):
        return (self.folder / "better.json").read_text(encoding="utf-8")

    def test_a_blank_cut_to_finished_size_is_refused_edge_by_edge_with_the_loss_by_shrink(self):
        case = self.write_case(cut_to_finished_size())
        out, _ = self.ends(CHECK_FAILS, "check", case)
        self.assertIn("FAIL - do not cut from these figures", out)
        told = re.findall(r"FAIL BF-FIT-001 engagement (\S+) .*: (-?[\d.]+), wanted.*\n"
                          r" +shrink takes ([\d.]+) mm: the blank is cut ([\d.]+) mm", out)
        self.assertEqual([edge for edge, *_ in told], ["front/start", "front/end", "front/top"])
        held = [float(value) for _, value, *_ in told]
        self.assertEqual(held, sorted(held), "the worst is not first")
        for _, _, loss, cut in told:
            # Both are printed to a hundredth.
            self.assertAlmostEqual(float(loss), SHRINK * float(cut), delta=0.011)
        self.assertEqual(out.count("- make the length of the front blank"), 2)
        self.assertEqual(out.count("- make the width of the front blank"), 1)

    def test_it_is_repaired_in_a_new_file(self):
        case = self.write_case(cut_to_finished_size())
        before = tree(self.folder)
        out = self.suggest(CHECK_FAILS, case)  # of the case as it was given
        self.assertIn("Verdict before: fail", out)
        self.assertIn("Verdict after: warn (0 fail", out)
        self.assertIn("/panes/0/blank/length: 542.71 -> ", out)
        self.assertIn("/panes/0/blank/width: 393.5 -> ", out)
        self.assertEqual(tree(self.folder) | before, tree(self.folder), "the old file has changed")
        self.ends(FINE, "check", "better.json")
        for check in self.checks("better.json"):
            self.assertNotEqual((check["id"], check["status"]), ("engagement", "fail"))
        self.assertIn("push-stress front", out.split("Left, the worst first")[1])

    def test_comments_order_and_layout_stay(self):
        case = self.write_case(COMMENTED)
        self.suggest(CHECK_FAILS, case)
        old, new = COMMENTED.splitlines(), self.better().splitlines()
        self.assertEqual(len(old), len(new))
        differing = [(was, now) for was, now in zip(old, new) if was != now]
        self.assertEqual([was for was, _ in differing],
                         ['    "end_clearance": "1/32 in", // too tight'])
        self.assertRegex(differing[0][1], r'^    "end_clearance": "\d/\d+ in", // too tight$')
        self.ends(FINE, "check", "better.json")

    def test_a_value_that_was_left_out_gets_a_line_in_its_object(self):
        case = self.write_case(changed({"/oven/accuracy": "9 C"}))
        out = self.suggest(FINE, case)
        self.assertIn('/oven/set: "165 C" -> "163 C"', out)
        old = case.read_text(encoding="utf-8").splitlines()
        added = [line for line in self.better().splitlines() if line not in old]
        self.assertIn('    "set": "163 C"', added)
        self.assertIn('    "accuracy": "9 C",', added)
        self.assertEqual(len(self.better().splitlines()), len(old) + 1)

    def test_a_file_that_is_there_is_left_as_it_is(self):
        case = self.write_case(cut_to_finished_size())
        os.symlink("case.json", self.folder / "link.json")
        os.link(case, self.folder / "hard.json")
        os.symlink("nowhere.json", self.folder / "dangling.json")
        self.write_case("mine", "mine.json")
        before = tree(self.folder)
        for name in ("case.json", "link.json", "hard.json", "dangling.json", "mine.json", "."):
            with self.subTest(name):
                out, error = self.ends(NO_OUTPUT, "check", case, "--suggest", name)
                self.assertIn("BF-OUT-001", error)
                self.assertEqual(out, "")
                self.assertEqual(tree(self.folder), before)

    def test_nothing_is_written_where_nothing_helps(self):
        case = self.write_case(changed({"/frame/groove/width": 5.8}))
        out = self.suggest(FINE, case)
        self.assertIn("nothing was written", out)
        self.assertEqual(set(tree(self.folder)), {"case.json"})
        case = self.write_case(changed({"/oven/inside": [300, 300, 300], "/frame/groove/width": 5.8}))
        self.suggest(CHECK_FAILS, case)
        self.assertEqual(set(tree(self.folder)), {"case.json"})

    def test_nothing_is_written_of_a_file_with_faults(self):
        case = self.write_case(changed({"/plan/width": -1}))
        self.ends(BAD_INPUT, "check", case, "--suggest", "better.json")
        self.assertEqual(set(tree(self.folder)), {"case.json"})
        self.ends(BAD_INPUT, "check", case, "--suggest", "better.json", "--json")
        self.ends(BAD_INPUT, "check", case, "--suggest", "")

    def test_no_value_is_invented_and_nothing_less_is_asked(self):
        out = self.suggest(FINE, PILOT_BOAT)
        new = json.loads(self.better())
        self.assertEqual(new.pop("frame")["groove"]["width"], 5.7)
        old = pilot_boat()
        old.pop("frame")
        self.assertEqual(new, old)
        left = out.split("Left, the worst first")[1]
        self.assertIn("shrink-measured front", left)
        self.assertIn("push-stress back", left)

    def test_the_same_case_gets_the_same_file(self):
        case = self.write_case(cut_to_finished_size())
        self.suggest(CHECK_FAILS, case)
        first = self.better()
        self.ends(CHECK_FAILS, "check", case, "--suggest", "again.json")
        self.assertEqual((self.folder / "again.json").read_text(encoding="utf-8"), first)


if __name__ == "__main__":
    program.main()
