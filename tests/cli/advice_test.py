"""Advice taken to the letter does what it says: the check that gave it ends so, and none ends worse."""

import json

import program
from case_files import changed, hold
from program import CHECK_FAILS, FINE

# Cases by what is wrong with them, with the checks that then don't pass.
WRONG = {
    "groove too narrow": ({"/frame/groove/width": 3.2}, {"face-clearance"}),
    "no play at the ends": ({"/fit/end_clearance": 0}, {"room"}),
    "no play on top": ({"/fit/top_clearance": 0}, {"room"}),
    "too much play": ({"/fit/end_clearance": 6.5, "/fit/top_clearance": 10}, {"engagement"}),
    "shallow base groove": ({"/frame/groove/depth/base": 2}, {"engagement"}),
    "thin boards": ({"/frame/base/thickness": 8, "/frame/top/thickness": 16}, {"floor"}),
    "narrow boards": ({"/frame/base/margin": 15, "/frame/top/margin": 7},
                      {"post-on-plate", "cheek"}),
    "long overrun": ({"/plan/front/radius": 300, "/form/overrun": 220}, {"form-sweep"}),
    "small oven": ({"/oven/inside": [540, 500, 300]}, {"oven"}),
    "thick cutter": ({"/cutter/diameter": 6}, {"cutter"}),
    "beads and grooves": ({"/frame/loading": "beaded"}, {"loading"}),
    "can't swing": ({"/plan": {"shape": "rectangle", "width": 520, "depth": 240},
                     "/frame/loading": "lift-and-drop"}, {"loading"}),
    "no play to lift": ({"/plan": {"shape": "rectangle", "width": 520, "depth": 240},
                         "/fit/loading_clearance": 0.2,
                         **hold("square", "rabbet", "lift-and-drop")}, {"loading-reserve"}),
    "bent cold": ({"/panes/0/bend": "cold"}, {"bend"}),
}


SAMPLES = 500  # few, and the same ones every time
ORDER = ("pass", "warn", "fail")


class Advice(program.ProgramTest):
    def checks(self, case):
        done = self.run_program("check", self.write_case(case), "--json", "--samples", SAMPLES)
        self.assertIn(done.returncode, (FINE, CHECK_FAILS), done.stderr)
        return {(check["id"], check["about"]): check for check in json.loads(done.stdout)["checks"]}

    def expect_as_told(self, before, after, name, change):
        now = after.get(name, {"status": "pass"})["status"]
        self.assertEqual((change["before"], change["after"]), (before[name]["status"], now))
        self.assertLess(ORDER.index(now), ORDER.index(change["before"]))
        for other, check in after.items():
            brought = " ".join(other) in change.get("brings", [])
            allowed = "warn" if brought else before.get(other, {"status": "pass"})["status"]
            self.assertLessEqual(ORDER.index(check["status"]), ORDER.index(allowed), other)

    def test_every_change_does_what_it_says(self):
        for wrong, (changes, ids) in WRONG.items():
            case = changed(changes)
            before = self.checks(case)
            advised, tried = set(), {}
            for name, check in before.items():
                self.assertLessEqual(len(check.get("changes", [])), 3)
                self.assertEqual(bool(check["advice"]), check["status"] != "pass", name)
                for change in check.get("changes", []):
                    advised.add(name[0])
                    key = change["pointer"], change["to"]
                    if key not in tried:
                        value = json.loads(change["to"])
                        tried[key] = self.checks(changed({change["pointer"]: value}, case))
                    with self.subTest(f"{wrong}: {name}: {change['words']}"):
                        self.expect_as_told(before, tried[key], name, change)
            with self.subTest(wrong):
                self.assertLessEqual(ids, advised, "a check has no advice")

    def test_a_hint_is_called_one_where_no_single_change_helps(self):
        check = self.checks(changed({"/oven/inside": [300, 300, 300]}))["oven", "front"]
        self.assertNotIn("changes", check)
        self.assertIn("no single change", check["advice"])
        self.assertIn("a hint, not tried out: an oven at least", check["advice"])


if __name__ == "__main__":
    program.main()
